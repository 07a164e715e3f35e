"""A cut made in the wrong pass.

What it checks:
    Checks whether each cut is made in the pass it belongs to, and whether you went back to
    an earlier pass. The rough pass only shortens long canes, to a few buds. The
    thinning-out pass takes whole pieces off. The fine pass cuts the spurs.

Why it matters:
    After the rough pass you can see the vine. Then you choose what goes, and only then you
    count buds. Who cuts spurs first often cuts the wrong ones, and a bud cut off cannot be
    put back.

What to do instead:
    Finish one pass before you begin the next. If you find a cut you forgot, note it and do
    better at the next vine.

Limits:
    The rule looks at kinds of cuts, not at your reasons. A skilled pruner may do two passes
    in one walk. Where canes were cut by machine first, the rough pass is already done.

Source:
    Rough pass at 4 or 5 buds, and three passes: common practice, no source. Two passes, the
    first at 10 to 12 in (25 to 30 cm) above last year's spurs, the second to 2-bud spurs:
    University of California.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, CutInPass
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.passes import Pass

NAME: Final = "passes-out-of-order"
FAMILY: Final = "cutting"
SHAPE: Final = "order"
TITLE = {"en": "Passes out of order", "es": "Pasadas fuera de orden"}
MESSAGES = {
    "earlier-pass": {
        "en": "That belongs to a pass you had already finished.",
        "es": "Eso es de una pasada que usted ya había terminado.",
    },
    "not-for-this-pass": {
        "en": "That kind of cut belongs to another pass.",
        "es": "Ese tipo de corte es de otra pasada.",
    },
    "rough-cut-too-long": {
        "en": "The rough pass leaves at most {most} buds on a cane. Here {buds} are left.",
        "es": "En el desbaste quedan {most} yemas como máximo. Aquí quedan {buds}.",
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="buds after the rough pass at least",
        kind="count",
        default=4,
        lowest=3,
        highest=6,
        status="common practice, no source",
        source={
            "en": "rough pass at 4 or 5 buds",
            "es": "desbaste a 4 o 5 yemas",
        },
    ),
    Band(
        name="buds after the rough pass at most",
        kind="count",
        default=5,
        lowest=4,
        highest=8,
        status="common practice, no source",
        source={
            "en": (
                "rough pass at 4 or 5 buds; nearest figure read, a height: 10 to 12 in above the "
                "spurs of last year (University of California)"
            ),
            "es": (
                "desbaste a 4 o 5 yemas; la cifra leída más cercana es una altura: de 10 a 12 "
                "pulgadas arriba de los pulgares del año pasado (University of California)"
            ),
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Mira si cada corte se hace en la pasada que le toca, y si usted volvió a una pasada
    anterior. En la primera pasada solo se acortan los sarmientos largos, a pocas yemas. En
    la segunda se quitan piezas enteras. En la última se cortan los pulgares.

Por qué importa:
    Después de acortar se ve bien la cepa. Entonces se escoge lo que sobra, y solo al final
    se cuentan yemas. Quien corta primero los pulgares muchas veces corta los que no debía,
    y una yema cortada no se puede volver a poner.

Qué hacer en su lugar:
    Termine una pasada antes de empezar la siguiente. Si encuentra un corte olvidado,
    anótelo y hágalo mejor en la próxima cepa.

Límites:
    La regla mira la clase de corte, no sus motivos. Un podador con experiencia puede hacer
    dos pasadas de una vez. Donde la máquina ya acortó los sarmientos, la primera pasada
    está hecha.

Fuente:
    Primera pasada a 4 o 5 yemas, y tres pasadas: práctica común, sin fuente. Dos pasadas,
    la primera a 10 o 12 pulgadas (25 a 30 cm) sobre los pulgares del año anterior, la segunda a
    pulgares de 2 yemas: University of California.
"""


def check(cut: CutInPass, limits: Limits) -> Iterator[Broken]:
    if cut.backwards:
        yield Broken("earlier-pass")
    elif not _belongs(cut, limits):
        yield Broken("not-for-this-pass")
    elif cut.in_pass is Pass.ROUGH and cut.buds_left is not None:
        most = limits["buds after the rough pass at most"]
        if cut.buds_left > most:
            facts = {"buds": cut.buds_left, "most": most}
            yield Broken("rough-cut-too-long", cut.buds_left - most, facts)


def _belongs(cut: CutInPass, limits: Limits) -> bool:
    """Whether this kind of cut is made in this pass."""
    if cut.buds_left is None:
        return cut.in_pass is Pass.THINNING_OUT
    rough_least = limits["buds after the rough pass at least"]
    if cut.in_pass is Pass.ROUGH:
        return cut.buds_left >= rough_least
    if not cut.after_rough:
        return cut.in_pass is Pass.FINE
    # Where spurs of as many buds as a rough cut are allowed, such a cut fits both passes.
    spur_most = max(limits["buds on a spur at most"], rough_least - 1)
    return cut.in_pass is Pass.FINE and cut.buds_left <= spur_most
