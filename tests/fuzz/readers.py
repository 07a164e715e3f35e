"""Every kind of file that a handbook is made of: how it is read, and what is then done with it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from case_files import usual_tool
from fuzz import deeds
from fuzz.ground import FIGURES, PROJECT, RULES, Ground
from pencilwood.cases.blocks_file import read_blocks
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.example_file import read_example
from pencilwood.cases.field_columns import SHEET_FORMS
from pencilwood.cases.field_sheet import read_field_sheet
from pencilwood.cases.field_writer import field_sheet
from pencilwood.cases.figures_file import read_figures
from pencilwood.cases.glossary_file import read_glossary
from pencilwood.cases.profile_file import EMPLOYER_FIELDS, read_profile
from pencilwood.cases.quiz_file import KnownNames, read_quiz
from pencilwood.cases.safety_file import read_safety
from pencilwood.cases.settings_file import read_settings
from pencilwood.cases.sources_file import read_sources
from pencilwood.findings import Finding
from pencilwood.pages.chapters.chapter_page import check_chapter
from pencilwood.rules import BANDS
from pencilwood.site.chapters import read_chapters
from pencilwood.site.folders import CONFIG
from pencilwood.site.hints import Notes

LANGUAGES = ("en", "es")
Read = tuple[object, Sequence[Finding]]
"""What came of a file, None or empty where nothing did, and the findings."""


@dataclass(frozen=True)
class Kind:
    """One kind of file."""

    name: str
    file: str
    """Where such a file stands in a handbook's folder."""
    seeds: tuple[bytes, ...]
    read: Callable[[Path, str, Ground], Read]
    """Read the file of a folder, with findings in a language."""
    use: Callable[[object, Ground, str], Sequence[Finding]]
    """What a build does with what was read; findings of its own are returned."""
    parts: bool = True
    """Whether it is YAML throughout."""


def _bytes(pattern: str) -> tuple[bytes, ...]:
    found = tuple(path.read_bytes() for path in sorted(PROJECT.glob(pattern)))
    assert found, pattern
    return found


def _case(root: Path, language: str, on: Ground) -> Read:
    path = root / "content/cases/tidy-vine.yml"
    return read_case(
        path, CaseSurroundings(LANGUAGES, RULES, on.safety, usual_tool), CASE, language=language
    )


def _example(root: Path, language: str, on: Ground) -> Read:
    path = root / EXAMPLE
    return read_example(path, "too-many-buds", EXAMPLE, language=language, tool_for=usual_tool)


def _quiz(root: Path, language: str, on: Ground) -> Read:
    names = KnownNames(tuple(on.handbook.case_by_slug), RULES, on.chapters)
    return read_quiz(root / QUIZ, LANGUAGES, names, QUIZ, language=language)


def _profile(root: Path, language: str, on: Ground) -> Read:
    return read_profile(root / PROFILE, BANDS, PROFILE, language=language)


def _blocks(root: Path, language: str, on: Ground) -> Read:
    return read_blocks(root / BLOCKS, FIGURES, LANGUAGES, BLOCKS, language=language)


def _safety(root: Path, language: str, on: Ground) -> Read:
    return read_safety(root / SAFETY, LANGUAGES, SAFETY, language=language)


def _sources(root: Path, language: str, on: Ground) -> Read:
    return read_sources(root / SOURCES, LANGUAGES, SOURCES, language=language)


def _figures(root: Path, language: str, on: Ground) -> Read:
    known = on.handbook.reference.sources
    return read_figures(root / FIGURES_YML, known, LANGUAGES, FIGURES_YML, language=language)


def _glossary(root: Path, language: str, on: Ground) -> Read:
    known = on.handbook.reference.sources
    return read_glossary(root / GLOSSARY, known, LANGUAGES, GLOSSARY, language=language)


def _sheet(root: Path, language: str, on: Ground) -> Read:
    return read_field_sheet(root / SHEET, SHEET, language=language)


def _settings(root: Path, language: str, on: Ground) -> Read:
    (root / "content/chapters").mkdir(parents=True, exist_ok=True)
    settings, found = read_settings(root / CONFIG, CONFIG, language=language)
    return None if settings is None else deeds.Given(root / CONFIG, settings), found


def _chapter(root: Path, language: str, on: Ground) -> Read:
    notes = Notes(language)
    chapters, _ = read_chapters(root, ("en",), notes)
    if not chapters:
        return None, notes.findings
    chapter = replace(chapters[0], audience="worker")
    # What a chapter calls and where its links lead is found when it is checked.
    return chapter, (*notes.findings, *check_chapter(on.handbook, chapter, language).findings)


CASE = "content/cases/tidy-vine.yml"
EXAMPLE = "content/rules/too-many-buds/good.yml"
QUIZ = "quizzes/first-week.yml"
PROFILE = "content/profile.yml"
BLOCKS = "content/blocks.yml"
SAFETY = "content/safety/notes.yml"
SOURCES = "content/sources.yml"
FIGURES_YML = "content/figures.yml"
GLOSSARY = "content/glossary.yml"
SHEET = "row 7.csv"
CHAPTER = "content/chapters/en/tools.md"


def _named(datas: Iterable[bytes], key: bytes, name: bytes) -> tuple[bytes, ...]:
    """The files under the one name that their reader expects."""
    found = []
    for data in datas:
        rows = data.split(b"\n")
        found.append(
            b"\n".join(key + b": " + name if row.startswith(key + b":") else row for row in rows)
        )
    return tuple(found)


def _with_new_arm(datas: Iterable[bytes]) -> tuple[bytes, ...]:
    """The cases of two arms with the wish that one is made new; few of the demo's have it."""
    return tuple(
        data + b"\nrenewed arm: left\n"
        for data in datas
        if b"form: two-arm cordon" in data and b"renewed arm:" not in data
    )


_LINKS = b"""

[Tools](tools.md), [here](#a-place), [a place there](ladders.md#the-leaning-ladder) and
[words](words.md).

## A place

![A hand](photos/hand.jpg)

[tools]: tools.md "Tools"
"""


_CREDITS = (b"author:", b"licence:", b"origin:")


def _credited(datas: Iterable[bytes]) -> tuple[bytes, ...]:
    """The files with an origin, and with one text for all in place of one in each language."""
    each = b"\nauthor: {en: Ana, es: Ana}\norigin: {en: a hillside, es: una ladera}\n"
    plain = b"author: Ana\nlicence: {en: For Larkfell, es: Para Larkfell}\norigin: Larkfell\n"
    found = []
    for data in datas:
        rows = data.split(b"\n")
        without = b"\n".join(row for row in rows if not row.startswith(_CREDITS)).rstrip()
        found += [without + each, without + b"\n" + plain]
    return tuple(found)


def _employed(data: bytes) -> tuple[bytes, ...]:
    """The profile alone, and with all that an employer settles: for all readers, or for each."""
    lengths = {"distance between workers": ("3 m", "10 ft"), "off-hand distance": ("20 cm", "8 in")}
    texts = ("Ana, 555-0100", "{en: the shed, es: el galpón}")
    given = [lengths.get(name, texts) for name in EMPLOYER_FIELDS]
    found = [data]
    for at in (0, 1):
        rows = zip(EMPLOYER_FIELDS, given, strict=True)
        own = "".join(f"  {name}: {each[at]}\n" for name, each in rows)
        found.append(data.rstrip() + f"\nemployer:\n{own}".encode())
    return tuple(found)


def kinds(on: Ground) -> tuple[Kind, ...]:
    """All of them."""
    sheets = tuple(
        field_sheet(proof.case.vine, language).encode("utf-8")
        for proof in on.handbook.cases[:4]
        if proof.case.vine.form.name in SHEET_FORMS
        for language in LANGUAGES
    )
    cases = _named(_bytes("content/cases/*.yml"), b"case", b"tidy-vine")
    cases += _with_new_arm(cases) + _credited(cases)
    chapters = _bytes("content/chapters/en/*.md")
    chapters += tuple(data.rstrip() + _LINKS for data in chapters)
    quizzes = _named(_bytes("quizzes/*.yml"), b"quiz", b"first-week")
    return (
        Kind("case", CASE, cases, _case, deeds.use_case),
        Kind("example", EXAMPLE, _bytes("content/rules/*/good.yml"), _example, deeds.use_example),
        Kind("quiz", QUIZ, quizzes, _quiz, deeds.use_quiz),
        Kind("profile", PROFILE, _employed(*_bytes(PROFILE)), _profile, deeds.use_profile),
        Kind("blocks", BLOCKS, _bytes(BLOCKS), _blocks, deeds.use_blocks),
        Kind("safety", SAFETY, _bytes(SAFETY), _safety, deeds.use_safety),
        Kind("sources", SOURCES, _bytes(SOURCES), _sources, deeds.use_sources),
        Kind("figures", FIGURES_YML, _bytes(FIGURES_YML), _figures, deeds.use_figures),
        Kind("glossary", GLOSSARY, _bytes(GLOSSARY), _glossary, deeds.use_glossary),
        Kind("settings", CONFIG, _bytes(CONFIG), _settings, deeds.use_settings),
        Kind("sheet", SHEET, sheets, _sheet, deeds.use_vine, parts=False),
        Kind("chapter", CHAPTER, chapters, _chapter, deeds.use_chapter, parts=False),
    )


def kind_named(on: Ground, name: str) -> Kind:
    """The kind of this name."""
    return next(one for one in kinds(on) if one.name == name)
