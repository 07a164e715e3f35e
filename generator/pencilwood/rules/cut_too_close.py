"""A cut so close that the last bud dries out.

What it checks:
    Checks whether a cut that shortens a cane touches the last bud you keep.

Why it matters:
    Cut wood dries back from its end, above all in cold, dry wind. If the cut is at the bud,
    the bud may dry out. Then the spur has one bud less than you counted.

What to do instead:
    Cut in the bare wood above the bud. Leave a short piece of wood over it. When in doubt,
    leave a little more rather than less.

Limits:
    The rule knows three answers only: close, right and long. It does not judge the slope of
    the cut or how clean it is. Cuts that take a whole piece off are not looked at.

Source:
    About 3/4 in (19 mm) beyond the last bud: a table-grape pruning text. A couple of
    centimetres, because wind dries the wood: A. Klodd, University of Minnesota Extension,
    2022. A hobby page says 1/4 to 1/3 in (6 to 8 mm), so sources disagree.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, StubLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.passes import Stub

NAME: Final = "cut-too-close"
FAMILY: Final = "cutting"
SHAPE: Final = "stub"
TITLE = {"en": "Cut too close to the bud", "es": "Corte demasiado cerca de la yema"}
MESSAGES = {
    "at-the-bud": {
        "en": "Cut right at the bud. Leave about {stub} above it.",
        "es": "Corte pegado a la yema. Deje unos {stub} por encima.",
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="stub above the bud",
        kind="length",
        default=20,
        lowest=6,
        highest=25,
        status="published",
        source={
            "en": (
                "about 3/4 in, 19 mm (table-grape text); a couple of centimetres (A. Klodd, Univ. "
                "Minnesota Extension, 2022); 1/4 to 1/3 in (hobby page)"
            ),
            "es": (
                "cerca de 3/4 de pulgada, 19 mm (texto sobre uva de mesa); un par de centímetros "
                "(A. Klodd, Univ. Minnesota Extension, 2022); de 1/4 a 1/3 de pulgada (página de "
                "aficionados)"
            ),
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Mira si el corte que acorta un sarmiento toca la última yema que usted deja.

Por qué importa:
    La madera cortada se seca desde la punta, sobre todo con viento frío y seco. Si el corte
    queda en la yema, la yema puede secarse. Entonces el pulgar tiene una yema menos de las
    que usted contó.

Qué hacer en su lugar:
    Corte en la madera limpia arriba de la yema. Deje un trozo corto de madera sobre
    ella. Si duda, deje un poco más y no un poco menos.

Límites:
    La regla conoce solo tres respuestas: muy cerca, bien y muy largo. No juzga la
    inclinación del corte ni si quedó limpio. No mira los cortes que quitan una pieza
    entera.

Fuente:
    Cerca de 3/4 de pulgada (19 mm) después de la última yema: un texto de poda de uva de mesa. Un
    par de centímetros, porque el viento seca la madera: A. Klodd, University of Minnesota
    Extension, 2022. Una página de aficionados dice de 1/4 a 1/3 de pulgada (6 a 8 mm): las fuentes
    no coinciden.
"""


def check(left: StubLeft, limits: Limits) -> Iterator[Broken]:
    if left.stub is Stub.CLOSE:
        yield Broken("at-the-bud", facts={"stub_mm": limits["stub above the bud"]})
