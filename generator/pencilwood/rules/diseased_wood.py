"""Diseased wood or a dead cane left on the vine.

What it checks:
    Checks whether diseased wood of any age is left on the vine. It also checks whether a
    dead cane is left.

Why it matters:
    Diseased wood can pass its illness on to sound wood, season after season. A dead cane
    will not push, so its buds count for nothing.

What to do instead:
    Take it off and look at the cut. If the wood is stained, cut further back to clean wood.
    Carry the wood out of the row as your vineyard's rules say.

Limits:
    The rule believes what was noted about the wood. It cannot see a stain inside sound
    bark, and it names no disease. A dead stub of older wood is the business of another
    rule. Ask the person in charge when wood looks wrong.

Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.model import Condition

NAME: Final = "diseased-wood"
FAMILY: Final = "vine"
SHAPE: Final = "piece"
TITLE = {"en": "Diseased or dead wood kept", "es": "Se dejó madera enferma o muerta"}
MESSAGES = {
    "kept": {
        "en": "This wood is diseased or dead. Take it off.",
        "es": "Esta madera está enferma o muerta. Quítela.",
    },
}
BANDS: tuple[Band, ...] = ()
PAGE_ES = """
Qué revisa:
    Mira si queda madera enferma de cualquier edad. Mira también si queda un sarmiento
    muerto.

Por qué importa:
    La madera enferma puede pasar el mal a la madera sana, año tras año. Un sarmiento muerto
    no brota, así que sus yemas no cuentan.

Qué hacer en su lugar:
    Quítela y mire el corte. Si la madera está manchada, corte más atrás, hasta madera
    limpia. Saque esa madera de la hilera como lo mandan las reglas de su viñedo.

Límites:
    La regla se fía de lo que se anotó sobre la madera. No puede ver una mancha por dentro
    ni le pone nombre a la enfermedad. De un tocón muerto de madera más vieja se ocupa otra
    regla. Si la madera le parece rara, pregunte a la persona encargada.

Fuente:
    Práctica común, sin fuente.
"""


def check(left: PieceLeft, limits: Limits) -> Iterator[Broken]:
    if left.state == 0:
        return
    condition = left.piece.condition
    # A dead stub of older wood is the business of old-stub.
    dead_cane = left.part.is_cane and condition is Condition.DEAD
    if condition is Condition.DISEASED or dead_cane:
        yield Broken("kept")
