"""A spur whose buds stand far from the arm.

What it checks:
    Measures how far from the arm the first counted bud of each spur stands. That is above
    the arm, or below it on vines whose shoots hang.

Why it matters:
    A spur grows a little longer each winter. The sap then has to pass through more old, cut
    wood. Shoots from a far spur start nearer to where they are trimmed and have less room.

What to do instead:
    Keep the good cane nearest to the arm and take off the wood beyond it. If every good cane
    is far out, keep one short spur there. Leave a near cane with one bud as well. It can take
    over next winter.

Limits:
    The rule measures straight up or down. It does not see a spur that creeps along the arm.
    On some vines no near cane has grown, and then no cut can help this winter.

Source:
    That the upper cane goes and the lower one stays, so the spur does not walk away: Oxford
    Companion to Wine, J. Robinson (editor), 2006. The distance allowed here: common practice,
    no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.measures import away_mm

NAME: Final = "climbed-too-far"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Climbed too far from the arm", "es": "Pulgar demasiado lejos del brazo"}
MESSAGES = {
    "too-high": {
        "en": "The first bud stands {climb} from the arm. Keep it within {most}.",
        "es": "La primera yema está a {climb} del brazo. Que no pase de {most}.",
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="climb at most",
        kind="length",
        default=150,
        lowest=80,
        highest=250,
        status="common practice, no source",
        source={
            "en": "a spur is kept within reach of the arm; no source that we read gives a figure",
            "es": "el pulgar se mantiene cerca del brazo; ninguna fuente leída da una cifra",
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Mide a qué distancia del brazo está la primera yema contada de cada pulgar: por encima,
    o por debajo en las cepas cuyos brotes cuelgan.

Por qué importa:
    Cada invierno el pulgar se alarga un poco. La savia tiene que pasar entonces por más
    madera vieja y con cortes. Los brotes de un pulgar alejado salen más cerca de donde se
    despuntan y tienen menos espacio.

Qué hacer en su lugar:
    Deje el sarmiento bueno más cercano al brazo y quite la madera que sigue más allá. Si todos
    los buenos están lejos, deje allí un solo pulgar corto. Cerca del brazo deje un sarmiento
    a una yema. El próximo invierno puede ocupar su lugar.

Límites:
    La regla solo mide hacia arriba o hacia abajo. No ve un pulgar que se ha alargado
    siguiendo el brazo. En algunas cepas no salió ningún sarmiento cercano, y este invierno no
    hay corte que lo arregle.

Fuente:
    Que se quita el sarmiento de arriba y se deja el de abajo, para que el pulgar no se
    aleje: Oxford Companion to Wine, J. Robinson (editora), 2006. La distancia que se permite
    aquí: práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if not left.part.is_cane or left.state == 0:
        return
    climb_mm = away_mm(left.vine, left.part)
    most_mm = limits["climb at most"]
    if climb_mm > most_mm:
        facts = {"climb_mm": climb_mm, "most_mm": most_mm}
        yield Broken("too-high", climb_mm - most_mm, facts)
