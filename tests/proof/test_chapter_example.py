"""The case file that the chapter on measuring tells a trainer to copy."""

import re
from pathlib import Path

import pytest

from case_files import usual_tool
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.profile_file import read_profile
from pencilwood.cases.safety_file import read_safety
from pencilwood.proof import prove_case
from pencilwood.rules import BANDS, RULE_BY_NAME

CHAPTER = "content/chapters/{language}/measuring-a-vine.md"
LANGUAGES = ("en", "es")


def example_of(project: Path, language: str) -> str:
    """The one whole case file in a fence of the chapter."""
    text = (project / CHAPTER.format(language=language)).read_text("utf-8")
    (example,) = re.findall(r"^```yaml\n(case: .*?)^```$", text, re.MULTILINE | re.DOTALL)
    return str(example)


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_example_is_read_and_passes_every_proof(
    project: Path, tmp_path: Path, language: str
) -> None:
    example = example_of(project, language)
    name = example.splitlines()[0].removeprefix("case: ")
    path = tmp_path / f"{name}.yml"
    path.write_text(example, "utf-8")
    profile, problems = read_profile(project / "content/profile.yml", BANDS)
    notes, more = read_safety(project / "content/safety/notes.yml", LANGUAGES)
    assert profile is not None
    assert not problems + more
    known_notes = [note.name for note in notes]
    case, findings = read_case(
        path, CaseSurroundings(LANGUAGES, list(RULE_BY_NAME), known_notes, usual_tool)
    )
    assert findings == []
    assert case is not None
    assert prove_case(case, profile).findings == ()


def test_both_languages_show_the_same_example(project: Path) -> None:
    assert example_of(project, "en") == example_of(project, "es")


def test_the_example_would_not_pass_with_a_slip(project: Path, tmp_path: Path) -> None:
    path = tmp_path / "short-arm.yml"
    without_unit = example_of(project, "en").replace("at: 13 cm", "at: 13")
    path.write_text(without_unit, "utf-8")
    case, findings = read_case(
        path, CaseSurroundings(LANGUAGES, list(RULE_BY_NAME), ["eyes", "hand-shears"], usual_tool)
    )
    assert case is None
    assert [finding.place.line for finding in findings] == [
        without_unit.splitlines().index("      at: 13") + 1
    ]
