"""Wood left above the fruiting cane.

What it checks:
    Checks whether living wood is left above a fruiting cane on the same spur.

Why it matters:
    Next winter the old fruiting cane comes off, and the new one grows on the renewal spur.
    If the spur stands above, the wood below both canes must stay. The head grows longer
    each winter.

What to do instead:
    Of two canes on last year's spur, cut the lower one to a renewal spur. The upper one
    becomes the fruiting cane.

Limits:
    The rule looks at wood on one old spur. It does not compare places on the head. Two
    fruiting canes on one old spur break it as well. If the lower cane alone is strong
    enough to fruit, a trainer may turn the order round.

Source:
    That the renewal spur stands below the fruiting cane: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits

NAME: Final = "spur-above-cane"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Wood left above the fruiting cane", "es": "Madera arriba de la vara"}
MESSAGES = {
    "wrong-order": {
        "en": "Wood is left above this fruiting cane. The lower cane should be the spur.",
        "es": "Queda madera más arriba de esta vara. El pulgar debe ser el sarmiento de abajo.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mira si queda madera viva más arriba de una vara, en el mismo pulgar viejo.

Por qué importa:
    El próximo invierno se quita la vara vieja, y la nueva crece en el pulgar de reemplazo.
    Si el pulgar está arriba, hay que dejar la madera que queda debajo de los dos. La cabeza
    se alarga cada invierno.

Qué hacer en su lugar:
    De dos sarmientos en el pulgar del año pasado, corte el de abajo como pulgar de
    reemplazo. El de arriba queda como vara.

Límites:
    La regla mira la madera de un solo pulgar viejo. No compara lugares de la cabeza. Dos
    varas en un mismo pulgar viejo también la incumplen. Si solo el de abajo es fuerte para
    dar uva, el instructor puede cambiar el orden.

Fuente:
    Que el pulgar de reemplazo esté debajo de la vara: práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if not left.part.is_cane or not left.living_above:
        return
    if left.state >= limits["buds on a fruiting cane at least"]:
        yield Broken("wrong-order")
