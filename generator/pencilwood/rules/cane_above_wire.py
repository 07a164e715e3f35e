"""Cane begins above the wire.

What it checks:
    Measures how high each cane on the pruned vine begins. It should begin at the fruiting
    wire or below it.

Why it matters:
    A cane that begins above the wire must be bent down to it. It snaps easily at the
    foot, and its shoots start above the others. Next winter's wood then stands higher
    still.

What to do instead:
    Choose a cane that begins a hand's width below the wire. Has the head climbed? Keep a
    water sprout from lower down as a spur, and lower the head with it.

Limits:
    The rule takes the heights as they were measured. It does not feel how stiff a cane
    is. A cane that begins just above the wire can still be bent with care.

Source:
    A head 4 to 5 in (10 to 13 cm) below the wire: Oregon State University Extension
    (video on renewing cordons). That a cane should not begin above the wire: common
    practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.long_wood import above_wire_mm

NAME: Final = "cane-above-wire"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Cane begins above the wire", "es": "El sarmiento nace arriba del alambre"}
MESSAGES = {
    "too-high": {
        "en": (
            "This cane begins {above} above the fruiting wire. Choose one that begins below it."
        ),
        "es": (
            "Este sarmiento nace {above} arriba del alambre de formación. "
            "Escoja uno que nazca más abajo."
        ),
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mide a qué altura nace cada sarmiento de la cepa podada. Debe nacer a la altura del
    alambre de formación o más abajo.

Por qué importa:
    Un sarmiento que nace arriba del alambre hay que doblarlo hacia abajo. Se quiebra
    fácil en la base, y sus brotes empiezan más alto que los demás. La madera del próximo
    invierno queda todavía más alta.

Qué hacer en su lugar:
    Escoja un sarmiento que nace a una mano debajo del alambre. Si la cabeza ya subió, deje
    un chupón de más abajo como pulgar y baje con él la cabeza.

Límites:
    La regla toma las alturas como se midieron. No siente qué tan duro es el sarmiento.
    Uno que nace apenas arriba todavía se puede doblar con cuidado.

Fuente:
    La cabeza de 4 a 5 pulgadas (10 a 13 cm) debajo del alambre: Oregon State University
    Extension (video sobre renovar cordones). Que el sarmiento no nazca arriba del
    alambre: práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if not left.part.is_cane or left.state == 0:
        return
    above_mm = above_wire_mm(left.vine, left.part)
    if above_mm > 0:
        yield Broken("too-high", above_mm, {"above_mm": above_mm})
