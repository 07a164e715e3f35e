"""A long stretch of arm without a spur.

What it checks:
    Looks at every stretch of arm without a spur: between neighbouring spurs, and from the
    last spur to the tip. The head zone is not counted.

Why it matters:
    A blank carries no fruit. The shoots beside it lean into the gap and often grow too
    strong. Bare arm seldom fills by itself, so a blank can stay for years.

What to do instead:
    Keep one cane in the stretch, even a poor one. Cut it to one bud and let it build a new
    spur. A water sprout in the right place serves as well. Spurs in the head zone may stay
    if they shorten the blank.

Limits:
    The rule cannot see where a latent bud may wake in spring. It does not ask whether the
    spur in the gap is a good one; other rules do. It measures along the arm and does not
    see how far shoots spread.

Source:
    Widest spur spacing read: 8 in (20 cm), NC State Extension, figure 14-33, high cordon.
    That a wider stretch counts as a blank, and the reasons given here: common practice, no
    source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from pencilwood.rules.shapes import Broken, Gap
from pencilwood.vine.bands import Band, Limits

NAME: Final = "blank-on-arm"
FAMILY: Final = "vine"
SHAPE: Final = "blank"
TITLE = {"en": "Blank on the arm", "es": "Hueco en el brazo"}
MESSAGES = {
    "too-long": {
        "en": "{gap} of arm has no spur. Leave no stretch longer than {most}.",
        "es": "Hay {gap} de brazo sin pulgar. No deje tramos de más de {most}.",
    },
}
BANDS: tuple[Band, ...] = (
    Band(
        name="blank at most",
        kind="length",
        default=200,
        lowest=150,
        highest=300,
        status="common practice, no source",
        source={
            "en": (
                "no source that we read gives a longest blank; the nearest figure is the widest "
                "spur spacing: 8 in (NC State Extension, fig. 14-33, high cordon)"
            ),
            "es": (
                "ninguna fuente leída da el largo máximo de un hueco; la cifra más cercana, la "
                "mayor distancia entre pulgares: 8 pulgadas "
                "(NC State Extension, fig. 14-33, cordón alto)"
            ),
        },
    ),
)
PAGE_ES = """
Qué revisa:
    Mira cada tramo de brazo que queda sin pulgar: entre pulgares vecinos y desde el último
    pulgar hasta la punta. La zona de la cabeza no se cuenta.

Por qué importa:
    Un hueco no da uva. Los brotes de al lado se abren hacia el hueco y suelen crecer con
    demasiada fuerza. La madera desnuda casi nunca se llena sola, y el hueco puede durar
    años.

Qué hacer en su lugar:
    Deje un sarmiento en ese tramo, aunque no sea bueno. Córtelo a una yema para que forme
    un pulgar nuevo. También sirve un chupón bien colocado. En la cabeza puede quedar un
    pulgar si con eso el hueco se acorta.

Límites:
    La regla no puede ver dónde va a despertar una yema latente en primavera. Tampoco juzga
    si el pulgar que llena el hueco es bueno: de eso se ocupan otras reglas. Mide a lo largo
    del brazo y no ve cuánto se abren los brotes.

Fuente:
    La mayor distancia leída entre pulgares: 8 pulgadas (20 cm), NC State Extension, figura 14-33,
    cordón alto. Que un tramo mayor sea un hueco, y las razones de esta página: práctica
    común, sin fuente.
"""


def check(gap: Gap, limits: Limits) -> Iterator[Broken]:
    most_mm = limits["blank at most"]
    if gap.gap_mm > most_mm:
        facts = {"gap_mm": gap.gap_mm, "most_mm": most_mm}
        yield Broken("too-long", gap.gap_mm - most_mm, facts)
