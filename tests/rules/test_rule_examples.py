"""Every rule is shown kept and broken on a small vine, and says so itself."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from case_files import usual_tool
from pencilwood.cases.case import Profile, RuleExample
from pencilwood.cases.example_file import read_example
from pencilwood.places import Place
from pencilwood.proof import prove_example
from pencilwood.proof.example_proof import charges_of_example
from pencilwood.rules import FORM_BANDS, RULE_BY_NAME, RULES
from pencilwood.score.judge import Charge
from pencilwood.vine.bands import default_limits
from rule_bench import LIMITS

PROFILE = Profile(
    "Larkfell",
    ("en", "es"),
    "metric",
    LIMITS,
    80,
    Place("profile.yml"),
    form_limits={
        form: {**LIMITS, **default_limits(own)} for form, own in FORM_BANDS.items() if own
    },
)
NAMES = tuple(rule.name for rule in RULES)

# One vine has too many or too few, and a vine with room on one side alone has one cane.
NEVER_ALL_AT_ONCE = {"cane-not-tied", "wrong-cane-count", "wrong-spur-count"}

# A good vine may pay only where the rule it shows is a choice between two faults.
TRADE_OFFS = {"too-many-large-wounds": {"climbed-too-far"}}


@pytest.fixture(scope="session")
def examples_folder(project: Path) -> Path:
    return project / "content" / "rules"


def example_of(folder: Path, rule: str, kind: str) -> RuleExample:
    path = folder / rule / f"{kind}.yml"
    example, findings = read_example(
        path, rule, message_names=RULE_BY_NAME[rule].messages, tool_for=usual_tool
    )
    assert example is not None, "\n".join(finding.render() for finding in findings)
    assert findings == []
    return example


def charges_of(example: RuleExample) -> tuple[Charge, ...]:
    return charges_of_example(example, PROFILE)


def test_every_rule_has_its_folder_and_no_folder_is_left_over(examples_folder: Path) -> None:
    folders = {path.name for path in examples_folder.iterdir() if path.is_dir()}
    assert folders == set(NAMES)


@pytest.mark.parametrize("rule", NAMES)
def test_the_good_vine_is_silent(examples_folder: Path, rule: str) -> None:
    example = example_of(examples_folder, rule, "good")
    assert [charge for charge in charges_of(example) if charge.rule == rule] == []


@pytest.mark.parametrize("rule", NAMES)
def test_the_good_vine_breaks_no_other_rule(examples_folder: Path, rule: str) -> None:
    charges = charges_of(example_of(examples_folder, rule, "good"))
    assert {charge.rule for charge in charges} == TRADE_OFFS.get(rule, set())
    assert not any(charge.must for charge in charges)


@pytest.mark.parametrize("rule", NAMES)
def test_the_bad_vine_breaks_the_rule_as_it_says(examples_folder: Path, rule: str) -> None:
    example = example_of(examples_folder, rule, "bad")
    said = [charge.message for charge in charges_of(example) if charge.rule == rule]
    assert said == [name for name, _ in example.breaks]


@pytest.mark.parametrize("rule", NAMES)
def test_the_bad_vine_shows_every_message_of_the_rule(examples_folder: Path, rule: str) -> None:
    example = example_of(examples_folder, rule, "bad")
    said, messages = {name for name, _ in example.breaks}, set(RULE_BY_NAME[rule].messages)
    assert said == messages or (rule in NEVER_ALL_AT_ONCE and said < messages)


@pytest.mark.parametrize("rule", NAMES)
def test_both_vines_are_the_same_before_the_cuts(examples_folder: Path, rule: str) -> None:
    good, bad = (example_of(examples_folder, rule, kind) for kind in ("good", "bad"))
    assert good.vine == bad.vine
    assert good.cuts != bad.cuts


def test_check_warns_when_a_band_makes_an_example_say_something_else(
    examples_folder: Path,
) -> None:
    bad = example_of(examples_folder, "crowded-spurs", "bad")
    assert prove_example(bad, PROFILE) == ()
    wide = replace(PROFILE, limits={**LIMITS, "spur spacing at least": 1})
    (finding,) = prove_example(bad, wide)
    assert (finding.name, finding.level) == ("bad-vine-says-otherwise", "warning")
    assert finding.place == bad.breaks[0][1]
    good = example_of(examples_folder, "crowded-spurs", "good")
    tight = replace(PROFILE, limits={**LIMITS, "spur spacing at least": 2000})
    (finding,) = prove_example(good, tight)
    assert finding.name == "good-vine-says-otherwise"
