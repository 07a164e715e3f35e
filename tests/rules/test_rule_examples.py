"""Every rule is shown kept and broken on a small vine, and says so itself."""

from __future__ import annotations

from pathlib import Path

import pytest

from pencilwood.cases.case import RuleExample
from pencilwood.cases.example_file import read_example
from pencilwood.rules import RULE_BY_NAME, RULES
from pencilwood.score.judge import Charge, judge, judge_cuts, target_for
from pencilwood.vine.wood import divide, uncut
from rule_bench import LIMITS

NAMES = tuple(rule.name for rule in RULES)

# A good vine may pay only where the rule it shows is a choice between two faults.
TRADE_OFFS = {"too-many-large-wounds": {"climbed-too-far"}}


@pytest.fixture(scope="session")
def examples_folder(project: Path) -> Path:
    return project / "content" / "rules"


def example_of(folder: Path, rule: str, kind: str) -> RuleExample:
    path = folder / rule / f"{kind}.yml"
    example, findings = read_example(path, rule, message_names=RULE_BY_NAME[rule].messages)
    assert example is not None, "\n".join(finding.render() for finding in findings)
    assert findings == []
    return example


def charges_of(example: RuleExample) -> tuple[Charge, ...]:
    parts = divide(example.vine)
    left = uncut(parts)
    for done in example.cuts:
        left = left.cut(done.cut)
    target = target_for(example.vine, LIMITS, example.target_buds)
    return (*judge(left, LIMITS, target), *judge_cuts(parts, example.cuts, LIMITS))


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
    assert {name for name, _ in example.breaks} == set(RULE_BY_NAME[rule].messages)


@pytest.mark.parametrize("rule", NAMES)
def test_both_vines_are_the_same_before_the_cuts(examples_folder: Path, rule: str) -> None:
    good, bad = (example_of(examples_folder, rule, kind) for kind in ("good", "bad"))
    assert good.vine == bad.vine
    assert good.cuts != bad.cuts
