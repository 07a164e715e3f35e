"""The words give the same facts as the drawing, in both languages."""

import pytest

from pencilwood.drawing import describe_vine, part_facts, part_label, summarise_vine
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT
from pencilwood.vine.model import Condition, Lean, Side
from pencilwood.vine.wood import Parts, Shortening, ThinningOut, divide, uncut
from pencilwood.words import LANGUAGES
from vines import SAMPLES, arm, cane, old, vine

ENGLISH = """\
A one-arm cordon with 40 cm of arm, 2 places, 3 canes and 12 buds. After the cuts 2 buds are \
left, at 1 place.
The trunk is 5.5 cm thick and the arm lies 90 cm above the ground. Wires: fruiting wire at 90 cm, \
catch wires at 120 cm and 150 cm, top wire at 180 cm. Shoots are trimmed in summer at 215 cm.
Right arm, 40 cm long and 3.5 cm thick, 2 places, from the head outward:
R1, 12 cm from the head. Old wood m: grows straight from the arm; 2 years old; 6 cm long, 14 mm \
thick; upright; sound. Cane a: grows from m after 15 mm, 15 mm above the arm; 4 buds, 7 cm apart; \
35 cm long, 8 mm thick; leaning toward the head; sound; cut back to 2 buds. Old wood m above a: \
the next 4.5 cm of the same wood, from 15 mm above the arm; cut off. Cane b: grows from m after \
5.8 cm, 5.8 cm above the arm; 7 buds, 7 cm apart; 56 cm long, 9 mm thick; upright; sound; gone \
with the wood it grew from.
R2, 25 cm from the head. Cane a: grows straight from the arm; 1 bud, 7 cm apart; 14 cm long, 4 mm \
thick; hanging down; spindly; cut off."""

SPANISH = """\
Un cordón de un brazo con 40 cm de brazo, 2 lugares, 3 sarmientos y 12 yemas. Después de los \
cortes quedan 2 yemas, en 1 lugar.
El tronco tiene 5,5 cm de grueso y el brazo está a 90 cm del suelo. El alambre de formación está \
a 90 cm, los alambres de vegetación a 120 cm y 150 cm y el alambre más alto a 180 cm. En verano \
los brotes se despuntan a 215 cm.
Brazo derecho, de 40 cm de largo y 3,5 cm de grueso, 2 lugares, desde la cabeza hacia la punta:
R1, a 12 cm de la cabeza. Madera vieja m: sale directo del brazo; de 2 años; 6 cm de largo y 14 mm \
de grueso; vertical, hacia arriba; sana. Sarmiento a: sale de m a 15 mm de su base, a 15 mm \
arriba del brazo; 4 yemas, cada 7 cm; 35 cm de largo y 8 mm de grueso; inclinado hacia la cabeza; \
sano; cortado a 2 yemas. Madera vieja m arriba de a: los siguientes 4,5 cm de la misma madera, \
a 15 mm arriba del brazo; cortada desde la base. Sarmiento b: sale de m a 5,8 cm de su base, a \
5,8 cm arriba del brazo; 7 yemas, cada 7 cm; 56 cm de largo y 9 mm de grueso; vertical, hacia \
arriba; sano; cayó con la madera de la que salía.
R2, a 25 cm de la cabeza. Sarmiento a: sale directo del brazo; 1 yema, cada 7 cm; 14 cm de largo y \
4 mm de grueso; colgado hacia abajo; raquítico; cortado desde la base."""


def two_positions() -> Parts:
    spur = [
        old("m", 60),
        cane("a", 4, on="m", at_mm=15, lean=Lean.IN),
        cane("b", 7, 9, on="m", at_mm=58),
    ]
    low = [cane("a", 1, 4, condition=Condition.SPINDLY, lean=Lean.DOWN)]
    return divide(vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 400, (120, spur), (250, low))))


@pytest.mark.parametrize(("language", "text"), [("en", ENGLISH), ("es", SPANISH)])
def test_a_pruned_vine_in_words(language: str, text: str) -> None:
    parts = two_positions()
    left = uncut(parts).cut(Shortening("R1a", 2)).cut(ThinningOut("R1m above a"))
    assert describe_vine(parts, left.cut(ThinningOut("R2a")), language) == text


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("name", SAMPLES)
def test_every_part_is_described(name: str, language: str) -> None:
    parts = divide(SAMPLES[name]())
    text = describe_vine(parts, None, language, "us")
    for part in parts.parts:
        assert part_facts(part, language, "us") in text
    assert " cm" not in text
    assert "{" not in text


def test_an_uncut_vine_is_summarised_without_cuts() -> None:
    parts = two_positions()
    text = "A one-arm cordon with 40 cm of arm, 2 places, 3 canes and 12 buds."
    assert summarise_vine(parts, None, "en") == summarise_vine(parts, uncut(parts), "en") == text


def test_parts_have_labels_for_lists() -> None:
    parts = two_positions()
    assert [part_label(part, "es") for part in parts.parts] == [
        "Madera vieja m en R1",
        "Sarmiento a en R1",
        "Madera vieja m arriba de a en R1",
        "Sarmiento b en R1",
        "Sarmiento a en R2",
    ]
