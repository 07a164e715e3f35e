"""Two spurs too near to each other.

What it checks:
    Measures how far apart neighbouring spurs stand along the arm. On a vine with two arms,
    the spurs on both sides of the head are neighbours too.

Why it matters:
    Crowded spurs make crowded shoots. Leaves and bunches then sit in the shade and dry
    slowly after rain.

What to do instead:
    Take off the poorer of the two spurs at its foot. First look along the arm, so that no
    blank opens. A hand's width between spurs is an easy measure.

Limits:
    The rule measures from foot to foot. It does not see where the canes lean. Good spacing
    alone does not make the bud count right, so check both. Two spurs at one place are the
    business of another rule.

Source:
    A. Klodd, University of Minnesota Extension, 2022: one spur every 3 to 5 in. N. Sperry,
    Texas: 4 to 6 in. F. Westover, Wines & Vines, May 2016: a hand's width. That a hand is
    about 10 cm wide: from memory. The reasons given here: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, Gap
from pencilwood.vine.bands import Band, Limits

NAME: Final = "crowded-spurs"
FAMILY: Final = "vine"
SHAPE: Final = "crowding"
TITLE = {"en": "Spurs crowded", "es": "Pulgares apretados"}
MESSAGES = {
    "too-close": {
        "en": "Two spurs stand {gap} apart. Keep at least {least} between spurs.",
        "es": "Dos pulgares están a {gap} uno del otro. Deje al menos {least} entre pulgares.",
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="spur spacing at least",
        kind="length",
        default=80,
        lowest=76,
        highest=152,
        in_inches=True,
        status="published",
        source={
            "en": (
                "1 spur every 3 to 5 in (A. Klodd, Univ. Minnesota Extension, 2022); 4 to 6 in (N. "
                "Sperry)"
            ),
            "es": (
                "1 pulgar cada 3 a 5 pulgadas (A. Klodd, Univ. Minnesota Extension, "
                "2022); de 4 a 6 pulgadas (N. Sperry)"
            ),
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Mide a qué distancia están los pulgares vecinos a lo largo del brazo. En una cepa de dos
    brazos también son vecinos los pulgares de cada lado de la cabeza.

Por qué importa:
    De pulgares apretados salen brotes apretados. Las hojas y los racimos quedan a la sombra
    y tardan en secarse después de la lluvia.

Qué hacer en su lugar:
    De los dos pulgares, quite el peor en su base. Antes mire a lo largo del brazo, para no
    abrir un hueco. El ancho de una mano entre pulgares es una medida fácil.

Límites:
    La regla mide de base a base. No ve hacia dónde se inclinan los sarmientos. Una buena
    distancia no basta para que la cuenta de yemas sea buena: revise las dos cosas. De dos
    pulgares en un mismo lugar se ocupa otra regla.

Fuente:
    A. Klodd, University of Minnesota Extension, 2022: un pulgar cada 3 a 5 pulgadas. N. Sperry,
    Texas: de 4 a 6 pulgadas. F. Westover, Wines & Vines, mayo de 2016: el ancho de una mano. Que
    una mano mide cerca de 10 cm: de memoria. Las razones de esta página: práctica común,
    sin fuente.
"""


def check(gap: Gap, limits: Limits) -> Iterator[Broken]:
    least_mm = limits["spur spacing at least"]
    if gap.gap_mm < least_mm:
        facts = {"gap_mm": gap.gap_mm, "least_mm": least_mm}
        yield Broken("too-close", least_mm - gap.gap_mm, facts)
