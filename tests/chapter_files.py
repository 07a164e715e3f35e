"""Small files of sources, figures, words and chapters, and a handbook made of them."""

import shutil
from pathlib import Path

from pencilwood.cases.chapter_head import Audience
from pencilwood.findings import Finding
from pencilwood.pages.chapters.chapter_page import check_chapter, filled_in
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Chapter, Handbook
from pencilwood.places import Place
from pencilwood.site.own_pages import own_pages

SOURCES = """\
a-study:
  title: "A. Grower, Hands & arms, 2016"
  kind: published
  read: read
  url: https://example.org/hands
  note: {en: "Opening part.", es: "La primera parte."}
our-habit: {title: "Common practice", kind: common practice, read: not read}
"""
FIGURES = """\
hand-width: {value: 10 cm, source: a-study}
spur-spacing: {from: 7.6 cm, to: 12.7 cm, source: a-study}
wounds-open: {value: 14, unit: days, source: a-study}
dead-buds: {from: 15 %, to: 20 %, source: our-habit}
frost: {value: 2, unit: °C, source: our-habit}
shoots: {from: 10, to: 16, unit: {en: shoots per metre, es: brotes por metro}, source: a-study}
"""
GLOSSARY = """\
spur:
  en: {word: spur, plural: spurs, meaning: A cane cut short and kept.}
  es: {word: pulgar, plural: pulgares, meaning: Un sarmiento corto, also: [pitón]}
  source: a-study
fruiting-cane:
  en: {word: fruiting cane, plural: fruiting canes, meaning: A long cane that is kept.}
  es: {word: vara, plural: varas, meaning: Un sarmiento largo que se deja., also: [cargador]}
  source: a-study
cane:
  en: {word: cane, plural: canes, meaning: Last summer's shoot.}
  es: {word: sarmiento, plural: sarmientos, meaning: El brote del verano pasado.}
  source: our-habit
head:
  en: {word: head, plural: heads, meaning: The top of the trunk.}
  es: {word: cabeza, plural: cabezas, meaning: Lo más alto del tronco.}
  source: our-habit
  mark: by hand
"""


def small_handbook(project: Path, root: Path) -> Path:
    """The demo's profile, rules and safety notes, one vine, and the files above."""
    content = root / "content"
    for folder in ("rules", "safety"):
        shutil.copytree(project / "content" / folder, content / folder)
    (content / "cases").mkdir()
    shutil.copy(project / "content" / "cases" / "tidy-vine.yml", content / "cases")
    shutil.copy(project / "content" / "profile.yml", content)
    for name, text in (("sources", SOURCES), ("figures", FIGURES), ("glossary", GLOSSARY)):
        (content / f"{name}.yml").write_text(text, "utf-8")
    return root


def chapter(text: str, language: str = "en", audience: str | None = None) -> Chapter:
    """A chapter that is nothing but this text."""
    reader: Audience | None = "worker" if audience == "worker" else None
    return Chapter("test", language, "A test", text, Place("a.md"), reader)


def told(handbook: Handbook, text: str, language: str = "en", **more: str) -> list[Finding]:
    """What is found in a chapter."""
    written, pages = chapter(text, language, **more), own_pages(handbook)
    return list(check_chapter(handbook, written, "en", own_pages=pages).findings)


def filled(handbook: Handbook, text: str, language: str = "en", **more: str) -> str:
    """The text of a chapter with every call filled in."""
    return _filled(handbook, text, language, **more)[1]


def completed(handbook: Handbook, text: str) -> str:
    """The same in English, with the drawings that go in late."""
    desk, html = _filled(handbook, text, "en")
    return desk.complete(html)


def _filled(handbook: Handbook, text: str, language: str, **more: str) -> tuple[Desk, str]:
    one = chapter(text, language, **more)
    assert told(handbook, text, language, **more) == []
    desk = Desk(handbook, one.name, language)
    return desk, filled_in(desk, one)
