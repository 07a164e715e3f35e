"""A split or wounded cane kept as a spur.

What it checks:
    Checks whether a split or wounded cane is kept as a spur.

Why it matters:
    A split dries out and may let disease in. The sap passes badly, and the spur can break
    when the shoots grow heavy.

What to do instead:
    Choose a sound cane at the same place. If the injured one is the only cane in a long
    blank, keep it. One more winter may give you a better one.

Limits:
    The rule believes what was noted about the cane. It does not see how deep the wound
    goes. It looks at canes only, not at older wood.

Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.model import Condition

NAME: Final = "injured-wood"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Injured wood kept", "es": "Se dejó madera herida"}
MESSAGES = {
    "kept": {
        "en": "This wood is split or wounded. Choose another if you can.",
        "es": "Esta madera está rajada o herida. Escoja otra si puede.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mira si se deja como pulgar un sarmiento rajado o herido.

Por qué importa:
    Una rajadura se seca y puede dejar entrar enfermedades. La savia pasa mal, y el pulgar
    puede quebrarse con el peso de los brotes.

Qué hacer en su lugar:
    Escoja un sarmiento sano en el mismo lugar. Si el herido es el único en un hueco largo,
    déjelo. El próximo invierno quizá haya uno mejor.

Límites:
    La regla se fía de lo que se anotó sobre el sarmiento. No ve qué tan honda es la herida.
    Mira solo los sarmientos, no la madera más vieja.

Fuente:
    Práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if left.part.is_cane and left.state > 0 and left.piece.condition is Condition.INJURED:
        yield Broken("kept")
