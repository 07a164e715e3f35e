"""Cane not tied to its side.

What it checks:
    Checks whether each fruiting cane is tied along the wire. Each has a side of its own,
    where the vine has room.

Why it matters:
    A loose cane swings, rubs and breaks in the wind and under machines. Two canes on one
    side shade each other while the other side stays empty. A cane tied into the
    neighbour's room takes the light of both.

What to do instead:
    Bend the cane slowly, on a mild or damp day, with one hand near its foot. Tie it at
    the tip and once in between, loose enough for the wood to thicken. Keep your face out
    of its way: a cane that slips springs back.

Limits:
    The rule sees the side only. It does not see knots, or how far the cane was bent.
    Cracking a little in the bend is usual; a cane broken through is lost.

Source:
    The whole rule: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, CaneTied
from pencilwood.vine.bands import Band, Limits

NAME: Final = "cane-not-tied"
FAMILY: Final = "cutting"
SHAPE: Final = "tie"
TITLE = {"en": "Cane not tied to its side", "es": "Vara sin amarrar a su lado"}
MESSAGES = {
    "not-tied": {
        "en": "Not tied to the wire.",
        "es": "Sin amarrar al alambre.",
    },
    "wrong-side": {
        "en": "The vine has no room on that side. Tie to the other side.",
        "es": "La cepa no tiene espacio de ese lado. Amarre al otro lado.",
    },
    "both-to-one-side": {
        "en": "Another cane is tied to that side already. Each side gets one.",
        "es": "Ya hay otra vara amarrada a ese lado. A cada lado le toca una.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mira si cada vara está amarrada al alambre. Cada una tiene su propio lado, donde la cepa
    tiene espacio.

Por qué importa:
    Una vara suelta se mueve, se roza y se quiebra con el viento y las máquinas. Dos varas
    en un lado se dan sombra y el otro lado queda vacío. Una vara amarrada en el lugar de
    la vecina les quita luz a las dos.

Qué hacer en su lugar:
    Doble la vara despacio, en un día templado o húmedo, con una mano cerca de la base.
    Amárrela en la punta y una vez en el medio, sin apretar, para que la madera pueda engrosar.
    Aparte la cara: la vara que se suelta pega como un látigo.

Límites:
    La regla solo ve el lado. No ve los nudos ni cuánto se dobló la vara. Que truene un
    poco en la curva es normal; la que se quiebra del todo se pierde.

Fuente:
    Toda la regla: práctica común, sin fuente.
"""


def check(cane: CaneTied, limits: Limits) -> Iterator[Broken]:
    if cane.side is None:
        yield Broken("not-tied")
    elif not cane.has_room:
        yield Broken("wrong-side")
    elif cane.others:
        yield Broken("both-to-one-side")
