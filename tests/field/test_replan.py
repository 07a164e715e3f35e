"""`pencilwood case replan`: an answer anew, by figures that the trainer changed."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from pencilwood.cases.entries import with_entries
from pencilwood.cases.report import Report
from pencilwood.cases.yaml_nodes import MapNode, parse_nodes
from pencilwood.site.case_files import case_slugs
from pencilwood.site.single import open_case
from workshop import PROJECT, Workshop, make_workshop

CASE = "spindly-and-diseased"
FIGURES = {
    # what the trainer writes: what no longer holds of the answer that came with the vine
    "spur spacing at least: 12 cm": "crowded-spurs",
    "buds per metre at least: 16": "too-few-buds",
    "buds per metre at most: 14": "too-many-buds",
}


@pytest.fixture
def changed(workshop: Workshop) -> Workshop:
    """A handbook whose one vine comes from elsewhere."""
    (workshop.root / "content" / "cases" / "tidy-vine.yml").unlink(missing_ok=True)
    make_workshop(workshop.root / "other", CASE)
    return Workshop(workshop.root / "other", workshop.capture, workshop.patch)


def set_figure(root: Path, figure: str) -> None:
    profile = root / "content" / "profile.yml"
    name = figure.split(":")[0]
    text, found = re.subn(f"(?m)^  {name}: .*$", f"  {figure}", profile.read_text("utf-8"))
    assert found == 1, name
    profile.write_text(text, "utf-8")


@pytest.mark.parametrize("figure", FIGURES)
def test_an_answer_suits_the_new_figures(changed: Workshop, figure: str) -> None:
    set_figure(changed.root, figure)
    before = changed.run("check")
    assert before.status == 1
    assert FIGURES[figure] in before.out
    assert f"pencilwood case replan {CASE}" in before.out
    ran = changed.run("case", "replan", CASE)
    assert ran.status == 0, ran.out
    assert changed.run("check").status == 0
    proof = open_case(changed.root, CASE, "en").proof
    assert {one.done.cut for one in proof.case.answer} == {one.done.cut for one in proof.plan.cuts}
    assert not [one for one in proof.findings if one.name != "reasons-not-your-own"]


def test_nothing_is_lost(changed: Workshop) -> None:
    file = changed.root / "content" / "cases" / f"{CASE}.yml"
    first = file.read_text("utf-8").replace("answer:\n", "# A note of mine.\nanswer:\n")
    file.write_text(first, "utf-8")
    set_figure(changed.root, "spur spacing at least: 12 cm")
    for kept in (f"{CASE}.yml.before", f"{CASE}.yml.before2"):
        wanted = file.read_text("utf-8")
        assert kept in changed.run("case", "replan", CASE).out
        assert file.with_name(kept).read_text("utf-8") == wanted
    again = file.read_text("utf-8")
    # Whatever the answer does not decide stands there letter by letter, notes as well.
    assert first[first.index("story:") : first.index("answer:")] in again
    assert first[first.index("safety:") :] in again
    assert case_slugs(changed.root) == (CASE,)


def test_cuts_that_stay_keep_their_reasons(changed: Workshop) -> None:
    was = {one.done.cut: one.why for one in open_case(changed.root, CASE, "en").proof.case.answer}
    set_figure(changed.root, "spur spacing at least: 12 cm")
    changed.run("case", "replan", CASE)
    now = {one.done.cut: one.why for one in open_case(changed.root, CASE, "en").proof.case.answer}
    stayed = was.keys() & now.keys()
    assert len(stayed) > len(now) / 2
    assert now.keys() - stayed, "one more spur must go where they stand further apart"
    for cut in stayed:
        assert now[cut] == was[cut]


@pytest.mark.parametrize("slug", case_slugs(PROJECT))
def test_every_kind_of_vine_is_answered(workshop: Workshop, slug: str) -> None:
    root = make_workshop(workshop.root / "other", slug)
    inside = Workshop(root, workshop.capture, workshop.patch)
    ran = inside.run("case", "replan", slug)
    proof = open_case(root, slug, "en").proof
    assert proof.case.vine == open_case(PROJECT, slug, "en").proof.case.vine
    # What is left to the trainer's own words, and what a chapter shows of this very answer.
    codes = {one.name for one in proof.findings if one.level == "error"}
    assert not codes & {"no-reason-given", "answer-fails", "answer-breaks-must"}, ran.out
    assert not codes & {"answer-far-from-plan", "far-from-plan-is-near", "reason-not-needed"}


TEXT = """\
case: one  # its name
teaches: [a]

# of the answer
answer:
  fine pass: [x]
  # inside it

# of safety
safety: [b]
"""
FINE, INSIDE = "answer:\n  fine pass: [x]\n  # inside it\n", "answer: y\n"
ENTRIES: dict[str, tuple[dict[str, list[str]], str, str]] = {
    "written anew": ({"answer": ["answer: y"]}, FINE, INSIDE),
    "taken out": ({"teaches": []}, "teaches: [a]\n", ""),
    "new, behind the one before": (
        {"answer": ["answer: y"], "exceptions": ["exceptions: z"]},
        FINE,
        f"{INSIDE}exceptions: z\n",
    ),
    "not there and nothing to say": ({"far": []}, "", ""),
    "the last of the file": ({"safety": ["safety: [c]"]}, "safety: [b]", "safety: [c]"),
}


@pytest.mark.parametrize("why", ENTRIES)
def test_other_lines_stay_as_they_were_typed(why: str) -> None:
    entries, old, new = ENTRIES[why]
    root = parse_nodes(TEXT, Report(), "a.yml")
    assert isinstance(root, MapNode)
    assert with_entries(TEXT, root, entries) == TEXT.replace(old, new, 1)
