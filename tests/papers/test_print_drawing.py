"""The drawing on paper: greys only, and what is cut off as a ghost or not at all."""

from __future__ import annotations

import re
from collections.abc import Callable
from xml.etree import ElementTree as Xml

import pytest

from cane_vines import cane_vine
from heads import head_vine
from high_cordons import high_vine
from pencilwood.drawing.plate import Plate
from pencilwood.vine.model import Vine
from pencilwood.vine.passes import DoneCut, Pass
from pencilwood.vine.wood import Shortening, ThinningOut, divide, uncut
from pencilwood.worksheets.print_drawing import print_vine
from pencilwood.worksheets.print_passes import OnePass, print_passes
from vines import SAMPLES

_SVG = "{http://www.w3.org/2000/svg}"


def group(svg: str, part: str) -> Xml.Element:
    for one in Xml.fromstring(svg).iter(f"{_SVG}g"):  # noqa: S314 - our own drawing
        if one.get("data-part") == part:
            return one
    raise LookupError(part)


def has(one: Xml.Element, name: str) -> bool:
    return any(name in child.get("class", "").split() for child in one.iter())


@pytest.mark.parametrize("sample", sorted(SAMPLES))
def test_no_colour_is_left(sample: str) -> None:
    parts = divide(SAMPLES[sample]())
    svg = print_vine(parts, None, "en", "metric").svg
    colours = set(re.findall("#[0-9a-f]{6}", svg))
    assert colours
    assert all(one[1:3] == one[3:5] == one[5:7] for one in colours), colours


def test_cut_wood_is_a_ghost_and_its_buds_are_gone() -> None:
    parts = divide(SAMPLES["tidy"]())
    left = uncut(parts).cut(ThinningOut("L1b"))
    svg = print_vine(parts, left, "en", "metric").svg
    assert not has(group(svg, "L1b"), "pw-bud")
    wood = [one for one in group(svg, "L1b").iter() if one.get("class") == "pw-wood"]
    assert wood
    assert {one.get("fill") for one in wood} == {"none"}
    assert has(group(svg, "L1a"), "pw-bud")


def test_a_shortened_cane_keeps_its_lower_buds_and_shows_one_cut() -> None:
    parts = divide(SAMPLES["tidy"]())
    svg = print_vine(parts, uncut(parts).cut(Shortening("R1a", 2)), "en", "metric").svg
    cane = group(svg, "R1a")
    buds = [one.get("data-bud") for one in cane.iter() if one.get("class") == "pw-bud"]
    assert buds == ["1", "2"]
    faces = [one for one in cane.iter() if one.get("class") == "pw-face" and not one.get("display")]
    assert len(faces) == 1


def test_what_an_earlier_pass_took_is_not_shown_at_all() -> None:
    parts = divide(SAMPLES["tidy"]())
    earlier = uncut(parts).cut(ThinningOut("L1b"))
    now = earlier.cut(ThinningOut("L2b"))
    ((picture,),) = print_passes([OnePass(earlier, now)], "en", "metric")
    svg = str(picture["svg"])
    assert group(svg, "L2b") is not None
    with pytest.raises(LookupError):
        group(svg, "L1b")


@pytest.mark.parametrize(
    ("vine", "views"),
    [
        # Arms are seen from one side, a head from the row and from above.
        (SAMPLES["tidy"], 1),
        (high_vine, 1),
        (cane_vine, 1),
        (head_vine, 2),
    ],
)
def test_the_passes_of_a_poster_are_as_wide_as_each_other(
    vine: Callable[[], Vine], views: int
) -> None:
    before = uncut(divide(vine()))
    canes = [part for part in before.parts.parts if part.is_cane and part.most > 2]
    after = before
    for part in canes:
        after = after.cut(Shortening(part.name, 2))
    pictures = print_passes([OnePass(before, after), OnePass(after, after)], "en", "metric")
    assert [len(row) for row in pictures] == [views, views]
    assert len({one["width"] for row in pictures for one in row}) == 1
    first, second = (row[0]["height"] for row in pictures)
    assert float(str(first)) > float(str(second)), "ghosts need room"


def test_a_poster_shows_where_each_cane_is_cut_however_long_it_stays() -> None:
    before = uncut(divide(cane_vine()))
    longest = max((part for part in before.parts.parts if part.is_cane), key=lambda one: one.most)
    cut = Shortening(longest.name, longest.most - 1)
    one = OnePass(before, before.cut(cut), cuts=(DoneCut(cut, Pass.FINE),))
    ((picture,),) = print_passes([one], "en", "metric")
    svg = str(picture["svg"])
    _, top, _, high = (float(one) for one in re.findall(r'viewBox="([^"]*)"', svg)[0].split())
    (marked,) = re.findall(rf'<[^>]*data-cut-mark="{longest.name}"[^>]*>', svg)
    assert len(re.findall("[Mm]", re.findall(r' d="([^"]*)"', marked)[0])) == 3, "the third pass"
    (start,) = re.findall(r"M-?[\d.]+[ ,]?(-[\d.]+)", marked)
    assert top < float(start) < top + high


def test_nothing_on_a_poster_is_named_by_a_letter() -> None:
    before = uncut(divide(SAMPLES["tidy"]()))
    ((picture,),) = print_passes([OnePass(before, before)], "en", "metric")
    svg = str(picture["svg"])
    assert "pw-letter" not in svg
    assert "pw-place-name" in svg


@pytest.mark.parametrize("sample", sorted(SAMPLES))
def test_a_poster_shows_the_whole_head_and_no_half_names_of_wires(sample: str) -> None:
    before = uncut(divide(SAMPLES[sample]()))
    ((picture,),) = print_passes([OnePass(before, before)], "en", "metric")
    svg = str(picture["svg"])
    left, _, width, _ = (float(one) for one in re.findall(r'viewBox="([^"]*)"', svg)[0].split())
    assert left <= -180
    assert left + width >= 180
    assert "pw-wire-name" not in svg
    assert "pw-wire-height" not in svg
    assert "pw-trellis-wire" in svg


def test_the_words_for_the_drawing_name_what_is_left() -> None:
    parts = divide(SAMPLES["tidy"]())
    left = uncut(parts).cut(Shortening("R1a", 2))
    assert "cut back to 2 buds" in print_vine(parts, left, "en", "metric").alt


def test_a_vine_drawn_in_two_views_has_both_on_paper_and_no_empty_ground() -> None:
    vine = divide(head_vine())
    drawn = print_vine(vine, None, "en", "metric")
    left, top, width, height = (
        float(one) for one in re.findall(r'viewBox="([^"]*)"', drawn.svg)[0].split()
    )
    frame = Plate(vine).frame
    assert (left, left + width) == pytest.approx((frame.left, frame.right), abs=0.1)
    words = [float(y) for y in re.findall(r'<text[^>]* y="([-0-9.]+)"', drawn.svg)]
    room_mm = top + height - max(words)
    # The last line is the scale's; its letters reach a little below their line.
    assert 10 < room_mm < 60


@pytest.mark.parametrize("form", ["cordon", "head", "high"])
def test_letters_can_be_read_on_paper_and_those_without_room_are_told(form: str) -> None:
    vines: dict[str, Callable[[], Vine]] = {
        "cordon": SAMPLES["climbing"], "head": head_vine, "high": high_vine,
    }  # fmt: skip
    parts = divide(vines[form]())
    printed = print_vine(parts, None, "en", "metric")
    letters = [one for one in Xml.fromstring(printed.svg).iter() if is_letter(one)]  # noqa: S314 - our own drawing
    points = 178 / printed.width_mm / 25.4 * 72
    assert min(float(one.get("font-size", "0")) for one in letters) * points >= 7
    assert not any("pw-tight" in one.get("class", "") for one in letters)
    shown = {
        group.get("data-part")
        for group in Xml.fromstring(printed.svg).iter(f"{_SVG}g")  # noqa: S314 - our own drawing
        if any(is_letter(child) for child in group)
    }
    pieces = {p.name + piece.letter for p in parts.positions for piece in p.pieces}
    assert pieces - shown == set(printed.without_letter)


def is_letter(one: Xml.Element) -> bool:
    return one.tag == f"{_SVG}text" and "pw-letter" in one.get("class", "").split()
