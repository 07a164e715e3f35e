"""Bud load and spacing as somebody printed them, or by a printed rule, one example a row.

Each row names its source and how it is known: "printed" gives inputs and output, "derived" is
arithmetic on a printed rule, "worked back" comes from printed data. Authority: A is a journal
or a university, B the trade press or a consultant, C a hobby or commercial page.
"""

import pytest

from block_asking import ask
from pencilwood.block.errors import BlockError
from pencilwood.block.measures import UNITS

UGA = "University of Georgia, Home Garden Bunch Grapes (A): 30 to 60 buds; derived"
BALANCED = [
    # source, formula, prunings, buds, floor, cap
    ("98905.com, growing grapes (C), printed", "30+10", "4 lb", 60, "", ""),
    ("Auburn Citizen, 26 March 2021 (B), printed", "20+20", "1.5 lb", 30, "", ""),
    ("form of 30+10, Cornell Lake Erie (A), derived", "30+10", "1 lb", 30, "", ""),
    ("form of 30+10, Cornell Lake Erie (A), derived", "30+10", "2.5 lb", 45, "", ""),
    ("form of 30+10, Cornell Lake Erie (A), derived", "30+10", "3 lb", 50, "", ""),
    ("30+10 to a cap of 50, House of Vines 2016 (C), derived", "30+10", "4 lb", 50, "", "50"),
    ("60+10 Concord, Cornell Lake Erie (A), derived", "60+10", "2 lb", 70, "", ""),
    ("60+10 Concord, Cornell Lake Erie (A), derived", "60+10", "3.5 lb", 85, "", ""),
    ("20+10 Pinot noir, Vidon Vineyard 2017 (B), derived", "20+10", "1 lb", 20, "", ""),
    ("20+10 Pinot noir, Vidon Vineyard 2017 (B), derived", "20+10", "2 lb", 30, "", ""),
    ("20+10 Pinot noir, Vidon Vineyard 2017 (B), derived", "20+10", "2.5 lb", 35, "", ""),
    ("20+20, Auburn Citizen 2021 (B), derived", "20+20", "1 lb", 20, "", ""),
    ("20+20, Auburn Citizen 2021 (B), derived", "20+20", "2.5 lb", 50, "", ""),
    ("20+20, Auburn Citizen 2021 (B), derived", "20+20", "3 lb", 60, "", ""),
    (UGA, "20+20", "1 lb", 30, "30", "60"),
    (UGA, "20+20", "4 lb", 60, "30", "60"),
]


@pytest.mark.parametrize(("source", "formula", "prunings", "buds", "floor", "cap"), BALANCED)
def test_balanced_pruning(
    source: str, formula: str, prunings: str, buds: int, floor: str, cap: str
) -> None:
    texts = {"formula": formula, "prunings": prunings}
    texts |= {"fewest_buds": floor} if floor else {}
    texts |= {"most_buds": cap} if cap else {}
    assert ask("buds", **texts).main.likely == buds, source


def test_ten_for_every_pound_is_another_formula() -> None:
    """J. Finigan's page of 3 June 2009 (C) adds 10 buds for *every* pound: 2 lb give 40.

    The usual 20+10 adds them for every *further* pound, and must not give that number.
    """
    assert ask("buds", formula="20+10", prunings="2 lb").main.likely == 30


BY_WEIGHT = [
    ("Lider and others, AJEV 26, 1975 (A): 15 for each kg; derived", "15 /kg", "1.4 kg", 21),
    ("Lider and others, AJEV 26, 1975 (A): 15 for each kg; derived", "15 /kg", "6.8 kg", 102),
    # 8 buds for each 454 g, which is how AJEV writes a pound.
    ("Seyval, AJEV 48:482, 1997 (A): 8 for each 454 g; derived", "8 /lb", "1362 g", 24),
]


@pytest.mark.parametrize(("source", "rate", "prunings", "buds"), BY_WEIGHT)
def test_buds_by_weight(source: str, rate: str, prunings: str, buds: int) -> None:
    answer = ask("buds-by-weight", prunings=prunings, buds_for_weight=rate)
    assert float(answer.main.likely) == pytest.approx(buds, abs=0.03), source


WINTER = [
    # source, rule, dead, buds to leave from 40, of these alive
    ("Cornell, northern New York 2014 (A), printed: 35 % more", "cornell", "35 %", 54, 35.1),
    ("Cornell, northern New York 2014 (A), derived: no change", "cornell", "19 %", 40, 32.4),
    ("Purdue (A), derived: prune as usual", "purdue", "10 %", 40, 36),
    ("Purdue (A), derived: 35 % more", "purdue", "30 %", 54, 37.8),
    ("Purdue (A), derived: half as many more", "purdue", "45 %", 60, 33),
    ("full replacement, arithmetic: 61.5, in whole buds", "full", "35 %", 62, 40.3),
    ("full replacement, arithmetic", "full", "50 %", 80, 40),
]


@pytest.mark.parametrize(("source", "rule", "dead", "buds", "alive"), WINTER)
def test_winter_survey(source: str, rule: str, dead: str, buds: float, alive: float) -> None:
    answer = ask("winter", buds_wanted="40", dead_buds=dead, winter_rule=rule)
    assert float(answer.main.likely) == pytest.approx(buds, abs=0.05), source
    assert float(answer.figure("living-buds").likely) == pytest.approx(alive, abs=0.05), source


def test_purdue_gives_no_number_above_half() -> None:
    """Purdue (A), derived: at 55 % "minimal pruning", which is no number."""
    with pytest.raises(BlockError, match="prune-little"):
        ask("winter", buds_wanted="40", dead_buds="55 %", winter_rule="purdue")


SPACINGS = [
    # spacing of two-bud spurs -> buds on a foot and on a metre of arm; derived
    ("3 in", 8.0, 26.2),
    ("4 in", 6.0, 19.7),
    ("6 in", 4.0, 13.1),
    ("8 in", 3.0, 9.8),
]


@pytest.mark.parametrize(("spacing", "on_foot", "on_metre"), SPACINGS)
def test_spacing_and_density(spacing: str, on_foot: float, on_metre: float) -> None:
    answer = ask("room", arms="1", arm_length="4 ft", spur_spacing=spacing, buds_per_spur="2")
    density = answer.figure("density").likely
    assert float(density / UNITS["number on length"]["/ft"]) == pytest.approx(on_foot, abs=0.05)
    assert float(density / UNITS["number on length"]["/m"]) == pytest.approx(on_metre, abs=0.05)


def test_five_inches_leave_a_rest() -> None:
    """5 in give 4.8 buds on a foot (derived) where whole spurs fill the arm, as on 5 ft."""
    answer = ask("room", arms="1", arm_length="5 ft", spur_spacing="5 in", buds_per_spur="2")
    on_foot = answer.figure("density").likely / UNITS["number on length"]["/ft"]
    assert float(on_foot) == pytest.approx(4.8)


def test_a_cap_of_fifty_on_ten_feet() -> None:
    """House of Vines, 2016 (C), printed: a cap of 50 buds on 10 ft gives 5 on a foot."""
    answer = ask("room", arms="1", arm_length="10 ft", spur_spacing="4.8 in", buds_per_spur="2")
    assert answer.main.likely == 50
    assert answer.figure("density").likely == 5 * UNITS["number on length"]["/ft"]


def test_shoots_and_length_of_canopy() -> None:
    """American Vineyard Foundation (A/B), worked back: 14 shoots stand at 10 on a metre of 1.4 m.

    40 shoots on the same vine are then far too many.
    """
    answer = ask(
        "thinning", buds="40", shoots_per_bud="1", canopy_length="1.4 m", target_shoots="10 /m"
    )
    assert answer.figure("target-shoots").likely == 14
    assert answer.main.likely == 26


def test_two_four_foot_arms() -> None:
    """N. Sperry (B): spurs 4-6 in apart on two 4-ft arms; he prints 15-20 of two buds.

    The arithmetic gives 16 at 6 in; 4 in would give 24, more than he keeps.
    """
    answer = ask("room", arms="2", arm_length="4 ft", spur_spacing="5 to 6 in", buds_per_spur="2")
    spurs = answer.figure("spurs")
    assert 15 <= spurs.low <= spurs.high <= 20
    assert 30 <= answer.main.low <= answer.main.high <= 40
    on_foot = answer.figure("density").likely / UNITS["number on length"]["/ft"]
    assert 3.75 <= on_foot <= 5
