"""Buds for each metre or each foot of arm: held, read and shown without a rounding between."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from case_files import lines
from pencilwood.cases.case import Profile
from pencilwood.cases.profile_file import read_profile
from pencilwood.rules import BANDS
from pencilwood.score.judge import target_for
from pencilwood.units import PER_FOOT, PER_METRE, format_density
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Side
from vines import arm, cane, vine

SIDES = (Side.LEFT, Side.RIGHT)
FOOT = Fraction(3048, 10000)
"""A foot in metres, exactly."""
LEAST, MOST = "buds per metre at least", "buds per metre at most"


def profile_with(folder: Path, *figures: str) -> tuple[Profile | None, list[str]]:
    bands = "".join(f"  {one}\n" for one in figures)
    text = f"vineyard: Quail\nlanguages: [en]\nunits: us\npass mark: 80\nbands:\n{bands}"
    (folder / "profile.yml").write_text(text, encoding="utf-8")
    profile, findings = read_profile(folder / "profile.yml", BANDS, "profile.yml")
    return profile, lines(findings)


def test_a_foot_is_0_3048_of_a_metre() -> None:
    assert Fraction(PER_METRE, PER_FOOT) == FOOT


@pytest.mark.parametrize(
    ("on_metre", "on_foot"), [(1, "0.3"), (10, "3"), (12, "3.7"), (16, "4.9"), (18, "5.5")]
)
def test_buds_on_a_metre_are_shown_for_each_foot(on_metre: int, on_foot: str) -> None:
    assert format_density(on_metre * PER_METRE, "metric", "en") == str(on_metre)
    assert format_density(on_metre * PER_METRE, "us", "en") == on_foot
    assert abs(on_metre * FOOT - Fraction(on_foot)) <= Fraction(1, 20)


def test_a_decimal_follows_the_language() -> None:
    assert format_density(12 * PER_METRE, "us", "es") == "3,7"


@pytest.mark.parametrize(("typed", "on_foot"), [("4", 4), ("4.5", Fraction(9, 2)), ("5,5", 5.5)])
def test_a_profile_goes_by_the_foot_exactly(
    tmp_path: Path, typed: str, on_foot: Fraction | float
) -> None:
    profile, told = profile_with(tmp_path, f"buds per foot at least: {typed}")
    assert told == []
    assert profile is not None
    assert Fraction(profile.limits[LEAST], PER_METRE) == Fraction(on_foot) / FOOT


def test_the_target_of_a_vine_follows_from_buds_on_a_foot(tmp_path: Path) -> None:
    profile, told = profile_with(tmp_path, "buds per foot at least: 3", "buds per foot at most: 5")
    assert told == []
    assert profile is not None
    # Arms of 4 ft and 4 ft, to the millimetre: three to five on each foot are 24 to 40.
    eight_feet = vine(TWO_ARM_CORDON, *(arm(side, 1219, (300, (cane("a", 5),))) for side in SIDES))
    target = target_for(eight_feet, profile.limits)
    assert (target.least, target.most) == (24, 39)  # a millimetre short of 40
    longer = vine(TWO_ARM_CORDON, *(arm(side, 1220, (300, (cane("a", 5),))) for side in SIDES))
    assert target_for(longer, profile.limits).most == 40


def test_a_range_by_the_foot_is_in_whole_buds_as_published(tmp_path: Path) -> None:
    _, told = profile_with(tmp_path, "buds per foot at least: 3", "buds per foot at most: 6")
    assert told == []
    _, told = profile_with(tmp_path, "buds per foot at most: 7.5")
    assert len(told) == 1
    assert "buds per foot at most" in told[0]
    assert "usual: 3 to 6 " in told[0]
    assert "found 7.5" in told[0]


def test_by_the_metre_and_by_the_foot_is_one_too_many(tmp_path: Path) -> None:
    profile, told = profile_with(tmp_path, "buds per metre at most: 15", "buds per foot at most: 5")
    assert profile is None
    assert told == [
        'profile.yml:7:3: "buds per metre at most" is named twice; expected it once; '
        "the first stands on line 6 (named-twice)"
    ]


@pytest.mark.parametrize("typed", ["4 buds", "4.55", "-4", "4 ft", "four"])
def test_what_is_no_such_number_is_told(tmp_path: Path, typed: str) -> None:
    profile, told = profile_with(tmp_path, f"buds per foot at least: {typed}")
    assert profile is None
    assert "such as 4 or 4.5" in told[0]


def test_a_misspelt_figure_by_the_foot_is_guessed(tmp_path: Path) -> None:
    _, told = profile_with(tmp_path, "buds per fot at least: 4")
    assert 'did you mean "buds per foot at least"?' in told[0]
