"""Head-trained vines: read and written again, judged alike everywhere, planned exactly."""

from __future__ import annotations

import random
from collections import Counter
from pathlib import Path

import pytest

from case_files import usual_tool
from forms_alike import (
    assert_general_solver_finds_nothing_better,
    assert_sheet_says_what_rules_say,
    random_target,
)
from heads import head, head_vine, random_head
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.case_writer import write_case
from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.scene.cutpoints import cut_points_of_views
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.plan import plan_for
from pencilwood.rules import RULE_BY_NAME, bands_of
from pencilwood.score.judge import Target, judge, lost, target_for
from pencilwood.score.sheet import compile_sheet
from pencilwood.vine.bands import default_limits
from pencilwood.vine.forms.head import HEAD_TRAINED
from pencilwood.vine.model import Lean, Vine
from pencilwood.vine.wood import Parts, Shortening, ThinningOut, divide, uncut
from prunings import every_pruning, first_small
from svg_reading import of_class, points, read
from vines import cane, old

LIMITS = default_limits(bands_of(HEAD_TRAINED))
VINES = 50


def test_buds_are_counted_for_the_whole_vine_whatever_the_length_around_it() -> None:
    """Common practice, no source: the form's own figures."""
    vine = head_vine()
    assert target_for(vine, LIMITS) == Target(10, 16)
    assert target_for(vine, LIMITS, (8, 9)) == Target(8, 9), "a case's own comes first"


def test_the_sheet_says_what_the_rules_say() -> None:
    rng = random.Random(23)
    vines = [(divide(random_head(rng)), random_target(rng)) for _ in range(VINES)]
    assert_sheet_says_what_rules_say(vines, LIMITS, rng)


def test_the_plan_is_the_best_of_all_prunings() -> None:
    rng = random.Random(29)
    for _ in range(VINES):
        parts = small_vine(rng)
        target = random_target(rng)
        judged = [judge(left, LIMITS, target) for left in every_pruning(parts)]
        best = min(lost(one) for one in judged if not any(charge.must for charge in one))
        assert plan_for(compile_sheet(parts, LIMITS, target)).lost == best


def small_vine(rng: random.Random) -> Parts:
    """A vine with few enough prunings to try them all."""

    def grow() -> Vine:
        return random_head(rng, positions=rng.randint(1, 4), most_canes=2, most_buds=4)

    return first_small(grow, 2500)


def test_a_general_solver_finds_nothing_better() -> None:
    rng = random.Random(31)
    wide = (random_head(rng, positions=rng.randint(4, 9), most_buds=5) for _ in range(VINES // 5))
    vines = ((divide(one), random_target(rng)) for one in wide)
    assert_general_solver_finds_nothing_better(vines, LIMITS)


def broken(rule: str, parts: Parts, *cuts: Shortening | ThinningOut) -> list[str]:
    left = uncut(parts)
    for cut in cuts:
        left = left.cut(cut)
    return [one.message for one in judge(left, LIMITS, Target(0, 100)) if one.rule == rule]


@pytest.mark.parametrize(("thickness_mm", "most"), [(7, 1), (8, 2), (10, 2), (11, 3), (14, 3)])
def test_buds_go_by_thickness(thickness_mm: int, most: int) -> None:
    parts = divide(head(800, (100, (cane("a", 6, thickness_mm),))))
    assert broken("overladen-spur", parts, Shortening("H1a", most)) == []
    assert broken("overladen-spur", parts, Shortening("H1a", most + 1)) == ["too-weak"]


def test_an_open_side_is_measured_past_the_mark() -> None:
    places = tuple((at, (cane("a", 6),)) for at in (100, 400, 700, 1000))
    assert broken("open-side", divide(head(1200, *places))) == []
    assert broken("open-side", divide(head(1201, *places))) == ["too-wide"]


def test_only_inward_canes_are_in_the_middle() -> None:
    leaning = [cane("a", 6, lean=lean) for lean in (Lean.IN, Lean.OUT, Lean.UP, Lean.DOWN)]
    parts = divide(head(1200, *((100 + 300 * n, (one,)) for n, one in enumerate(leaning))))
    assert broken("wood-in-the-middle", parts) == ["kept"]


@pytest.mark.parametrize("around_mm", [800, 1200, 1600])
def test_from_above_an_inward_cane_lies_toward_the_middle(around_mm: int) -> None:
    wood = (old("m", 50, 16), cane("a", 4, on="m", at_mm=20, lean=Lean.IN))
    vine = head(around_mm, *((around_mm // 4 * n, wood) for n in range(4)))
    above = plate_of(divide(vine)).views[-1]
    feet = [above.foot(one) for one in above.parts.positions]
    middle = Point(sum(at.x for at in feet) / 4, sum(at.y for at in feet) / 4)
    for position, foot in zip(above.parts.positions, feet, strict=True):
        way = [Point(*at) for at in above.stems[f"{position.name}a"].curve.points]
        reach = middle.away_from(foot)
        aside = [
            abs((at.x - middle.x) * (foot.y - middle.y) - (at.y - middle.y) * (foot.x - middle.x))
            / reach
            for at in way
        ]
        assert middle.away_from(way[-1]) < reach * 0.6
        assert (
            max(aside) < vine.arms[0].thickness_mm
        )  # It lies over its short arm, drawn twice as thick.


def test_an_inward_cane_is_no_renewal() -> None:
    parts = divide(head(800, (100, (cane("a", 6, lean=Lean.IN), cane("b", 6, 9, lean=Lean.OUT)))))
    assert broken("no-renewal-bud", parts, ThinningOut("H1a")) == []


def test_both_views_show_every_part_and_every_cut() -> None:
    parts = divide(head_vine())
    drawn = draw_vine(
        WoodShown(parts, cutpoints=True), Paper("x", "en", title="t", description="d")
    )
    groups = Counter(one.get("data-part") for one in read(drawn).iter() if one.get("data-part"))
    assert groups == {part.name: 2 for part in parts.parts}
    points = cut_points_of_views(plate_of(parts))
    by_view = Counter(point.view for point in points)
    assert set(by_view) == {"row", "above"}
    assert by_view["row"] == by_view["above"]
    ids = [one.get("id") for one in read(drawn).iter() if one.get("id")]
    assert len(ids) == len(set(ids))


def test_no_line_to_a_name_goes_aslant_through_the_head() -> None:
    drawn = read(
        draw_vine(WoodShown(divide(head_vine())), Paper("v", "en", title="", description=""))
    )
    leaders = [list(points(one)) for one in of_class(drawn, "pw-tick")]
    assert any(abs(line[0][1] - line[-1][1]) > 20 for line in leaders)
    assert all(abs(line[0][0] - line[-1][0]) < 3 for line in leaders)


def test_from_above_places_stand_clockwise_from_the_row() -> None:
    """A quarter of the tape each: the row, the left, the far side, the right."""
    quarters = tuple((at, (cane("a", 4),)) for at in (1200, 300, 600, 900))
    plate = plate_of(divide(head(1200, *sorted(quarters))))
    assert plate.second is not None
    feet = [plate.second.foot(position) for position in plate.parts.positions]
    left, far, right, row = feet
    assert left.x < far.x < right.x
    assert row.y > left.y > far.y
    assert abs(row.x - far.x) < 1
    assert abs(left.y - right.y) < 1


def test_a_case_is_written_and_read_again(project: Path, tmp_path: Path) -> None:
    source = project / "content/cases/strong-and-weak-places.yml"
    safety = ("eyes", "hand-shears", "loppers", "cold", "hands-and-back", "first-aid")
    case, findings = read_case(
        source, CaseSurroundings(("en", "es"), RULE_BY_NAME, safety, usual_tool)
    )
    assert case is not None
    assert not findings
    again = tmp_path / source.name
    again.write_text(write_case(case, "en"), encoding="utf-8")
    other, findings = read_case(
        again, CaseSurroundings(("en", "es"), RULE_BY_NAME, safety, usual_tool)
    )
    assert other is not None
    assert not findings
    assert other.vine == case.vine


@pytest.mark.parametrize(
    ("old", "new", "name"),
    [
        ("at: 112 cm", "at: 140 cm", "beyond-the-head"),
        ("position: H7", "position: L7", "not-a-head-position"),
        ("position: H7", "position: H9", "misnumbered"),
        ("thickness: 50 mm", "thickness: 95 mm", "arm-thicker-than-trunk"),
        ("  positions:", "  wires: {fruiting: 60 cm}\n  positions:", "unknown-key"),
    ],
)
def test_what_cannot_stand_is_refused(
    project: Path, tmp_path: Path, old: str, new: str, name: str
) -> None:
    source = project / "content/cases/strong-and-weak-places.yml"
    text = source.read_text("utf-8")
    assert text.count(old) == 1
    slip = tmp_path / source.name
    slip.write_text(text.replace(old, new), encoding="utf-8")
    case, findings = read_case(
        slip, CaseSurroundings(("en", "es"), RULE_BY_NAME, ("eyes",), usual_tool)
    )
    assert case is None
    assert name in {finding.name for finding in findings}
