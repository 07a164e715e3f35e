"""A bull cane kept as a spur.

What it checks:
    Checks whether a very thick cane, a bull cane, is kept as a spur.

Why it matters:
    Bull wood is thick, with long gaps between its buds. Its buds push less surely. The
    shoots that do come grow wild and shade the others.

What to do instead:
    Choose a cane of pencil thickness beside it. If the thick one is all there is, keep it
    rather than open a blank.

Limits:
    The rule takes the thickness noted for the cane. It does not look at colour, shape or
    the length between buds. Some varieties always grow thicker canes; then the profile
    should say so.

Source:
    Ideal 5/16 to 1/2 in (8 to 13 mm); thicker bull wood pushes less reliably and has
    long internodes: F. Westover, Wines & Vines, May 2016.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits

NAME: Final = "wood-too-thick"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Wood too thick", "es": "Madera demasiado gruesa"}
MESSAGES = {
    "bull-wood": {
        "en": "This cane is {thickness} thick. Above {most} it is bull wood.",
        "es": ("Este sarmiento mide {thickness} de grueso. Con más de {most} es muy vigoroso."),
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="cane thickness at most",
        kind="length",
        default=13,
        lowest=10,
        highest=16,
        status="published",
        source={
            "en": (
                "5/16 to 1/2 in, 8 to 13 mm (F. Westover, Wines & Vines, May 2016); the ends of "
                "the range: common practice"
            ),
            "es": (
                "de 5/16 a 1/2 pulgada, de 8 a 13 mm (F. Westover, Wines & Vines, mayo de 2016); "
                "los extremos del intervalo: práctica común"
            ),
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Mira si se deja como pulgar un sarmiento muy grueso, es decir, muy vigoroso.

Por qué importa:
    Un sarmiento así tiene las yemas muy separadas. Sus yemas no brotan tan bien.
    Los brotes que salen crecen sin medida y dan sombra a los demás.

Qué hacer en su lugar:
    Escoja al lado un sarmiento del grueso de un lápiz. Si el grueso es el único, déjelo
    antes que abrir un hueco.

Límites:
    La regla toma el grueso que se anotó. No mira el color, la forma ni la distancia entre
    yemas. Algunas variedades siempre dan sarmientos más gruesos; entonces el perfil debe
    decirlo.

Fuente:
    Lo ideal es de 5/16 a 1/2 de pulgada (8 a 13 mm); lo más grueso no brota tan bien y
    tiene entrenudos largos: F. Westover, Wines & Vines, mayo de 2016.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    most_mm = limits["cane thickness at most"]
    if left.part.is_cane and left.state > 0 and left.piece.thickness_mm > most_mm:
        facts = {"thickness_mm": left.piece.thickness_mm, "most_mm": most_mm}
        yield Broken("bull-wood", facts=facts)
