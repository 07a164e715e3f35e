"""A weak cane kept as a spur.

What it checks:
    Checks whether a weak cane is kept as a spur. Weak means thinner than the limit, or
    noted as spindly. It costs more points with two buds than with one.

Why it matters:
    A weak cane makes weak shoots and a weak spur next year. It ripens little fruit.

What to do instead:
    Choose a cane of pencil thickness. If the weak one must fill a blank, cut it to one bud.
    One bud has the strength of two to itself.

Limits:
    The rule takes the thickness and the notes as they were written. It cannot see whether
    the wood is alive inside; scratch it and look for green. On a weak old vine all canes
    may be thin.

Source:
    Ideal 5/16 to 1/2 in (8 to 13 mm); keeping thinner wood is the commonest error: F.
    Westover, Wines & Vines, May 2016. Hobby pages say at least 1/4 in (6 mm). Weak canes
    to one bud: California Fruits, an old text. The limit set here lies between these
    figures.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.model import Condition

NAME: Final = "wood-too-thin"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Wood too thin", "es": "Madera demasiado delgada"}
MESSAGES = {
    "weak-cane": {
        "en": "This cane is weak ({thickness} thick). Choose a sound one of at least {least}.",
        "es": (
            "Este sarmiento es débil ({thickness} de grueso). Escoja uno sano de al menos {least}."
        ),
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="cane thickness at least",
        kind="length",
        default=7,
        lowest=6,
        highest=9,
        status="published",
        source={
            "en": (
                "5/16 to 1/2 in, 8 to 13 mm (F. Westover, Wines & Vines, May 2016); at least "
                "1/4 in, 6 mm (hobby pages)"
            ),
            "es": (
                "de 5/16 a 1/2 pulgada, de 8 a 13 mm (F. Westover, Wines & Vines, mayo de 2016); "
                "al menos 1/4 de pulgada, 6 mm (páginas de aficionados)"
            ),
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Mira si se deja como pulgar un sarmiento débil. Débil quiere decir más delgado que el
    límite, o anotado como raquítico. Con dos yemas cuesta más puntos que con una.

Por qué importa:
    Un sarmiento débil da brotes débiles y el año próximo un pulgar débil. Madura poca uva.

Qué hacer en su lugar:
    Escoja un sarmiento del grueso de un lápiz. Si el débil tiene que llenar un hueco,
    córtelo a una yema. Así una sola yema recibe la fuerza de dos.

Límites:
    La regla toma el grueso y las notas como se escribieron. No puede ver si la madera está
    viva por dentro; ráspela y busque el verde. En una cepa vieja y débil todos los
    sarmientos pueden ser delgados.

Fuente:
    Lo ideal es de 5/16 a 1/2 de pulgada (8 a 13 mm); dejar madera más delgada es el error más
    común: F. Westover, Wines & Vines, mayo de 2016. Páginas de aficionados dicen al menos
    1/4 de pulgada (6 mm). Los débiles a una yema: California Fruits, un texto antiguo. El límite
    fijado aquí está entre esas cifras.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if not left.part.is_cane or left.state == 0:
        return
    least_mm = limits["cane thickness at least"]
    if left.piece.thickness_mm < least_mm or left.piece.condition is Condition.SPINDLY:
        facts = {"thickness_mm": left.piece.thickness_mm, "least_mm": least_mm}
        yield Broken("weak-cane", left.state - 1, facts)
