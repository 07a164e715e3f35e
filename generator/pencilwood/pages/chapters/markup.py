"""A chapter is words: no HTML, no link that runs something, no picture from elsewhere.

Markdown itself would let all of these through. A page's policy (`pages.policy`) would stop what
they do; here whoever writes or takes over a chapter is told.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterator

from pencilwood.pages.chapters.problems import Problems
from pencilwood.pages.handbook import Chapter

_NO_TEXT = (
    re.compile(r"^(```|~~~).*?^\1[^\n]*$", re.DOTALL | re.MULTILINE),
    re.compile(r"\{\{[^{}]*\}\}"),
    re.compile(r"`[^`\n]*`"),
)
_TAG = re.compile(r"<(?=[A-Za-z/!?])")
# Behind "](", whatever stands in the brackets: a picture, code, more brackets.
_INLINE = re.compile(r"\]\(\s*<?\s*([^)\s>]*)")
# Behind "[name]:" at the beginning of a line, also of a list's or a quotation's.
_DEFINED = re.compile(
    r"^[ \t>*+.)\d-]*\[([^\[\]]*)\]:\s*<?(\S+)(?=[ \t]*(?:[\"'(]|$))", re.MULTILINE
)
_NAMED = re.compile(r"\](?:\s?\[([^\[\]]*)\])?(?!\()")
_BRACKET = re.compile(r"\\.|[\[\]]|\n[ \t]*\n")
_SCHEME = re.compile(r"[a-z][a-z0-9+.-]*:|//")
_WEB = ("http:", "https:")
# Never shown, not even as code: what we take for code the Markdown reader may take for a link.
_RUN = ("javascript:", "vbscript:", "data:")
_UNSEEN = re.compile(r"[\x00-\x20\u200b-\u200f\u2028\u2029]")
_ATTRIBUTES = re.compile(r"\{[:\s]*[#.\w][^{}\n]*\}")


def check_markup(chapter: Chapter, problems: Problems) -> None:
    """Tell every tag, every link that is no link to a page, every picture from elsewhere."""
    text = chapter.markdown
    for pattern in _NO_TEXT:
        text = pattern.sub(lambda found: re.sub(r"[^\n]", " ", found[0]), text)
    for at, problem, found in sorted({*_found(text), *_links(chapter.markdown, runs=True)}):
        before = text[:at].split("\n")
        problems.add((len(before), len(before[-1]) + 1), problem, found=found)


def _found(text: str) -> Iterator[tuple[int, str, str]]:
    for tag in _TAG.finditer(text):
        yield tag.start(), "html-in-text", _short(text[tag.start() :])
    yield from _links(text)
    for braces in _ATTRIBUTES.finditer(text):
        if "=" in braces[0]:
            yield braces.start(), "html-in-text", _short(braces[0])


def _links(text: str, *, runs: bool = False) -> Iterator[tuple[int, str, str]]:
    """All that lead where no page is; or of these only what `runs` something."""
    begins = _begins(text)
    for link in _INLINE.finditer(text):
        at = begins.get(link.start(), link.start())
        is_picture = _is_picture(text, at)
        yield from _link(at - is_picture, link[1], runs, is_picture=is_picture)
    shown = {
        _one_case(named[1] or text[at + 1 : named.start()])
        for named in _NAMED.finditer(text)
        for at in (begins.get(named.start(), 0),)
        if _is_picture(text, at)
    }
    for named in _DEFINED.finditer(text):
        at = text.index("[", named.start())
        yield from _link(at, named[2], runs, is_picture=_one_case(named[1]) in shown)


def _link(at: int, to: str, runs: bool, *, is_picture: bool) -> Iterator[tuple[int, str, str]]:
    # As a browser reads it: coded letters count as what they stand for, spaces not at all.
    scheme = _SCHEME.match(_UNSEEN.sub("", html.unescape(to)).lower())
    if runs and (scheme is None or scheme[0] not in _RUN):
        return
    if scheme is not None and (is_picture or scheme[0] not in _WEB):
        problem = "picture-from-elsewhere" if is_picture else "no-page-link"
        yield at, problem, _short(to)


def _begins(text: str) -> dict[int, int]:
    """Where each closing bracket of a paragraph was opened, in one go from its top."""
    found: dict[int, int] = {}
    opened: list[int] = []
    for mark in _BRACKET.finditer(text):
        if mark[0] == "[":
            opened.append(mark.start())
        elif mark[0] != "]":
            if "\n" in mark[0]:
                opened.clear()
        elif opened:
            found[mark.start()] = opened.pop()
    return found


def _is_picture(text: str, at: int) -> bool:
    return text[at : at + 1] == "[" and text[max(0, at - 1) : at] == "!"


def _one_case(name: str) -> str:
    return " ".join(name.lower().split())


def _short(text: str) -> str:
    line = text.split("\n", 1)[0]
    return line if len(line) <= 40 else f"{line[:37]}..."
