"""Which of the package's files a new handbook gets, and what is written for it alone.

All but the few files in ``files/`` are taken from the demo handbook, so nothing is kept twice.
The rule examples, the trade words, the sources, the figures and the safety notes are not copied:
they serve every handbook from the package (see `pencilwood.site.shared`).
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from string import Template

from pencilwood import __version__
from pencilwood.assets import handbook_root
from pencilwood.site.starter.passages import Passages, without_schema
from pencilwood.words import say

VINES = ("tidy-vine", "weak-vine", "spindly-and-diseased")
"""Two easy vines and a middling one; the quiz asks about all three."""
QUIZ = "before-the-first-day"
CHAPTERS = (
    "a-day-in-the-row", "block-numbers", "common-mistakes", "counting-buds", "cuts-that-heal",
    "home", "ladders", "measuring-a-vine", "parts-of-the-vine", "reading-wood",
    "running-a-pruning-day", "setting-targets", "spacing-by-hand", "three-passes", "tools",
    "training-language-and-records", "which-cane-stays", "why-we-prune", "working-safely",
)  # fmt: skip
"""What the quiz sends people to, the front page's text, and what a trainer needs from the first
winter on: targets, the pruning day, mistakes, the block, records, how to make a case."""
_OUR_FILES = Path(__file__).parent / "files"
_IN_EACH_LANGUAGE = (("profile", "yml"), ("blocks", "yml"), ("readme", "md"))
_CREW = "{en: the Larkfell training crew, es: la cuadrilla de capacitación de Larkfell}"
_AUTHOR = "{en: the Pencilwood project, es: el proyecto Pencilwood}"
"""The demo's vineyard is invented; its vines are passed on under the project's own name."""
_WORKFLOW = ".github/workflows/publish.yml"


class NotWrittenError(Exception):
    """What a new handbook needs in a language, and nobody has written."""

    def __init__(self, language: str, missing: Sequence[str]) -> None:
        super().__init__(f"{language}: {', '.join(missing)}")
        self.language = language
        self.missing = missing


def starter_files(vineyard: str, languages: tuple[str, ...]) -> Mapping[str, str]:
    """The text of every file of a new handbook by its path, for a vineyard of this name.

    Raises NotWrittenError for a language that the demo's chapters are not all written in.
    """
    demo = handbook_root()
    for language in languages:
        if missing := list(_missing(demo, language)):
            raise NotWrittenError(language, missing)
    return dict(
        sorted(
            [
                *_from_demo(demo),
                *_chapters(demo, languages),
                *_for_trainer(vineyard, languages),
            ]
        )
    )


def _missing(demo: Path, language: str) -> Iterator[str]:
    """Files that are there in other languages, and not in this one."""
    chapters = (f"content/chapters/{language}/{name}.md" for name in CHAPTERS)
    yield from (name for name in chapters if not (demo / name).is_file())
    ours = (f"{kind}.{language}.{ext}" for kind, ext in _IN_EACH_LANGUAGE)
    yield from (name for name in ours if not (_OUR_FILES / name).is_file())


def _from_demo(demo: Path) -> Iterator[tuple[str, str]]:
    yield "mkdocs.yml", _text(demo / "mkdocs.yml")
    names = (*(f"content/cases/{vine}.yml" for vine in VINES), f"quizzes/{QUIZ}.yml")
    for name in names:
        yield name, without_schema(_text(demo / name)).replace(_CREW, _AUTHOR)


def _chapters(demo: Path, languages: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    for language in languages:
        folder = f"content/chapters/{language}"
        passages = Passages(VINES, CHAPTERS)
        for name in CHAPTERS:
            yield (
                f"{folder}/{name}.md",
                passages.kept(_text(demo / folder / f"{name}.md")).replace(_CREW, _AUTHOR),
            )


def _for_trainer(vineyard: str, languages: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    first, *others = languages
    yield (
        "content/profile.yml",
        _filled(
            f"profile.{first}.yml",
            # A JSON string is a YAML string too, whatever is in the name.
            vineyard=json.dumps(vineyard, ensure_ascii=False),
            languages=f"[{', '.join(languages)}]",
        ),
    )
    yield "content/blocks.yml", _text(_OUR_FILES / f"blocks.{first}.yml")
    yield "README.md", _text(_OUR_FILES / f"readme.{first}.md")
    for other in others:
        yield say(other, "start.second-readme"), _text(_OUR_FILES / f"readme.{other}.md")
    yield ".gitignore", _text(_OUR_FILES / "gitignore.txt")
    yield "requirements.txt", _filled("requirements.txt", version=__version__)
    yield _WORKFLOW, _text(_OUR_FILES / "publish.yml")


def _filled(name: str, **facts: str) -> str:
    return Template(_text(_OUR_FILES / name)).substitute(facts)


def _text(path: Path) -> str:
    return path.read_text(encoding="utf-8")
