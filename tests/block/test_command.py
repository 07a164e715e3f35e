"""`pencilwood block`: one sum, one block, all blocks; its JSON and its refusals."""

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from pencilwood.block.questions import QUESTIONS
from pencilwood.cli import main
from pencilwood.commands import block as command


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    try:
        status = main(("block", *arguments))
    except SystemExit as ended:  # argparse ends the program itself
        status = int(str(ended.code))
    told = capsys.readouterr()
    return status, told.out, told.err


def schema() -> dict[str, Any]:
    path = Path(command.__file__).with_name("block.schema.json")
    found: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return found


SUMS = [
    (
        ("buds", "--prunings", "2.5 lb", "--formula", "20+10"),
        "Buds on a vine by its prunings: 35 buds",
    ),
    (("vines", "--row", "8 ft", "--vine", "6 ft"), "Vines on an acre: 908 per acre"),
    (("crew", "--vines", "4000", "--people", "6"), "Hours of work: 60 to 70 h (most likely 65)"),
    (
        ("crew", "--vines", "4000", "--people", "6", "--language", "es"),
        "Horas de trabajo: 60 a 70 h (lo más probable: 65)",
    ),
    (
        ("fit", "--buds-wanted", "40", "--arm-length", "70 cm"),
        "Your arms hold 28 buds, 40 buds are asked for: leave 28 buds.",
    ),
    (
        (
            *("crop", "--buds", "28", "--row", "2.4 m", "--vine", "1.5 m"),
            *("--cluster-weight", "100 to 115 g", "--units", "us"),
        ),
        "US tons per acre",
    ),
    (("buds", "--prunings", "0.9 to 1.3 kg"), "usual value taken; from memory"),
]


@pytest.mark.parametrize(("arguments", "says"), SUMS)
def test_a_sum_needs_no_file(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    arguments: tuple[str, ...],
    says: str,
) -> None:
    monkeypatch.chdir(tmp_path)
    status, out, err = run(capsys, *arguments)
    assert (status, err) == (0, "")
    assert says in out


REFUSED = [
    (("buds",), "--prunings: Give a number here."),
    (("buds", "--prunings", "2.5"), "--prunings: Write the unit too: g, kg, t, oz, lb, ton."),
    (("buds", "--prunings", "2.5 lb", "--formula", "x"), '--formula: "x" is no formula'),
    (("buds", "--prunings", "99 kg"), "--prunings: This must lie between 0.01 kg and 50 kg."),
    (("buds", "--prunings", "99 kg", "--language", "es"), "Debe estar entre 0,01 kg y 50 kg."),
    (("crew", "--vines", "10"), "--people: Give the people you have, or the days you have."),
    (("buds", "--people", "3"), "nobody asked for this, or it is typed wrong: --people 3"),
    (("mill-terrase",), 'no block or sum "mill-terrase"; did you mean "mill-terrace"?'),
    (("--root", "tests"), "there is no file tests"),
]


@pytest.mark.parametrize(("arguments", "says"), REFUSED)
def test_refusals(
    project: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    arguments: tuple[str, ...],
    says: str,
) -> None:
    monkeypatch.chdir(project)
    status, out, err = run(capsys, *arguments)
    assert (status, out) == (2, "")
    assert says in err
    assert "Traceback" not in err


def test_all_blocks_and_one(
    project: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(project)
    status, out, _ = run(capsys)
    assert status == 0
    assert [line for line in out.splitlines() if line.startswith("== ")] == [
        "== Mill Terrace (mill-terrace)",
        "== The Long Row (long-row)",
        "== Old Orchard (old-orchard)",
    ]
    _, one, _ = run(capsys, "long-row")
    assert one in out


def test_json_is_what_its_schema_says(
    project: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(project)
    jsonschema.Draft202012Validator.check_schema(schema())
    for arguments in (
        ("--json",),
        ("old-orchard", "--json"),
        ("vines", "--row", "3 m", "--vine", "1 m", "--json"),
    ):
        status, out, _ = run(capsys, *arguments)
        assert status == 0
        jsonschema.validate(json.loads(out), schema())
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({**json.loads(out), "weather": "cold"}, schema())


def test_json_says_over_how_many_years_a_crop_is_lost(
    project: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(project)
    _, out, _ = run(capsys, "old-orchard", "--json")
    (told,) = json.loads(out)["blocks"]
    (lost,) = (one["figures"] for one in told["sums"] if one["question"] == "renovation")
    assert lost["lost-crop"]["years"] == 5
    assert "years" not in lost["work"]


def test_json_is_stable(capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, "buds", "--prunings", "2.3 to 2.8 lb", "--formula", "30+10", "--json")
    assert json.loads(out) == {
        "format": 1,
        "units": "us",
        "question": "buds",
        "figures": {"buds": {"low": 43, "likely": 46, "high": 48, "unit": "buds"}},
        "rows": [],
        "remarks": [],
    }


def test_slips_in_the_file_are_findings(
    project: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "content").mkdir()
    for name in ("profile.yml", "blocks.yml"):
        text = (project / "content" / name).read_text(encoding="utf-8")
        slipped = text.replace("fewest buds: 24", "fewest buds: 24\n      most buds: 20")
        (tmp_path / "content" / name).write_text(slipped, encoding="utf-8")
    status, out, _ = run(capsys, "--root", str(tmp_path))
    assert status == 1
    assert "content/blocks.yml:" in out
    assert "The fewest buds are more than the most buds" in out
    assert out.rstrip().endswith("(block-sum)")


def test_every_sum_has_its_help(capsys: pytest.CaptureFixture[str]) -> None:
    for name in QUESTIONS:
        status, out, _ = run(capsys, name, "--help")
        assert status == 0
        assert f"pencilwood block {name}" in out
