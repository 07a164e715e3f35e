"""Files that cannot be read at all give one plain finding."""

import os
from pathlib import Path

import pytest

from case_files import LANGUAGES, RULES, SAFETY, lines, read, sample, usual_tool, with_slip
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.source import LARGEST_BYTES

OPEN = "expected a plain file that you may read"


def said(path: Path) -> list[str]:
    case, findings = read_case(
        path, CaseSurroundings(LANGUAGES, RULES, SAFETY, usual_tool), "vine.yml"
    )
    assert case is None
    return lines(findings)


def test_no_such_file(tmp_path: Path) -> None:
    assert said(tmp_path / "tidy-vine.yml") == [
        "vine.yml:1:1: there is no such file (missing-file)"
    ]


def test_a_folder(tmp_path: Path) -> None:
    assert said(tmp_path) == ["vine.yml:1:1: this is a folder; expected a file (is-a-folder)"]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with names")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    assert said(tmp_path / "pipe") == [
        f"vine.yml:1:1: this file cannot be opened; {OPEN} (unreadable-file)"
    ]


def test_a_name_that_no_file_can_have() -> None:
    assert said(Path("tidy\0vine.yml")) == [
        f"vine.yml:1:1: this file cannot be opened; {OPEN} (unreadable-file)"
    ]


def test_a_file_that_nobody_may_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise PermissionError

    (tmp_path / "tidy-vine.yml").write_text(sample(), encoding="utf-8")
    monkeypatch.setattr(Path, "open", refuse)
    assert said(tmp_path / "tidy-vine.yml") == [
        f"vine.yml:1:1: this file cannot be opened; {OPEN} (unreadable-file)"
    ]


@pytest.mark.parametrize("content", ["", "\n\n", "# only a note\n", "---\n", "\ufeff"])
def test_an_empty_file(tmp_path: Path, content: str) -> None:
    assert lines(read(content, tmp_path)[1]) == ["vine.yml:1:1: this file is empty (empty-file)"]


def test_a_file_that_is_too_large(tmp_path: Path) -> None:
    content = sample() + "# Larkfell\n" * (LARGEST_BYTES // 10)
    assert lines(read(content, tmp_path)[1]) == [
        "vine.yml:1:1: this file is too large; expected at most 1000 kB (file-too-large)"
    ]


@pytest.mark.parametrize(
    ("content", "place"),
    [
        # The accent of an old Western encoding stands in the second line.
        (b"case: tidy-vine\ntitle: d\xeda\n", "2:9"),
        # A file that an office program saved in two bytes a letter.
        ("case: tidy-vine".encode("utf-16"), "1:1"),
        # Cut off in the middle of a letter.
        ("title: dí".encode()[:-1], "1:9"),
    ],
)
def test_another_encoding(tmp_path: Path, content: bytes, place: str) -> None:
    assert lines(read(content, tmp_path)[1]) == [
        f"vine.yml:{place}: this file is not saved as UTF-8 text; expected UTF-8: "
        "save it again from your editor with that encoding (not-utf-8)"
    ]


@pytest.mark.parametrize(
    ("content", "found"),
    [("tidy vine", '"tidy vine"'), ("- a\n- b\n", "several parts"), ("[]", "several parts")],
)
def test_a_file_without_names_and_values(tmp_path: Path, content: str, found: str) -> None:
    (line,) = lines(read(content, tmp_path)[1])
    assert line.startswith("vine.yml:1:1: this file does not consist of names and values; ")
    assert line.endswith(f"found {found} (not-lines-at-all)")


def test_deep_nesting_is_harmless(tmp_path: Path) -> None:
    for content in ("[" * 100_000, "{a: " * 50_000, "- " * 50_000):
        case, findings = read(content, tmp_path)
        assert case is None
        assert [one.name for one in findings] == ["too-deep"]


def test_a_name_is_shown_as_the_caller_wants(tmp_path: Path) -> None:
    path = tmp_path / "tidy-vine.yml"
    findings = read_case(path, CaseSurroundings(LANGUAGES, RULES, SAFETY, usual_tool))[1]
    assert findings[0].place.file == str(path)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("trunk thickness: 55 mm", "trunk thickness: 55", "such as 2 in"),
        ("trunk thickness: 55 mm", "trunk thickness: 9 ft", "3/8 in to 19 1/2 in"),
    ],
)
def test_lengths_in_findings_are_in_the_units_of_the_handbook(
    tmp_path: Path, old: str, new: str, said: str
) -> None:
    path = tmp_path / "tidy-vine.yml"
    path.write_text(with_slip(old, new), "utf-8")
    around = CaseSurroundings(LANGUAGES, RULES, SAFETY, usual_tool, "us")
    (finding,) = read_case(path, around)[1]
    assert said in finding.expected
