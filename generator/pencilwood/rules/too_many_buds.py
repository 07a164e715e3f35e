"""More buds than the vine should carry.

What it checks:
    Counts how many buds are left on the whole vine, against the highest number wanted. The
    number comes from the vine's own target, or from the length of its arms. For a vine
    without arms the vineyard sets a number for the whole vine.

Why it matters:
    Too many buds make too many shoots. The shoots stay thin and shade each other, and the
    bunches ripen late. Next winter there is little good wood to choose from.

What to do instead:
    Take off crowded and doubled spurs first. Then cut weak canes from two buds to one.
    Leave the good spurs their two buds.

Limits:
    The rule counts buds, not the shoots that will come. Not every bud pushes, and latent
    buds add some shoots. Spring shoot thinning can mend a small surplus.

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

NAME: Final = "too-many-buds"
FAMILY: Final = "vine"
SHAPE: Final = "buds"
TITLE = {"en": "Too many buds", "es": "Demasiadas yemas"}
MESSAGES = {
    "above-target": {
        "en": "{buds} buds are left on the vine. It should carry at most {most}.",
        "es": "Quedan {buds} yemas en la cepa. Debe llevar {most} como máximo.",
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="buds per metre at most",
        kind="density",
        default=18 * PER_METRE,
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
    Cuenta cuántas yemas quedan en toda la cepa, frente al máximo que se quiere. El número
    sale de la meta de esa cepa o del largo de sus brazos. Para una cepa sin brazos el
    viñedo fija un número por cepa.

Por qué importa:
    Con demasiadas yemas salen demasiados brotes. Quedan delgados, se dan sombra unos a
    otros y los racimos maduran tarde. El próximo invierno habrá poca madera buena para
    escoger.

Qué hacer en su lugar:
    Quite primero los pulgares apretados o dobles. Después pase los sarmientos débiles de
    dos yemas a una. A los pulgares buenos déjeles sus dos yemas.

Límites:
    La regla cuenta yemas, no los brotes que saldrán. No todas brotan, y las yemas latentes
    agregan algunos brotes. Una pequeña sobra se puede corregir con el desbrote de
    primavera.

Fuente:
    De 3 a 6 brotes por pie, de 10 a 20 por metro, entre las fuentes leídas: J. Fiola,
    University of Maryland Extension, 2021 (de 3 a 5); Lodi Winegrape Commission (de 5 a 6).
    Las razones de esta página: práctica común, sin fuente.
"""


def check(total: BudTotal, limits: Limits) -> Iterator[Broken]:
    if total.buds > total.most:
        facts = {"buds": total.buds, "most": total.most}
        yield Broken("above-target", total.buds - total.most, facts)
