"""A handbook as small as one can be: a profile, safety notes, rule examples, a few cases."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from pencilwood.cases.chapter_head import Audience
from pencilwood.pages.handbook import Chapter, Handbook
from pencilwood.places import Place
from pencilwood.site.handbook import Opened, open_handbook
from pencilwood.words import LANGUAGES

PROJECT = Path(__file__).resolve().parent.parent
CASES = Path("content/cases")
SHARED = Path("content/shared")
CREW = "author: {en: the Larkfell training crew, es: la cuadrilla de capacitación de Larkfell}"
"""The line by which each of the demo's cases says who wrote it."""


def make_small(root: Path, *cases: str) -> Path:
    """Copy what is needed of the demo handbook, with these of its cases."""
    content = root / "content"
    for folder in ("safety", "rules"):
        shutil.copytree(PROJECT / "content" / folder, content / folder)
    (root / CASES).mkdir()
    for case in cases:
        shutil.copy(PROJECT / CASES / f"{case}.yml", root / CASES)
    for language in LANGUAGES:
        (content / "chapters" / language).mkdir(parents=True)
        (content / "chapters" / language / "home.md").write_text("# Home\n\nHello.\n", "utf-8")
    profile = (PROJECT / "content" / "profile.yml").read_text("utf-8")
    fewer = profile.replace("practice vines: 200", "practice vines: 0")
    (content / "profile.yml").write_text(fewer, "utf-8")
    shutil.copy(PROJECT / "mkdocs.yml", root)
    return root


def add_to(path: Path, text: str) -> None:
    """Write more lines at the end of a file."""
    path.write_text(path.read_text("utf-8") + text, "utf-8")


def change(path: Path, old: str, new: str) -> None:
    """Put `new` in the place of `old`, which the file must hold."""
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new), "utf-8")


def said(opened: Opened) -> list[str]:
    """Every finding as `pencilwood check` prints it."""
    return [finding.render() for finding in opened.findings]


def check(root: Path, language: str = "en") -> list[str]:
    """What `pencilwood check` finds."""
    return said(open_handbook(root, language))


Change = Callable[[Handbook], Handbook]


def with_chapter(audience: Audience | None) -> Change:
    """Puts one chapter, for these readers, in the place of all others."""

    def change(handbook: Handbook) -> Handbook:
        made = Chapter("x", "en", "Title of x", "", Place("content/chapters/en/x.md"), audience)
        return replace(handbook, chapters=(made,))

    return change
