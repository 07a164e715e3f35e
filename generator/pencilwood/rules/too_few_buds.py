"""Fewer buds than the vine should carry.

What it checks:
    Counts how many buds are left on the whole vine, against the lowest number wanted. The
    number comes from the vine's own target, or from the length of its arms. For a vine
    without arms the vineyard sets a number for the whole vine.

Why it matters:
    Too few buds waste the vine's strength. The few shoots grow thick and leafy, and water
    sprouts wake in old wood. The crop is small.

What to do instead:
    Before the last cuts, count what you have. Leave two buds on your strong spurs, and fill
    blanks before you make spurs longer. Never leave extra buds on one spur to make up the
    number.

Limits:
    The rule counts buds, not the shoots that will come. Frost, insects or old age may have
    killed some. On a poor vine the number may be out of reach, and then the plan loses
    points too. Cut open some buds after a hard frost.

Source:
    3 to 6 shoots per foot, 10 to 20 per metre, over the sources read: J. Fiola, University
    of Maryland Extension, 2021 (3 to 5); Lodi Winegrape Commission (5 to 6). The reasons
    given here: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, BudTotal
from pencilwood.units import PER_METRE
from pencilwood.vine.bands import Band, Limits

NAME: Final = "too-few-buds"
FAMILY: Final = "vine"
SHAPE: Final = "buds"
TITLE = {"en": "Too few buds", "es": "Muy pocas yemas"}
MESSAGES = {
    "below-target": {
        "en": "{buds} buds are left on the vine. It should carry at least {least}.",
        "es": "Quedan {buds} yemas en la cepa. Debe llevar al menos {least}.",
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="buds per metre at least",
        kind="density",
        default=12 * PER_METRE,
        lowest=10 * PER_METRE,
        highest=20 * PER_METRE,
        status="published",
        source={
            "en": (
                "3 to 6 shoots per foot, 10 to 20 per metre, over the sources read for upright "
                "shoots (Univ. Maryland Extension, 2021; Lodi Winegrape Commission)"
            ),
            "es": (
                "de 3 a 6 brotes por pie, de 10 a 20 por metro, en las fuentes leídas sobre brotes "
                "que suben (Univ. Maryland Extension, 2021; Lodi Winegrape Commission)"
            ),
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Cuenta cuántas yemas quedan en toda la cepa, frente al mínimo que se quiere. El número
    sale de la meta de esa cepa o del largo de sus brazos. Para una cepa sin brazos el
    viñedo fija un número por cepa.

Por qué importa:
    Con muy pocas yemas se desperdicia la fuerza de la cepa. Los pocos brotes salen gruesos
    y con mucha hoja, y despiertan chupones en la madera vieja. La cosecha es pequeña.

Qué hacer en su lugar:
    Antes de los últimos cortes, cuente lo que lleva. Deje dos yemas en los pulgares fuertes
    y llene huecos antes de alargar pulgares. No deje yemas de más en un pulgar solo para
    llegar al número.

Límites:
    La regla cuenta yemas, no los brotes que saldrán. La helada, los insectos o la edad
    pueden haber matado algunas. En una cepa pobre el número quizá no se alcanza, y entonces
    el plan también pierde puntos. Después de una helada fuerte, abra algunas yemas y
    mírelas.

Fuente:
    De 3 a 6 brotes por pie, de 10 a 20 por metro, entre las fuentes leídas: J. Fiola,
    University of Maryland Extension, 2021 (de 3 a 5); Lodi Winegrape Commission (de 5 a 6).
    Las razones de esta página: práctica común, sin fuente.
"""


def check(total: BudTotal, limits: Limits) -> Iterator[Broken]:
    if total.buds < total.least:
        facts = {"buds": total.buds, "least": total.least}
        yield Broken("below-target", total.least - total.buds, facts)
