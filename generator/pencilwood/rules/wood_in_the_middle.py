"""Wood kept that grows into the middle of the head.

What it checks:
    Checks whether a spur is kept on a cane that leans inward. Such a cane grows over the
    middle of the head.

Why it matters:
    The middle of the vine should stay open. Shoots that grow inward cross each other and
    shade the bunches. Air and spray get in badly, and the wet leaves dry slowly.

What to do instead:
    Choose a cane that points outward or stands upright. Take the inward one off at its foot.
    Keep it only if a side of the head would stay open without it.

Limits:
    The rule looks at the lean of the cane itself as it was noted. It does not see where its
    shoots will go in summer. It is only for vines with spurs around a head.

Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.model import Lean

NAME: Final = "wood-in-the-middle"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Wood kept in the middle", "es": "Se dejó madera hacia el centro"}
MESSAGES = {
    "kept": {
        "en": "This cane grows into the middle of the head. Keep the middle open.",
        "es": "Este sarmiento crece hacia el centro de la cabeza. Deje libre el centro.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mira si un pulgar se inclina hacia adentro. Un sarmiento así crece sobre el centro de la
    cabeza.

Por qué importa:
    El centro de la cepa debe quedar libre. Los brotes que crecen hacia adentro se cruzan y
    dan sombra a los racimos. El aire y lo que se fumiga entran mal, y las hojas mojadas tardan
    en secarse.

Qué hacer en su lugar:
    Escoja un sarmiento que apunta hacia afuera o que sube vertical. Quite en su base el que va
    hacia adentro. Déjelo solo si sin él un lado de la cabeza queda vacío.

Límites:
    La regla mira cómo se inclina el sarmiento mismo, tal como se anotó. No ve por dónde irán
    sus brotes en verano. Es solo para cepas con pulgares alrededor de una cabeza.

Fuente:
    Práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if left.part.is_cane and left.state > 0 and left.piece.lean is Lean.IN:
        yield Broken("kept")
