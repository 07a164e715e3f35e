"""A long stretch around the head without a spur.

What it checks:
    Looks at every stretch between neighbouring spurs, measured with a tape around the head.
    The last spur and the first one are neighbours too.

Why it matters:
    A vine with an open side carries all its weight on the other one. It can lean or split.
    The shoots beside the gap grow too strong, and sun burns the bunches there.

What to do instead:
    Keep one cane on the open side, even a poor one, and cut it to one bud. A water sprout in
    the right place can start a new short arm.

Limits:
    The rule measures along the tape, from foot to foot. It does not see how far each short
    arm reaches or where its canes lean. It is only for vines with spurs around a head.

Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, Gap
from pencilwood.vine.bands import Band, Limits

NAME: Final = "open-side"
FAMILY: Final = "vine"
SHAPE: Final = "blank"
TITLE = {"en": "Open side on the head", "es": "Lado vacío en la cabeza"}
MESSAGES = {
    "too-wide": {
        "en": "{gap} around the head has no spur. Leave no stretch longer than {most}.",
        "es": ("Hay {gap} alrededor de la cabeza sin pulgar. No deje tramos de más de {most}."),
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="stretch around the head at most",
        kind="length",
        default=300,
        lowest=200,
        highest=450,
        status="common practice, no source",
        source={
            "en": "about a quarter of the way around a head of usual size",
            "es": "cerca de un cuarto de la vuelta de una cabeza de tamaño usual",
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Mira cada tramo entre pulgares vecinos, medido con cinta alrededor de la cabeza. El
    último pulgar y el primero también son vecinos.

Por qué importa:
    Una cepa con un lado vacío lleva todo el peso en el otro. Se puede ladear o partir. Los
    brotes junto al hueco crecen con demasiada fuerza, y ahí el sol quema los racimos.

Qué hacer en su lugar:
    Deje un sarmiento en el lado vacío, aunque no sea bueno, y córtelo a una yema. Un chupón
    bien colocado puede empezar un brazo corto nuevo.

Límites:
    La regla mide por la cinta, de base a base. No ve hasta dónde llega cada brazo corto ni
    hacia dónde se inclinan sus sarmientos. Es solo para cepas con pulgares alrededor de una
    cabeza.

Fuente:
    Práctica común, sin fuente.
"""


def check(gap: Gap, limits: Limits) -> Iterator[Broken]:
    most_mm = limits["stretch around the head at most"]
    if gap.gap_mm > most_mm:
        facts = {"gap_mm": gap.gap_mm, "most_mm": most_mm}
        yield Broken("too-wide", gap.gap_mm - most_mm, facts)
