"""The keys of a quiz file: one table for each kind of question."""

from __future__ import annotations

from pencilwood.cases.case_keys import SLUG
from pencilwood.cases.fields import Key, ListOf, OneTableOf, Table
from pencilwood.cases.given import Pairs, YesNo
from pencilwood.cases.kinds import Choice, Text, Whole, Words
from pencilwood.cases.quiz import Count, Deed, Find, Shown

MOST_QUESTIONS = 100
FEWEST_WRONG, MOST_WRONG = 2, 4
FEWEST_STEPS, MOST_STEPS = 4, 8
"""Three steps are in order by chance one time in six; four, one time in twenty-four."""

_ID = "Short name of the question, unique in the quiz."
_SHOWN: dict[str, Shown] = {"before": "before", "answer": "answer"}

QUIZ = Key("quiz", SLUG, "Short name of the quiz; the file has the same name.")
TITLE = Key("title", Words(120), "Title of the page in each language.")
INTRO = Key("intro", Words(), "What the learner reads first, in each language.")
PLACE_IN_LIST = Key("order", Whole(0, 9999), "Its place among the quizzes, smallest first.", False)
TRIES = Key("tries", Whole(1, 5), "How often it may be tried before you step in.", False)

MUST_KNOW = Key("must know", YesNo(), "true: nobody passes without it.", False)
RULES = Key("rules", ListOf(Text()), "Names of the rules it is about.", False)
CHAPTER = Key("chapter", Text(), "Short name of the chapter to look at again.", False)
_COMMON = (MUST_KNOW, RULES, CHAPTER)

ASK = Key("ask", Words(600), "What is asked, in each language.")
SAY = Key("say", Words(300), "What can be chosen, in each language.")
WHY = Key("why", Words(600), "Why it is right or wrong, in each language.")
SAID = Table("Something to choose, and why it is right or wrong.", (SAY, WHY))

VINE = Key("vine", Text(), "Short name of the case whose vine is shown.")
SHOW: Key[Shown] = Key(
    "show", Choice(_SHOWN), "before: uncut; answer: as your answer leaves it.", False
)
AT = Key("at", Text(), "The position or piece to look at; left out: the whole vine.", False)
AT_POSITION = Key("at", Text(), "The position whose canes are to choose from.")
DRAWING = Key("drawing", Table("A drawing.", (VINE, SHOW, AT)), "The drawing to look at.", False)

PRUNE = Key("prune", Text(), "Short name of the case to prune.")
PRUNE_TABLE = Table("Prune a vine.", (PRUNE, *_COMMON))

CHOOSE = Key("choose", SLUG, _ID)
RIGHT = Key("right", SAID, "The right choice.")
WRONG = Key("wrong", ListOf(SAID, FEWEST_WRONG, MOST_WRONG), "The wrong choices.")
CHOOSE_TABLE = Table("Choose the right answer.", (CHOOSE, ASK, DRAWING, RIGHT, WRONG, *_COMMON))

CANE = Key("cane", SLUG, _ID)
CANE_TABLE = Table("Which cane of a position stays.", (CANE, VINE, AT_POSITION, *_COMMON))

PART = Key("part", SLUG, _ID)
FIND = Key("find", Choice({str(one): one for one in Find}), "What to find.")
PART_TABLE = Table("Tap a part on the drawing.", (PART, VINE, AT, FIND, *_COMMON))

COUNT = Key("count", SLUG, _ID)
WHAT = Key("what", Choice({str(one): one for one in Count}), "What to count.")
COUNT_TABLE = Table("Count something of a vine.", (COUNT, VINE, AT, WHAT, *_COMMON))

ORDER = Key("order", SLUG, _ID)
STEPS = Key("steps", ListOf(SAID, FEWEST_STEPS, MOST_STEPS), "The steps in their right order.")
ORDER_TABLE = Table("Put steps in their order.", (ORDER, ASK, STEPS, *_COMMON))

SAFE = Key("safe or stop", SLUG, _ID)
DEED = Key("right", Choice({str(one): one for one in Deed}), "What is right to do.")
DEED_KEYS = {
    one: Key(str(one), Words(600), f'Why to "{one}" is right or wrong, in each language.')
    for one in Deed
}
DEEDS = Key("why", Table("Why each is right or wrong.", tuple(DEED_KEYS.values())), "The reasons.")
SAFE_TABLE = Table("A scene of work: safe, or stop.", (SAFE, ASK, DEED, DEEDS, *_COMMON))

SUM = Key("sum", SLUG, _ID)
WORK_OUT = Key("work out", Text(), "Name of the sum, as `pencilwood block` knows it.")
OTHER_SUM = Key("work out", Text(), "Another sum, where the slip is to take the wrong one.", False)
GIVEN = Key("given", Pairs(), "The figures of the sum, each with its unit.")
SLIP = Key("given", Pairs(), "The figures that the slip changes.", False)
SLIPS = Key(
    "wrong",
    ListOf(Table("The sum with one usual slip.", (OTHER_SUM, SLIP, WHY)), FEWEST_WRONG, MOST_WRONG),
    "The same sum with usual slips.",
)
SUM_TABLE = Table("A sum of the block.", (SUM, ASK, WORK_OUT, GIVEN, SLIPS, *_COMMON))

KINDS = {
    "prune": PRUNE_TABLE,
    "choose": CHOOSE_TABLE,
    "cane": CANE_TABLE,
    "part": PART_TABLE,
    "count": COUNT_TABLE,
    "order": ORDER_TABLE,
    "safe or stop": SAFE_TABLE,
    "sum": SUM_TABLE,
}
QUESTIONS = Key(
    "questions",
    ListOf(OneTableOf(KINDS, "which-question"), 1, MOST_QUESTIONS),
    "The questions in their order.",
)
PASSES_NEEDED = Key(
    "passes needed",
    Whole(0, MOST_QUESTIONS),
    "How many of the questions must be right; those marked must know do not count here.",
)
QUIZ_TABLE = Table(
    "A quiz: its questions, and what it takes to pass.",
    (QUIZ, TITLE, INTRO, PLACE_IN_LIST, TRIES, QUESTIONS, PASSES_NEEDED),
)
