"""The plates: words in every language, inside the paper, and told in text too."""

import re
from xml.etree import ElementTree as ET

import pytest

from pencilwood.drawing.ink.shapes import Ink
from pencilwood.drawing.plates import PLATES, cuts, draw_plate
from pencilwood.drawing.plates.board import WIDTH
from pencilwood.rules import cut_too_close
from pencilwood.words import LANGUAGES

SVG = "{http://www.w3.org/2000/svg}"
# A letter of the drawing's face is about half as wide as high; wider than most, to be safe.
LETTER_SHARE = 0.56


def parsed(name: str, language: str = "en") -> ET.Element:
    return ET.fromstring(draw_plate(name, "p1", language))  # noqa: S314 - our own drawing


def texts(plate: ET.Element) -> list[str]:
    return [found.text or "" for found in plate.iter(f"{SVG}text")]


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("name", PLATES)
def test_a_plate_says_in_words_what_it_shows(name: str, language: str) -> None:
    plate = parsed(name, language)
    assert plate.get("role") == "img"
    assert plate.get("lang") == language
    by_id = {found.get("id"): found.text for found in plate.iter() if found.get("id")}
    title = by_id[str(plate.get("aria-labelledby"))]
    description = by_id[str(plate.get("aria-describedby"))]
    assert title
    assert len(description or "") > 80


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("name", PLATES)
def test_words_stay_on_the_paper(name: str, language: str) -> None:
    plate = parsed(name, language)
    height = float(str(plate.get("viewBox")).split()[3])
    for found in plate.iter(f"{SVG}text"):
        if not found.text:
            continue
        wide = len(found.text) * float(str(found.get("font-size"))) * LETTER_SHARE
        x, y = float(str(found.get("x"))), float(str(found.get("y")))
        left = {"start": x, "middle": x - wide / 2, "end": x - wide}[str(found.get("text-anchor"))]
        assert left >= 0, found.text
        assert left + wide <= WIDTH, found.text
        assert 0 < y < height, found.text


@pytest.mark.parametrize("name", PLATES)
def test_every_id_begins_with_the_prefix(name: str) -> None:
    ids = re.findall(r' id="([^"]*)"', draw_plate(name, "q7", "en"))
    assert len(ids) == len(set(ids))
    assert all(one.startswith("q7-") for one in ids)


@pytest.mark.parametrize("name", PLATES)
def test_a_plate_is_drawn_the_same_every_time(name: str) -> None:
    assert draw_plate(name, "p1", "es") == draw_plate(name, "p1", "es")


def test_plates_speak_different_languages() -> None:
    for name in PLATES:
        assert texts(parsed(name, "en")) != texts(parsed(name, "es"))


def test_the_cap_of_a_tripod_ladder_is_step_one() -> None:
    numbered = [text for text in texts(parsed("tripod-ladder")) if text.isdigit()]
    assert numbered == ["1", "2", "3"]
    assert any("cap" in text and "1" in text for text in texts(parsed("tripod-ladder")))
    assert any("tapa" in text and "1" in text for text in texts(parsed("tripod-ladder", "es")))


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_rule_of_the_leaning_ladder_is_not_on_the_tripod(language: str) -> None:
    leaning, tripod = (
        draw_plate(name, "p", language) for name in ("leaning-ladder", "tripod-ladder")
    )
    four = {"en": "4 parts", "es": "4 partes"}[language]
    assert four in leaning
    assert four not in tripod


def test_a_hand_is_shown_in_the_units_of_the_profile() -> None:
    assert "10 cm" in draw_plate("hand-on-the-arm", "p", "en", "metric")
    assert "4 in" in draw_plate("hand-on-the-arm", "p", "en", "us")


def test_the_right_stub_is_as_long_as_the_rules_ask_for() -> None:
    """To the scale that stands on the plate; the rules name the source of their figure."""
    asked = next(band for band in cut_too_close.BANDS if band.name == "stub above the bud")
    stubs = dict(cuts._STUBS)
    assert stubs["right"] == asked.default
    assert stubs["close"] < asked.lowest
    assert asked.highest < stubs["long"]
    assert "2 cm" in texts(parsed("cut-and-stub"))


def test_the_hand_is_as_wide_as_its_measure() -> None:
    fingers = [ink for finger in range(4) for ink in cuts._finger(25.0 * finger, -20.0, 25.0)]
    runs = [run for ink in fingers if isinstance(ink, Ink) for run in ink.runs]
    across = [x for run in runs for x, _ in run.points]
    assert (min(across), max(across)) == (0, cuts._HAND_MM)
