"""Buds on a length of arm, scale bars and the card's gauge: in the units of the handbook."""

from __future__ import annotations

from dataclasses import replace
from typing import cast

import pytest

from pencilwood.proof import prove_case
from pencilwood.site.handbook import own_profile, read_one_case
from pencilwood.units import UnitSystem
from pencilwood.vine.forms.cordon import CORDONS
from pencilwood.vine.measures import buds_per_metre
from pencilwood.worksheets.case_papers import worksheet_data
from pencilwood.worksheets.house_papers import measuring_sheet, pocket_card
from pencilwood.worksheets.measures_table import rows
from small_handbook import change
from workshop import PROJECT, Workshop

FOOT_M = 0.3048


@pytest.mark.parametrize(
    ("units", "buds", "bar_mm", "shown"),
    [("metric", "12 to 18", 100, "10 cm"), ("us", "3.7 to 5.5", 4 * 25.4, "4 in")],
)
def test_papers_count_buds_and_draw_their_bar_in_the_handbooks_units(
    units: UnitSystem, buds: str, bar_mm: float, shown: str
) -> None:
    metric, case, findings = read_one_case(PROJECT, "tidy-vine")
    assert metric is not None, findings
    assert case is not None, findings
    profile = replace(metric, units=units)
    proof = prove_case(case, profile)
    length = {"metric": "metre", "us": "foot"}[units]
    told = {name: (asked, after) for name, asked, _, after, _ in rows(proof, profile, "en")}
    asked, after = told[f"Buds per {length} of arm"]
    assert asked == buds
    on_metre = buds_per_metre(proof.answer_left) * (1 if units == "metric" else FOOT_M)
    assert abs(float(after) - on_metre) <= 0.05
    drawing = cast("dict[str, object]", worksheet_data(proof, profile, "en")["drawing"])
    assert drawing["bar"] == {"mm": pytest.approx(bar_mm), "length": shown}
    (face, *_) = cast("list[dict[str, object]]", pocket_card(profile, "en").data["faces"])
    assert cast("list[float]", face["gauge"])[0] == pytest.approx(bar_mm)
    assert f"this bar is {shown} long" in str(face["words"])
    assert f"A {length} of arm carries {buds}." in str(face["rules"])
    assert ("metre" in str(face)) == (units == "metric")
    assert (" cm" in str(face)) == (units == "metric")


@pytest.mark.parametrize(("units", "size"), [("metric", "a4"), ("us", "letter")])
def test_print_takes_the_paper_of_the_units(workshop: Workshop, units: str, size: str) -> None:
    change(workshop.root / "content" / "profile.yml", "units: metric", f"units: {units}")
    assert workshop.run("print", "--what", "card").status == 0
    assert workshop.run("print", "--what", "card", "--paper", "a4").status == 0
    names = {path.name for path in (workshop.root / "print").iterdir()}
    assert names == {f"card-en-{size}.pdf", "card-en-a4.pdf"}


@pytest.mark.parametrize(
    ("units", "example"), [("metric", "such as 90 cm"), ("us", "such as 33 in")]
)
def test_the_measuring_sheet_names_its_forms_and_where_units_are_written(
    units: UnitSystem, example: str
) -> None:
    profile, _ = own_profile(PROJECT, "en")
    assert profile is not None
    words = cast(
        "dict[str, str]", measuring_sheet(replace(profile, units=units), "en").data["words"]
    )
    for form in CORDONS:
        assert form.name in words["frame-words"]
    assert example in words["frame-words"]
