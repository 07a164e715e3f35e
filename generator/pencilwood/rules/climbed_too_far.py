"""A spur whose buds stand far above the arm.

What it checks:
    How high the first counted bud of each spur stands above the arm.

Why it matters:
    A spur grows a little longer each winter. The sap then has to pass through more old, cut
    wood. Shoots from a high spur start nearer to the top and have less room.

What to do instead:
    Keep the lowest good cane and take off the wood above it. If every good cane is high,
    keep one short spur up there. Below it, leave a low cane with one bud. It can take over
    next winter.

Limits:
    The rule measures height only. It does not see a spur that creeps along the arm. On some
    vines no low cane has grown, and then no cut can help this winter.

Source:
    That the upper cane goes and the lower one stays, so the spur does not walk away: Oxford
    Companion to Wine, J. Robinson (editor), 2006. The height allowed here: common practice,
    no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits

NAME: Final = "climbed-too-far"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Climbed too far from the arm", "es": "Pulgar demasiado lejos del brazo"}
MESSAGES = {
    "too-high": {
        "en": "The first bud stands {climb} above the arm. Keep it within {most}.",
        "es": "La primera yema está {climb} por encima del brazo. Que no pase de {most}.",
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
        source="a spur is kept within reach of the arm; no figure was read",
    ),
)
PAGE_ES = """
Qué revisa:
    A qué altura sobre el brazo está la primera yema contada de cada pulgar.

Por qué importa:
    Cada invierno el pulgar se alarga un poco. La savia tiene que pasar entonces por más
    madera vieja y con cortes. Los brotes de un pulgar alto salen más arriba y tienen menos
    espacio.

Qué hacer en su lugar:
    Deje el sarmiento bueno más bajo y quite la madera que queda encima. Si todos los buenos
    están altos, deje arriba un solo pulgar corto. Más abajo deje un sarmiento a una yema.
    El próximo invierno puede ocupar su lugar.

Límites:
    La regla solo mide la altura. No ve un pulgar que se ha alargado siguiendo el brazo. En
    algunas cepas no salió ningún sarmiento bajo, y este invierno no hay corte que lo
    arregle.

Fuente:
    Que se quita el sarmiento de arriba y se deja el de abajo, para que el pulgar no se
    aleje: Oxford Companion to Wine, J. Robinson (editora), 2006. La altura que se permite
    aquí: práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if not left.part.is_cane or left.state == 0:
        return
    climb_mm = left.part.bud_height_mm(1)
    most_mm = limits["climb at most"]
    if climb_mm > most_mm:
        facts = {"climb_mm": climb_mm, "most_mm": most_mm}
        yield Broken("too-high", climb_mm - most_mm, facts)
