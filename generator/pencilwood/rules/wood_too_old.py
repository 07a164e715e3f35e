"""Old wood kept where no cane is left on it.

What it checks:
    Checks whether old wood is kept where no living cane is left on it.

Why it matters:
    Fruit comes on shoots from last summer's canes. Bare old wood has no counted bud. It
    only takes room, dries and may wake water sprouts.

What to do instead:
    Choose a cane first, then take off what is above it. If no living cane is left at that
    place, take the old wood off at its foot.

Limits:
    The rule looks at the foot of the old wood. Bare wood further up, and dead stubs, are
    the business of another rule. It cannot see a latent bud that might wake. Someone
    renewing an arm may keep such wood on purpose.

Source:
    A cane is a shoot that has turned brown: UC Davis glossary (Rost laboratory). Counted
    buds stand clear of the older wood: F. Westover, Wines & Vines, May 2016. The rest:
    common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits

NAME: Final = "wood-too-old"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Wood too old to fruit", "es": "Madera demasiado vieja para dar uva"}
MESSAGES = {
    "no-cane-left": {
        "en": "This wood is {age} years old and no living cane is left on it. It will not fruit.",
        "es": (
            "Esta madera tiene {age} años y no queda en ella ningún sarmiento vivo. No dará uva."
        ),
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mira si queda madera vieja donde ya no hay ningún sarmiento vivo.

Por qué importa:
    La uva sale en los brotes de los sarmientos del verano pasado. La madera vieja y desnuda
    no tiene ninguna yema contada. Solo ocupa espacio, se seca y puede echar chupones.

Qué hacer en su lugar:
    Escoja primero un sarmiento y quite después lo que queda encima. Si en ese lugar no hay
    ningún sarmiento vivo, quite la madera vieja en su base.

Límites:
    La regla mira la base de la madera vieja. De la madera desnuda más arriba y de los
    tocones muertos se ocupa otra regla. No puede ver una yema latente que quizá despierte.
    Quien renueva un brazo puede dejar esa madera a propósito.

Fuente:
    El sarmiento es un brote que ya se puso café: glosario de UC Davis (laboratorio Rost).
    Las yemas contadas están separadas de la madera más vieja: F. Westover, Wines & Vines,
    mayo de 2016. Lo demás: práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    part = left.part
    if part.is_cane or left.state == 0 or left.living_above or not part.piece.is_alive:
        return
    # Only the foot counts: bare wood further up is the business of old-stub.
    if part.grows_from is None:
        yield Broken("no-cane-left", facts={"age": part.piece.age_years})
