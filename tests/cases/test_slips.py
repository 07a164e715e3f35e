"""One slip in a good case gives just its own message, at its own place."""

import re
from pathlib import Path

import pytest

from case_files import Slip, lines, read, slips, with_slip

GROUPS = ("yaml", "fields", "wood", "answer")
SLIPS = [pytest.param(slip, id=slip.reason) for group in GROUPS for slip in slips(group)]

# Words of the program's inside, which tell a grower nothing.
INSIDE_WORDS = re.compile(r"\b(dict|str|int|None|mapping|sequence|list|scalar|node|token|null)\b")


def test_there_are_many_slips() -> None:
    reasons = [slip.reason for group in GROUPS for slip in slips(group)]
    assert len(reasons) > 100
    assert len(set(reasons)) == len(reasons)


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_is_told_with_its_place(tmp_path: Path, slip: Slip) -> None:
    case, findings = read(with_slip(slip.old, slip.new), tmp_path)
    assert case is None
    assert lines(findings) == [f"vine.yml:{said}" for said in slip.said]
    assert slip.said, "a slip must be told"


@pytest.mark.parametrize("slip", SLIPS)
def test_findings_speak_spanish(tmp_path: Path, slip: Slip) -> None:
    english = read(with_slip(slip.old, slip.new), tmp_path)[1]
    spanish = read(with_slip(slip.old, slip.new), tmp_path, "es")[1]
    assert {(one.place, one.name) for one in spanish} == {(one.place, one.name) for one in english}
    assert all(one.what and "expected" not in one.render() for one in spanish)
    assert {one.what for one in spanish}.isdisjoint(one.what for one in english)


@pytest.mark.parametrize("slip", SLIPS)
def test_findings_use_no_words_of_the_inside(tmp_path: Path, slip: Slip) -> None:
    for line in lines(read(with_slip(slip.old, slip.new), tmp_path)[1]):
        assert not INSIDE_WORDS.search(line), line
        assert "\n" not in line


UNSEEN = "a character stands here that cannot be seen; "
CURE = "expected only visible text: delete it and type the line again; "

UNPRINTABLE = [
    pytest.param(
        "level: easy",
        "level: ea\u2028sy",
        f"4:10: {UNSEEN}{CURE}found U+2028 (unseen-character)",
        id="a line end that only some programs know",
    ),
    pytest.param(
        "level: easy",
        "level: ea\x07sy",
        f"4:10: {UNSEEN}{CURE}found U+0007 (unseen-character)",
        id="a control character",
    ),
    pytest.param(
        "level: easy",
        "level: ea\x00sy",
        f"4:10: {UNSEEN}{CURE}found U+0000 (unseen-character)",
        id="a zero",
    ),
    pytest.param(
        "  trimmed at: 215 cm",
        "\ttrimmed at: 215 cm",
        "14:1: a tab character stands here; expected spaces (tab-in-front)",
        id="a tab in front of a line",
    ),
]


@pytest.mark.parametrize(("old", "new", "said"), UNPRINTABLE)
def test_a_character_that_cannot_be_seen(tmp_path: Path, old: str, new: str, said: str) -> None:
    case, findings = read(with_slip(old, new), tmp_path)
    assert case is None
    assert lines(findings) == [f"vine.yml:{said}"]


def test_all_slips_of_a_file_are_told_together(tmp_path: Path) -> None:
    text = with_slip("level: easy", "level: simple")
    for old, new in (
        ("trunk thickness: 55 mm", "trunk thickness: 55"),
        ("    right: {length", "    left: {length"),
        ("buds: 11, internode", "buds: many, internode"),
        ("[hand-shears, saw]", "[hand-sheers, saw]"),
        ("age: 2 years", "age: &two 2 years"),
        ("cut: [L1b, R1b]", "cut: [L1q, R1b]"),
    ):
        assert old in text
        text = text.replace(old, new)
    case, findings = read(text, tmp_path)
    assert case is None
    assert [(one.place.line, one.name) for one in findings] == [
        (4, "not-a-choice"),
        (11, "no-unit"),
        (15, "arms-and-form"),
        (17, "given-twice"),
        (22, "anchor"),
        (24, "not-such-a-number"),
        (31, "no-such-arm"),
        (41, "no-such-wood"),
        (47, "unknown-safety-note"),
    ]


def test_passes_must_stand_in_their_order(tmp_path: Path) -> None:
    text = with_slip("  thinning-out pass:", "  later:")
    text = text.replace("  fine pass:", "  thinning-out pass:").replace("  later:", "  fine pass:")
    case, findings = read(text, tmp_path)
    assert case is None
    assert lines(findings)[-1] == (
        'vine.yml:43:3: "thinning-out pass" stands after "fine pass"; '
        "expected rough pass, thinning-out pass, fine pass (passes-out-of-order)"
    )
