"""How single questions are worked out, and why some cannot be."""

from dataclasses import replace

import pytest

from pencilwood.cases.quiz import (
    BlockSum,
    Choose,
    Count,
    CountIt,
    Find,
    NamePart,
    Prune,
    QuizQuestion,
    WhichCane,
    WrongSum,
)
from pencilwood.quiz.compiled import version_of
from pencilwood.quiz.made import Choices, MadeQuiz, Tapping
from pencilwood.quiz.quiz_proof import prove_quiz
from pencilwood.score.judge import judge, lost
from pencilwood.vine import measures
from pencilwood.vine.wood import WoodLeft
from quiz_demo import Demo
from quiz_questions import (
    HERE,
    common,
    made,
    made_one,
    refused,
    right_text,
    said,
    seen,
    texts,
)


def test_buds_left_are_those_of_the_answer(demo: Demo) -> None:
    vine = demo.vines["tidy-vine"]
    question = made_one(demo, CountIt(common(), seen("tidy-vine"), Count.BUDS_LEFT))
    buds = measures.buds_kept(vine.answer_left)
    spurs = len(measures.spurs(vine.answer_left))
    assert right_text(question) == f"{buds} buds"
    assert {f"{buds + spurs} buds", f"{spurs} buds"} <= texts(question)
    assert question.picture is not None
    assert question.picture.shown == "answer"


def test_each_mistake_is_named(demo: Demo) -> None:
    question = made_one(demo, CountIt(common(), seen("tidy-vine", "L1a"), Count.BUDS_OF_CANE))
    body = question.body
    assert isinstance(body, Choices)
    buds = demo.vines["tidy-vine"].parts.parts[1].piece.buds
    whys = {option.text: option.why for option in body.options}
    assert "basal bud" in whys[f"{buds + 1} buds"]
    assert "uppermost" in whys[f"{buds - 1} buds"]


def test_leaf_room_goes_by_the_measured_vine(demo: Demo) -> None:
    vine = demo.vines["climbing-spurs"]
    part = vine.parts.parts[vine.parts.index["R3b"]]
    question = made_one(demo, CountIt(common(), seen("climbing-spurs", "R3b"), Count.LEAF_ROOM))
    room = measures.leaf_room(vine.parts.vine, part, 1)
    assert right_text(question) == f"{room} leaves"
    assert f"{room + 1} leaves" in texts(question)


def test_the_cane_that_stays_loses_least(demo: Demo) -> None:
    vine = demo.vines["climbing-spurs"]
    question = made_one(demo, WhichCane(common(), seen("climbing-spurs", "R3")))
    assert right_text(question) == "Cane R3a"
    here = vine.parts.of_position("R3")

    def points(name: str | None) -> int:
        """The plan with this one cane at the position, on two buds or one."""
        best = []
        for buds in (1, 2):
            states = list(vine.plan.left.states)
            for number in here:
                states[number] = 0
            number = -1 if name is None else vine.parts.index[name]
            if number >= 0:
                states[number] = buds
                while (number := vine.parts.parent[number]) >= 0:
                    states[number] = 1
            left = WoodLeft(vine.parts, tuple(states))
            best.append(lost(judge(left, demo.profile.limits, vine.target)))
        return min(best)

    assert points("R3a") + 3 <= min(points("R3b"), points("R3c"), points(None))


def test_diseased_wood_is_found(demo: Demo) -> None:
    vine = demo.vines["spindly-and-diseased"]
    question = made_one(demo, NamePart(common(), seen("spindly-and-diseased"), Find.DISEASED))
    assert isinstance(question.body, Tapping)
    measured = {p.name for p in vine.parts.parts if p.piece.condition == "diseased"}
    assert set(question.body.right) == measured


def test_only_the_lowest_cane_of_its_position_is_right(demo: Demo) -> None:
    question = made_one(demo, NamePart(common(), seen("climbing-spurs", "R3"), Find.LOWEST_CANE))
    assert isinstance(question.body, Tapping)
    assert question.body.right == ("R3a",)
    # The neighbours are drawn as well and can be tapped.
    assert {"R2a", "R4a"} <= {target.name for target in question.body.targets}


def a_sum(given: dict[str, str], *slips: dict[str, str], name: str = "vines") -> BlockSum:
    wrong = tuple(WrongSum(one, None, said("x").why, HERE) for one in slips)
    words = {"en": "Rows {row spacing}.", "es": "Hileras {row spacing}."}
    return BlockSum(common(), words, name, given, wrong)


LAYOUT = {"row spacing": "2 m", "vine spacing": "1 m"}


def test_a_sum_is_worked_out_with_and_without_the_slip(demo: Demo) -> None:
    question = made_one(demo, a_sum(LAYOUT, {"row spacing": "4 m"}, {"vine spacing": "2.5 m"}))
    assert right_text(question) == "5000 per hectare"
    assert texts(question) == {"5000 per hectare", "2500 per hectare", "2000 per hectare"}
    assert question.text == "Rows 2 m."


def choose(words: str = "Right", wrong: tuple[str, ...] = ("Wrong", "Worse")) -> Choose:
    ask = {"en": "Which?", "es": "¿Cuál?"}
    return Choose(common(), ask, said(words), tuple(said(one) for one in wrong))


REFUSED = [
    (WhichCane(common(), seen("tidy-vine", "L9")), "no-such-place"),
    (WhichCane(common(), seen("tidy-vine", "R2")), "no-clear-cane|too-few-canes"),
    (CountIt(common(), seen("tidy-vine", "L9a"), Count.BUDS_OF_CANE), "no-such-cane"),
    (CountIt(common(), seen("tidy-vine"), Count.LEAF_ROOM), "no-such-cane"),
    (CountIt(common(), seen("tidy-vine", "R6"), Count.SPACING), "no-next-position"),
    (NamePart(common(), seen("tidy-vine"), Find.DISEASED), "nothing-to-find"),
    (NamePart(common(), seen("tidy-vine"), Find.CANE), "too-much-is-right"),
    (choose("Keep 2 buds"), "number-typed-by-hand"),
    (choose("Keep {no such thing}"), "unknown-placeholder"),
    (choose("Right", ("Right", "Wrong")), "same-choice-twice"),
    (
        replace(choose(), ask={"en": "{head zone}?", "es": "{blank at most}?"}),
        "placeholders-differ",
    ),
    (a_sum(LAYOUT, name="vine"), "no-such-sum"),
    (a_sum({**LAYOUT, "colour": "red"}), "no-such-figure"),
    (a_sum({**LAYOUT, "vine spacing": "1"}), "sum-refused"),
    (a_sum({"row spacing": "2 m"}), "sum-refused"),
    (a_sum(LAYOUT, {"row spacing": "4 m"}, {"vine spacing": "2 m"}), "sums-agree"),
]


@pytest.mark.parametrize(("question", "problem"), REFUSED, ids=[name for _, name in REFUSED])
def test_what_cannot_be_asked_is_told_with_its_place(
    demo: Demo, question: QuizQuestion, problem: str
) -> None:
    told = refused(demo, question)
    assert told.startswith("quiz.yml:7:5: ")
    assert any(told.endswith(f"({one})") for one in problem.split("|")), told


def test_a_changed_word_changes_the_version(demo: Demo) -> None:
    one, same, other = (made(demo, choose(word)) for word in ("Right", "Right", "Rightly"))
    assert version_of(one) == version_of(same)
    assert version_of(one) != version_of(other)
    spanish = replace(choose(), ask={"en": "Which?", "es": "¿Cuáles?"})
    assert version_of(made(demo, spanish)) != version_of(one)


def found(demo: Demo, quiz: MadeQuiz) -> list[str]:
    return [finding.name for finding in prove_quiz(quiz, demo.vines).findings]


def test_a_quiz_of_one_question_is_passed_by_luck_and_by_habit(demo: Demo) -> None:
    names = found(demo, made(demo, choose(), needed=1))
    assert names.count("quiz-passed-by-luck") == 1
    assert "quiz-passed-by-habit" in names


def test_tries_count(demo: Demo) -> None:
    # Five questions with three choices each, all right: one in 243. Three tries are too many.
    five = [replace(choose(), common=common(f"q{n}")) for n in range(5)]
    once = prove_quiz(made(demo, *five, needed=5), demo.vines)
    thrice = prove_quiz(made(demo, *five, needed=5, tries=3), demo.vines)
    assert (once.chance.numerator, once.chance.denominator) == (1, 243)
    assert "quiz-passed-by-luck" not in [finding.name for finding in once.findings]
    assert "quiz-passed-by-luck" in [finding.name for finding in thrice.findings]


def test_a_right_choice_that_is_always_the_longest_is_told(demo: Demo) -> None:
    longest = choose("Right, and by far the longest of all that is here")
    questions = [replace(longest, common=common(f"q{n}")) for n in range(8)]
    names = found(demo, made(demo, *questions, needed=8))
    assert names.count("right-choice-longest") == 2  # in both languages
    assert "quiz-passed-by-habit" in names


def test_a_rule_that_is_named_by_no_question_is_told(demo: Demo) -> None:
    # The vine teaches its rules; whoever names no rule at all covers none.
    proof = prove_quiz(made(demo, Prune(common("tidy-vine")), needed=1), demo.vines)
    assert "doubled-spur" in proof.covers
    assert all(rule in one.told for rule, one in proof.ignorant.items())
