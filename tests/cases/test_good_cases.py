"""What a good case holds once it has been read."""

from pathlib import Path

import pytest

from case_files import LANGUAGES, RULES, SAFETY, lines, read, sample, with_slip
from pencilwood.cases.case import Case
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.places import Place
from pencilwood.vine.forms.cordon import ONE_ARM_LEFT, ONE_ARM_RIGHT, TWO_ARM_CORDON
from pencilwood.vine.model import Condition, Lean
from pencilwood.vine.passes import Pass, Stub, Tool
from pencilwood.vine.wood import Shortening, ThinningOut


def good(text: str | bytes, folder: Path) -> Case:
    case, findings = read(text, folder)
    assert lines(findings) == []
    assert case is not None
    return case


def test_the_vine_is_as_measured(tmp_path: Path) -> None:
    vine = good(sample(), tmp_path).vine
    assert vine.form is TWO_ARM_CORDON
    assert (vine.trunk_thickness_mm, vine.cordon_height_mm) == (55, 900)
    assert vine.trellis.catch_wires_mm == (1200, 1500)
    assert [position.name for arm in vine.arms for position in arm.positions] == ["L1", "L2", "R1"]
    old, first, second = vine.arms[0].positions[0].pieces
    assert (old.age_years, old.length_mm, old.buds, old.is_cane) == (2, 80, 0, False)
    assert (first.grows_from, first.at_mm, first.buds, first.internode_mm) == ("m", 10, 9, 70)
    assert first.length_mm == (9 + 1) * 70, "a cane ends one internode above its last bud"
    assert (second.thickness_mm, second.lean) == (8, Lean.OUT), "5/16 in is 7.9 mm"
    assert vine.arms[1].positions[0].pieces[1].condition is Condition.SPINDLY


def test_words_and_places(tmp_path: Path) -> None:
    case = good(sample(), tmp_path)
    assert case.title == {"en": "A tidy vine", "es": "Una cepa ordenada"}
    assert case.teaches == (
        ("spur-too-long", Place("vine.yml", 5, 11)),
        ("wood-too-old", Place("vine.yml", 5, 26)),
    )
    assert case.story_places == {
        "en": Place("vine.yml", 7, 7),
        "es": Place("vine.yml", 8, 7),
    }
    assert case.places["L1"] == Place("vine.yml", 19, 7)
    assert case.places["R1b"] == Place("vine.yml", 35, 11)
    assert case.target_buds == (6, 8)
    assert [(one.rule, one.at) for one in case.excuses] == [("wood-too-old", "L2")]
    assert [name for name, _ in case.safety] == ["hand-shears", "saw"]
    assert case.author == dict.fromkeys(("en", "es"), "The Larkfell trainer")
    assert case.licence == dict.fromkeys(("en", "es"), "CC BY 4.0")


def test_the_answer_is_cut_in_order(tmp_path: Path) -> None:
    answer = good(sample(), tmp_path).answer
    assert [one.done.in_pass for one in answer] == (
        [Pass.ROUGH] * 4 + [Pass.THINNING_OUT] * 4 + [Pass.FINE] * 3
    )
    # R1b has 3 buds only, so "all canes" to 5 buds leaves it alone.
    assert {one.done.cut for one in answer[:4]} == {
        Shortening(cane, 5) for cane in ("L1a", "L1b", "L2a", "R1a")
    }
    assert answer[6].done.cut == ThinningOut("L1m above a")
    assert answer[6].place == Place("vine.yml", 42, 14)
    assert answer[-1].why["es"] == "Dos yemas cada una"


def test_the_tool_follows_the_thickness_unless_given(tmp_path: Path) -> None:
    answer = good(sample(), tmp_path).answer
    by_cut = {one.done.cut: (one.done.tool, one.tool_given) for one in answer}
    assert by_cut[ThinningOut("L1b")] == (Tool.SHEARS, False)
    assert by_cut[ThinningOut("L2m")] == (Tool.SAW, True)
    path = tmp_path / "tidy-vine.yml"
    case, _ = read_case(
        path, CaseSurroundings(LANGUAGES, RULES, SAFETY, tool_for=lambda _: Tool.LOPPERS)
    )
    assert case is not None
    assert {one.done.tool for one in case.answer if not one.tool_given} == {Tool.LOPPERS}


def test_a_stub_can_be_told(tmp_path: Path) -> None:
    answer = good(with_slip("R1a], to: 2 buds", "R1a], to: 2 buds, stub: long"), tmp_path).answer
    assert {one.done.stub for one in answer[-3:]} == {Stub.LONG}


ONE_ARM = {
    "right": (ONE_ARM_RIGHT, "R"),
    "left": (ONE_ARM_LEFT, "L"),
}


@pytest.mark.parametrize("side", ONE_ARM)
def test_one_arm_on_either_side(tmp_path: Path, side: str) -> None:
    form, letter = ONE_ARM[side]
    other = "left" if side == "right" else "right"
    text = with_slip(f"    {other}: {{length: 90 cm, thickness: 35 mm}}\n", "")
    text = text.replace("two-arm", "one-arm")
    start, end = text.index("    - position: L1"), text.index("target:")
    position = (
        f"    - position: {letter}1\n      at: 14 cm\n      wood:\n"
        "        - {cane: a, buds: 8, internode: 6 cm, thickness: 7 mm}\n"
    )
    answer = (
        f"answer:\n  fine pass:\n    - {{cut: {letter}1a, to: 2 buds, why: {{en: A, es: B}}}}\n"
    )
    case = good(text[:start] + position + answer, tmp_path)
    assert end > start
    assert case.vine.form is form
    assert case.target_buds is None
    assert [one.done.cut for one in case.answer] == [Shortening(f"{letter}1a", 2)]


@pytest.mark.parametrize(
    "change",
    [
        pytest.param(lambda text: "\ufeff" + text, id="byte order mark"),
        pytest.param(lambda text: text.replace("\n", "\r\n"), id="line ends of Windows"),
        pytest.param(lambda text: "---\n" + text, id="a line of dashes at the top"),
        pytest.param(lambda text: text.rstrip("\n"), id="no line end at the end"),
    ],
)
def test_marks_of_other_editors_change_nothing(tmp_path: Path, change: object) -> None:
    assert callable(change)
    plain, changed = good(sample(), tmp_path), good(change(sample()).encode("utf-8"), tmp_path)
    assert changed.answer[-1].done == plain.answer[-1].done
    assert changed.vine == plain.vine
    assert changed.places["L1a"].column == plain.places["L1a"].column


def test_values_are_read_as_typed(tmp_path: Path) -> None:
    """What YAML takes for a refusal, a date or a number in base eight stays text here."""
    for typed in ("no", "2010-10-09", "012", "1:30", "null", "~"):
        case = good(with_slip("author: The Larkfell trainer", f"author: {typed}"), tmp_path)
        assert case.author == {"en": typed, "es": typed}
