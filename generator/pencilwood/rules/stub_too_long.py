"""A long dry stub left above the last bud.

What it checks:
    Checks whether a cut leaves a long piece of bare wood above the last bud.

Why it matters:
    The long piece carries nothing and dries up. It gets in the way of tying and of next
    year's cut. It also makes a spur look longer than it is.

What to do instead:
    Cut a little above the bud, not halfway to the next one. If you left too much, trim it
    now.

Limits:
    The rule knows three answers only: close, right and long. It does not look at stubs of
    older wood. Where trunk disease is a worry, some advisers want longer stubs; then follow
    your vineyard.

Source:
    About 3/4 in (19 mm) beyond the last bud: a table-grape pruning text. A couple of
    centimetres: A. Klodd, University of Minnesota Extension, 2022. Longer stubs against
    trunk disease: Vinehealth Australia, 2023. The reasons given here: common practice, no
    source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, StubLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.passes import Stub

NAME: Final = "stub-too-long"
FAMILY: Final = "cutting"
SHAPE: Final = "stub"
TITLE = {"en": "Stub left too long", "es": "Tocón demasiado largo"}
MESSAGES = {
    "long-stub": {
        "en": "A long stub is left above the bud. About {stub} is enough.",
        "es": "Quedó un tocón largo sobre la yema. Con unos {stub} basta.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mira si el corte deja un trozo largo de madera desnuda sobre la última yema.

Por qué importa:
    Ese trozo no lleva nada y se seca. Estorba al amarrar y al cortar el año siguiente. Además
    hace que el pulgar parezca más largo de lo que es.

Qué hacer en su lugar:
    Corte un poco arriba de la yema, no a medio camino de la siguiente. Si dejó de más,
    recórtelo ahora.

Límites:
    La regla conoce solo tres respuestas: muy cerca, bien y muy largo. No mira los tocones
    de madera más vieja. Donde preocupan las enfermedades de la madera, algunos asesores
    piden dejar más; siga entonces lo que diga su viñedo.

Fuente:
    Cerca de 3/4 de pulgada (19 mm) después de la última yema: un texto de poda de uva de mesa. Un
    par de centímetros: A. Klodd, University of Minnesota Extension, 2022. Tocones más
    largos contra las enfermedades de la madera: Vinehealth Australia, 2023. Las razones de
    esta página: práctica común, sin fuente.
"""


def check(left: StubLeft, limits: Limits) -> Iterator[Broken]:
    if left.stub is Stub.LONG:
        yield Broken("long-stub", facts={"stub_mm": limits["stub above the bud"]})
