"""The safety notes: what is read, and every slip with its place."""

from pathlib import Path

import pytest

from pencilwood.cases.reference import Title
from pencilwood.cases.safety_file import read_safety

GOOD = """\
notes:
  - note: saw
    signal: warning
    about: tools
    title: {en: Saw, es: Serrucho}
    advice:
      - say: {en: Fold it., es: Pliéguelo.}
        status: from memory
      - say: {en: Mind the blade., es: Cuidado con la hoja.}
        status: read
        source: A maker's manual
"""


def read(folder: Path, text: str, language: str = "en") -> tuple[list[str], list[str]]:
    """Names of the notes and the findings without the file's name."""
    (folder / "notes.yml").write_text(text, "utf-8")
    notes, findings = read_safety(
        folder / "notes.yml", ("en", "es"), "notes.yml", language=language
    )
    names = [note.name for note in notes]
    return names, [finding.render().removeprefix("notes.yml:") for finding in findings]


def test_good_notes(tmp_path: Path) -> None:
    (tmp_path / "notes.yml").write_text(GOOD, "utf-8")
    (note,), findings = read_safety(tmp_path / "notes.yml")
    assert findings == []
    assert (note.name, note.signal, note.about) == ("saw", "warning", "tools")
    assert note.title == {"en": "Saw", "es": "Serrucho"}
    assert [(one.status, one.source) for one in note.advice] == [
        ("from memory", None),
        ("read", Title(dict.fromkeys(("en", "es"), "A maker's manual"), as_printed=True)),
    ]


def test_a_source_with_words_of_ours_is_told_in_each_language(tmp_path: Path) -> None:
    ours = "{en: A news article, es: Un artículo de prensa}"
    (tmp_path / "notes.yml").write_text(GOOD.replace("A maker's manual", ours), "utf-8")
    (note,), findings = read_safety(tmp_path / "notes.yml")
    assert findings == []
    words = {"en": "A news article", "es": "Un artículo de prensa"}
    assert note.advice[1].source == Title(words, as_printed=False)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (
            "signal: warning",
            "signal: warnin",
            '3:13: "signal" cannot be "warnin"; did you mean "warning"? (not-a-choice)',
        ),
        (
            "    about: tools\n",
            "",
            "2:5: ",  # the place of the note that lacks it
        ),
        (
            "status: read\n        source: A maker's manual",
            "status: read",
            '10:9: advice that was "read" names no source; '
            'expected "source: who published it" (status-without-source)',
        ),
        (
            "status: from memory",
            "status: from memory\n        source: A book",
            '9:9: advice with the status "from memory" names a source; expected the status "read" '
            'or "read at second hand", or no source (source-without-status)',
        ),
        ("es: Serrucho", "fr: Scie", "5:22: "),
        ("note: saw", "note: Big Saw", "2:11: "),
    ],
)
def test_slips(tmp_path: Path, old: str, new: str, said: str) -> None:
    assert GOOD.count(old) == 1
    names, findings = read(tmp_path, GOOD.replace(old, new))
    assert names == []
    assert any(one.startswith(said) for one in findings), findings


def test_same_name_twice(tmp_path: Path) -> None:
    _, findings = read(tmp_path, GOOD + GOOD.removeprefix("notes:\n"))
    assert len(findings) == 1
    assert findings[0].startswith('12:5: "saw"')


def test_findings_speak_spanish(tmp_path: Path) -> None:
    _, findings = read(tmp_path, GOOD.replace("        source: A maker's manual\n", ""), "es")
    assert len(findings) == 1
    assert "un consejo con el estado" in findings[0]


def test_notes_of_the_demo_handbook(project: Path) -> None:
    notes, findings = read_safety(project / "content" / "safety" / "notes.yml")
    assert findings == []
    named = {note.name for note in notes}
    assert {"eyes", "hand-shears", "loppers", "saw", "ladder-tripod", "ladder-leaning"} <= named
    # A published figure for the distance between workers or from the blade was never found.
    words = " ".join(text for note in notes for one in note.advice for text in one.say.values())
    assert not any(sign.isdigit() for sign in words)
