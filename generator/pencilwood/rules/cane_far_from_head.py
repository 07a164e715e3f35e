"""Cane too far from the head.

What it checks:
    Measures how far from the middle of the head each cane on the pruned vine begins. It is
    measured along the wire.

Why it matters:
    The wood from the head to the cane stays for good. If it grows by a hand each winter,
    the head turns into long bare arms. The buds that could renew the vine are then
    missing.

What to do instead:
    Choose canes that begin near the head: on last year's renewal spur first, then at the
    foot of the old fruiting cane. A slightly thinner cane near the head is worth more
    than a thick one far out.

Limits:
    The rule measures where the cane grows, not how well. Has the head no cane? Take one
    farther out, or wait for a shoot from old wood.

Source:
    That the new cane should begin near the head, and the distance: common practice, no
    source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.long_wood import from_head_mm

NAME: Final = "cane-far-from-head"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Cane too far from the head", "es": "Sarmiento demasiado lejos de la cabeza"}
MESSAGES = {
    "too-far": {
        "en": "This cane begins {from} from the head. Choose one within {most}.",
        "es": "Este sarmiento nace a {from} de la cabeza. Escoja uno a no más de {most}.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mide a qué distancia del centro de la cabeza nace cada sarmiento de la cepa podada. Se mide a lo
    largo del alambre.

Por qué importa:
    La madera entre la cabeza y el sarmiento se queda para siempre. Si cada invierno crece
    una mano, la cabeza termina en brazos largos y desnudos. Entonces faltan las yemas que
    podrían renovar la cepa.

Qué hacer en su lugar:
    Escoja sarmientos que nacen cerca de la cabeza: primero en el pulgar de reemplazo,
    después al pie de la vara vieja. Vale más uno algo delgado y cercano que uno grueso y
    lejano.

Límites:
    La regla mide dónde nace el sarmiento, no si es bueno. En una cabeza sin sarmientos
    hay que tomar uno más lejano o esperar un brote de madera vieja.

Fuente:
    Que la vara nueva nazca cerca de la cabeza, y la distancia: práctica común, sin
    fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if not left.part.is_cane or left.state == 0:
        return
    most_mm = limits["cane from the head at most"]
    from_mm = from_head_mm(left.part)
    if from_mm > most_mm:
        yield Broken("too-far", from_mm - most_mm, {"from_mm": from_mm, "most_mm": most_mm})
