"""A spur on the head, where shoots crowd the middle of the vine.

What it checks:
    Checks whether a spur is kept in the head zone. That is the short stretch on each side
    of the trunk.

Why it matters:
    Shoots from both arms meet at the head. Spurs there make it dense and dark, and water
    sprouts often grow strong. The picker and the sprayer then cannot get in.

What to do instead:
    Take canes in the head zone off at their foot. Keep one only if a blank would open
    beside it. Then it is the smaller fault, and the score says so.

Limits:
    The rule measures from the middle of the head and nothing else. It does not see how
    dense the head really is. It does not know that a young vine may still need wood there.

Source:
    How wide the head zone is along the arm: common practice, no source. The nearest figure
    read is a height: the head 4 to 5 in (10 to 13 cm) under the wire, OSU Extension.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits

NAME: Final = "head-wood"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Wood left in the head zone", "es": "Se dejó madera en la zona de la cabeza"}
MESSAGES = {
    "kept": {
        "en": (
            "This spur stands {at} from the middle of the head. Keep one here only to fill a blank."
        ),
        "es": (
            "Este pulgar está a {at} del centro de la cabeza. "
            "Aquí se deja solo para llenar un hueco."
        ),
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="head zone",
        kind="length",
        default=100,
        lowest=50,
        highest=150,
        status="common practice, no source",
        source={
            "en": (
                "no source that we read gives a width; the nearest figure is a height: "
                "head 4 to 5 in (10 to 13 cm) below the wire "
                "(OSU Extension, How to renew a grapevine cordon)"
            ),
            "es": (
                "ninguna fuente leída da un ancho; la cifra más cercana es una altura: cabeza "
                "de 4 a 5 pulgadas (de 10 a 13 cm) "
                "debajo del alambre (OSU Extension, How to renew a grapevine cordon)"
            ),
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Mira si queda un pulgar en la zona de la cabeza. Es el tramo corto a cada lado del
    tronco.

Por qué importa:
    En la cabeza se juntan los brotes de los dos brazos. Los pulgares de ahí la vuelven
    densa y oscura, y los chupones suelen crecer con fuerza. Después no entran bien ni la
    mano al cosechar ni lo que se fumiga.

Qué hacer en su lugar:
    Quite en su base los sarmientos de la cabeza. Deje uno solo si al lado se abriría un
    hueco. En ese caso es la falta menor, y el puntaje lo refleja.

Límites:
    La regla mide desde el centro de la cabeza y nada más. No ve qué tan densa está de
    verdad. No sabe si una cepa joven necesita todavía madera ahí.

Fuente:
    El ancho de la zona de la cabeza a lo largo del brazo: práctica común, sin fuente. La
    cifra leída más cercana es una altura: la cabeza 4 a 5 pulgadas (10 a 13 cm) debajo del
    alambre, OSU Extension.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if not left.part.is_cane or left.state == 0:
        return
    at_mm = left.part.position.at_mm
    if at_mm < limits["head zone"]:
        yield Broken("kept", facts={"at_mm": at_mm})
