"""Neither a spur nor a fruiting cane.

What it checks:
    Looks at every living or dead cane that is left. It must be short like a spur or long
    like a fruiting cane. One in between breaks a must: with it the vine does not pass. A
    fruiting cane with more buds than allowed costs points, more for each bud.

Why it matters:
    A cane of in-between length fruits like neither. It is too short to tie along the
    wire, and too long to give low wood for next winter. A cane left too long has weak
    shoots in its middle.

What to do instead:
    Decide what each cane is to be. A fruiting cane keeps its full number of buds; a
    renewal spur keeps one or two. All others come off at the foot.

Limits:
    The rule counts buds and does not measure the room on the wire. Ripe, strong canes can
    bear a few more buds than weak ones. Some regions leave longer spurs on purpose.

Source:
    Canes of 5 to 15 buds, spurs of 2: Oxford Companion to Wine, 2006. 12 buds: Australian
    Journal of Grape and Wine Research, 2014. 10 buds: OENO One 2022. 8 buds and a spur of
    2: a Burgundy estate's film. 10 to 12 if ripe, 6 to 8 if not: a table-grape text. That
    nothing in between is left: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits

NAME: Final = "neither-spur-nor-cane"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Neither a spur nor a fruiting cane", "es": "Ni pulgar ni vara"}
MESSAGES = {
    "in-between": {
        "en": (
            "{buds} buds are too many for a spur and too few for a fruiting cane. "
            "Leave up to {spur}, or {least} to {most}."
        ),
        "es": (
            "{buds} yemas son muchas para un pulgar y pocas para una vara. "
            "Deje hasta {spur}, o de {least} a {most}."
        ),
    },
    "too-long": {
        "en": "{buds} buds are left on this fruiting cane. Leave {least} to {most}.",
        "es": "En esta vara quedan {buds} yemas. Deje de {least} a {most}.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mira cada sarmiento que queda, vivo o muerto. Debe ser corto como un pulgar o largo como
    una vara. Uno a medias incumple lo obligatorio: con él la cepa no aprueba. Una vara con
    más yemas de las permitidas cuesta puntos, más por cada yema.

Por qué importa:
    Un sarmiento a medias no sirve ni para una cosa ni para la otra. Es corto para
    amarrarlo al alambre y largo para dar madera baja el próximo invierno. Una vara
    demasiado larga da brotes débiles en el medio.

Qué hacer en su lugar:
    Decida qué va a ser cada sarmiento. La vara conserva todas sus yemas; el pulgar de
    reemplazo, una o dos. Lo demás se quita en la base.

Límites:
    La regla cuenta yemas y no mide el espacio que hay en el alambre. Un sarmiento maduro y
    fuerte aguanta más yemas que uno débil. En algunas regiones se dejan pulgares más
    largos a propósito.

Fuente:
    Varas de 5 a 15 yemas, pulgares de 2: Oxford Companion to Wine, 2006. 12 yemas:
    Australian Journal of Grape and Wine Research, 2014. 10 yemas: OENO One 2022. 8 yemas
    y un pulgar de 2: video de una bodega de Borgoña. De 10 a 12 si está maduro, de 6 a
    8 si no: un texto de uva de mesa. Que no quede nada intermedio: práctica común, sin
    fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    spur = limits["buds on a spur at most"]
    least = limits["buds on a fruiting cane at least"]
    most = limits["buds on a fruiting cane at most"]
    if not left.part.is_cane or left.state <= spur:
        return
    if left.state < least:
        facts = {"buds": left.state, "spur": spur, "least": least, "most": most}
        yield Broken("in-between", 0, facts)
    elif left.state > most:
        yield Broken(
            "too-long", left.state - most, {"buds": left.state, "least": least, "most": most}
        )
