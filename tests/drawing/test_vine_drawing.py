"""Every part of every vine is drawn, to scale, inside the picture, the same on every machine."""

import math
import os
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings

from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.scene.cutpoints import cut_points
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Condition, Lean, Side, Vine
from pencilwood.vine.wood import Parts, divide
from svg_reading import of_class, points, read, view_box
from vines import SAMPLES, arm, cane, old, tidy_vine, vine, vines


def drawn(parts: Parts, prefix: str = "p", *, cutpoints: bool = False, alone: bool = False) -> str:
    return draw_vine(
        WoodShown(parts, cutpoints=cutpoints),
        Paper(prefix, "en", title="A", description="All", alone=alone),
    )


@given(vines())
@settings(max_examples=60, deadline=None)
def test_every_part_stretch_bud_and_cut_point_is_drawn(random: Vine) -> None:
    parts = divide(random)
    root = read(drawn(parts, cutpoints=True))
    groups = of_class(root, "pw-part")
    assert sorted(g.attrib["data-part"] for g in groups) == sorted(p.name for p in parts.parts)
    by_name = {group.attrib["data-part"]: group for group in groups}
    for part in parts.parts:
        group = by_name[part.name]
        assert group.get("data-position") == part.position.name
        assert group.get("data-grows") == part.grows_from
        stretches = [one.get("data-from-bud") for one in of_class(group, "pw-stretch")]
        buds = [one.get("data-bud") for one in of_class(group, "pw-bud")]
        assert stretches == [str(n) for n in range(part.piece.buds)]
        assert buds == [str(n + 1) for n in range(part.piece.buds)]
    cuts = {(one.get("data-cut"), one.get("data-buds")) for one in of_class(root, "pw-cutpoint")}
    wanted = {(part.name, None) for part in parts.parts} | {
        (part.name, str(buds)) for part in parts.parts for buds in range(1, part.piece.buds)
    }
    assert cuts == wanted
    assert len(of_class(root, "pw-cutpoint")) == len(wanted)


def test_a_vine_without_any_wood_is_drawn() -> None:
    whole = tidy_vine()
    bare = replace(whole, arms=tuple(replace(one, positions=()) for one in whole.arms))
    root = read(drawn(divide(bare), cutpoints=True))
    assert not of_class(root, "pw-part")
    assert of_class(root, "pw-frame")


@given(vines())
@settings(max_examples=60, deadline=None)
def test_everything_lies_inside_the_picture(random: Vine) -> None:
    root = read(drawn(divide(random), cutpoints=True))
    left, top, right, bottom = view_box(root)
    for x, y in points(root):
        # Half of what points are rounded to, and of what the view box is, with the computer's own.
        assert left - 0.301 <= x <= right + 0.301
        assert top - 0.301 <= y <= bottom + 0.301


@given(vines())
@settings(max_examples=40, deadline=None)
def test_wood_is_drawn_to_scale(random: Vine) -> None:
    plate = Plate(divide(random))
    for part in plate.parts.parts:
        stem = plate.stem(part)
        walked = sum(
            a.away_from(b) for a, b in zip(stem.curve.points, stem.curve.points[1:], strict=False)
        )
        assert part.piece.length_mm - 0.1 < walked < part.piece.length_mm + 6.1
    for position in plate.parts.positions:
        assert abs(plate.foot(position).x) == position.at_mm
        assert plate.foot(position).y == -random.cordon_height_mm


def test_heights_of_upright_wood_are_true_to_a_twentieth() -> None:
    plate = Plate(divide(tidy_vine()))
    for part in plate.parts.parts:
        if part.is_cane and part.piece.lean is Lean.UP:
            for bud in range(1, part.piece.buds + 1):
                along = bud * part.piece.internode_mm
                height = -plate.stem(part).curve.at(along).y - 900
                assert math.isclose(height, part.bud_height_mm(bud), rel_tol=0.05, abs_tol=8)


def test_canes_are_drawn_as_thick_as_stated() -> None:
    plate = Plate(
        divide(
            vine(
                TWO_ARM_CORDON, arm(Side.LEFT, 500, (200, [cane("a", 6, 10)])), arm(Side.RIGHT, 500)
            )
        )
    )
    stem = plate.stems["L1a"]
    assert 2 * stem.half_mm(35) == pytest.approx(10 * THICKER, rel=0.12)


def test_wood_leans_to_its_own_side() -> None:
    pieces = [
        cane("a", 6, lean=Lean.OUT),
        cane("b", 6, lean=Lean.IN),
        cane("c", 6, lean=Lean.DOWN),
    ]
    arms = (arm(Side.LEFT, 500, (200, pieces)), arm(Side.RIGHT, 500, (200, pieces)))
    plate = Plate(divide(vine(TWO_ARM_CORDON, *arms)))
    tips = {name: stem.curve.points[-1] for name, stem in plate.stems.items()}
    assert tips["L1a"].x < -400 < -200 < tips["L1b"].x
    assert tips["R1b"].x < 200 < 400 < tips["R1a"].x
    assert tips["L1c"].y > -700
    assert tips["R1c"].y > -700


def test_upright_canes_of_a_position_keep_apart() -> None:
    pieces = [
        old("m", 60),
        cane("a", 9, on="m", at_mm=10),
        cane("b", 9, on="m", at_mm=30),
        cane("c", 9, on="m", at_mm=58),
    ]
    arms = (arm(Side.LEFT, 500, (200, pieces)), arm(Side.RIGHT, 500, (200, pieces)))
    plate = Plate(divide(vine(TWO_ARM_CORDON, *arms)))
    for side in "LR":
        at_300 = sorted(plate.stems[f"{side}1{letter}"].curve.at(300).x for letter in "abc")
        assert at_300[1] - at_300[0] > 20
        assert at_300[2] - at_300[1] > 20


def test_cut_points_of_a_position_keep_a_finger_apart() -> None:
    parts = divide(tidy_vine())
    feet = [point for point in cut_points(plate_of(parts)) if point.buds is None]
    for first in feet:
        for second in feet:
            if first.part < second.part and first.part[:2] == second.part[:2]:
                assert first.middle.away_from(second.middle) >= 24


def test_two_drawings_on_one_page_share_no_id() -> None:
    parts = divide(tidy_vine())
    ids = [re.findall(r' id="([^"]*)"', drawn(parts, prefix)) for prefix in ("one", "two")]
    assert not set(ids[0]) & set(ids[1])
    assert all(len(found) == len(set(found)) > 36 for found in ids)
    assert all(name.startswith("one-") for name in ids[0])


def test_title_description_and_data_are_escaped() -> None:
    nasty = '<b>&"</b>'
    svg = draw_vine(
        WoodShown(divide(tidy_vine())),
        Paper("p", "es", title=nasty, description=nasty, data={"case": nasty}),
    )
    root = read(svg)
    assert root[0].text == root[1].text == root.get("data-case") == nasty
    assert root.get("aria-labelledby") == root[0].get("id")
    assert root.get("aria-describedby") == root[1].get("id")
    assert (root.get("role"), root.get("lang")) == ("img", "es")


def test_a_drawing_that_stands_alone_brings_its_styles() -> None:
    parts = divide(tidy_vine())
    assert "--pw-cane" in drawn(parts, alone=True)
    assert "<style" not in drawn(parts)
    read(drawn(parts, alone=True))


def test_wires_heights_and_scale_are_named_in_the_language_and_units() -> None:
    parts = divide(tidy_vine())
    spanish = draw_vine(
        WoodShown(parts), Paper("p", "es", title="t", description="d", units="metric")
    )
    american = draw_vine(WoodShown(parts), Paper("p", "en", title="t", description="d", units="us"))
    assert "vegetación" in spanish
    assert "120 cm" in spanish
    assert "catch wire" in american
    assert "4 ft" in american
    assert f"×{THICKER}" in spanish


@pytest.mark.parametrize("condition", list(Condition))
def test_condition_shows_without_colour(condition: Condition) -> None:
    """With all colours and classes of condition taken out, no two conditions look the same."""

    def shape(of: Condition) -> str:
        pieces = [old("m", 80, condition=of), cane("a", 6, on="m", at_mm=70, condition=of)]
        arms = (arm(Side.LEFT, 400, (200, pieces)), arm(Side.RIGHT, 400))
        svg = drawn(divide(vine(TWO_ARM_CORDON, *arms)))
        return re.sub(r'#[0-9a-f]{3,6}|class="[^"]*"', "", svg)

    assert all(shape(other) != shape(condition) for other in Condition if other is not condition)


def test_the_bytes_do_not_hang_on_the_hash_seed(project: Path) -> None:
    program = (
        "import hashlib; from vines import climbing_vine;"
        "from pencilwood.drawing import Paper, WoodShown, draw_vine;"
        "from pencilwood.vine.wood import divide;"
        "shown = WoodShown(divide(climbing_vine()), cutpoints=True);"
        "svg = draw_vine(shown, Paper('p', 'en', title='t', description='d'));"
        "print(hashlib.sha256(svg.encode()).hexdigest())"
    )
    path = os.pathsep.join(str(project / folder) for folder in ("generator", "tests"))
    digests = {
        subprocess.run(
            [sys.executable, "-c", program],
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": path},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("0", "1", "42")
    }
    assert len(digests) == 1


@pytest.mark.parametrize("name", SAMPLES)
def test_words_end_inside_the_picture(name: str) -> None:
    """Estimated with 0.58 of the size for each letter, more than common serif faces take."""
    for language in ("en", "es"):
        svg = draw_vine(
            WoodShown(divide(SAMPLES[name]())), Paper("p", language, title="t", description="d")
        )
        root = read(svg)
        right = view_box(root)[2]
        for text in root.iter("{http://www.w3.org/2000/svg}text"):
            if text.get("text-anchor") != "middle":
                width = len(text.text or "") * float(text.attrib["font-size"]) * 0.58
                assert float(text.attrib["x"]) + width <= right, text.text


def test_a_low_cane_is_not_hidden_behind_the_thick_wood_it_grows_from() -> None:
    pieces = [
        old("m", 300, 30, age_years=8),
        cane("a", 8, on="m", at_mm=50),
        cane("b", 8, on="m", at_mm=295),
    ]
    arms = (arm(Side.LEFT, 500, (200, pieces)), arm(Side.RIGHT, 500, (200, pieces)))
    plate = Plate(divide(vine(TWO_ARM_CORDON, *arms)))
    for side in "LR":
        thick, low = plate.stems[f"{side}1m"], plate.stems[f"{side}1a"]
        beside = abs(low.curve.at(150).x - thick.curve.at(200).x)
        assert beside > thick.half_mm(200) + low.half_mm(150)


@given(vines())
@settings(max_examples=40, deadline=None)
def test_the_scale_is_over_no_wood_and_inside_the_picture(random: Vine) -> None:
    parts = divide(random)
    root = read(drawn(parts))
    (scale,) = of_class(root, "pw-scale")
    left, _, right, bottom = view_box(root)
    bends = [at for stem in Plate(parts).stems.values() for at in stem.curve.points]
    for text in scale.iter("{http://www.w3.org/2000/svg}text"):
        x, y, size = (float(text.attrib[name]) for name in ("x", "y", "font-size"))
        end = x + len(text.text or "") * size * 0.58
        assert left < x < end < right
        assert y + size * 0.3 < bottom
        assert y > 0 or not x < random.trunk_thickness_mm < end
        assert not any(x < at.x < end and y - size < at.y < y + size * 0.3 for at in bends)
