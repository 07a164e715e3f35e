"""`pencilwood case`: from the sheet or the terminal to a case that passes its proofs."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from pencilwood.cases.case_writer import write_case
from pencilwood.site.case_files import case_slugs
from pencilwood.site.handbook import read_one_case
from workshop import PROJECT, Workshop, make_workshop


def to_sheet(workshop: Workshop, name: str = "Row 7.csv") -> Path:
    sheet = workshop.root / name
    assert workshop.run("case", "to-csv", "tidy-vine", "-o", str(sheet)).status == 0
    return sheet


def test_a_sheet_becomes_a_case_with_nothing_to_put_right(workshop: Workshop) -> None:
    ran = workshop.run("case", "from-csv", str(to_sheet(workshop)))
    assert ran.status == 0, ran.out
    assert "It teaches: " in ran.out
    _, measured, _ = read_one_case(workshop.root, "tidy-vine")
    _, made, findings = read_one_case(workshop.root, "row-7")
    assert findings == ()
    assert made is not None
    assert measured is not None
    assert made.vine == measured.vine
    assert made.teaches


@pytest.mark.parametrize(
    ("language", "said"), [("en", "is for cordons so far"), ("es", "es por ahora para cordones")]
)
def test_a_vine_that_the_sheet_cannot_hold_is_refused(
    workshop: Workshop, language: str, said: str
) -> None:
    make_workshop(workshop.root / "high", "upright-canes")
    sheet = workshop.root / "sheet.csv"
    inside = replace(workshop, root=workshop.root / "high")
    ran = inside.run("case", "to-csv", "upright-canes", "--language", language, "-o", str(sheet))
    assert ran.status == 2
    assert said in ran.err
    assert "high cordon" in ran.err
    assert not sheet.exists()


def test_the_new_file_explains_itself_in_the_trainers_language(workshop: Workshop) -> None:
    sheet = to_sheet(workshop)
    workshop.run("case", "from-csv", str(sheet), "--name", "mi-cepa", "--language", "es")
    text = (workshop.root / "content" / "cases" / "mi-cepa.yml").read_text("utf-8")
    comments = [line for line in text.splitlines() if line.startswith("# ")]
    assert len(comments) >= 8
    assert "# La cepa como se midió, antes de cualquier corte." in comments


@pytest.mark.parametrize("slug", case_slugs(PROJECT))
def test_a_case_that_is_written_out_reads_the_same(slug: str, tmp_path: Path) -> None:
    root = make_workshop(tmp_path / "handbook")
    _, case, _ = read_one_case(PROJECT, slug)
    assert case is not None
    (root / "content" / "cases" / f"{slug}.yml").write_text(write_case(case, "en"), "utf-8")
    _, again, findings = read_one_case(root, slug)
    assert findings == ()
    assert again is not None
    assert again.vine == case.vine
    assert [(one.done, one.why) for one in again.answer] == [
        (one.done, one.why) for one in case.answer
    ]
    assert (again.title, again.story, again.level) == (case.title, case.story, case.level)
    assert [one.why for one in again.excuses] == [one.why for one in case.excuses]


def test_a_slip_in_the_sheet_writes_nothing(workshop: Workshop) -> None:
    sheet = to_sheet(workshop)
    sheet.write_text(sheet.read_text("utf-8").replace("old,m", "odl,m", 1), "utf-8")
    ran = workshop.run("case", "from-csv", str(sheet))
    assert ran.status == 1
    assert "(which-wood)" in ran.out
    assert f"{sheet}:" in ran.out
    assert case_slugs(workshop.root) == ("tidy-vine",)


def test_a_case_that_is_there_is_never_written_over(workshop: Workshop) -> None:
    sheet = to_sheet(workshop)
    before = (workshop.root / "content" / "cases" / "tidy-vine.yml").read_bytes()
    ran = workshop.run("case", "from-csv", str(sheet), "--name", "tidy-vine")
    assert ran.status == 2
    assert "tidy-vine.yml already" in ran.err
    assert (workshop.root / "content" / "cases" / "tidy-vine.yml").read_bytes() == before


@pytest.mark.parametrize("name", ["../away", "Großer", "a b", "-", "x" * 61])
def test_a_name_that_is_no_short_name_is_refused(workshop: Workshop, name: str) -> None:
    sheet = to_sheet(workshop)
    ran = workshop.run("case", "from-csv", str(sheet), f"--name={name}")
    assert ran.status == 2
    assert "--name" in ran.err


def test_a_missing_sheet_is_one_finding(workshop: Workshop) -> None:
    ran = workshop.run("case", "from-csv", str(workshop.root / "none.csv"))
    assert ran.status == 1
    assert "(missing-file)" in ran.out


FRAME = ["one-arm cordon", "right", "55 mm", "90 cm", "", "120 cm, 150 cm", "180 cm", "215 cm"]
ARM = ["60 cm", "35 mm"]
SPUR = ["old", "", "2 years", "5 cm", "14 mm", "", ""]


def cane(up: str, buds: int = 9) -> list[str]:
    return ["cane", "", "m", up, str(buds), "7 cm", "8 mm", "", ""]


PLACES = [
    line
    for at in ("12 cm", "24 cm", "36 cm", "48 cm")
    for line in (at, *SPUR, *cane("1 cm"), *cane("5 cm", 11), "")
]
START = ["river-vine", "River vine", "Cepa del río", "easy", "Ana"]


def typed(*lines: list[str]) -> str:
    return "".join(f"{line}\n" for part in lines for line in part)


def test_answers_in_the_terminal_become_a_case(workshop: Workshop) -> None:
    ran = workshop.run("case", "new", typed=typed(START, FRAME, ARM, PLACES, [""]))
    assert ran.status == 0, ran.out
    _, case, findings = read_one_case(workshop.root, "river-vine")
    assert findings == ()
    assert case is not None
    assert (case.title["es"], case.level) == ("Cepa del río", "easy")
    assert case.author == {"en": "Ana", "es": "Ana"}
    assert [one.at_mm for one in case.vine.arms[0].positions] == [120, 240, 360, 480]
    assert case.vine.trellis.fruiting_wire_mm == 900


def test_a_wrong_answer_is_explained_and_asked_again(workshop: Workshop) -> None:
    wrong = typed(START, FRAME[:2], ["55", *FRAME[2:]], ARM, PLACES, [""])
    ran = workshop.run("case", "new", typed=wrong)
    assert ran.status == 0, ran.out
    assert "(no-unit)" in ran.out
    assert ran.out.count("Thickness of the trunk:") == 2


def test_impossible_wood_is_explained_and_its_position_asked_again(workshop: Workshop) -> None:
    floating = ["12 cm", *SPUR, *cane("9 cm"), ""]
    ran = workshop.run("case", "new", typed=typed(START, FRAME, ARM, floating, PLACES, [""]))
    assert ran.status == 0, ran.out
    assert "(beyond-its-end)" in ran.out
    _, case, _ = read_one_case(workshop.root, "river-vine")
    assert case is not None
    assert len(case.vine.arms[0].positions) == 4


def test_a_frame_that_cannot_stand_is_asked_again(workshop: Workshop) -> None:
    thick = ["60 cm", "60 mm"]
    kept = [""] * len(FRAME)
    answers = typed(START, FRAME, thick, kept, ["", "35 mm"], PLACES, [""])
    ran = workshop.run("case", "new", typed=answers)
    assert ran.status == 0, ran.out
    assert "(arm-thicker-than-trunk)" in ran.out


def test_when_the_answers_end_nothing_is_written(workshop: Workshop) -> None:
    ran = workshop.run("case", "new", typed=typed(START, FRAME))
    assert ran.status == 2
    assert ran.err == "pencilwood: stopped; nothing was written\n"
    assert case_slugs(workshop.root) == ("tidy-vine",)


def test_the_dialogue_works_through_a_pipe_and_in_spanish(workshop: Workshop) -> None:
    program = str(Path(sys.executable).with_name("pencilwood"))
    spanish = typed(START, ["cordón de un brazo", "derecho", *FRAME[2:]], ARM, PLACES, [""])
    done = subprocess.run(
        [program, "case", "new", "--language", "es", "--root", str(workshop.root)],
        input=spanish.replace("old\n", "vieja\n").replace("cane\n", "sarmiento\n"),
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
        env={"PYTHONUTF8": "1"},
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert "Grosor del tronco" in done.stdout
    assert "Enseña: " in done.stdout
