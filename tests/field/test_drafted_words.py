"""A drafted case: what is said of its target, and of reasons that nobody has made their own."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from pencilwood.cases.case_writer import UsualTarget
from pencilwood.findings import Finding
from pencilwood.proof import CaseProof, prove_case
from pencilwood.proof.reached import answer_words
from pencilwood.site.case_files import case_slugs
from pencilwood.site.handbook import read_one_case
from pencilwood.vine.measures import buds_kept
from workshop import PROJECT, Ran, Workshop

UNTOUCHED = "reasons-not-your-own"
TARGET = re.compile(r"^# (target: \{buds: (\d+) to (\d+)\})$", re.MULTILINE)


def drafted(workshop: Workshop, *more: str) -> tuple[Ran, Path]:
    sheet = workshop.root / "Row 7.csv"
    assert workshop.run("case", "to-csv", "tidy-vine", "-o", str(sheet)).status == 0
    ran = workshop.run("case", "from-csv", str(sheet), *more)
    assert ran.status == 0, ran.out
    return ran, workshop.root / "content" / "cases" / "row-7.yml"


def ask_for(workshop: Workshop, least: int, most: int) -> None:
    profile = workshop.root / "content" / "profile.yml"
    text = profile.read_text("utf-8")
    text = re.sub("(buds per metre at least): .*", rf"\1: {least}", text)
    profile.write_text(re.sub("(buds per metre at most): .*", rf"\1: {most}", text), "utf-8")


def proof_of(workshop: Workshop, language: str = "en") -> CaseProof:
    profile, case, findings = read_one_case(workshop.root, "row-7", language)
    assert findings == ()
    assert profile is not None
    assert case is not None
    return prove_case(case, profile, language)


def untouched(workshop: Workshop, language: str = "en") -> list[Finding]:
    return [one for one in proof_of(workshop, language).findings if one.name == UNTOUCHED]


@pytest.mark.parametrize(
    ("language", "said"), [("en", "the program's words"), ("es", "palabras del programa")]
)
def test_reasons_of_the_program_are_warned_of_once_with_their_lines(
    workshop: Workshop, language: str, said: str
) -> None:
    _, file = drafted(workshop)
    (one,) = untouched(workshop, language)
    assert one.level == "warning"
    assert said in one.what
    assert '"why:"' in one.expected
    lines = file.read_text("utf-8").splitlines()
    named = [int(line) for line in re.findall(r"\d+", one.found)]
    assert one.place.line == named[0]
    rows = [number for number, line in enumerate(lines, 1) if line.startswith("    - cut:")]
    # Of a list of wood below its "cut:", the line where the list begins.
    assert [line - row in (0, 1) for line, row in zip(named, rows, strict=True)] == [True] * 3


def test_own_words_in_each_language_end_the_warning(workshop: Workshop) -> None:
    _, file = drafted(workshop)
    text = file.read_text("utf-8")
    before, answer = text.split("\nanswer:\n")
    in_english = re.sub(r'(why:\n\s+en: )".*"', r'\1"We say it so in the row."', answer)
    file.write_text(f"{before}\nanswer:\n{in_english}", "utf-8")
    assert untouched(workshop), "the Spanish words are still the program's"
    in_both = re.sub(r'(\n\s+es: )".*"', r'\1"Así lo decimos en la hilera."', in_english)
    file.write_text(f"{before}\nanswer:\n{in_both}", "utf-8")
    assert untouched(workshop) == []


@pytest.mark.parametrize("slug", case_slugs(PROJECT))
def test_what_the_demo_says_is_its_own(slug: str) -> None:
    profile, case, _ = read_one_case(PROJECT, slug)
    assert profile is not None
    assert case is not None
    assert UNTOUCHED not in [one.name for one in prove_case(case, profile).findings]


def test_a_target_that_is_met_stands_in_the_file_as_a_line_to_take(workshop: Workshop) -> None:
    ran, file = drafted(workshop)
    target = proof_of(workshop).target
    found = TARGET.search(file.read_text("utf-8"))
    assert found
    assert (int(found[2]), int(found[3])) == (target.least, target.most)
    assert "does not meet its target" not in ran.out


def test_a_target_beyond_the_vine_is_said_with_the_line_that_puts_it_right(
    workshop: Workshop,
) -> None:
    ask_for(workshop, 14, 18)
    ran, file = drafted(workshop)
    proof = proof_of(workshop)
    kept = buds_kept(proof.plan.left)
    assert not proof.target.least <= kept <= proof.target.most
    found = TARGET.search(file.read_text("utf-8"))
    assert found
    assert int(found[2]) <= kept <= int(found[3])
    assert f"its best pruning keeps {kept}, on 11 places" in ran.out
    assert found[1] in ran.out
    # The line, taken as it says, is a target that the vine meets.
    text = file.read_text("utf-8").replace(found[0], found[1])
    bent = re.compile(r"  - rule: too-(few|many)-buds\n    why:\n.*\n.*\n")
    file.write_text(bent.sub("", text).replace("exceptions:\n#", "#"), "utf-8")
    after = proof_of(workshop)
    assert after.target.least <= buds_kept(after.plan.left) <= after.target.most
    assert answer_words(after, "en").count(".") == 2


@pytest.mark.parametrize(
    ("kept", "met"), [(14, (14, 24)), (16, (16, 24)), (24, (16, 24)), (30, (16, 30))]
)
def test_the_nearest_target_that_is_met(kept: int, met: tuple[int, int]) -> None:
    usual = UsualTarget(16, 24, kept)
    assert usual.met == met
    assert usual.is_met is (met == (16, 24))


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("en", "It keeps {} buds, and {} to {} are asked for. The best plan keeps {}"),
        ("es", "Deja {} yemas, y se piden de {} a {}. El mejor plan deja {}"),
    ],
)
def test_an_answer_beside_its_target_says_so_beside_its_score(
    workshop: Workshop, language: str, said: str
) -> None:
    ask_for(workshop, 14, 18)
    drafted(workshop)
    proof = proof_of(workshop)
    kept = buds_kept(proof.answer_left)
    told = answer_words(proof, language)
    assert " 100 " in told
    assert said.format(kept, proof.target.least, proof.target.most, kept) in told


def test_no_demo_answer_says_the_target_is_met_where_it_is_not() -> None:
    for slug in case_slugs(PROJECT):
        profile, case, _ = read_one_case(PROJECT, slug)
        assert profile is not None
        assert case is not None
        proof = CaseProof(case, profile, ())
        met = proof.target.least <= buds_kept(proof.answer_left) <= proof.target.most
        assert ("are asked for" in answer_words(proof, "en")) is not met, slug


@pytest.mark.parametrize(
    ("name", "title"),
    [("River row 12 vine 4.csv", "River row 12 vine 4"), ("12.csv", "12"), ("R3.csv", "R3")],
)
def test_rows_and_vines_keep_their_numbers_in_titles(
    workshop: Workshop, name: str, title: str
) -> None:
    sheet = workshop.root / name
    assert workshop.run("case", "to-csv", "tidy-vine", "-o", str(sheet)).status == 0
    ran = workshop.run("case", "from-csv", str(sheet))
    assert ran.status == 0, ran.out
    assert "number-typed-by-hand" not in ran.out
    slug = title.lower().replace(" ", "-")
    _, case, findings = read_one_case(workshop.root, slug)
    assert findings == ()
    assert case is not None
    assert case.title == {"en": title, "es": title}
