"""Reads the good and the bad vine of each rule: a handbook's own, or the package's."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from pathlib import Path

from pencilwood.cases.case import Profile, RuleExample
from pencilwood.cases.example_file import read_example
from pencilwood.cases.report import quoted
from pencilwood.places import Place
from pencilwood.proof import prove_example
from pencilwood.rules import RULE_BY_NAME, RULES
from pencilwood.rules.shapes import Rule
from pencilwood.rules.wrong_tool import tool_for
from pencilwood.site.hints import Notes
from pencilwood.site.shared import shared_file, shown_as_ours

RULE_EXAMPLES = "content/rules"
KINDS = ("good", "bad")


def read_examples(
    root: Path, profile: Profile, notes: Notes
) -> Mapping[str, Mapping[str, RuleExample]]:
    """Rule -> "good" and "bad", as far as they could be read and fit this vineyard."""
    _check_folders(root, notes)
    found: dict[str, dict[str, RuleExample]] = {}
    for rule in RULES:
        for kind in KINDS:
            example = _example(root, rule, kind, profile, notes)
            if example is not None:
                found.setdefault(rule.name, {})[kind] = example
    return found


def _example(
    root: Path, rule: Rule, kind: str, profile: Profile, notes: Notes
) -> RuleExample | None:
    name = f"{RULE_EXAMPLES}/{rule.name}/{kind}.yml"
    if (root / name).is_file():
        example = _read(root / name, name, rule, profile, notes)
        if example is not None:
            notes.findings.extend(prove_example(example, profile, notes.language))
        return example
    ours = shared_file(root, name)
    if ours is None:
        notes.add(Place(name), "missing-example", rule=rule.name, kind=kind)
        return None
    example = _read(ours, shown_as_ours(name), rule, profile, notes)
    if example is None or not prove_example(example, profile):
        return example
    # The trainer's figures come first: a vine that says otherwise is not shown. Nothing is said of
    # it, because it stands in no file of theirs and figures of their own are no slip.
    return None


def _read(path: Path, shown: str, rule: Rule, profile: Profile, notes: Notes) -> RuleExample | None:
    example, findings = read_example(
        path,
        rule.name,
        shown,
        languages=profile.languages,
        message_names=list(rule.messages),
        language=notes.language,
        units=profile.units,
        tool_for=partial(tool_for, limits=profile.limits),
    )
    notes.findings.extend(findings)
    return example


def _check_folders(root: Path, notes: Notes) -> None:
    for path in sorted((root / RULE_EXAMPLES).glob("*")):
        if path.is_dir() and path.name not in RULE_BY_NAME and not path.name.startswith("."):
            hint = notes.hint(path.name, RULE_BY_NAME)
            place = Place(path.relative_to(root).as_posix())
            notes.add(place, "unknown-rule-folder", hint=hint, found=quoted(path.name))
