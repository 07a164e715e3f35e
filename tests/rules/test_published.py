"""The vine's arithmetic and the default bands against figures from outside this project.

Every row names its source as it was read, or says "common practice, no source" or
"from memory". Rows marked "derived" are arithmetic on a figure that was read.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

import pytest

from pencilwood.rules import BANDS
from pencilwood.score.judge import Target, judge, target_for
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT, TWO_ARM_CORDON
from pencilwood.vine.measures import buds_kept, buds_per_metre, leaf_room
from pencilwood.vine.model import Arm, Lean, Side, Trellis, Vine
from pencilwood.vine.wood import WoodLeft, divide, uncut
from rule_bench import LIMITS, one_position, piece_breaks, with_limits
from vines import arm, cane, old, vine

INCH = Fraction(254, 10)
FOOT = 12 * INCH
BAND = {band.name: band for band in BANDS}
NO_SOURCE = "common practice, no source"
MEMORY = "from memory"
LODI = "Lodi Winegrape Commission, Optimized pruning using spurs"
WESTOVER = "F. Westover, Wines & Vines, May 2016"


def even_arm(side: Side, spurs: int, spacing: Fraction, buds: int = 2) -> Arm:
    """An arm with spurs at equal distances, half a distance free at both ends."""
    places = [(round(spacing * (2 * n + 1) / 2), (cane("a", buds),)) for n in range(spurs)]
    return arm(side, round(spacing * spurs), *places)


def rules_broken(left: WoodLeft, target: Target, **limits: int) -> set[str]:
    return {charge.rule for charge in judge(left, with_limits(**limits), target)}


def over_the_sources(one: Vine) -> Target:
    """The bud total between the outer ends of the published densities."""
    ends = {
        "buds per metre at least": BAND["buds per metre at least"].lowest,
        "buds per metre at most": BAND["buds per metre at most"].highest,
    }
    return target_for(one, {**LIMITS, **ends})


@pytest.mark.parametrize(
    ("inches", "per_foot", "per_metre", "verdict"),
    [
        # Derived: 2-bud spurs, nodes = 2 / spacing, beside the 3 to 6 per foot of the sources
        # read (Univ. Maryland Extension; Lodi Winegrape Commission).
        (3, "8.0", "26.2", "over"),
        (4, "6.0", "19.7", "in"),  # the top edge
        (5, "4.8", "15.7", "in"),
        (6, "4.0", "13.1", "in"),
        (8, "3.0", "9.8", "edge"),  # the bottom edge: one bud short of ten a metre
    ],
)
def test_spacing_gives_density(inches: int, per_foot: str, per_metre: str, verdict: str) -> None:
    one = vine(ONE_ARM_RIGHT, even_arm(Side.RIGHT, 10, inches * INCH))
    left = uncut(divide(one))
    found = buds_per_metre(left)
    assert abs(found - Fraction(per_metre)) <= Fraction(1, 20)
    assert abs(found * FOOT / 1000 - Fraction(per_foot)) <= Fraction(1, 20)
    target = over_the_sources(one)
    if verdict == "over":
        assert buds_kept(left) > target.most
    elif verdict == "in":
        assert target.least <= buds_kept(left) <= target.most
    else:
        assert buds_kept(left) == target.least - 1


@pytest.mark.parametrize(
    ("inches", "broken"),
    [
        (3, {"crowded-spurs"}),  # read as the closest: A. Klodd, 2022; tighter than our default
        (4, set()),  # N. Sperry, closest; a hand's width
        (5, set()),  # A. Klodd, 2022, widest
        (6, set()),  # N. Sperry, widest
        (8, set()),  # NC State, fig. 14-33, widest
        (9, {"blank-on-arm"}),  # wider than any source read
    ],
)
def test_published_spacings_are_neither_crowded_nor_blank(inches: int, broken: set[str]) -> None:
    one = vine(ONE_ARM_RIGHT, even_arm(Side.RIGHT, 10, inches * INCH))
    # Our default of 20 cm for a blank is 8 in rounded down: the row itself must still pass.
    found = rules_broken(uncut(divide(one)), over_the_sources(one), blank_at_most=204)
    assert found & {"crowded-spurs", "blank-on-arm"} == broken


@pytest.mark.parametrize("spurs", [15, 20])
def test_two_four_foot_arms_with_15_to_20_spurs(spurs: int) -> None:
    # N. Sperry: 15-20 spurs of 2 buds on two 4-ft cordons; the products are derived.
    on_left = spurs // 2
    arms = (
        even_arm(Side.LEFT, on_left, 4 * FOOT / on_left),
        even_arm(Side.RIGHT, spurs - on_left, 4 * FOOT / (spurs - on_left)),
    )
    one = vine(TWO_ARM_CORDON, *arms)
    left = uncut(divide(one))
    per_foot = {15: "3.75", 20: "5"}[spurs]
    assert buds_kept(left) == 2 * spurs
    assert abs(buds_per_metre(left) * FOOT / 1000 - Fraction(per_foot)) < Fraction(1, 50)
    assert not rules_broken(left, target_for(one, LIMITS)) & {"too-few-buds", "too-many-buds"}


@pytest.mark.parametrize(
    ("canes", "total"),
    [
        ((2, 2, 1), 5),  # U. P. Hedrick, Manual of American Grape-Growing: two of 2, one of 1
        ((8,) * 4, 32),  # derived: four 8-node canes, within the 30-35 of a table-grape text
        ((10,) * 3, 30),  # derived, the same text
        ((12,) * 2, 24),  # printed: New Zealand Sauvignon blanc, AJGWR 2014 abstract
        ((12,) * 3, 36),
        ((12,) * 6, 72),
    ],
)
def test_buds_are_counted_as_published(canes: Sequence[int], total: int) -> None:
    places = [(100 * n, (cane("a", buds),)) for n, buds in enumerate(canes, start=1)]
    one = vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 900, *places))
    assert buds_kept(uncut(divide(one))) == total


@pytest.mark.parametrize(
    ("climb_mm", "trimmed_mm", "internode_mm", "leaves"),
    [
        # Own example, plain arithmetic: arm at 90 cm, trimmed at 215 cm, 8 cm between buds.
        (50, 2150, 80, 15),
        (600, 2150, 80, 8),  # short of the 14 leaves of the Lodi Winegrape Commission
        # AJEV table page 6034: shoots 130 cm long with internodes of 5.3 cm had 24.0 nodes.
        (60, 900 + 60 + 1300, 53, 24),
    ],
)
def test_leaf_room(climb_mm: int, trimmed_mm: int, internode_mm: int, leaves: int) -> None:
    # The foot of the cane stands where its first bud comes to the height of the row.
    foot_mm = climb_mm - internode_mm
    lean = Lean.UP if foot_mm >= 0 else Lean.DOWN
    wood = old("m", abs(foot_mm), lean=lean)
    one = one_position((wood, cane("a", 5, on="m", at_mm=abs(foot_mm), internode_mm=internode_mm)))
    tall = Vine(one.form, 55, 900, Trellis(900, (), 1800, trimmed_mm), one.arms)
    part = divide(tall).parts[-1]
    assert part.bud_height_mm(1) == climb_mm
    assert leaf_room(tall, part, 1) == leaves


def test_the_renewal_rule() -> None:
    # Oxford Companion to Wine, 2006: of two canes on a spur remove the upper, keep the lower.
    spur = (old("m", 60), cane("a", 9, on="m", at_mm=10), cane("b", 9, on="m", at_mm=60))
    as_published, upside_down = {"m": 1, "a": 2}, {"m": 1, "m above a": 1, "b": 2}
    vine_rules = ("no-renewal-bud", "doubled-spur", "old-stub", "spur-too-long", "climbed-too-far")
    said = {rule: piece_breaks(rule, spur, as_published) for rule in vine_rules}
    assert not any(said.values())
    assert piece_breaks("no-renewal-bud", spur, upside_down) == [("a", "low-cane-removed", 0)]


@pytest.mark.parametrize(
    ("thickness_mm", "status"),
    [
        (7, MEMORY),  # a wooden pencil is 7 to 8 mm thick
        (8, MEMORY),
        (8, f"{WESTOVER}: pencil-sized and up, from 5/16 in"),
        (12, f"{WESTOVER}: up to 1/2 in"),
    ],
)
def test_pencil_wood_is_neither_thin_nor_thick(thickness_mm: int, status: str) -> None:
    for rule in ("wood-too-thin", "wood-too-thick"):
        assert piece_breaks(rule, (cane("a", 8, thickness_mm),), {"a": 2}) == [], status


@pytest.mark.parametrize(
    ("band", "figure", "status"),
    [
        ("leaves to ripen a crop", 14, f"{LODI}: 14-20"),
        ("buds after the rough pass at least", 4, NO_SOURCE),
        ("buds after the rough pass at most", 5, NO_SOURCE),
        ("buds on a spur at most", 2, NO_SOURCE),
    ],
)
def test_a_default_is_the_figure_of_common_practice(band: str, figure: int, status: str) -> None:
    assert BAND[band].default == figure, status


@pytest.mark.parametrize("buds", [1, 2])  # spurs of one or two buds: common practice, no source
def test_a_usual_spur_is_not_too_long(buds: int) -> None:
    assert piece_breaks("spur-too-long", (cane("a", 8),), {"a": buds}) == []


def test_the_rough_pass_fits_the_height_of_a_first_pass() -> None:
    # University of California: first pass 10-12 in above last year's spurs.
    # Internodes of 6 cm at the short end of 6-8 cm: from memory.
    low, high = (inch * INCH // 60 for inch in (10, 12))
    assert (low, high) == (
        BAND["buds after the rough pass at least"].default,
        BAND["buds after the rough pass at most"].default,
    )


def test_a_hands_width_between_spurs_is_right_and_half_a_hand_is_crowded() -> None:
    # A hand's width: F. Westover, 2016. That a hand is about 10 cm wide: from memory.
    for gap, crowded in ((Fraction(100), False), (Fraction(50), True)):
        one = vine(ONE_ARM_RIGHT, even_arm(Side.RIGHT, 6, gap))
        broken = rules_broken(uncut(divide(one)), target_for(one, LIMITS))
        assert ("crowded-spurs" in broken) is crowded


@pytest.mark.parametrize("shoots", [15, 20])  # common practice, no source: far too many a foot
def test_a_foot_of_arm_with_15_to_20_shoots_is_far_too_many(shoots: int) -> None:
    places = [(60 * n, (cane("a", shoots // 5),)) for n in range(1, 6)]
    one = vine(ONE_ARM_RIGHT, arm(Side.RIGHT, round(FOOT), *places))
    left = uncut(divide(one))
    assert buds_kept(left) == shoots
    assert buds_kept(left) > 2 * over_the_sources(one).most
    assert "too-many-buds" in rules_broken(left, over_the_sources(one))
