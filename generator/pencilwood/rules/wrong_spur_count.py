"""Wrong number of renewal spurs.

What it checks:
    Counts how many renewal spurs are left on each side of the head where a fruiting cane
    lies. There should be one.

Why it matters:
    Next winter's fruiting cane grows on the renewal spur. Without a spur the only long
    canes stand far out on the old cane, and the vine moves away from its head. Spurs
    beyond that take strength and crowd the head.

What to do instead:
    Leave one short spur of one or two buds below each fruiting cane, close to the head.
    Take the other canes off.

Limits:
    The rule counts living canes cut short. It does not see whether the spur stands below
    the fruiting cane. Some growers leave no spur where the head throws many strong canes.

Source:
    A cane of 8 buds with a spur of 2: a Burgundy estate's film. Canes of 10 buds with a
    spur of 1 to 3 buds on each side: OENO One 2022. Spurs of 2: Oxford Companion to Wine,
    2006. The reasons: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, TallyTotal
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.long_wood import RENEWAL_SPURS

NAME: Final = "wrong-spur-count"
FAMILY: Final = "vine"
SHAPE: Final = "tally"
TITLE = {"en": "Wrong number of renewal spurs", "es": "Número equivocado de pulgares de reemplazo"}
MESSAGES = {
    "too-few-left": {
        "en": "No renewal spur is left on the left of the head. Leave {wanted}.",
        "es": "No queda pulgar de reemplazo a la izquierda de la cabeza. Deje {wanted}.",
    },
    "too-few-right": {
        "en": "No renewal spur is left on the right of the head. Leave {wanted}.",
        "es": "No queda pulgar de reemplazo a la derecha de la cabeza. Deje {wanted}.",
    },
    "too-many-left": {
        "en": "{count} renewal spurs are left on the left of the head. Leave {wanted}.",
        "es": "Quedan {count} pulgares de reemplazo a la izquierda de la cabeza. Deje {wanted}.",
    },
    "too-many-right": {
        "en": "{count} renewal spurs are left on the right of the head. Leave {wanted}.",
        "es": "Quedan {count} pulgares de reemplazo a la derecha de la cabeza. Deje {wanted}.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Cuenta cuántos pulgares de reemplazo quedan de cada lado de la cabeza donde va una vara.
    Debe haber uno.

Por qué importa:
    La vara del próximo invierno crece en el pulgar de reemplazo. Sin pulgar, los
    sarmientos largos quedan lejos, en la vara vieja, y la cepa se aleja de su cabeza. Los
    pulgares de más quitan fuerza y llenan la cabeza.

Qué hacer en su lugar:
    Deje un pulgar corto, de una o dos yemas, debajo de cada vara y cerca de la cabeza.
    Quite los demás sarmientos.

Límites:
    La regla cuenta sarmientos vivos cortados cortos. No ve si el pulgar está debajo de la
    vara. Algunos no dejan pulgar cuando la cabeza echa muchos sarmientos fuertes.

Fuente:
    Una vara de 8 yemas con un pulgar de 2: video de una bodega de Borgoña. Varas de 10
    yemas con un pulgar de 1 a 3 yemas de cada lado: OENO One 2022. Pulgares de 2: Oxford
    Companion to Wine, 2006. Las razones: práctica común, sin fuente.
"""


def check(total: TallyTotal, limits: Limits) -> Iterator[Broken]:
    side = next((side for side, name in RENEWAL_SPURS.items() if name == total.tally), None)
    if side is None or total.count == total.wanted:
        return
    missing = total.wanted - total.count
    if missing > 0:
        yield Broken(f"too-few-{side}", missing, {"wanted": total.wanted})
    else:
        facts = {"count": total.count, "wanted": total.wanted}
        yield Broken(f"too-many-{side}", -missing, facts)
