"""Wrong number of fruiting canes.

What it checks:
    Counts how many fruiting canes are left. A two-cane vine keeps two, a one-cane vine one.

Why it matters:
    Each side of the vine has room for one cane. A side without a cane bears almost
    nothing this year. Two canes on one side shade each other, and the shoots stand too
    thick.

What to do instead:
    Choose the best cane for each side first, then take off the others. Check before you
    walk on: count the long canes with your finger.

Limits:
    The rule counts living canes with enough buds. It does not ask which side a cane
    stands on; you tie it to its side later. Where a weak vine is given a rest, the
    trainer may want fewer.

Source:
    Vines with one cane and with two canes, each with spurs: Oxford Companion to Wine,
    2006, and OENO One 2022 (canes of 10 buds, 1 to 4 on a vine). The number by form:
    common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, TallyTotal
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.long_wood import FRUITING_CANES

NAME: Final = "wrong-cane-count"
FAMILY: Final = "vine"
SHAPE: Final = "tally"
TITLE = {"en": "Wrong number of fruiting canes", "es": "Número equivocado de varas"}
MESSAGES = {
    "too-few": {
        "en": "Fruiting canes left: {count}. The vine needs {wanted}.",
        "es": "Varas que quedan: {count}. La cepa necesita {wanted}.",
    },
    "too-many": {
        "en": "Fruiting canes left: {count}. The vine has room for {wanted}.",
        "es": "Varas que quedan: {count}. La cepa tiene espacio para {wanted}.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Cuenta cuántas varas quedan. Deben ser dos en una cepa de dos varas y una en una de una vara.

Por qué importa:
    Cada lado de la cepa tiene espacio para una vara. Un lado sin vara casi no da uva este
    año. Dos varas en un lado se dan sombra y los brotes quedan demasiado juntos.

Qué hacer en su lugar:
    Escoja primero la mejor vara para cada lado y quite después lo demás. Antes de seguir,
    cuente las varas largas con el dedo.

Límites:
    La regla cuenta sarmientos vivos con suficientes yemas. No pregunta de qué lado está
    la vara; usted la amarra después a su lado. Si una cepa débil debe descansar, el
    instructor puede pedir menos.

Fuente:
    Cepas de una y de dos varas, con pulgares: Oxford Companion to Wine, 2006, y OENO One
    2022 (varas de 10 yemas, de 1 a 4 por cepa). El número de cada forma: práctica común,
    sin fuente.
"""


def check(total: TallyTotal, limits: Limits) -> Iterator[Broken]:
    if total.tally != FRUITING_CANES or total.count == total.wanted:
        return
    facts = {"count": total.count, "wanted": total.wanted}
    message = "too-few" if total.count < total.wanted else "too-many"
    yield Broken(message, abs(total.count - total.wanted), facts)
