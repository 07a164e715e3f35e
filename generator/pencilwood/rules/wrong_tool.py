"""Wood cut with a tool that is not made for it.

What it checks:
    Checks whether the tool is strong enough for the wood. It also checks whether a saw was
    used on wood that hand shears cut well.

Why it matters:
    A tool that is too small crushes the wood and strains the hand. People then twist and
    squeeze, and that is when they get hurt. A saw on thin canes tears them.

What to do instead:
    Hand shears for canes, loppers for thicker wood, a saw for the thickest. If you must
    squeeze with two hands or twist, change the tool. Follow the maker's manual and your
    employer's rules.

Limits:
    The rule knows the thickness of the wood and nothing else. Your own tool may cut more or
    less: what its maker states comes first. It does not see whether blades are sharp, or
    where your other hand is. Powered shears are not covered.

Source:
    Hand shears up to 1/2 in (13 mm), loppers up to 1 1/2 in (38 mm): This Old House, advice
    for households. Sources disagree, and no standard for vineyards was found. Changing the
    tool when you must squeeze or twist: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, ToolUse
from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.passes import Tool

NAME: Final = "wrong-tool"
FAMILY: Final = "cutting"
SHAPE: Final = "tool"
TITLE = {"en": "Wrong tool for the cut", "es": "Herramienta equivocada para el corte"}
MESSAGES = {
    "too-thick": {
        "en": "Wood of {thickness} is too thick for this tool.",
        "es": "La madera de {thickness} es demasiado gruesa para esta herramienta.",
    },
    "clumsy": {
        "en": "A saw tears thin wood: take hand shears.",
        "es": "El serrucho desgarra la madera delgada: use la tijera de mano.",
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="hand shears up to",
        kind="length",
        default=13,
        lowest=10,
        highest=25,
        status="published",
        source={
            "en": (
                "bypass hand pruner up to 1/2 in, 13 mm (This Old House, advice for households); "
                "the maker's stated capacity comes first"
            ),
            "es": (
                "tijera de mano de hojas cruzadas hasta 1/2 de pulgada, 13 mm (This Old "
                "House, consejos "
                "para el hogar); primero cuenta lo que indica el fabricante"
            ),
        },
        in_mm=True,
    ),
    Band(
        name="loppers up to",
        kind="length",
        default=38,
        lowest=25,
        highest=51,
        in_inches=True,
        status="published",
        source={
            "en": (
                "bypass lopper up to 1 1/2 in, 38 mm (This Old House, advice for households); the "
                "maker's stated capacity comes first"
            ),
            "es": (
                "tijera de dos manos de hojas cruzadas hasta 1 1/2 pulgadas, 38 mm "
                "(This Old House, "
                "consejos para el hogar); primero cuenta lo que indica el fabricante"
            ),
        },
        in_mm=True,
    ),
)
PAGE_ES = """
Qué revisa:
    Mira si la herramienta tiene fuerza bastante para la madera. Mira también si se usó el
    serrucho donde la tijera de mano corta bien.

Por qué importa:
    Una herramienta muy pequeña aplasta la madera y cansa la mano. Entonces uno tuerce y
    aprieta, y así vienen los accidentes. El serrucho desgarra los sarmientos delgados.

Qué hacer en su lugar:
    Tijera de mano para los sarmientos, tijera de dos manos para lo más grueso y serrucho
    para lo más grueso de todo. Si tiene que apretar con las dos manos o torcer, cambie de
    herramienta. Siga el manual del fabricante y las reglas de su empleador.

Límites:
    La regla conoce el grueso de la madera y nada más. Su herramienta puede cortar más o
    menos: primero vale lo que dice el fabricante. No ve si las hojas tienen filo ni dónde
    está su otra mano. La tijera eléctrica no entra aquí.

Fuente:
    Tijeras de mano hasta 1/2 de pulgada (13 mm), tijeras de dos manos hasta 1 1/2 pulgadas (38
    mm): This Old House, consejos para el hogar. Las fuentes no coinciden, y no se encontró
    ninguna norma para viñedos. Cambiar de herramienta cuando hay que apretar o torcer: práctica
    común, sin fuente.
"""


def check(use: ToolUse, limits: Limits) -> Iterator[Broken]:
    needed = tool_for(use.thickness_mm, limits)
    strength = list(Tool)
    if strength.index(use.tool) < strength.index(needed):
        yield Broken("too-thick", facts={"thickness_mm": use.thickness_mm})
    elif use.tool is Tool.SAW and needed is Tool.SHEARS:
        yield Broken("clumsy")


def tool_for(thickness_mm: int, limits: Limits) -> Tool:
    """The smallest tool that cuts wood of this thickness cleanly."""
    if thickness_mm <= limits["hand shears up to"]:
        return Tool.SHEARS
    return Tool.LOPPERS if thickness_mm <= limits["loppers up to"] else Tool.SAW
