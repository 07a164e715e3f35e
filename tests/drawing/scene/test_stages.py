"""Classes alone tell what is gone: in one state, or after each pass."""

import pytest

from drawn_states import draw_passes, draw_state
from pencilwood.drawing.ink.shapes import Ink
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.scene.cut_marks import draw_cut_marks
from pencilwood.drawing.wood.canes import stretches
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT
from pencilwood.vine.model import Side
from pencilwood.vine.passes import DoneCut, Pass, after_each_pass
from pencilwood.vine.wood import Parts, Shortening, ThinningOut, divide, uncut
from svg_reading import of_class, read
from vines import arm, cane, old, vine

ROUGH = DoneCut(Shortening("R1b", 5), Pass.ROUGH)
THIN = DoneCut(ThinningOut("R1m above a"), Pass.THINNING_OUT)
FINE = DoneCut(Shortening("R1a", 2), Pass.FINE)


def one_spur() -> Parts:
    pieces = [old("m", 60), cane("a", 4, on="m", at_mm=15), cane("b", 7, on="m", at_mm=58)]
    return divide(vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 400, (200, pieces))))


def classes(svg: str, part: str) -> tuple[set[str], list[str]]:
    """The classes of a part, and of its stretches what each has beyond `pw-stretch`."""
    group = next(g for g in of_class(read(svg), "pw-part") if g.get("data-part") == part)
    stretches = of_class(group, "pw-stretch")
    return set(group.attrib["class"].split()), [
        one.attrib["class"].removeprefix("pw-stretch").strip() for one in stretches
    ]


def test_an_uncut_vine_has_nothing_gone() -> None:
    parts = one_spur()
    assert "pw-gone" not in draw_state(parts, None)
    assert "pw-gone" not in draw_state(parts, uncut(parts))


def test_a_shortened_cane_loses_the_stretches_beyond_its_last_bud() -> None:
    parts = one_spur()
    left = uncut(parts).cut(Shortening("R1b", 3))
    whole, stretches = classes(draw_state(parts, left), "R1b")
    assert "pw-gone" not in whole
    assert stretches == ["", "", "", "pw-gone", "pw-gone", "pw-gone", "pw-gone"]


def test_what_falls_with_a_part_is_gone_without_a_cut_face() -> None:
    parts = one_spur()
    svg = draw_state(parts, uncut(parts).cut(ThinningOut("R1m above a")))
    assert {"pw-gone"} <= classes(svg, "R1m above a")[0]
    assert "pw-fallen" not in classes(svg, "R1m above a")[0]
    assert {"pw-gone", "pw-fallen"} <= classes(svg, "R1b")[0]
    assert "pw-gone" not in classes(svg, "R1a")[0]


def test_one_drawing_carries_every_pass_and_the_plan() -> None:
    parts = one_spur()
    plan = uncut(parts).cut(Shortening("R1a", 1))
    svg = draw_passes(parts, [ROUGH, THIN, FINE], plan=plan, show="rough")
    assert "pw-show-rough" in read(svg).attrib["class"].split()
    whole, stretches = classes(svg, "R1b")
    assert "pw-off-thinning-out" in whole
    # Beyond the fifth bud it went in the rough pass, the rest with the wood below.
    assert [name.split(" ")[0] for name in stretches[-2:]] == ["pw-off-rough"] * 2
    assert [name.split(" ")[0] for name in stretches[1:5]] == ["pw-off-thinning-out"] * 4
    assert classes(svg, "R1a")[1] == [
        "",
        "pw-off-plan",
        "pw-off-fine pw-off-plan",
        "pw-off-fine pw-off-plan",
    ]


def test_every_cut_is_marked_with_one_more_bar_in_each_pass() -> None:
    svg = draw_passes(one_spur(), [ROUGH, THIN, FINE])
    marks = of_class(read(svg), "pw-cut-mark")
    bars = {mark.attrib["class"]: mark.attrib["d"].lower().count("m") for mark in marks}
    assert bars == {
        "pw-cut-mark pw-cut-rough": 1,
        "pw-cut-mark pw-cut-thinning-out": 2,
        "pw-cut-mark pw-cut-fine": 3,
    }


@pytest.mark.parametrize("internode_mm", [35, 50, 70, 110])
@pytest.mark.parametrize("in_pass", Pass)
def test_no_mark_of_a_cut_lies_on_the_bud_below_it(in_pass: Pass, internode_mm: int) -> None:
    pieces = [cane("a", 4, internode_mm=internode_mm, thickness_mm=9)]
    plate = Plate(divide(vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 400, (200, pieces)))))
    (mark,) = draw_cut_marks(plate, [DoneCut(Shortening("R1a", 2), in_pass)]).things
    bud = next(
        thing
        for thing in stretches(plate.stems["R1a"], lambda _: "")[1].things
        if isinstance(thing, Ink) and thing.attributes.get("data-bud") == "2"
    )
    assert isinstance(mark, Ink)
    lowest_bar = max(y for run in mark.runs for _, y in run.points)
    assert lowest_bar < min(y for run in bud.runs for _, y in run.points)


def test_passes_follow_one_another_whatever_the_order_of_the_list() -> None:
    rough, thinned, fine = after_each_pass(one_spur(), [FINE, THIN, ROUGH]).values()
    assert [left.state("R1b") for left in (rough, thinned, fine)] == [5, 0, 0]
    assert [left.state("R1a") for left in (rough, thinned, fine)] == [4, 4, 2]
