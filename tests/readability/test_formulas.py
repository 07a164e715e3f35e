"""The formulas against worked examples whose counts and scores were worked out by hand."""

import pytest

from pencilwood.readability import (
    TextSize,
    fernandez_huerta,
    flesch_kincaid_grade,
    flesch_reading_ease,
    inflesz_band,
    measure,
    szigriszt_pazos,
)

LADDER_EN = "Keep both feet on the ladder. Hold the rail. Do not reach. Move the ladder."
INSPECT_EN = (
    "Employees must inspect the ladder before each use and remove damaged equipment from "
    "service immediately."
)
LADDER_ES = "Mantenga los dos pies en la escalera. No se estire. Mueva la escalera."
INSPECT_ES = (
    "Los trabajadores deben inspeccionar la escalera antes de usarla y retirar inmediatamente "
    "el equipo dañado."
)


@pytest.mark.parametrize(
    ("text", "language", "size"),
    [
        (LADDER_EN, "en", TextSize(15, 4, 17)),
        (INSPECT_EN, "en", TextSize(15, 1, 29)),
        (LADDER_ES, "es", TextSize(13, 3, 24)),
        (INSPECT_ES, "es", TextSize(15, 1, 40)),
    ],
)
def test_counts_of_the_worked_examples(text: str, language: str, size: TextSize) -> None:
    assert measure(text, language) == size


@pytest.mark.parametrize(
    ("size", "ease", "grade"),
    [(TextSize(15, 4, 17), 107.15, -0.75), (TextSize(15, 1, 29), 28.05, 13.07)],
)
def test_english_examples(size: TextSize, ease: float, grade: float) -> None:
    assert flesch_reading_ease(size) == pytest.approx(ease, abs=0.005)
    assert flesch_kincaid_grade(size) == pytest.approx(grade, abs=0.005)


@pytest.mark.parametrize(
    ("size", "szigriszt", "huerta"),
    [(TextSize(13, 3, 24), 87.49, 91.65), (TextSize(15, 1, 40), 25.70, 31.54)],
)
def test_spanish_examples(size: TextSize, szigriszt: float, huerta: float) -> None:
    assert szigriszt_pazos(size) == pytest.approx(szigriszt, abs=0.005)
    assert fernandez_huerta(size) == pytest.approx(huerta, abs=0.005)


@pytest.mark.parametrize(
    # 0.60 x syllables of one word; sentences per hundred words in place of words a sentence.
    "misprint",
    [
        pytest.param(lambda s: 206.84 - 0.60 * s.syllables / s.words - 1.02 * s.words / s.sentences,
                     id="syllables of one word"),
        pytest.param(lambda s: 206.84 - 60 * s.syllables / s.words
                     - 1.02 * 100 * s.sentences / s.words, id="sentences of a hundred words"),
    ],
)  # fmt: skip
def test_known_misprints_of_fernandez_huerta_are_not_followed(misprint: object) -> None:
    assert callable(misprint)
    size = TextSize(13, 3, 24)
    assert round(misprint(size), 2) in (201.31, 72.53)
    assert abs(fernandez_huerta(size) - misprint(size)) > 15


@pytest.mark.parametrize(
    ("score", "band"),
    [
        (100, "muy fácil"), (80, "muy fácil"), (79.99, "bastante fácil"), (65, "bastante fácil"),
        (64.9, "normal"), (55, "normal"), (54.9, "algo difícil"), (40, "algo difícil"),
        (39.9, "muy difícil"), (-20, "muy difícil"), (107, "muy fácil"),
    ],
)  # fmt: skip
def test_inflesz_bands_begin_where_published(score: float, band: str) -> None:
    assert inflesz_band(score) == band
