"""Signs of our own beside notes and quizzes: a tool, a ladder, an eye, drawn with a pen.

They help an eye find its place again; the words beside them say what is meant. They have no frame
and no colour of their own, so that none looks like a road or workplace sign with a legal meaning.
"""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.drawing.ink.writer import element

SIDE = 64
# Open, with the curved blade, the hook that it passes, and the bolt that holds both.
_BLADES = (
    "M31 28L26 2Q42 8 41 27ZM41 30Q50 24 51 8Q59 19 55 30Q51 38 40 36ZM36 27a4.3 4.3 0 1 0 .1 0Z"
)
_GRIPS = "M31 33Q19 42 14 59M33 35.5Q22 44 17 60M37 36Q43 44 43 60M40 36Q46 44 46 60"
_SPRING = "M26 48q3-4 7 0t8 0"

# By the name of the safety note, or of what it stands for: what is filled, thick and thin.
_SIGNS: Mapping[str, tuple[str, str, str]] = {
    "hand-shears": (
        _BLADES,
        _GRIPS,
        _SPRING,
    ),
    "loppers": (
        "M42 24Q46 9 59 5Q59 17 46 27Z",
        "M15 42L6 48M33 50L28 59",
        "M43 23L6 48M46 25L28 59M40 26Q52 33 60 20",
    ),
    "saw": (
        "M23 39Q46 34 60 10L60 18Q48 43 27 47Z",
        "M25 42Q14 40 6 50",
        (
            "M27 47L31 50L33 45L37 48L38 43L43 45L43 40L48 41L48 36L53 36L52 31"
            "L58 30L56 25L62 23L60 18"
        ),
    ),
    "heavy-wood": (
        "M8 12L50 26L47 35L5 21Z",
        "M20 59Q21 50 32 50Q43 50 44 59",
        "M49 26q4 3-2 9M32 38a5.5 5.5 0 1 0 .1 0M14 32v7M53 42v8M12 17l18 6",
    ),
    "powered-shears": (
        _BLADES,
        _GRIPS,
        "M15 60Q3 62 5 48T9 24M57 42l-5 8h7l-5 9",
    ),
    "clean-tools": (
        _BLADES,
        _GRIPS,
        _SPRING
        + (
            "M54 42q-4 6 0 8q4-2 0-8M60 35q-4 6 0 8q4-2 0-8M58 53q-4 6 0 8q4-2 0-8"
            "M6 22l8 4M11 10l6 6M21 3l0 6"
        ),
    ),
    "ladder-tripod": (
        "",
        "M16 59L31 7L42 59M32 7L59 54",
        "M21 44h17M18 53h22M24 34h12M27 24h8",
    ),
    "ladder-leaning": (
        "M53 6h7v54h-7Z",
        "M14 58L43 10M24 60L53 12",
        "M17 52l10 3M23 42l10 3M30 31l10 3M36 21l10 3M4 60h56",
    ),
    "power-lines": (
        "",
        "M20 6V60M8 16H32",
        ("M8 16v-5M32 16v-5M2 13L8 11Q34 26 62 12M32 11Q46 18 62 4M48 30l-8 13h9l-7 14"),
    ),
    "first-aid": (
        "M16.7 30.1L30.5 18.6L43.3 33.9L29.5 45.4Z",
        "M11.3 34.6L35.8 14.1A10 10 0 0 1 48.7 29.4L24.2 50A10 10 0 0 1 11.3 34.6Z",
        (
            "M16.7 30.1L29.5 45.4M30.5 18.6L43.3 33.9M26 31h.1M32 26h.1M28 38h.1M34 33h.1"
            "M54 42q-6 8 0 12q6-4 0-12"
        ),
    ),
    "eyes": (
        "M17 19Q19 32 29 23Q31 18 17 19Z",
        "M6 16Q32 6 58 16V25Q56 38 45 38Q36 38 32 28Q28 38 19 38Q8 38 6 25Z",
        "M6 20L1 17M58 20L63 17M40 30l7-9M45 32l6-8",
    ),
    "bent-canes": (
        "M4 50H60V57H4Z",
        "M16 50Q10 20 30 14Q50 12 50 32",
        "M2 32H62M58 34q5-9-1-18M53 12q-6-6-14-7M55 22l3-7 6 4",
    ),
    "cold": (
        "M20 60V36Q20 24 30 24T40 36V60Z",
        "M20 44Q12 42 14 34Q18 30 22 38M20 52H40",
        (
            "M50 12v14M44 15l12 8M56 15l-12 8M16 6v12M11 9l10 6M21 9l-10 6M54 40v8"
            "M50 42l8 4M58 42l-8 4"
        ),
    ),
    "overhead": (
        "M28 4H62V11H28Z",
        "M20 31V46L13 61M20 46L28 61M20 34L40 22",
        "M20 18a5.5 5.5 0 1 0 .1 0M40 22l5-9M40 22l9-6M20 36l-7 9",
    ),
    "hands-and-back": (
        "",
        "M43 21Q24 17 20 34L16 60M20 34L32 45L30 60M40 21L38 36L48 43",
        "M52 17a5.5 5.5 0 1 0 .1 0M13 35l-7 0M16 25l-6-4M23 17l-3-7",
    ),
    "pencil": (
        "M8 56L13 41L42 12L52 22L23 51Z",
        "M8 56L13 41L42 12L52 22L23 51ZM36 18L46 28",
        "M13 41L23 51M30 58H58",
    ),
    "list": (
        "M12 6H52V59H12Z",
        "M12 6H52V59H12Z",
        "M18 17l3 3 5-6M18 31l3 3 5-6M18 45l3 3 5-6M32 18H46M32 32H46M32 46H46",
    ),
}


def has_sign(name: str) -> bool:
    """Whether there is a sign of this name."""
    return name in _SIGNS


def draw_sign(name: str) -> str:
    """A sign as SVG text, without words: what it stands beside says what it means."""
    root = {"class": "pw-sign", "viewBox": f"0 0 {SIDE} {SIDE}", "aria-hidden": "true"}
    return element("svg", root, strokes_of(name))


def strokes_of(name: str) -> str:
    """The same without its root, for a place in a larger drawing."""
    kinds = ("fill", "thick", "thin")
    return "".join(
        element("path", {"class": f"pw-sign-{kind}", "d": text})
        for kind, text in zip(kinds, _SIGNS[name], strict=True)
        if text
    )
