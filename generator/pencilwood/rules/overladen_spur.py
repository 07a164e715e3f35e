"""A spur with more buds than its strength can feed.

What it checks:
    Counts how many buds are left on a cane, against its thickness. A thin cane may carry
    one bud, a cane of medium strength two. A strong one may carry three.

Why it matters:
    A cane shows by its thickness how strong its place on the head is. Too many buds on a weak
    place make weak shoots. Then the short arm gets weaker each year.

What to do instead:
    Look at the cane, and do not cut by habit. Cut a thin cane to one bud. Cut a good one to
    two, and a strong one to three at most.

Limits:
    The rule sees thickness alone. Length and ripe wood tell of strength too. How thick is
    strong depends on the variety and the site, so set the figures for your own vines.

Source:
    Spurs of 1, 2 or 3 internodes by vigour on head-trained vines: U. P. Hedrick, Manual of
    American Grape-Growing. Weak canes to 1 bud, normal to 2, strong to 3: California Fruits,
    an old text. The thicknesses set here: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits

NAME: Final = "overladen-spur"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Spur too long for its strength", "es": "Pulgar demasiado largo para su fuerza"}
MESSAGES = {
    "too-weak": {
        "en": "This cane is {thickness} thick and has {buds} buds. It can carry {most}.",
        "es": "Este sarmiento tiene {thickness} de grueso y {buds} yemas. Puede llevar {most}.",
    },
}
_FROM: Final = {
    "en": (
        "no source that we read gives a thickness; only 1, 2 or 3 buds on a spur by vigour "
        "(U. P. Hedrick)"
    ),
    "es": (
        "ninguna fuente leída da un grosor; solo 1, 2 o 3 yemas en un pulgar según la fuerza "
        "(U. P. Hedrick)"
    ),
}
BANDS: tuple[Band, ...] = (
    Band(
        name="thickness for two buds at least",
        kind="length",
        default=8,
        lowest=6,
        highest=9,
        status="common practice, no source",
        source=_FROM,
    ),
    Band(
        name="thickness for three buds at least",
        kind="length",
        default=11,
        lowest=9,
        highest=13,
        status="common practice, no source",
        source=_FROM,
    ),
)
PAGE_ES = """
Qué revisa:
    Cuenta cuántas yemas quedan en un sarmiento, según su grueso. Uno de fuerza media puede
    llevar dos yemas, uno fuerte tres, y uno más delgado una sola.

Por qué importa:
    El grueso del sarmiento muestra cuánta fuerza tiene ese lugar de la cabeza. Demasiadas
    yemas en un lugar débil dan brotes débiles, y el brazo corto pierde fuerza cada año.

Qué hacer en su lugar:
    Mire el sarmiento y no corte por costumbre. Deje una yema al delgado, dos al bueno y tres
    como mucho al fuerte.

Límites:
    La regla ve solo el grueso. También el largo y la madera madura hablan de la fuerza. Desde
    qué grueso es fuerte un sarmiento depende de la variedad y del terreno: fije las cifras
    para sus propias cepas.

Fuente:
    Pulgares de 1, 2 o 3 entrenudos según el vigor en cepas en cabeza: U. P. Hedrick, Manual
    of American Grape-Growing. Débiles a 1 yema, normales a 2, fuertes a 3: California Fruits,
    un texto antiguo. Los gruesos fijados aquí: práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if not left.part.is_cane or left.state == 0:
        return
    most = _buds_for(left.piece.thickness_mm, limits)
    if left.state > most:
        facts = {"thickness_mm": left.piece.thickness_mm, "buds": left.state, "most": most}
        yield Broken("too-weak", left.state - most, facts)


def _buds_for(thickness_mm: int, limits: Limits) -> int:
    if thickness_mm >= limits["thickness for three buds at least"]:
        return 3
    return 2 if thickness_mm >= limits["thickness for two buds at least"] else 1
