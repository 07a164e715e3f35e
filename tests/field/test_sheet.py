"""Measuring sheets: from a vine to CSV and back, and what is said of a slip in one."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from pencilwood.cases.field_columns import SHEET_FORMS
from pencilwood.cases.field_sheet import read_field_sheet
from pencilwood.cases.field_writer import field_sheet
from pencilwood.site.case_files import case_slugs
from pencilwood.site.handbook import read_one_case
from pencilwood.vine.model import Condition, Vine
from pencilwood.words import LANGUAGES
from vines import vines
from workshop import PROJECT

HEAD = """\
form,one-arm cordon
trunk thickness,55 mm
cordon height,90 cm
fruiting wire,90 cm
catch wires,120 cm,150 cm
top wire,180 cm
trimmed at,215 cm
right arm length,60 cm
right arm thickness,35 mm
"""
COLUMNS = (
    "position,at (cm),wood,letter,from,up (cm),age (years),length (cm),"
    "thickness (mm),buds,internode (cm),condition,lean\n"
)
GOOD = f"""{HEAD}{COLUMNS}\
R1,12,old,m,,,2,5,14,,,,
,,cane,a,m,1,1,,8,9,7,,
R2,25,cane,a,,,,,7,8,6.5,spindly,out
"""


def read(path: Path, text: str, language: str = "en") -> tuple[Vine | None, list[str]]:
    path.write_text(text, "utf-8")
    vine, findings = read_field_sheet(path, "sheet.csv", language=language)
    return vine, [finding.render() for finding in findings]


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(vine=vines(), language=st.sampled_from(LANGUAGES))
def test_nothing_of_a_vine_is_lost_on_the_way_to_csv_and_back(
    vine: Vine, language: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    # The reader takes an arm shorter than a hand for a slip of the pen.
    arms = tuple(replace(arm, length_mm=max(arm.length_mm, 100)) for arm in vine.arms)
    vine = replace(vine, arms=arms)
    path = tmp_path_factory.mktemp("sheet") / "sheet.csv"
    back, findings = read(path, field_sheet(vine, language))
    assert findings == []
    assert back == vine


def form_of(slug: str) -> str:
    """What the file of a case says of its form."""
    text = (PROJECT / "content" / "cases" / f"{slug}.yml").read_text("utf-8")
    (form,) = re.findall(r"^  form: (.*)$", text, re.MULTILINE)
    return str(form)


@pytest.mark.parametrize("slug", [s for s in case_slugs(PROJECT) if form_of(s) in SHEET_FORMS])
def test_every_cordon_of_the_demo_goes_to_csv_and_back(slug: str, tmp_path: Path) -> None:
    _, case, _ = read_one_case(PROJECT, slug)
    assert case is not None
    assert read(tmp_path / "sheet.csv", field_sheet(case.vine)) == (case.vine, [])


def test_a_sheet_as_it_is_filled_in_by_hand(tmp_path: Path) -> None:
    vine, findings = read(tmp_path / "sheet.csv", GOOD)
    assert findings == []
    assert vine is not None
    old, cane = vine.arms[0].positions[0].pieces
    assert (old.age_years, old.length_mm, old.thickness_mm) == (2, 50, 14)
    assert (cane.grows_from, cane.at_mm, cane.buds, cane.internode_mm) == ("m", 10, 9, 70)


def test_a_word_that_earlier_sheets_had_is_still_read(tmp_path: Path) -> None:
    now, _ = read(tmp_path / "now.csv", GOOD.replace("spindly", "herida"))
    assert now is not None
    assert now.arms[0].positions[1].pieces[0].condition is Condition.INJURED
    assert read(tmp_path / "then.csv", GOOD.replace("spindly", "Dañada")) == (now, [])


@pytest.mark.parametrize(
    ("was", "becomes"),
    [
        (",", ";"),  # where the comma is for decimals
        (",", "\t"),  # pasted from a table
        ("\n", "\r\n"),  # another system's line ends
        ("form,", "\ufeffform,"),  # the mark that spreadsheets put first
        ("spindly", '"spindly"'),  # quotation marks around a cell
        ("6.5", "65 mm"),  # a unit of its own
        ("R2,25", "R2,9 7/8 in"),  # inches on a metric sheet: 250.8 mm
        ("one-arm cordon", "Cordón de un brazo"),  # a word in the other language
        ("\nR1,", "\n\n,,,\nR1,"),  # empty lines
    ],
)
def test_what_spreadsheets_do_to_a_file_changes_nothing(
    was: str, becomes: str, tmp_path: Path
) -> None:
    plain, _ = read(tmp_path / "plain.csv", GOOD)
    vine, findings = read(tmp_path / "sheet.csv", GOOD.replace(was, becomes))
    assert findings == []
    if becomes == "R2,9 7/8 in":
        assert vine is not None
        assert vine.arms[0].positions[1].at_mm == 251
    else:
        assert vine == plain


def test_decimal_commas_with_semicolons(tmp_path: Path) -> None:
    plain, _ = read(tmp_path / "plain.csv", GOOD)
    text = GOOD.replace(",", ";").replace("6.5", "6,5")
    assert read(tmp_path / "sheet.csv", text) == (plain, [])


def test_a_canes_length_tells_how_far_apart_its_buds_are(tmp_path: Path) -> None:
    text = GOOD.replace("a,m,1,1,,8,9,7,,", "a,m,1,1,70,8,9,,,")
    vine, findings = read(tmp_path / "sheet.csv", text)
    assert findings == []
    assert vine is not None
    assert vine.arms[0].positions[0].pieces[1].internode_mm == 70


SLIPS = [
    # A heading that is misspelt.
    ("lean\n", "leen\n", '10:112: "leen" is no heading of the measuring sheet; '
     'did you mean "lean"? (csv-unknown-column)'),
    # A line above the wood that nobody knows.
    ("top wire", "tip wire", '6:1: "tip wire" is no name of a measure of the vine; '
     'did you mean "top wire"? (csv-unknown-line)'),
    # A measure given twice.
    ("top wire,180 cm\n", "top wire,180 cm\ntop wire,180 cm\n", '7:1: "top wire" is given twice; '
     "expected it once; the first stands on line 6 (csv-twice)"),
    # A length without its unit above the wood, where no heading carries one.
    ("trunk thickness,55 mm", "trunk thickness,55", '2:17: "trunk thickness" has no unit; '
     'expected a length with its unit, such as 55 mm; found "55" (no-unit)'),
    # A cane thicker than the wood it grows from.
    ("1,,8,9,7", "1,,18,9,7", "12:17: R1a is thicker than R1m, from which it grows; "),
    # A piece beyond the end of the one below.
    ("a,m,1,1,,8", "a,m,9,1,,8", "12:12: R1a grows beyond the end of R1m; "),
    # Two distances for one position.
    (",,cane,a,m", "R1,13,cane,a,m", "12:4: R1 cannot be at two places; "
     'expected "12 cm", as on its first line (csv-two-places)'),
    # The first line below the headings names no position.
    ("R1,12,old", ",,old", "11:1: the first piece of wood has no position; "),
    # A cane of two years.
    ("m,1,1,,8", "m,1,2,,8", "12:14: a cane is wood of one year; "),
    # Both a length and an internode.
    ("a,m,1,1,,8,9,7", "a,m,1,1,70,8,9,7", "12:16: a cane's length follows from its buds"),
    # A word for the wood that there is not.
    ("R2,25,cane", "R2,25,vine", "13:1: a piece of wood must be either a cane or old wood; "),
    # A cell beyond the headings.
    (",,cane,a,m,1,1,,8,9,7,,", ",,cane,a,m,1,1,,8,9,7,,,look", '12:25: "look" stands where'),
    # A quotation mark that is never closed.
    ("spindly,out", '"spindly,out', "13:26: a quotation mark opens here and is never closed; "),
    # A unit in a heading that nobody knows.
    ("at (cm)", "at (hands)", "10:10: the heading's unit \"hands\" is not known; "),
]  # fmt: skip


@pytest.mark.parametrize(("was", "becomes", "finding"), SLIPS)
def test_a_slip_is_told_with_its_line_and_column(
    was: str, becomes: str, finding: str, tmp_path: Path
) -> None:
    assert was in GOOD
    vine, findings = read(tmp_path / "sheet.csv", GOOD.replace(was, becomes, 1))
    assert vine is None
    assert any(one.startswith(f"sheet.csv:{finding}") for one in findings), findings


def test_all_slips_are_told_together(tmp_path: Path) -> None:
    text = GOOD.replace("55 mm", "55").replace("1,,8,9,7", "1,,18,9,7").replace("25", "95")
    _, findings = read(tmp_path / "sheet.csv", text)
    assert [one.split(":")[1] for one in findings] == ["2", "12", "13"]


def test_a_file_without_headings_says_which_are_needed(tmp_path: Path) -> None:
    _, findings = read(tmp_path / "sheet.csv", HEAD, "es")
    assert len(findings) == 1
    assert 'empiece con "posición": posición, a (cm), madera' in findings[0]


@settings(max_examples=120, deadline=None)
@given(at=st.integers(0, len(GOOD)), text=st.text(max_size=6))
def test_no_text_ends_the_program(
    at: int, text: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    path = tmp_path_factory.mktemp("sheet") / "sheet.csv"
    path.write_bytes((GOOD[:at] + text + GOOD[at:]).encode("utf-8", "surrogatepass"))
    vine, findings = read_field_sheet(path, "sheet.csv")
    assert (vine is None) == bool(findings)
    assert all(finding.place.file == "sheet.csv" for finding in findings)
