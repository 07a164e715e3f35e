"""A spur that hangs under the arm.

What it checks:
    On a vine whose shoots grow up: checks whether a cane under the arm is kept as a spur.

Why it matters:
    Its shoots must turn upward and miss the wires. They hang in the way of tools and
    machines, and their bunches sit in the shade.

What to do instead:
    Choose a cane on top of the arm. Take the hanging one off at its foot.

Limits:
    The rule looks at the lean of the cane itself. It does not see an upright cane on old
    wood that hangs. Some trellises let shoots hang on purpose; this rule is not for them.

Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.model import Lean

NAME: Final = "wood-below-arm"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Wood kept under the arm", "es": "Se dejó madera debajo del brazo"}
MESSAGES = {
    "kept": {
        "en": "This cane hangs under the arm. Its shoots will not stand between the wires.",
        "es": "Este sarmiento cuelga debajo del brazo. Sus brotes no subirán entre los alambres.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    En una cepa cuyos brotes suben: mira si se deja como pulgar un sarmiento que cuelga debajo
    del brazo.

Por qué importa:
    Sus brotes tienen que doblarse hacia arriba y no entran entre los alambres. Cuelgan y
    estorban a las herramientas y a las máquinas, y sus racimos quedan a la sombra.

Qué hacer en su lugar:
    Escoja un sarmiento de la parte de arriba del brazo. Quite en su base el que cuelga.

Límites:
    La regla mira cómo se inclina el sarmiento mismo. No ve un sarmiento vertical sobre
    madera vieja que cuelga. En algunas espalderas los brotes cuelgan a propósito; esta
    regla no es para ellas.

Fuente:
    Práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if left.part.is_cane and left.state > 0 and left.piece.lean is Lean.DOWN:
        yield Broken("kept")
