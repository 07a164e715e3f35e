"""A chapter is words: no HTML, no link that runs something, no picture from elsewhere.

Markdown itself would let all of these through. A page's policy (`pages.policy`) would stop what
they do; here whoever writes or takes over a chapter is told.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterator

from pencilwood.pages.chapters.link_reading import Link, line_and_column, links_in
from pencilwood.pages.chapters.problems import Problems
from pencilwood.pages.chapters.prose import without_calls, without_code
from pencilwood.pages.handbook import Chapter

_TAG = re.compile(r"<(?=[A-Za-z/!?])")
_SCHEME = re.compile(r"[a-z][a-z0-9+.-]*:|//")
_WEB = ("http:", "https:")
# Never shown, not even as code: what we take for code the Markdown reader may take for a link.
_RUN = ("javascript:", "vbscript:", "data:")
_UNSEEN = re.compile(r"[\x00-\x20\u200b-\u200f\u2028\u2029]")
_ATTRIBUTES = re.compile(r"\{[:\s]*[#.\w][^{}\n]*\}")


def check_markup(chapter: Chapter, problems: Problems) -> None:
    """Tell every tag, every link that is no link to a page, every picture from elsewhere."""
    text = without_calls(without_code(chapter.markdown))
    for at, problem, found in sorted({*_found(text), *_links(chapter.markdown, runs=True)}):
        problems.add(line_and_column(text, at), problem, found=found)


def _found(text: str) -> Iterator[tuple[int, str, str]]:
    for tag in _TAG.finditer(text):
        yield tag.start(), "html-in-text", _short(text[tag.start() :])
    yield from _links(text)
    for braces in _ATTRIBUTES.finditer(text):
        if "=" in braces[0]:
            yield braces.start(), "html-in-text", _short(braces[0])


def _links(text: str, *, runs: bool = False) -> Iterator[tuple[int, str, str]]:
    """All that lead where no page is; or of these only what `runs` something."""
    for link in links_in(text):
        scheme = scheme_of(link)
        if runs and scheme not in _RUN:
            continue
        if scheme and (link.is_picture or scheme not in _WEB):
            problem = "picture-from-elsewhere" if link.is_picture else "no-page-link"
            yield link.at, problem, _short(link.to)


def scheme_of(link: Link) -> str:
    """How a link to elsewhere begins, `https:` or `//`; empty for one that stays within the site.

    It is read as a browser does: coded letters count as what they stand for, spaces not at all.
    """
    scheme = _SCHEME.match(_UNSEEN.sub("", html.unescape(link.to)).lower())
    return scheme[0] if scheme else ""


def _short(text: str) -> str:
    line = text.split("\n", 1)[0]
    return line if len(line) <= 40 else f"{line[:37]}..."
