"""Keys that the forms put together to their own tables under `vine:`; see `cases.forms`."""

from __future__ import annotations

from pencilwood.cases.fields import Key, ListOf, OneTableOf, Table
from pencilwood.cases.kinds import Choice, Counted, Length, Span, Text, Whole
from pencilwood.vine.forms import FORM_NAMES
from pencilwood.vine.model import Condition, Lean

# Generous bounds: they catch a slip (cm for mm, a digit too many), never an unusual vine.
MOST_POSITIONS = 60
MOST_PIECES = 12
MOST_PARTS = 250

_LETTER = Text("[a-z]{1,2}", "not-a-letter", 20)
_LEAN = Choice({lean.value: lean for lean in Lean})
_CONDITION = Choice({condition.value: condition for condition in Condition})

CANE = Key("cane", _LETTER, "Letter of this cane (last summer's shoot), such as a.")
OLD = Key("old", _LETTER, "Letter of this piece of older wood, such as m.")
FROM = Key(
    "from",
    _LETTER,
    "Letter of the piece it grows from; left out when that is the arm or the head.",
    False,
)
UP = Key(
    "up",
    Length(0, 3000, "3 cm"),
    "How far along that piece it grows; only together with from.",
    False,
)
AGE = Key("age", Counted("year", "years", 2, 150, "2 years"), "Age of the wood, at least 2 years.")
OLD_LENGTH = Key("length", Length(5, 3000, "5 cm"), "Length of the piece.")
OLD_THICKNESS = Key("thickness", Length(2, 250, "14 mm"), "Thickness in the middle of the piece.")
CANE_THICKNESS = Key("thickness", Length(1, 50, "8 mm"), "Thickness between the first buds.")
BUDS = Key("buds", Whole(1, 60), "Clear buds on the cane; the one at its foot is not counted.")
INTERNODE = Key("internode", Length(5, 250, "7 cm"), "Usual distance from bud to bud.")
CONDITION = Key("condition", _CONDITION, "What the wood looks like; sound when left out.", False)
LEAN = Key("lean", _LEAN, "Where it points; up when left out. Out is away from the head.", False)

CANE_ROW = Table(
    "A cane: wood of one year.",
    (CANE, FROM, UP, BUDS, INTERNODE, CANE_THICKNESS, CONDITION, LEAN),
)
OLD_ROW = Table(
    "Wood of two years or more.",
    (OLD, FROM, UP, AGE, OLD_LENGTH, OLD_THICKNESS, CONDITION, LEAN),
)

POSITION = Key(
    "position",
    Text("[LR][1-9][0-9]?", "not-a-position-name"),
    "Its name: L or R for the side, numbered from the head outward.",
)
AT = Key(
    "at",
    Length(1, 15_000, "14 cm"),
    "Distance from the middle of the head along the arm or the wire.",
)
WOOD = Key(
    "wood",
    ListOf(OneTableOf({CANE.name: CANE_ROW, OLD.name: OLD_ROW}), 1, MOST_PIECES),
    "Every piece of wood that grows here.",
)
POSITION_ROW = Table("One place left or right of the head where wood grows.", (POSITION, AT, WOOD))

ARM_LENGTH = Key("length", Length(100, 15_000, "90 cm"), "From the middle of the head to the tip.")
ARM_THICKNESS = Key("thickness", Length(5, 300, "35 mm"), "Thickness in the middle of the arm.")
ARM = Table("One arm of the vine.", (ARM_LENGTH, ARM_THICKNESS))
LEFT = Key("left", ARM, "The arm on your left as you stand before the vine.", False)
RIGHT = Key("right", ARM, "The arm on your right as you stand before the vine.", False)
ARMS_TABLE = Table("The arms.", (LEFT, RIGHT))

FRUITING = Key(
    "fruiting",
    Length(100, 3000, "90 cm"),
    "Height of the wire that carries the arms or the fruiting canes.",
)
CATCH = Key(
    "catch",
    ListOf(Length(100, 4000, "120 cm"), 0, 10),
    "Heights of the catch wires, lowest first.",
)
TOP = Key("top", Length(100, 4000, "180 cm"), "Height of the top wire.")
WIRES_TABLE = Table("Heights of the wires above the ground.", (FRUITING, CATCH, TOP))

FORM = Key(
    "form", Choice({name: name for name in FORM_NAMES}, tells_all=True), "How the vine is trained."
)
TRUNK_THICKNESS = Key("trunk thickness", Length(10, 500, "55 mm"), "Thickness of the trunk.")
CORDON_HEIGHT = Key("cordon height", Length(100, 3000, "90 cm"), "Height of the arms above ground.")
WIRES = Key("wires", WIRES_TABLE, "Heights of the wires above the ground.")
TRIMMED_AT = Key("trimmed at", Length(100, 5000, "215 cm"), "Height at which shoots are trimmed.")
ARMS = Key("arms", ARMS_TABLE, "The arms: left and right, or one of them.")
POSITIONS = Key("positions", ListOf(POSITION_ROW, 1, MOST_POSITIONS), "All places with wood.")

TARGET_BUDS = Key("buds", Span(1, 1000), "Buds to keep on the whole vine, such as 24 to 30.")
TARGET = Key(
    "target",
    Table("What this vine should carry.", (TARGET_BUDS,)),
    "Only when it differs from the handbook's buds per metre.",
    False,
)
