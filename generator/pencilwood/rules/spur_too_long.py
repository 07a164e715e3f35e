"""A spur with more buds than it should carry.

What it checks:
    Counts the buds that are left on each cane. The crowded basal bud at the very foot is
    not counted.

Why it matters:
    On a long spur the top buds push first and the low ones often sleep. The spur then walks
    away from the arm. Extra buds also make extra shoots and shade.

What to do instead:
    Count up from the foot and cut above the last bud you want. A weak cane gets one bud, a
    normal one two. If your vineyard allows three, its profile says so.

Limits:
    The rule counts buds, not length. It cannot see which buds bear fruit; on some varieties
    the low ones bear little. Long fruiting canes belong to another way of pruning.

Source:
    1, 2 or 3 buds by system, the bud at the very base not counted: OSU Extension, How to
    spur prune. 2 to 3: A. Klodd, University of Minnesota Extension, 2022. Three-bud spurs
    let the bottom bud fail: Oxford Companion to Wine, 2006. Spurs of 1 to 2 buds as the
    usual rule: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits

NAME: Final = "spur-too-long"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Spur too long", "es": "Pulgar demasiado largo"}
MESSAGES = {
    "too-many-buds": {
        "en": "{buds} buds are left on this spur. Leave {most} at most.",
        "es": "Quedan {buds} yemas en este pulgar. Deje {most} como mucho.",
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="buds on a spur at most",
        kind="count",
        default=2,
        lowest=1,
        highest=3,
        status="published",
        source={
            "en": (
                "1, 2 or 3 buds by system (OSU Extension, How to spur prune); 2-3 (A. Klodd, 2022)"
            ),
            "es": (
                "1, 2 o 3 yemas según el sistema (OSU Extension, How to spur prune); 2-3 (A. "
                "Klodd, 2022)"
            ),
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Cuenta cuántas yemas quedan en cada sarmiento. La yema ciega, la de la base, no se
    cuenta.

Por qué importa:
    En un pulgar largo brotan primero las yemas de arriba, y las de abajo muchas veces se
    quedan dormidas. Así el pulgar se aleja del brazo. Las yemas de más dan también brotes
    de más y sombra.

Qué hacer en su lugar:
    Cuente desde la base y corte arriba de la última yema que quiere. A un sarmiento
    débil déjele una yema, a uno normal dos. Si en su viñedo se permiten tres, lo dice su
    perfil.

Límites:
    La regla cuenta yemas, no mide el largo. No puede ver qué yemas dan uva; en algunas
    variedades las de abajo dan poca. Las varas largas son de otro sistema de poda.

Fuente:
    De 1 a 3 yemas según el sistema, sin contar la de la base: OSU Extension, How to spur
    prune. De 2 a 3: A. Klodd, University of Minnesota Extension, 2022. Con tres yemas falla
    la de abajo: Oxford Companion to Wine, 2006. Pulgares de 1 o 2 yemas como regla usual:
    práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    most = limits["buds on a spur at most"]
    if left.part.is_cane and left.state > most:
        facts = {"buds": left.state, "most": most}
        yield Broken("too-many-buds", left.state - most, facts)
