"""The way from a printed sheet to a vine, as the handbook's own pages and texts name it."""

from __future__ import annotations

import html
import re
import shlex
from pathlib import Path

import pytest

from pencilwood.pages.doors import trainers_page
from pencilwood.site.handbook import open_handbook
from pencilwood.vine.forms import FORMS
from pencilwood.words import LANGUAGES
from small_handbook import make_small
from workshop import PROJECT, Workshop

STARTER = PROJECT / "generator" / "pencilwood" / "site" / "starter" / "files"


@pytest.mark.parametrize("language", LANGUAGES)
def test_each_command_of_the_trainers_page_works_as_typed(
    workshop: Workshop, language: str, tmp_path: Path
) -> None:
    handbook = open_handbook(make_small(tmp_path / "small", "tidy-vine")).handbook
    assert handbook is not None
    named = re.findall(r"<dt><code>(.*?)</code></dt>", trainers_page(handbook, language).body)
    commands = [shlex.split(html.unescape(one)) for one in named]
    assert [words[1] for words in commands] == ["print", "case", "check"]
    workshop.patch.chdir(workshop.root)
    filled = next(word for words in commands for word in words if word.endswith(".csv"))
    assert workshop.run("case", "to-csv", "tidy-vine", "--output", filled).status == 0
    for words in commands[:2]:
        assert words[0] == "pencilwood"
        ran = workshop.run(*words[1:])
        assert ran.status == 0, ran.err
    assert (workshop.root / "content" / "cases" / filled).with_suffix(".yml").is_file()


@pytest.mark.parametrize("language", LANGUAGES)
def test_chapter_and_readme_name_the_way_from_sheet_to_vine(language: str) -> None:
    chapter = PROJECT / "content" / "chapters" / language / "measuring-a-vine.md"
    for path in (chapter, STARTER / f"readme.{language}.md"):
        text = path.read_text("utf-8")
        assert "pencilwood print --what measuring-sheet" in text, path
        assert "pencilwood case from-csv " in text, path


def test_an_unknown_form_is_answered_with_all_forms(workshop: Workshop) -> None:
    workshop.run("case", "to-csv", "tidy-vine", "--output", str(workshop.root / "row.csv"))
    sheet = workshop.root / "row.csv"
    sheet.write_text(sheet.read_text("utf-8").replace("two-arm cordon", "cordon"), "utf-8")
    ran = workshop.run("case", "from-csv", str(sheet))
    assert ran.status != 0
    told = ran.out + ran.err
    assert "did you mean" not in told
    for form in FORMS:
        assert form.name in told
