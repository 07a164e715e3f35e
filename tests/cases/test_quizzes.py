"""Quizzes: what they hold, and what is said of their slips."""

from pathlib import Path
from typing import get_args

import pytest

from case_files import LANGUAGES, lines, sample, with_slip
from pencilwood.cases.quiz import (
    BlockSum,
    Choose,
    Common,
    Count,
    CountIt,
    Deed,
    Find,
    NamePart,
    Prune,
    PutInOrder,
    Quiz,
    QuizQuestion,
    SafeOrStop,
    Seen,
    WhichCane,
)
from pencilwood.cases.quiz_file import KnownNames, read_quiz
from pencilwood.findings import Finding
from pencilwood.places import Place

KNOWN = KnownNames(
    cases=("tidy-vine", "hard-vine"),
    rules=("diseased-wood", "spur-too-long"),
    chapters=("reading-wood", "tools"),
)


def quiz(
    text: str, folder: Path, name: str = "all-kinds", language: str = "en"
) -> tuple[Quiz | None, list[Finding]]:
    path = folder / f"{name}.yml"
    path.write_text(text, encoding="utf-8")
    return read_quiz(path, LANGUAGES, KNOWN, "quiz.yml", language=language)


def test_the_sample_asks_in_every_way(tmp_path: Path) -> None:
    read, _ = quiz(sample("all-kinds.yml"), tmp_path)
    assert read is not None
    assert {type(one) for one in read.questions} == set(get_args(QuizQuestion))


def test_a_quiz_of_vines(tmp_path: Path) -> None:
    read, findings = quiz(sample("first-day.yml"), tmp_path, "first-day")
    assert lines(findings) == []
    assert read == Quiz(
        slug="first-day",
        title={"en": "First day", "es": "Primer día"},
        intro={"en": "Prune both vines.", "es": "Pode las dos cepas."},
        questions=(
            Prune(Common("tidy-vine", Place("quiz.yml", 6, 5))),
            Prune(Common("hard-vine", Place("quiz.yml", 7, 5))),
        ),
        passes_needed=1,
        place=Place("quiz.yml", 2, 1),
    )
    assert read.vines == ("tidy-vine", "hard-vine")


def test_the_place_of_a_quiz_in_their_list(tmp_path: Path) -> None:
    placed = sample("first-day.yml").replace("questions:", "order: 20\nquestions:", 1)
    read, findings = quiz(placed, tmp_path, "first-day")
    assert lines(findings) == []
    assert read is not None
    assert read.order == 20


def test_a_quiz_of_every_kind(tmp_path: Path) -> None:
    read, findings = quiz(sample("all-kinds.yml"), tmp_path)
    assert lines(findings) == []
    assert read is not None
    prune, choose, cane, part, count, order, safe, block = read.questions
    assert isinstance(prune, Prune)
    assert isinstance(choose, Choose)
    assert choose.seen == Seen("tidy-vine", choose.seen.place, "answer", "L1") if choose.seen else 0
    assert [one.say["en"] for one in choose.wrong] == ["The dead one", "The split one"]
    assert (choose.common.rules, choose.common.chapter) == (("diseased-wood",), "reading-wood")
    assert isinstance(cane, WhichCane)
    assert (cane.seen.vine, cane.seen.at) == ("tidy-vine", "L1")
    assert isinstance(part, NamePart)
    assert (part.find, part.seen.at) == (Find.ARM, None)
    assert isinstance(count, CountIt)
    assert count.count is Count.BUDS_OF_CANE
    assert isinstance(order, PutInOrder)
    assert [one.say["es"] for one in order.steps] == ["Mirar", "Acortar", "Elegir", "Terminar"]
    assert isinstance(safe, SafeOrStop)
    assert (safe.right, set(safe.whys)) == (Deed.PUT_RIGHT, set(Deed))
    assert isinstance(block, BlockSum)
    assert block.given == {"row spacing": "2 m", "vine spacing": "1 m"}
    assert [one.given for one in block.wrong] == [{"row spacing": "4 m"}, {"vine spacing": "2 m"}]
    assert (read.tries, read.passes_needed) == (2, 5)
    assert read.must_know == (safe,)
    assert safe not in read.scored


SLIPS = [
    pytest.param(
        "prune: tidy-vine",
        "prune: tidy-wine",
        '7:5: there is no case "tidy-wine"; did you mean "tidy-vine"? (unknown-case)',
        id="a case that is not there",
    ),
    pytest.param(
        "{vine: tidy-vine, show: answer, at: L1}",
        "{vine: tidi-vine, show: answer, at: L1}",
        '10:15: there is no case "tidi-vine"; did you mean "tidy-vine"? (unknown-case)',
        id="a drawing of a case that is not there",
    ),
    pytest.param(
        "rules: [diseased-wood]",
        "rules: [deseased-wood]",
        '19:13: there is no rule "deseased-wood"; did you mean "diseased-wood"? (unknown-rule)',
        id="a rule that is not there",
    ),
    pytest.param(
        "chapter: reading-wood",
        "chapter: reading-woods",
        '20:5: there is no chapter "reading-woods"; did you mean "reading-wood"? (unknown-chapter)',
        id="a chapter that is not there",
    ),
    pytest.param(
        "part: find-an-arm",
        "part: low-or-high",
        '24:5: "low-or-high" is named twice; expected it once; the first stands on line 21 '
        "(named-twice)",
        id="the same name again",
    ),
    pytest.param(
        "find: arm",
        "find: leg",
        '26:11: "find" cannot be "leg"; expected one of trunk, head, arm, old wood, '
        "last year's spur, cane, diseased wood, dead wood, injured wood, spindly cane, "
        "bull cane, wood below the arm, cane on the head, upright cane, inward cane, "
        "last year's fruiting cane, lowest cane (not-a-choice)",
        id="something that cannot be found",
    ),
    pytest.param(
        "what: buds of a cane",
        "what: buds of the cane",
        '30:11: "what" cannot be "buds of the cane"; did you mean "buds of a cane"? (not-a-choice)',
        id="something that cannot be counted",
    ),
    pytest.param(
        "    right: put it right",
        "    right: do it right",
        '44:12: "right" cannot be "do it right"; did you mean "put it right"? (not-a-choice)',
        id="something that cannot be done",
    ),
    pytest.param(
        "      stop and tell: {en: Do it yourself., es: Hágalo usted.}\n",
        "",
        '46:7: "stop and tell" is missing (missing-key)',
        id="a deed without its reason",
    ),
    pytest.param(
        "      - say: {en: The split one, es: El rajado}\n"
        "        why: {en: It dries out., es: Se seca.}\n",
        "",
        '15:7: "wrong" has too few or too many parts; expected 2 to 4; found 1 (wrong-count)',
        id="too few wrong choices",
    ),
    pytest.param(
        "        why: {en: It is empty., es: Está vacío.}\n",
        "",
        '15:9: "why" is missing (missing-key)',
        id="a wrong choice without its reason",
    ),
    pytest.param(
        "say: {en: The dead one, es: El seco}",
        "say: {en: The dead one}",
        '15:14: "say" has no text in one language; expected a line that begins with "es:" '
        "(missing-language)",
        id="a choice in one language only",
    ),
    pytest.param(
        "      - say: {en: Finish, es: Terminar}\n        why: {en: At the end., es: Al final.}\n",
        "",
        '34:7: "steps" has too few or too many parts; expected 4 to 8; found 3 (wrong-count)',
        id="steps that chance puts in order too often",
    ),
    pytest.param(
        "given: {row spacing: 2 m, vine spacing: 1 m}",
        "given: 2 m",
        '53:12: "given" must name its figures; expected lines such as prunings: 2.5 lb; '
        'found "2 m" (not-pairs)',
        id="figures without names",
    ),
    pytest.param(
        "  - part: find-an-arm\n",
        "  - part: find-an-arm\n    cane: find-a-cane\n",
        "24:5: a question must be of one kind; "
        'expected one of "prune" / "choose" / "cane" / "part" / "count" / "order" / '
        '"safe or stop" / "sum"; found part, cane, vine, find (which-question)',
        id="a question of two kinds",
    ),
    pytest.param(
        "must know: true",
        "must know: perhaps",
        '49:16: "must know" cannot be "perhaps"; expected one of true, false (not-a-choice)',
        id="neither must-know nor not",
    ),
    pytest.param(
        "passes needed: 5",
        "passes needed: 8",
        "59:1: more right answers are needed than the quiz has scored questions; "
        "expected at most 7; found 8 (more-passes-than-questions)",
        id="more than can be right",
    ),
    pytest.param(
        "quiz: all-kinds",
        "quiz: all-sorts",
        '2:1: the short name differs from the name of the file; expected "all-kinds"; '
        'found "all-sorts" (not-the-file-name)',
        id="another name than the file's",
    ),
    pytest.param(
        "tries: 2",
        "tries: 9",
        '5:8: "tries" is not a number that fits; expected a whole number from 1 to 5; found "9" '
        "(not-such-a-number)",
        id="more tries than anybody needs",
    ),
]


@pytest.mark.parametrize(("old", "new", "said"), SLIPS)
def test_slips_of_a_quiz(tmp_path: Path, old: str, new: str, said: str) -> None:
    read, findings = quiz(with_slip(old, new, "all-kinds.yml"), tmp_path)
    assert read is None
    assert lines(findings) == [f"quiz.yml:{said}"]


@pytest.mark.parametrize(("old", "new", "said"), SLIPS)
def test_slips_are_told_in_spanish(tmp_path: Path, old: str, new: str, said: str) -> None:
    _, findings = quiz(with_slip(old, new, "all-kinds.yml"), tmp_path, language="es")
    [only] = findings
    assert only.what
    assert f":{only.place.line}:" in f":{said.split(':')[0]}:"
    assert "expected" not in only.render()
