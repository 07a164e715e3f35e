"""Bare old wood or a dead stub left beyond the last spur.

What it checks:
    Checks whether bare old wood is left beyond the last spur. It also checks whether a dead
    stub is left anywhere.

Why it matters:
    Bare wood dies back and dries. A dead stub keeps the wound from closing and gives
    disease a home. It is also in the way of next winter's shears.

What to do instead:
    Cut old wood back to the cane that you keep. Cut a dead stub off where it grows. Leave a
    little wood at a large cut, because the cut dries inward.

Limits:
    The rule does not see how much wood you leave at the cut itself. Very short ends are not
    counted at all. Whether a stub is dead was noted by the person who measured the vine.

Source:
    On older wood, a stub as long as it is thick is the usual advice. IVES Technical Reviews
    article 8418 reports it and questions it. The rest: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits

NAME: Final = "old-stub"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {
    "en": "Dead stub or old wood left behind",
    "es": "Quedó un tocón muerto o madera vieja",
}
MESSAGES = {
    "bare-end": {
        "en": "{length} of bare old wood is left beyond the last spur. Cut it back.",
        "es": "Más allá del último pulgar hay {length} de madera vieja desnuda. Córtela.",
    },
    "dead-end": {
        "en": "A dead stub is left. Cut it off at its foot.",
        "es": "Quedó un tocón muerto. Córtelo en su base.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mira si queda madera vieja desnuda más allá del último pulgar. Mira también si queda un
    tocón muerto en cualquier parte.

Por qué importa:
    La madera desnuda se seca hacia atrás. Un tocón muerto no deja cerrar la herida y da
    refugio a las enfermedades. Además estorba a las tijeras el próximo invierno.

Qué hacer en su lugar:
    Corte la madera vieja hasta el sarmiento que deja. Corte el tocón muerto donde nace. En
    un corte grande deje un poco de madera, porque el corte se seca hacia adentro.

Límites:
    La regla no ve cuánta madera deja usted en el corte mismo. Las puntas muy cortas no se
    cuentan. Que un tocón esté muerto lo anotó quien midió la cepa.

Fuente:
    En madera vieja se suele aconsejar un tocón tan largo como su grueso. El artículo 8418
    de IVES Technical Reviews lo cuenta y lo pone en duda. Lo demás: práctica común, sin
    fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    part = left.part
    if part.is_cane or left.state == 0 or left.living_above:
        return
    if not part.piece.is_alive:
        yield Broken("dead-end")
    elif part.grows_from is not None:
        yield Broken("bare-end", facts={"length_mm": part.end_mm - part.start_mm})
