"""Plates with leaves: how many there is room for, and which shoots stay in spring."""

import math
import re
from xml.etree import ElementTree as ET

import pytest

from pencilwood.drawing.ink.writer import write
from pencilwood.drawing.plates import draw_plate
from pencilwood.drawing.plates.greens import _HALF_LEAF, Shoot, draw_shoot, leaf
from pencilwood.drawing.plates.leaves import _TRIM_Y, spur_in_summer
from pencilwood.drawing.plates.spring import _bud, shoots_in_spring
from pencilwood.rules import too_little_leaf_room
from pencilwood.words import LANGUAGES

SVG = "{http://www.w3.org/2000/svg}"
GOES = {"en": "goes", "es": "se va"}
STAY = {"en": "stay", "es": "se quedan"}


def test_a_leaf_has_five_lobes_with_bays_between_them() -> None:
    far = [math.hypot(*at) for at, _, _ in _HALF_LEAF][2:]
    # Lobe, lobe, bay, lobe, bay, and the lobe at the tip, which both halves share.
    assert far[0] < far[1] > far[2] < far[3] > far[4] < far[5]
    assert sum(teeth for _, teeth, _ in _HALF_LEAF) > 12


def test_the_low_spur_has_room_for_enough_leaves_and_the_high_one_has_not() -> None:
    asked = next(one for one in too_little_leaf_room.BANDS if one.name == "leaves to ripen a crop")
    low, high = (spur_in_summer(key)[2] for key in ("low", "high"))
    assert len(low.joints) >= asked.default
    assert len(high.joints) < asked.lowest


@pytest.mark.parametrize("key", ["low", "high"])
def test_the_trim_cuts_both_shoots_and_leaves_nothing_above_it(key: str) -> None:
    grown = spur_in_summer(key)[2]
    assert grown.curve.at(grown.length).y == pytest.approx(_TRIM_Y, abs=8)
    assert all(grown.curve.at(at).y > _TRIM_Y + 20 for at in grown.joints)


def test_each_bud_keeps_one_good_shoot_with_bunches() -> None:
    low, high, *going = shoots_in_spring()
    for bud, kept in ((1, low), (2, high)):
        assert kept.curve.at(0) == pytest.approx(_bud(bud)[0])
        assert kept.bunches
        assert not kept.gone
    assert all(one.gone and not one.bunches for one in going)


def test_the_weaker_of_two_goes_and_grows_from_the_same_bud() -> None:
    _, good, weak, _ = shoots_in_spring()
    assert weak.curve.at(0).away_from(good.curve.at(0)) < 15
    assert weak.length < good.length * 0.6
    assert weak.half < good.half


def test_what_goes_is_dotted_and_has_no_green() -> None:
    """So that neither colour nor a sign alone says it."""
    one = shoots_in_spring()[2]
    kept = Shoot("same", one.curve, one.length, one.half, one.joint, one.leaf)
    gone, green = write(draw_shoot(one)), write(draw_shoot(kept))
    assert "stroke-dasharray" in gone
    assert "pw-leaf" not in gone
    assert "stroke-dasharray" not in green
    assert "pw-leaf" in green


def test_leaves_are_one_text_that_packs_well() -> None:
    text = write(draw_shoot(shoots_in_spring()[1]))
    edges = set(re.findall(r'class="pw-leaf"[^>]* d="([^"]*z)"', text))
    # That of the stem, and that of every leaf.
    assert len(edges) == 2
    assert any(edge in write(leaf()) for edge in edges)


@pytest.mark.parametrize("language", LANGUAGES)
def test_words_say_which_shoots_stay(language: str) -> None:
    plate = ET.fromstring(draw_plate("shoot-thinning", "p", language))  # noqa: S314 - ours
    said = [found.text or "" for found in plate.iter(f"{SVG}text")]
    assert sum(text.startswith(STAY[language]) for text in said) == 1
    assert sum(text.startswith(GOES[language]) for text in said) == 2
