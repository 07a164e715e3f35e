"""The trainer's blocks: what the file holds, and what is said of its slips."""

import json
from pathlib import Path

import jsonschema
import pytest
import yaml

from case_files import lines
from pencilwood.block.field_list import FIELDS
from pencilwood.block.numbers import Range
from pencilwood.cases.blocks_file import Block, read_blocks
from pencilwood.cases.schema import FOLDER
from pencilwood.findings import Finding
from pencilwood.places import Place

GOOD = """\
blocks:
  - block: mill-terrace
    title: {en: Mill Terrace, es: La terraza}
    figures:
      row spacing: 2.4 m
      prunings: 0.9 to 1.3 kg
      formula: 20+10
      below one pound: scale
      arms: 2
"""


def read(text: str, folder: Path, language: str = "en") -> tuple[tuple[Block, ...], list[Finding]]:
    (folder / "blocks.yml").write_text(text, encoding="utf-8")
    figures = list(FIELDS.values())
    return read_blocks(folder / "blocks.yml", figures, shown_as="blocks.yml", language=language)


def test_a_good_file(tmp_path: Path) -> None:
    (block,), findings = read(GOOD, tmp_path)
    assert findings == []
    assert (block.slug, block.title["es"], block.about) == ("mill-terrace", "La terraza", {})
    assert block.figures["below_one_lb"] == "scale"
    prunings_g = block.figures["prunings_g"]
    assert isinstance(prunings_g, Range)
    assert [prunings_g.low, prunings_g.likely, prunings_g.high] == [900, 1100, 1300]
    assert block.figure_places["prunings_g"] == Place("blocks.yml", 6, 7)


def test_the_demo_blocks_are_read(project: Path) -> None:
    blocks, findings = read_blocks(project / "content" / "blocks.yml", list(FIELDS.values()))
    assert findings == []
    assert len(blocks) == 3
    assert all(set(block.title) == set(block.about) == {"en", "es"} for block in blocks)


def test_the_demo_blocks_fit_the_schema(project: Path) -> None:
    schema = json.loads((FOLDER / "blocks.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    held = yaml.safe_load((project / "content" / "blocks.yml").read_text(encoding="utf-8"))
    jsonschema.validate(held, schema)


SLIPS = [
    # A figure is misspelt.
    (
        "row spacing",
        "row spaceing",
        '5:7: "row spaceing" is not known here; did you mean "row spacing"? (unknown-key)',
    ),
    # A length without its unit.
    (
        "2.4 m",
        "2.4",
        '5:20: "row spacing" cannot be read; write the unit too: mm, cm, m, in, ft; '
        'found "2.4" (not-such-a-figure)',
    ),
    # A unit of something else.
    (
        "2.4 m",
        "2.4 kg",
        '5:20: "row spacing" cannot be read; "kg" is no unit for this; use one of mm, cm, m, in, '
        'ft; found "2.4 kg" (not-such-a-figure)',
    ),
    # Rows wider than any.
    (
        "2.4 m",
        "24 m",
        '5:20: "row spacing" cannot be read; this must lie between 0.5 m and 10 m; '
        'found "24 m" (not-such-a-figure)',
    ),
    # A range from high to low.
    (
        "0.9 to 1.3 kg",
        "1.3 to 0.9 kg",
        '6:17: "prunings" cannot be read; the numbers must go from lowest to highest; '
        'found "1.3 to 0.9 kg" (not-such-a-figure)',
    ),
    # A range where one number is meant.
    (
        "2.4 m",
        "2.3 to 2.5 m",
        '5:20: "row spacing" cannot be read; give one number here, not a range; '
        'found "2.3 to 2.5 m" (not-such-a-figure)',
    ),
    # A formula of one number.
    (
        "20+10",
        "20",
        '7:16: "formula" cannot be read; "20" is no formula; write for example 20+10; '
        'found "20" (not-such-a-figure)',
    ),
    # A choice that there is not.
    (
        "scale",
        "half",
        '8:24: "below one pound" cannot be read; "half" is not one of hold, scale; '
        'found "half" (not-such-a-figure)',
    ),
    # Half an arm.
    (
        "arms: 2",
        "arms: 1.5",
        '9:13: "arms" cannot be read; give a whole number here; found "1.5" (not-such-a-figure)',
    ),
    # Words for a number.
    (
        "0.9 to 1.3 kg",
        "plenty",
        '6:17: "prunings" cannot be read; this is not a number: "plenty". Write for example 2.5; '
        'found "plenty" (not-such-a-figure)',
    ),
    # A language is missing.
    (
        ", es: La terraza",
        "",
        '3:12: "title" has no text in one language; expected a line that begins with "es:" '
        "(missing-language)",
    ),
]


@pytest.mark.parametrize(("old", "new", "said"), SLIPS)
def test_slips(tmp_path: Path, old: str, new: str, said: str) -> None:
    assert GOOD.count(old) == 1
    blocks, findings = read(GOOD.replace(old, new), tmp_path)
    assert blocks == ()
    assert lines(findings) == [f"blocks.yml:{said}"]
    spanish = read(GOOD.replace(old, new), tmp_path, "es")[1]
    assert lines(spanish) != lines(findings)


def test_a_block_named_twice(tmp_path: Path) -> None:
    twice = GOOD + GOOD.removeprefix("blocks:\n")
    _, findings = read(twice, tmp_path)
    assert [(one.name, one.place.line) for one in findings] == [("named-twice", 10)]
