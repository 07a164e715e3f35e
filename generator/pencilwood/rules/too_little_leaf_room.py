"""A spur whose shoots reach the trimming height too soon.

What it checks:
    Works out how many leaves a shoot from each spur can grow before summer trimming.
    It takes the height left above the first bud and the length between buds.

Why it matters:
    Leaves make the sugar. A shoot that is trimmed too early ripens its bunches late or
    badly.

What to do instead:
    Keep a lower cane. If there is none, cut the high one to one bud. Leave a low cane for
    next winter, or ask whether the trimming can be set higher.

Limits:
    The rule counts main leaves only, as if the shoot grew straight up. It takes this year's
    length between buds for next year's. It looks at the first bud; the buds above have less
    room still.

Source:
    14 to 20 leaves per shoot with two bunches: Lodi Winegrape Commission. 12 to 15 active
    leaves: Wines & Vines, November 2011. 12 main leaves cut to 6 delayed ripening: OENO One
    1658.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.measures import leaf_room

NAME: Final = "too-little-leaf-room"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Too little leaf room", "es": "Poco espacio para hojas"}
MESSAGES = {
    "too-few-leaves": {
        "en": (
            "A shoot from here has room for {leaves} leaves before summer trimming. "
            "It needs {least}."
        ),
        "es": (
            "Un brote de aquí tiene espacio para {leaves} hojas antes del despunte. "
            "Necesita {least}."
        ),
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="leaves to ripen a crop",
        kind="count",
        default=14,
        lowest=12,
        highest=20,
        status="published",
        source={
            "en": (
                "14-20 leaves (Lodi Winegrape Commission); 12-15 active leaves (Wines & Vines, Nov "
                "2011)"
            ),
            "es": (
                "14-20 hojas (Lodi Winegrape Commission); 12-15 hojas activas (Wines & Vines, nov. "
                "2011)"
            ),
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Calcula cuántas hojas puede echar un brote antes del despunte de verano. Mira cada
    pulgar. Toma la altura que queda sobre la primera yema y la distancia entre yemas.

Por qué importa:
    Las hojas hacen el azúcar. Un brote que se despunta demasiado pronto madura tarde o mal
    sus racimos.

Qué hacer en su lugar:
    Deje un sarmiento más bajo. Si no lo hay, corte el alto a una yema. Deje un sarmiento
    bajo para el próximo invierno, o pregunte si se puede despuntar más arriba.

Límites:
    La regla cuenta solo las hojas principales, como si el brote creciera vertical, hacia
    arriba. Supone que el año próximo las yemas estarán a la misma distancia que este. Mira
    la primera yema; las de más arriba tienen todavía menos espacio.

Fuente:
    De 14 a 20 hojas por brote con dos racimos: Lodi Winegrape Commission. De 12 a 15 hojas
    activas: Wines & Vines, noviembre de 2011. Bajar de 12 a 6 hojas principales atrasó la
    maduración: OENO One 1658.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if not left.part.is_cane or left.state == 0:
        return
    leaves = leaf_room(left.vine, left.part, 1)
    least = limits["leaves to ripen a crop"]
    if leaves < least:
        facts = {"leaves": leaves, "least": least}
        yield Broken("too-few-leaves", least - leaves, facts)
