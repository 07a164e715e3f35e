"""Two spurs kept at one place on the arm.

What it checks:
    Checks whether two spurs are kept at one place on the arm. One reason is accepted: a low
    cane cut to one bud, under wood that has climbed too far.

Why it matters:
    Two spurs at one place crowd their shoots, just like spurs too close together. The lower
    one is shaded and grows weak. Then the spur can only climb.

What to do instead:
    Keep one spur at each place. Take the lowest good cane and cut off the rest above it. To
    bring climbed wood down, leave one bud on the low cane.

Limits:
    The rule sees which canes grow further along the same spur. It does not see how far
    apart they point. To call a spur climbed, it looks at every cane above, cut or not.

Source:
    The upper cane is removed and the lower cut back: Oxford Companion to Wine, J. Robinson
    (editor), 2006. A low shoot kept to replace a high spur: Lodi Winegrape Commission. The
    rest: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.measures import away_mm

NAME: Final = "doubled-spur"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Two spurs at one place", "es": "Dos pulgares en un mismo lugar"}
MESSAGES = {
    "two-at-one-place": {
        "en": "Another spur is kept at this same place. One is enough.",
        "es": "En este mismo lugar queda otro pulgar. Con uno basta.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mira si quedan dos pulgares en un mismo lugar del brazo. Se acepta un motivo: un
    sarmiento bajo cortado a una yema, debajo de madera que se alejó demasiado.

Por qué importa:
    Dos pulgares en un lugar amontonan sus brotes, igual que dos pulgares apretados. El de
    abajo queda a la sombra y se debilita. Así el pulgar solo puede seguir subiendo.

Qué hacer en su lugar:
    Deje un pulgar en cada lugar. Escoja el sarmiento bueno más bajo y quite lo que queda
    encima. Para bajar un pulgar que subió, deje una yema en el sarmiento bajo.

Límites:
    La regla ve qué sarmientos nacen más arriba en el mismo pulgar. No ve cuánto se separan
    al crecer. Para decir que un pulgar subió, mira todos los sarmientos de encima, cortados
    o no.

Fuente:
    Se quita el sarmiento de arriba y se acorta el de abajo: Oxford Companion to Wine, J.
    Robinson (editora), 2006. Un brote bajo que se deja para reemplazar un pulgar alto: Lodi
    Winegrape Commission. Lo demás: práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if not left.part.is_cane or left.state == 0 or not left.living_above:
        return
    if not (left.state == 1 and _renews_climbed_wood(left, limits)):
        yield Broken("two-at-one-place")


def _renews_climbed_wood(left: PieceLeft, limits: Limits) -> bool:
    """A low one-bud spur under climbed wood is kept on purpose: next winter it takes over."""
    most_mm = limits["climb at most"]
    climbed = all(away_mm(left.vine, part) > most_mm for part in left.wood_above())
    return climbed and away_mm(left.vine, left.part) <= most_mm
