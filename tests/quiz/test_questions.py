"""How single questions are worked out, and why some cannot be."""

from dataclasses import replace

import pytest

from pencilwood.cases.quiz import (
    BlockSum,
    Choose,
    Common,
    Count,
    CountIt,
    Find,
    NamePart,
    Prune,
    Quiz,
    QuizQuestion,
    Said,
    Seen,
    WhichCane,
    WrongSum,
)
from pencilwood.places import Place
from pencilwood.quiz.compiled import version_of
from pencilwood.quiz.made import Choices, MadeQuestion, MadeQuiz, Tapping
from pencilwood.quiz.making import make_quiz
from pencilwood.quiz.quiz_proof import prove_quiz
from pencilwood.score.judge import judge, lost
from pencilwood.vine import measures
from pencilwood.vine.wood import WoodLeft
from quiz_demo import Demo

HERE = Place("quiz.yml", 7, 5)


def common(slug: str = "q", *, must_know: bool = False, rules: tuple[str, ...] = ()) -> Common:
    return Common(slug, HERE, must_know, rules)


def seen(vine: str, at: str | None = None) -> Seen:
    return Seen(vine, HERE, "before", at)


def said(words: str, why: str = "That is why it is so.") -> Said:
    return Said({"en": words, "es": words}, {"en": why, "es": why}, HERE)


def a_quiz(*questions: QuizQuestion, needed: int = 0, tries: int = 1) -> Quiz:
    words = {"en": "Quiz", "es": "Examen"}
    return Quiz("quiz", words, words, questions, needed, Place("quiz.yml", 1, 1), tries)


def made(demo: Demo, *questions: QuizQuestion, needed: int = 0, tries: int = 1) -> MadeQuiz:
    quiz, findings = make_quiz(
        a_quiz(*questions, needed=needed, tries=tries), demo.vines, demo.profile
    )
    assert findings == ()
    assert quiz is not None
    return quiz


def made_one(demo: Demo, question: QuizQuestion) -> MadeQuestion:
    return made(demo, question).questions["en"][0]


def refused(demo: Demo, question: QuizQuestion) -> str:
    quiz, findings = make_quiz(a_quiz(question), demo.vines, demo.profile)
    assert quiz is None
    [only] = findings
    _, spanish = make_quiz(a_quiz(question), demo.vines, demo.profile, "es")
    assert spanish[0].what != only.what
    return only.render()


def texts(question: MadeQuestion) -> set[str]:
    assert isinstance(question.body, Choices)
    return {option.text for option in question.body.options}


def right_text(question: MadeQuestion) -> str:
    assert isinstance(question.body, Choices)
    return question.body.options[question.body.right].text


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


def test_who_ties_canes_is_asked_what_each_stays_as(demo: Demo) -> None:
    question = made_one(demo, WhichCane(common(), seen("two-new-canes", "L1")))
    assert right_text(question) == "L1a as a renewal spur and L1b as a fruiting cane"
    assert "L1a as a fruiting cane and L1b as a renewal spur" in texts(question)
    assert isinstance(question.body, Choices)
    whys = {option.text: option.why for option in question.body.options}
    assert "above the head" in whys["L1a as a renewal spur and L1b as a fruiting cane"]
    turned = whys["L1a as a fruiting cane and L1b as a renewal spur"]
    assert "Wood is left above this fruiting cane" in turned
    # The plan leaves just that, so the question and the plan agree.
    vine = demo.vines["two-new-canes"]
    assert vine.plan.left.state("L1a") <= 2 < vine.plan.left.state("L1b")


def test_a_strong_cane_around_a_head_may_stay_with_three_buds(demo: Demo) -> None:
    vine = demo.vines["strong-and-weak-places"]
    three = [p for p in vine.parts.parts if p.is_cane and vine.plan.left.state(p.name) == 3]
    assert three
    for part in three:
        asked = WhichCane(common(), seen("strong-and-weak-places", part.position.name))
        assert right_text(made_one(demo, asked)) == f"Cane {part.name}"


FOUND = [
    ("hanging-spurs", "L3", Find.UPRIGHT_CANE, "L3a"),
    ("the-middle-stays-open", "H1", Find.INWARD_CANE, "H1a"),
    ("two-new-canes", "L1", Find.LAST_YEARS_SPUR, "L1m"),
    # On a high cordon near the arm is up: of R2's canes a stands nearest.
    ("far-hanging-spurs", "R2", Find.LOWEST_CANE, "R2a"),
]


@pytest.mark.parametrize(("slug", "at", "find", "name"), FOUND)
def test_what_only_some_forms_have_is_found(
    demo: Demo, slug: str, at: str, find: Find, name: str
) -> None:
    body = made_one(demo, NamePart(common(), seen(slug, at), find)).body
    assert isinstance(body, Tapping)
    assert name in body.right
    assert {one.name for one in body.targets} > set(body.right)


@pytest.mark.parametrize("slug", ["far-hanging-spurs", "two-new-canes"])
def test_what_is_right_on_a_form_is_called_no_fault_there(demo: Demo, slug: str) -> None:
    """Hanging wood on a high cordon, a cane near the head where canes are tied."""
    body = made_one(demo, NamePart(common(), seen(slug), Find.TRUNK)).body
    assert isinstance(body, Tapping)
    assert not {"wood-below-the-arm", "cane-on-the-head"} & set(body.whys)


def test_where_no_arm_is_drawn_none_can_be_tapped(demo: Demo) -> None:
    body = made_one(demo, NamePart(common(), seen("two-new-canes"), Find.TRUNK)).body
    assert isinstance(body, Tapping)
    names = {one.name for one in body.targets}
    assert {"trunk", "head"} < names
    assert "left arm" not in names
    assert body.whys["head"] == "No. This is the head. New canes should begin near it."


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
