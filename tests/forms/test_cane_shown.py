"""Cane-pruned vines as they are drawn, told, read and written."""

from __future__ import annotations

import random
from collections.abc import Iterator
from pathlib import Path

import pytest

from cane_vines import cane_vine, random_cane_vine
from case_files import LANGUAGES, lines, usual_tool
from pencilwood.cases.case import Case
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.case_writer import write_case
from pencilwood.drawing import Paper, WoodShown, describe_vine, draw_vine
from pencilwood.drawing.scene.tied_canes import Laid, laid_canes, lay_down
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.findings import Finding
from pencilwood.rules import RULE_BY_NAME
from pencilwood.vine.model import Pass, Side
from pencilwood.vine.passes import DoneCut
from pencilwood.vine.wood import Shortening, ThinningOut, Tie, divide, uncut


def laid() -> Iterator[tuple[float, float, float]]:
    """Foot, and height and end of what lies along the wire, of many canes that were tied."""
    rng = random.Random(59)
    for _ in range(12):
        plate = plate_of(divide(random_cane_vine(rng, positions=4)))
        for part in plate.parts.parts:
            if part.is_cane and part.most >= 8:
                for side in (Side.LEFT, Side.RIGHT):
                    stem = lay_down(plate, Laid(part.name, side, part.most))
                    last = stem.curve.points[-1]
                    outward = -1 if side is Side.LEFT else 1
                    foot = plate.stem(part).curve.points[0]
                    yield -foot.y, -last.y, (last.x - foot.x) * outward


def test_a_tied_cane_is_bent_to_the_wire_and_lies_along_it() -> None:
    seen = 0
    for foot_mm, end_mm, reach_mm in laid():
        if 740 < foot_mm < 960:
            assert abs(end_mm - 900) < 40
            assert reach_mm > 150
            seen += 1
    assert seen > 20


def test_the_drawing_shows_a_tied_cane_along_the_wire_and_not_standing() -> None:
    parts = divide(cane_vine())
    left = uncut(parts).cut(Shortening("L1b", 10))
    done = [DoneCut(Tie("L1b", Side.LEFT), Pass.TIE)]

    def drawn(stage: str | None) -> str:
        shown = () if stage is None else laid_canes(left, done, stage)
        return draw_vine(WoodShown(parts, laid=shown), Paper("x", "en", title="", description=""))

    assert 'data-part="L1b"' in drawn(None)
    assert 'data-part="L1b"' not in drawn("")
    assert "pw-laid" in drawn("")
    assert 'data-part="L1b"' in drawn("tie")
    assert "pw-untied-tie" in drawn("tie")
    gone = uncut(parts).cut(ThinningOut("L1b"))
    assert laid_canes(gone, done) == ()


def test_the_words_speak_of_the_head_and_of_room_on_the_wire() -> None:
    for language, wanted, unwanted in (
        ("en", ("two-cane vine", "room on the wire", "lying along the wire"), " arm"),
        ("es", ("cepa de dos varas", "espacio en el alambre", "tendida"), "brazo"),
    ):
        words = describe_vine(divide(cane_vine()), None, language)
        assert all(one in words for one in wanted)
        assert unwanted not in words


CASES = Path(__file__).resolve().parents[2] / "content/cases"
NOTES = ("eyes", "bent-canes", "hand-shears", "loppers", "clean-tools", "cold", "first-aid")


def read(text: str, folder: Path, language: str = "en") -> tuple[Case | None, list[Finding]]:
    """The case of a text, which calls for the safety notes of this form."""
    path = folder / "one-new-cane.yml"
    path.write_text(text, encoding="utf-8")
    return read_case(
        path, CaseSurroundings(LANGUAGES, tuple(RULE_BY_NAME), NOTES, usual_tool), language=language
    )


@pytest.mark.parametrize(
    ("was", "now", "said"),
    [
        ("room: {right: 80 cm}", "room: {left: 80 cm, right: 80 cm}", "(room-and-form)"),
        ("head height: 78 cm", "head height: 40 cm", "(head-off-the-wire)"),
        ("at: 8 cm", "at: 81 cm", "(beyond-the-room)"),
        ("trimmed at: 215 cm", "trimmed at: 85 cm", "(trimmed-below-wire)"),
        ("cane: R1b", "cane: R2a", "(tied-and-gone)"),
    ],
)
def test_a_vine_that_cannot_be_is_told(was: str, now: str, said: str, tmp_path: Path) -> None:
    text = (CASES / "one-new-cane.yml").read_text(encoding="utf-8")
    assert text.count(was) == 1
    case, findings = read(text.replace(was, now), tmp_path)
    assert case is None
    assert any(line.endswith(said) for line in lines(findings)), lines(findings)
    spanish = read(text.replace(was, now), tmp_path, "es")[1]
    assert {one.what for one in spanish}.isdisjoint(one.what for one in findings)


def test_a_case_is_written_as_it_is_read(tmp_path: Path) -> None:
    case, findings = read((CASES / "one-new-cane.yml").read_text(encoding="utf-8"), tmp_path)
    assert case is not None, findings
    again, findings = read(write_case(case, "en"), tmp_path)
    assert again is not None, findings
    assert again.vine == case.vine
    assert [one.done for one in again.answer] == [one.done for one in case.answer]


@pytest.mark.parametrize("names", [("L1b", "L2b"), ("L1b", "R2b"), ("R2b", "L1b")])
def test_two_canes_tied_to_one_side_lie_one_under_the_other(names: tuple[str, str]) -> None:
    parts = divide(cane_vine())
    plate = plate_of(parts)
    both = [DoneCut(Tie(name, Side.LEFT), Pass.TIE) for name in names]
    first, second = (lay_down(plate, one) for one in laid_canes(uncut(parts), both))
    for at in range(400, 620, 20):
        gap = second.curve.at(at).y - first.curve.at(at).y
        assert gap > first.half_mm(at) + second.half_mm(at)
