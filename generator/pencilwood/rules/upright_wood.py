"""An upright cane kept on a vine whose shoots hang.

What it checks:
    On a vine whose shoots hang: checks whether an upright cane on top of the arm is kept. The
    canes to keep are those that hang or point to the side.

Why it matters:
    Upright shoots grow strong. Sooner or later wind or their own weight throws them over.
    They break, or they fall across the others and shade the whole row.

What to do instead:
    Choose a cane that hangs, or one that points to the side. Take the upright one off at its
    foot. Keep it only if a long blank would open.

Limits:
    The rule looks at the lean of the cane itself, not at the old wood that it grows from. It
    does not know on which side of the wire a cane hangs. It is only for vines whose shoots
    hang.

Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.measures import grows_against

NAME: Final = "upright-wood"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Upright wood kept on the arm", "es": "Se dejó madera vertical sobre el brazo"}
MESSAGES = {
    "kept": {
        "en": "This cane stands upright on the arm. On this vine the shoots must hang.",
        "es": "Este sarmiento sube vertical del brazo. En esta cepa los brotes deben colgar.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    En una cepa cuyos brotes cuelgan: mira si se deja un sarmiento vertical arriba del brazo.
    Se dejan los que cuelgan o apuntan hacia un lado.

Por qué importa:
    Los brotes verticales crecen con mucha fuerza. Tarde o temprano el viento o su propio peso
    los voltea. Se quiebran, o caen sobre los demás y dan sombra a toda la hilera.

Qué hacer en su lugar:
    Escoja un sarmiento que cuelga o uno que apunta hacia un lado. Quite en su base el
    vertical. Déjelo solo si sin él se abre un hueco largo.

Límites:
    La regla mira cómo se inclina el sarmiento mismo, no la madera vieja de la que sale. No
    sabe de qué lado del alambre cuelga. Es solo para cepas cuyos brotes cuelgan.

Fuente:
    Práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if left.part.is_cane and left.state > 0 and grows_against(left.vine, left.piece.lean):
        yield Broken("kept")
