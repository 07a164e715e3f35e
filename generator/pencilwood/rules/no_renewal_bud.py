"""A good low cane taken off while a higher one stays.

What it checks:
    Checks whether a good low cane was taken off while a higher one on the same spur stays.
    Good means sound, of the right thickness and near the arm. It must also grow the way
    that shoots are trained. Of canes that start equally far from the arm, either may go.

Why it matters:
    The low cane keeps the spur near the arm. Without it the spur climbs this winter, and
    again the next. Bringing it down later costs a bigger cut.

What to do instead:
    Keep the lowest good cane and cut it to a spur. Take off the higher ones.

Limits:
    The rule sees canes that are there. It cannot tell whether a low latent bud will wake.
    It does not look at spacing, so now and then the higher cane is the better choice. On
    vines whose shoots hang, low means near the arm, and the farther cane hangs lower.

Source:
    Of two canes on a spur, remove the upper and cut back the lower: Oxford Companion to
    Wine, J. Robinson (editor), 2006.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.measures import away_mm, grows_against
from pencilwood.vine.model import Condition

NAME: Final = "no-renewal-bud"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "No low bud kept for renewal", "es": "Sin yema baja para renovar"}
MESSAGES = {
    "low-cane-removed": {
        "en": (
            "This sound cane near the arm was taken off and one farther out was kept. "
            "Keep the near one."
        ),
        "es": (
            "Se quitó este sarmiento sano, cercano al brazo, y se dejó uno más alejado. "
            "Deje el cercano."
        ),
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mira si se quitó un sarmiento bajo y bueno mientras queda otro más alto en el mismo
    pulgar. Bueno quiere decir sano, del grueso debido y cercano al brazo. También debe
    crecer hacia donde se guían los brotes. De los que nacen a la misma distancia se puede
    quitar cualquiera.

Por qué importa:
    El sarmiento bajo mantiene el pulgar cerca del brazo. Sin él, el pulgar sube este
    invierno y también el siguiente. Bajarlo más tarde cuesta un corte más grande.

Qué hacer en su lugar:
    Deje el sarmiento bueno más bajo y córtelo a pulgar. Quite los que están más arriba.

Límites:
    La regla ve los sarmientos que hay. No puede saber si va a despertar una yema latente
    más abajo. No mira la distancia entre pulgares, así que alguna vez conviene más el de
    arriba. En las cepas cuyos brotes cuelgan, bajo quiere decir cerca del brazo, y el
    sarmiento más alejado cuelga más abajo.

Fuente:
    De los dos sarmientos de un pulgar, se quita el de arriba y se acorta el de abajo:
    Oxford Companion to Wine, J. Robinson (editora), 2006.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if left.part.is_cane and left.state == 0 and left.living_above and _would_serve(left, limits):
        yield Broken("low-cane-removed")


def _would_serve(left: PieceLeft, limits: Limits) -> bool:
    piece = left.piece
    return (
        piece.condition is Condition.SOUND
        and not grows_against(left.vine, piece.lean)
        and limits["cane thickness at least"]
        <= piece.thickness_mm
        <= limits["cane thickness at most"]
        and away_mm(left.vine, left.part) <= limits["climb at most"]
        and _stands_nearest(left)
    )


def _stands_nearest(left: PieceLeft) -> bool:
    """Of two canes as far from the arm either may go."""
    foot_mm = away_mm(left.vine, left.part, 0)
    return all(away_mm(left.vine, part, 0) > foot_mm for part in left.wood_above())
