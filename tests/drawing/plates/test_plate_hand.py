"""The hand that draws the plates: that of the vines, seen from near."""

import gzip
import math
from collections.abc import Iterator

import pytest

from pencilwood.assets import asset_root
from pencilwood.drawing.ink.curves import trace
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Dot, Group, Ink, Run, Thing
from pencilwood.drawing.plates import PLATES, cuts, draw_plate
from pencilwood.drawing.plates.board import WIDTH, Board
from pencilwood.drawing.plates.near_wood import cane, draw_cane, draw_old
from pencilwood.drawing.plates.pen import placed, swelling
from pencilwood.drawing.plates.vines import ROWS
from pencilwood.drawing.wood.canes import bud_outline, bud_side
from pencilwood.vine.model import Condition, Piece

HEAVIEST_KB = 6.3
"""A phone in the row loads a plate with its page."""
OF_WHOLE_VINES = {"parts-of-the-vine", "three-passes"}


def drawn(thing: Thing) -> Iterator[Thing]:
    yield thing
    if isinstance(thing, Group):
        for inside in thing.things:
            yield from drawn(inside)


def of_class(thing: Thing, css_class: str) -> list[Thing]:
    return [one for one in drawn(thing) if css_class in str(one.attributes.get("class")).split()]


def sound_cane(buds: int = 3) -> Piece:
    return Piece("a", 1, buds * 70 + 40, 10, buds=buds, internode_mm=70)


def test_buds_are_those_of_the_vines() -> None:
    stem = cane("any", sound_cane(), Point(0, 0))
    buds = [one for one in of_class(draw_cane(stem, 2.0), "pw-bud") if isinstance(one, Ink)]
    assert [one.runs[0] for one in buds] == [bud_outline(stem, bud) for bud in (1, 2, 3)]


def test_wood_is_as_thick_as_on_the_vines() -> None:
    stem = cane("any", sound_cane(), Point(0, 0))
    (wood,) = of_class(draw_cane(stem, 2.0), "pw-wood")
    assert isinstance(wood, Ink)
    # Midway between two buds, where neither swells it.
    at_mm = 1.5 * stem.piece.internode_mm
    aside = [x for x, y in wood.runs[0].points if y == pytest.approx(-at_mm, abs=0.5)]
    assert max(aside) == pytest.approx(stem.half_mm(at_mm), rel=0.02)
    assert min(aside) == pytest.approx(-stem.half_mm(at_mm), rel=0.02)


@pytest.mark.parametrize("name", ["plate cut", "one", "two", "three", "four"])
def test_a_cut_slopes_down_on_the_side_away_from_the_bud(name: str) -> None:
    stem = cane(name, sound_cane(1), Point(0, 0))
    face = of_class(draw_cane(stem, 2.0), "pw-plate-cut")[0]
    assert isinstance(face, Dot)
    # On the page, a turn to the left lifts the right end.
    lifted = 1 if face.turn_deg < 0 else -1
    assert lifted == bud_side(stem, 1)
    assert 10 < abs(face.turn_deg) < 35


def test_pushed_buds_are_not_drawn_and_dead_ones_are_sockets() -> None:
    stem = cane("any", sound_cane(), Point(0, 0))
    assert not of_class(draw_cane(stem, 2.0, buds_share=0.0), "pw-bud")
    dead = Piece("a", 1, 250, 10, condition=Condition.DEAD, buds=3, internode_mm=70)
    broken = draw_cane(cane("any", dead, Point(0, 0)), 2.0)
    assert len(of_class(broken, "pw-socket")) == 3
    assert not of_class(broken, "pw-plate-cut")


def test_shade_lies_on_one_side_on_all_wood() -> None:
    """The light comes from the left, as on the vines."""
    upright = trace(Point(0, 0), 240, lambda _: 0.0)
    for wood in (
        draw_cane(cane("any", sound_cane(), Point(0, 0)), 2.0),
        draw_old(upright, 220, 17, "old", 2.0),
    ):
        (wash,) = of_class(wood, "pw-wash")
        assert isinstance(wash, Ink)
        assert all(x > 0 for x, _ in wash.runs[0].points)


def test_older_wood_shows_a_ring_for_each_year() -> None:
    upright = trace(Point(0, 0), 240, lambda _: 0.0)
    rings = [
        len(of_class(draw_old(upright, 220, 17, "old", 2.0, rings=count), "pw-plate-ring"))
        for count in (0, 1, 7)
    ]
    assert [one - rings[0] for one in rings] == [0, 1, 7]


def test_the_stubs_of_the_plate_are_measured_from_the_bud() -> None:
    scene = PLATES["cut-and-stub"](Board("cut-and-stub", "p", "en", "metric"))
    canes = [one for thing in scene.things for one in of_class(thing, "pw-cane")]
    ends = []
    for one in canes:
        face = of_class(one, "pw-plate-cut")[0]
        assert isinstance(face, Dot)
        ends.append(face.middle.y)
    times = (ends[0] - ends[1]) / (dict(cuts._STUBS)["right"] - dict(cuts._STUBS)["close"])
    assert times == pytest.approx(5.4)
    assert (ends[1] - ends[2]) / times == pytest.approx(40)


def test_a_line_swells_to_its_pen_and_ends_in_points() -> None:
    run = swelling([(0.0, 0.0), (10.0, 0.0), (20.0, 0.0)], 4.0)
    assert [tuple(map(float, one)) for one in run.points[:3]] == [
        pytest.approx((0, 0)), pytest.approx((10, 2)), pytest.approx((20, 0), abs=1e-6),
    ]  # fmt: skip
    assert run.points[4] == pytest.approx((10, -2))


def test_things_are_turned_and_mirrored_into_place() -> None:
    ink = Ink((Run(((10.0, 0.0), (0.0, -10.0))),), {"stroke-width": 1.5})
    (moved,) = placed((ink,), 100, 50, 2.0, turn_rad=math.pi / 2, mirrored=True).things
    assert isinstance(moved, Ink)
    assert moved.runs[0].points[0] == pytest.approx((100, 30))
    assert moved.runs[0].points[1] == pytest.approx((120, 50))
    assert moved.attributes["stroke-width"] == 3.0


@pytest.mark.parametrize("name", sorted(set(PLATES) - OF_WHOLE_VINES))
def test_a_plate_is_light(name: str) -> None:
    packed = gzip.compress(draw_plate(name, "p1", "es").encode(), mtime=0)
    assert len(packed) / 1000 < HEAVIEST_KB


def test_the_rows_of_the_passes_leave_out_what_is_hidden_in_them() -> None:
    text = draw_plate("three-passes", "p1", "es")
    rough, thinning, fine = text.split('"pw-show-')[1:]
    assert "pw-off-rough" in rough
    assert "pw-cut-rough" not in thinning
    assert not {"pw-off-rough", "pw-off-thinning-out"} & set(fine.replace('"', " ").split())
    assert "pw-cut-fine" not in rough
    assert len(gzip.compress(text.encode(), mtime=0)) < 9_000


def test_rows_side_by_side_have_their_feet_at_one_height_and_their_headings_at_another() -> None:
    styles = (asset_root() / "css/handbook/chapters.css").read_text("utf-8")
    heights = [round(height) for *_, height in ROWS]
    foot, highest = heights[0], max(heights)
    assert foot == highest
    assert f"aspect-ratio: {WIDTH * len(ROWS):.0f} / {highest};" in styles
    for number, height in enumerate(heights[1:], start=2):
        foot += height
        row = f".pw-plate-row-{number}"
        aside = f"translate({WIDTH * (number - 1):.0f}px, {highest - foot}px)"
        assert f"{row} {{ transform: {aside}; }}" in styles
        heading = f"translateY({height - highest}px)"
        assert f"{row} > .pw-plate-heading {{ transform: {heading}; }}" in styles


def test_the_plate_of_the_choice_keeps_the_low_cane_and_dots_the_high_one() -> None:
    scene = PLATES["which-cane"](Board("which-cane", "p", "en", "metric"))
    wood = [one for thing in scene.things for one in of_class(thing, "pw-cane")]
    going = [one for thing in scene.things for one in of_class(thing, "pw-going")]
    assert len(wood) == 1
    assert len(of_class(wood[0], "pw-bud")) == 2
    # The high cane, the old wood below it, and what is cut off the low one.
    assert len(going) == 3


def test_both_rails_of_the_leaning_ladder_stand_a_quarter_out() -> None:
    scene = PLATES["leaning-ladder"](Board("leaning-ladder", "p", "en", "metric"))
    beams = [
        one.runs[0].points
        for thing in scene.things
        for one in of_class(thing, "pw-plate-face")
        if isinstance(one, Ink)
    ]
    rails = [sorted(points, key=lambda at: at[1]) for points in beams if _long(points) > 600]
    assert len(rails) == 2
    for points in rails:
        (head_x, head_y), (foot_x, foot_y) = _middle(points[:2]), _middle(points[2:])
        leans = abs(head_x - foot_x) / math.hypot(head_x - foot_x, head_y - foot_y)
        # Four parts along the ladder where its foot stands one part out.
        assert leans == pytest.approx(0.25, abs=0.002)
    low, other_low = (_middle(points[2:])[1] for points in rails)
    assert low == pytest.approx(other_low, abs=1), "both stand on the ground"


def _middle(ends: list[tuple[float, float]]) -> tuple[float, float]:
    (x, y), (other_x, other_y) = ends
    return (x + other_x) / 2, (y + other_y) / 2


def _long(points: tuple[tuple[float, float], ...]) -> float:
    ys = [y for _, y in points]
    return max(ys) - min(ys)
