"""One position large, and drawings without what their state never shows."""

import math
import re
from collections.abc import Callable

import pytest

from high_cordons import high_vine
from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.describe import describe_position
from pencilwood.drawing.scene.stages import GONE, Stage, Stages
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.views.close_up import PlaceShown, draw_close_up
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Growth, Lean, Side, Vine
from pencilwood.vine.wood import Parts, ThinningOut, divide, uncut
from svg_reading import of_class, path_points, read, view_box
from vines import arm, cane, tidy_vine, vine

_OTHER = {Side.LEFT: Side.RIGHT, Side.RIGHT: Side.LEFT}


@pytest.fixture(scope="module")
def parts() -> Parts:
    return divide(tidy_vine())


def _close_up(parts: Parts, position: str) -> str:
    described = describe_position(parts, None, position, "en")
    paper = Paper("p", "en", title="Close", description=described)
    return draw_close_up(PlaceShown(parts, position), paper)


def test_a_close_up_shows_one_position_and_tells_it(parts: Parts) -> None:
    name = parts.positions[0].name
    svg = _close_up(parts, name)
    assert set(re.findall(r'class="pw-part[^>]* data-position="(\w+)"', svg)) == {name}
    assert "pw-close-up" in svg
    description = svg.split("<desc")[1].split("</desc>")[0]
    assert name in description
    assert all(other.name not in description for other in parts.positions[1:])


def test_a_close_up_keeps_the_scale_of_its_wood(parts: Parts) -> None:
    name = parts.positions[0].name
    svg = _close_up(parts, name)
    _, _, width, height = (float(one) for one in svg.split('viewBox="')[1].split('"')[0].split())
    assert 200 < width < 900
    assert 200 < height < 900


@pytest.mark.parametrize("at_mm", [20, 60, 110, 300])
@pytest.mark.parametrize("side", [Side.LEFT, Side.RIGHT])
def test_the_scale_keeps_clear_of_a_name_that_the_trunk_pushed(side: Side, at_mm: int) -> None:
    one, other = arm(side, 600, (at_mm, [cane("a", 6)])), arm(_OTHER[side], 600)
    arms = (one, other) if side is Side.LEFT else (other, one)
    parts = divide(vine(TWO_ARM_CORDON, *arms))
    drawing = read(_close_up(parts, f"{'L' if side is Side.LEFT else 'R'}1"))
    (name,) = of_class(drawing, "pw-place-name")
    bar = of_class(drawing, "pw-scale-line")[-1]
    xs = [x for x, _ in path_points(bar.attrib["d"])]
    # Shown 22 mm high, its two letters are less than 30 mm wide.
    assert min(abs(x - float(name.attrib["x"])) for x in xs) > 15 + 15
    left, _, right, _ = view_box(drawing)
    assert left < min(xs) < max(xs) < right


@pytest.mark.parametrize("make", [tidy_vine, high_vine])
def test_a_close_up_ends_soon_after_the_name(make: Callable[[], Vine]) -> None:
    parts = divide(make())
    hangs = parts.vine.form.growth is Growth.DOWN
    ahead = Lean.DOWN if hangs else Lean.UP
    # Other wood may need more room on that side.
    plain = [one for one in parts.positions if {piece.lean for piece in one.pieces} == {ahead}]
    assert plain
    for position in plain:
        drawing = read(_close_up(parts, position.name))
        _, top, _, bottom = view_box(drawing)
        (name,) = of_class(drawing, "pw-place-name")
        line, size = float(name.attrib["y"]), float(name.attrib["font-size"])
        beyond = line - size - top if hangs else bottom - line
        assert size * 0.3 < beyond < size * 1.2, position.name


def test_a_close_up_has_a_length_to_compare_with(parts: Parts) -> None:
    for position in parts.positions:
        drawing = read(_close_up(parts, position.name))
        (words,) = of_class(drawing, "pw-close-scale")
        assert words.text == "10 cm"
        lines = [
            one for one in of_class(drawing, "pw-scale-line") if one.get("stroke-width") == "2.4"
        ]
        xs = [x for x, _ in path_points(lines[0].attrib["d"])]
        assert max(xs) - min(xs) == pytest.approx(100, abs=0.6)
        left, _, right, _ = view_box(drawing)
        assert left < min(xs) < max(xs) < right


def test_hidden_wood_is_left_out_and_a_ghost_keeps_its_edge(parts: Parts) -> None:
    cut = next(part.name for part in parts.parts if part.is_cane)
    stages = Stages((Stage(GONE, uncut(parts).cut(ThinningOut(cut))),))

    def drawn(hidden: tuple[str, ...] = (), ghosts: tuple[str, ...] = ()) -> str:
        return draw_vine(
            WoodShown(parts, stages, hidden=hidden, ghosts=ghosts),
            Paper("p", "en", title="t", description="d"),
        )

    def part(svg: str) -> str:
        return svg.split(f'data-part="{cut}"')[1].split('data-part="')[0]

    whole, ghost, hidden = drawn(), drawn(ghosts=(GONE,)), drawn(hidden=(GONE,))
    assert f'data-part="{cut}"' not in hidden
    assert "pw-bud" in part(whole)
    assert 'class="pw-bud"' not in part(ghost)
    assert "pw-wood" in part(ghost)
    assert "pw-face" in part(ghost)
    assert len(hidden) < len(ghost) < len(whole)
    # All other wood is the same to the byte.
    other = next(one.name for one in parts.parts if one.is_cane and one.name != cut)
    ends = [svg.split(f'data-part="{other}"')[1][:400] for svg in (whole, ghost)]
    assert ends[0] == ends[1]


def test_letters_of_a_close_up_stand_near_their_own_wood(parts: Parts) -> None:
    stems = plate_of(parts).stems
    for position in parts.positions:
        svg = _close_up(parts, position.name)
        letters = re.findall(r'<text ([^>]*class="pw-letter"[^>]*)>(\w)<', svg)
        assert letters
        for look, letter in letters:
            stem = stems[position.name + letter]
            x, y = (float(re.findall(rf'\b{axis}="([-\d.]+)"', look)[0]) for axis in "xy")
            edge_mm = min(math.dist((x, y), at) for at in stem.curve.points) - stem.half_mm(0)
            assert edge_mm < 12


@pytest.mark.parametrize("at_mm", [60, 110, 300])
def test_the_line_from_a_place_ends_at_its_name(at_mm: int) -> None:
    right = arm(Side.RIGHT, 600, (at_mm, [cane("a", 6)]))
    parts = divide(vine(TWO_ARM_CORDON, arm(Side.LEFT, 600), right))
    drawing = read(_close_up(parts, "R1"))
    (name,) = of_class(drawing, "pw-place-name")
    (tick,) = of_class(drawing, "pw-tick")
    end_x, end_y = list(path_points(tick.attrib["d"]))[-1]
    # Its letters are 16.5 mm high: the line ends just over them.
    assert 13 < float(name.attrib["y"]) - end_y < 18
    assert abs(float(name.attrib["x"]) - end_x) < 12
