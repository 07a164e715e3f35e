"""The keys of a case file, top to bottom."""

from __future__ import annotations

from pencilwood.cases import vine_keys
from pencilwood.cases.case import LEVELS, Level
from pencilwood.cases.cut_steps import CUT, STUB, TIE_CANE, TIE_TO, TO, TOOL
from pencilwood.cases.fields import Key, ListOf, Table
from pencilwood.cases.given import YesNo
from pencilwood.cases.kinds import Choice, Text, Words
from pencilwood.cases.one_or_each import OneOrEach
from pencilwood.cases.vine_table import VINE
from pencilwood.vine.model import Side
from pencilwood.vine.passes import CUTTING_PASSES

SLUG = Text("[a-z0-9]+(-[a-z0-9]+)*", "not-a-slug", 60)

CASE = Key("case", SLUG, "Short name of the case; the file has the same name.")
TITLE = Key("title", Words(120), "Title of the page in each language.")
LEVEL_KIND: Choice[Level] = Choice({one: one for one in LEVELS})
LEVEL: Key[Level] = Key("level", LEVEL_KIND, "How hard it is.")
TEACHES = Key("teaches", ListOf(Text()), "Names of the rules that nobody passes without.")
STORY = Key("story", Words(), "What the learner is told; measures as {buds_kept}.")

WHY = Key("why", Words(), "The reason, in each language.")
CUT_ROW = Table("One cut, or several for one reason.", (CUT, TO, WHY, TOOL, STUB))
PASS_KEYS = {
    in_pass: Key(
        f"{in_pass.value} pass",
        ListOf(CUT_ROW, 1, 200),
        f"The cuts of the {in_pass.value} pass, in their order.",
        False,
    )
    for in_pass in CUTTING_PASSES
}
TIE = Key(
    "tie",
    ListOf(Table("A fruiting cane and its side of the vine.", (TIE_CANE, TIE_TO, WHY)), 1, 20),
    "Where the fruiting canes are tied, after the last cut.",
    False,
)
ANSWER = Key(
    "answer",
    Table("Your own pruning, pass by pass.", (*PASS_KEYS.values(), TIE)),
    "Your own pruning, pass by pass.",
)

RULE = Key("rule", Text(), "Name of the rule that your answer breaks.")
AT = Key("at", Text(), "The position or piece the reason holds for; left out: the vine.", False)
EXCEPTIONS = Key(
    "exceptions",
    ListOf(Table("A rule that your answer breaks, with the reason.", (RULE, AT, WHY))),
    "Your reasons where the answer breaks a rule that allows it.",
    False,
)
FAR_FROM_PLAN = Key(
    "far from plan",
    Table("Why your answer is far from the computed plan.", (WHY,)),
    "Only where the answer is far from the computed plan.",
    False,
)
THREE_WINTERS = Key(
    "three winters",
    YesNo(),
    "Whether a page shows this vine over three winters; only where its spurs can climb.",
    False,
)
RENEWED_ARM: Key[Side] = Key(
    "renewed arm",
    Choice({side.value: side for side in (Side.LEFT, Side.RIGHT)}),
    "Which arm a page makes new over three winters; a young cane must stand on its head.",
    False,
)
SAFETY = Key("safety", ListOf(Text()), "Names of the safety notes the page shows.", False)
_NAME = '[^/\\\\:<>"|?*.~ ][^/\\\\:<>"|?*]*'
# Each step begins with neither a dot nor a slash, so that none leads out of the folder.
_PHOTO_PATH = f"({_NAME}/)*{_NAME}[.]([jJ][pP][eE]?[gG]|[pP][nN][gG]|[wW][eE][bB][pP])"
PHOTO_FILE = Key(
    "file",
    Text(_PHOTO_PATH, "not-a-photo-path"),
    "A JPEG, PNG or WebP picture beside the case: photos/tidy-vine.jpg.",
)
ALT = Key("alt", Words(400), "What it shows, for people who do not see it.")
PHOTO = Key(
    "photo",
    Table("A photograph of the vine before pruning.", (PHOTO_FILE, ALT)),
    "A photograph of the vine before pruning.",
    False,
)

_CREDIT = OneOrEach()
_EACH = "One text for all readers, or {en: ..., es: ...}."
AUTHOR = Key("author", _CREDIT, f"Who measured and wrote it. {_EACH}", False)
LICENCE = Key("licence", _CREDIT, f"Under which licence others may use it. {_EACH}", False)
ORIGIN = Key("origin", _CREDIT, f"The vineyard or handbook that it comes from. {_EACH}", False)
CREDITS = (AUTHOR, LICENCE, ORIGIN)
"""What a case has to say of itself before it may be shared."""

CASE_TABLE = Table(
    "A measured vine with the author's own pruning.",
    (
        CASE,
        TITLE,
        LEVEL,
        TEACHES,
        STORY,
        VINE,
        vine_keys.TARGET,
        ANSWER,
        EXCEPTIONS,
        FAR_FROM_PLAN,
        THREE_WINTERS,
        RENEWED_ARM,
        SAFETY,
        PHOTO,
        *CREDITS,
    ),
)
