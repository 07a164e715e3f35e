"""More large wounds than a vine should heal in one winter.

What it checks:
    Counts your large cuts in living wood on one vine in one winter.

Why it matters:
    Large cuts are open doors for trunk disease. Behind each one, some wood dries and dies.
    They also wake many latent buds at once.

What to do instead:
    Spread a renewal over several winters. Begin with the worst wood and leave the rest for
    next year. Cut in dry weather, and treat large cuts if your vineyard does so.

Limits:
    The rule counts cuts and does not measure the surface of each. Dead wood may come off
    freely. It does not know the weather or the diseases near you. Sources disagree on the
    best time of winter.

Source:
    Cuts over 15 mm on the trunk carry the highest risk: Vineyard Magazine, UK. Smaller and
    fewer cuts, and not in rain: Vinehealth Australia, 2023. The size and number set here
    for arms: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, WoundTotal
from pencilwood.vine.bands import Band, Limits

NAME: Final = "too-many-large-wounds"
FAMILY: Final = "vine"
SHAPE: Final = "wounds"
TITLE = {
    "en": "Too many large wounds in one winter",
    "es": "Demasiadas heridas grandes en un invierno",
}
MESSAGES = {
    "above-limit": {
        "en": (
            "{wounds} large wounds on one vine this winter. Make at most {most}, "
            "and leave the rest for next winter."
        ),
        "es": (
            "{wounds} heridas grandes en una cepa este invierno. Haga {most} como máximo "
            "y deje lo demás para el próximo invierno."
        ),
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="large wound from",
        kind="length",
        default=25,
        lowest=15,
        highest=40,
        status="common practice, no source",
        source={
            "en": (
                "no source that we read gives a figure for arms; on the trunk wounds over "
                "15 mm are the highest risk (Vineyard Magazine UK)"
            ),
            "es": (
                "ninguna fuente leída da una cifra para brazos; en el tronco, las heridas de más "
                "de 15 mm son el mayor riesgo (Vineyard Magazine UK)"
            ),
        },
    ),
    Band(
        name="large wounds in one winter at most",
        kind="count",
        default=3,
        lowest=1,
        highest=6,
        status="common practice, no source",
        source={
            "en": "no source that we read gives a figure; renewal is spread over winters",
            "es": "ninguna fuente leída da una cifra; la renovación se reparte en varios inviernos",
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Cuenta los cortes grandes que usted hace en la madera viva de una cepa en un invierno.

Por qué importa:
    Un corte grande es una puerta abierta para las enfermedades de la madera. Detrás de cada
    uno se seca y muere algo de madera. Además despiertan muchas yemas latentes a la vez.

Qué hacer en su lugar:
    Reparta la renovación en varios inviernos. Empiece por la peor madera y deje el resto
    para el próximo. Corte con tiempo seco, y proteja los cortes grandes si así se hace en
    su viñedo.

Límites:
    La regla cuenta cortes y no mide la superficie de cada uno. La madera muerta se puede
    quitar sin límite. No sabe del tiempo ni de las enfermedades de su zona. Las fuentes no
    coinciden en cuál es la mejor época del invierno.

Fuente:
    Los cortes de más de 15 mm en el tronco son los de mayor riesgo: Vineyard Magazine,
    Reino Unido. Cortes más pequeños y menos, y no con lluvia: Vinehealth Australia, 2023.
    El tamaño y el número fijados aquí para los brazos: práctica común, sin fuente.
"""


def check(total: WoundTotal, limits: Limits) -> Iterator[Broken]:
    most = limits["large wounds in one winter at most"]
    if total.wounds > most:
        facts = {"wounds": total.wounds, "most": most}
        yield Broken("above-limit", total.wounds - most, facts)
