"""Links that an author types as Markdown has them: to a chapter, to a place of it, to a file."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass
from urllib.parse import unquote

from pencilwood.cases.report import nearest
from pencilwood.pages.chapters.problems import Problems
from pencilwood.pages.handbook import Chapter
from pencilwood.words import say

# Behind "](" of a link or a picture: in angles, where spaces may stand, or with pairs of brackets.
_INLINE = r"(?<!\\)(!?)\[[^\[\]\n]*\]\(\s*(?:<([^<>\n]*)>|((?:[^()\s<>]|\([^()\s<>]*\))+))"
# Behind "[name]:", with nothing else on the line but a title; "[note]: see below" is plain text.
_TITLED = r"""[ \t]*(?:(?:"[^\n]*"|'[^\n]*'|\([^\n]*\))[ \t]*)?$"""
_DEFINED = r"^ {0,3}\[[^\]\n^][^\]\n]*\]:[ \t]*(\S+)" + _TITLED
_LEAD = re.compile(f"{_INLINE}|{_DEFINED}")
_SCHEME = re.compile(r"[A-Za-z][A-Za-z0-9+.-]*:|//")
_CODE = re.compile(r"`[^`]*`")
_FENCES = ("```", "~~~")
_SOURCE = ".md"


OwnPlaces = Callable[[str, str], Collection[str] | None]
"""The places of a page of ours by its name and language; None where they are not known."""


def no_places(_name: str, _language: str) -> None:
    """Nothing is known of the pages that we make ourselves."""


@dataclass(frozen=True)
class Surroundings:
    """What a link of one chapter can lead to."""

    pages: Collection[str]
    """Names of the chapters in its language, and of the handbook's own pages beside them."""
    files: Collection[str]
    """Pictures, drawings and papers, from the folder of its language."""
    anchors: Callable[[str], Collection[str] | None]
    """The places of a chapter or a page of ours by its name; None where they are not known."""


def check_links(chapter: Chapter, around: Surroundings, problems: Problems) -> None:
    """No link to a chapter, a place or a file that is not there, and no such picture."""
    for line, text in _prose(chapter.markdown):
        for lead in _LEAD.finditer(text):
            to = lead[2] or lead[3] or (lead[4] or "").strip("<>")
            if _SCHEME.match(to) is None:
                found = _Link(unquote(to), bool(lead[1]), (line, lead.start() + 1))
                _check(found, chapter, around, problems)


@dataclass(frozen=True)
class _Link:
    to: str
    is_picture: bool
    where: tuple[int, int]


def _check(link: _Link, chapter: Chapter, around: Surroundings, problems: Problems) -> None:
    path, _, anchor = link.to.partition("#")
    # From the folder of the language; what leads out of it, the site generator knows better.
    folder = posixpath.dirname(chapter.name)
    file = posixpath.normpath(posixpath.join(folder, path)) if path else f"{chapter.name}{_SOURCE}"
    name = file.removesuffix(_SOURCE)
    if file.startswith("../"):
        return
    if link.is_picture or not file.endswith(_SOURCE):
        _check_file(link, file, around, problems)
    elif name in around.pages or "/" in name:
        # What is not there at all in a folder of ours, the site generator tells.
        known = around.anchors(name) if anchor else None
        if known is not None and anchor not in known:
            hint = problems.hint(f"#{anchor}", (f"#{one}" for one in known))
            problems.add(link.where, "unknown-anchor", found=link.to, hint=hint)
    else:
        hint = problems.hint(path, (f"{one}{_SOURCE}" for one in around.pages))
        problems.add(link.where, "unknown-link", found=path, hint=hint)


def _check_file(link: _Link, file: str, around: Surroundings, problems: Problems) -> None:
    if file in around.files or file.startswith("assets/"):
        return
    chapters = [] if link.is_picture else [f"{one}{_SOURCE}" for one in around.pages]
    # A chapter is only meant where its name is near: the list of all of them would help nobody.
    meant = [*around.files, *(chapters if nearest(file, chapters) else ())]
    hint = problems.hint(file, meant) if meant else say(problems.language, "chapters.none-beside")
    problem = "missing-picture" if link.is_picture else "unknown-file"
    problems.add(link.where, problem, found=link.to, hint=hint)


def _prose(markdown: str) -> Iterator[tuple[int, str]]:
    """Each line that is no code, with its number; code in it gives way to spaces."""
    is_code = False
    for number, text in enumerate(markdown.split("\n"), start=1):
        if text.lstrip().startswith(_FENCES):
            is_code = not is_code
        elif not is_code:
            yield number, _CODE.sub(lambda found: " " * len(found[0]), text)
