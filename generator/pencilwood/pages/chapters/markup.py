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
# Behind "](" of a link or a picture, or behind "[name]:" at the beginning of a line.
_LEAD = re.compile(
    r"(!?)\[[^\[\]]*\]\(\s*<?([^)\s>]*)|^ {0,3}\[[^\]\n]+\]:\s*<?(\S+)", re.MULTILINE
)
_SCHEME = re.compile(r"[a-z][a-z0-9+.-]*:|//")
_WEB = ("http:", "https:")
_UNSEEN = re.compile(r"[\x00-\x20\u200b-\u200f\u2028\u2029]")
_ATTRIBUTES = re.compile(r"\{[:\s]*[#.\w][^{}\n]*\}")


def check_markup(chapter: Chapter, problems: Problems) -> None:
    """Tell every tag, every link that is no link to a page, every picture from elsewhere."""
    text = chapter.markdown
    for pattern in _NO_TEXT:
        text = pattern.sub(lambda found: re.sub(r"[^\n]", " ", found[0]), text)
    for at, problem, found in sorted(_found(text)):
        before = text[:at].split("\n")
        problems.add((len(before), len(before[-1]) + 1), problem, found=found)


def _found(text: str) -> Iterator[tuple[int, str, str]]:
    for tag in _TAG.finditer(text):
        yield tag.start(), "html-in-text", _short(text[tag.start() :])
    for lead in _LEAD.finditer(text):
        is_picture, inline, defined = lead.groups()
        to = inline or defined or ""
        # As a browser reads it: coded letters count as what they stand for, spaces not at all.
        scheme = _SCHEME.match(_UNSEEN.sub("", html.unescape(to)).lower())
        if scheme is not None and (is_picture or scheme[0] not in _WEB):
            problem = "picture-from-elsewhere" if is_picture else "no-page-link"
            yield lead.start(), problem, _short(to)
    for braces in _ATTRIBUTES.finditer(text):
        if "=" in braces[0]:
            yield braces.start(), "html-in-text", _short(braces[0])


def _short(text: str) -> str:
    line = text.split("\n", 1)[0]
    return line if len(line) <= 40 else f"{line[:37]}..."
