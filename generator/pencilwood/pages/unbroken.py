"""Keeps on one line of a page what is read as one: a number and its unit, a name, a code."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache

from markupsafe import Markup, escape

from pencilwood.words import LANGUAGES, say

_UNITS = ("mm", "cm", "kg", "%")
_NO_BREAK_SPACE = "\u00a0"
_AS_TYPED = re.compile(r"(<(pre|code|script|style|textarea|option)\b.*?</\2>)", re.DOTALL)
"""What is copied or read by a program: no other space may stand in it."""
_TIMES = re.compile(r" (?=×\d)")
_INITIAL = re.compile(r"(?<!\w)([^\W\d_]\.) (?=[^\W\d_])")
_OF_A_LAW = re.compile(r"(?<!\w)(\d+) ([A-Z]{3,})(?: (?=\d))?")
_CODE = re.compile(r"(?:\b[A-Z]{2,} )?\b\d+(?:-\d+)+\w*|\b\d[\d.]*(?:\(\w{1,3}\)){2,}")
_NUMBER = re.compile(r"\d(?:</\w+>)?\Z")
_LAST_IN_BRACKETS = re.compile(r" (?=\d[\d.,]*\)[^<>]*(?:<|\Z))")
"""The number in `(row 35)`; in text alone, not in attributes."""
_LONGEST_MARK = 40
_WITH_HYPHEN = (
    r"(?<![^\s>])(?:--[\w-]{1,14} [^\s<>&-][^\s<>]{0,11}(?![^<\s])"
    r"|(?=[^\s<>]{2,26}(?![^<\s]))[^\s<>]*-[^\s<>]*)"
)
_PIECE_OF_COMMAND = re.compile(rf"(?<=>)(?=[^<>]*[ -])[^<>]{{2,26}}(?=</code>)|{_WITH_HYPHEN}")
"""A short command, an option with its value, or a name inside a command.

A longer one has to break, or it would leave a phone.
"""
_WHOLE = Markup('<span class="pw-whole">{}</span>')


def unbroken(text: str) -> str:
    """The same in one piece: `3 1/2 in` in a cell of a table."""
    return text.replace(" ", _NO_BREAK_SPACE)


def keep_names_together(title: str) -> Markup:
    """A source's title, escaped, whose initials and codes break at the end of no line.

    `E. J. Wickson` stays one name, `WAC 296-307-05505` and `8 CCR 3203(a)(3)` one code.
    """
    text = _INITIAL.sub(f"\\1{_NO_BREAK_SPACE}", title)
    text = _OF_A_LAW.sub(lambda law: unbroken(law[0]), text)
    html, end = Markup(), 0
    for code in _CODE.finditer(text):
        html += text[end : code.start()] + _WHOLE.format(code[0])
        end = code.end()
    return html + text[end:]


def keep_whole(sentence: str, names: Iterable[str]) -> Markup:
    """The sentence, escaped, in which no name with a hyphen is broken there."""
    html = escape(sentence)
    for name in names:
        if "-" in name:
            html = html.replace(escape(name), _WHOLE.format(name))
    return html


@cache
def _counted() -> re.Pattern[str]:
    """A space between a number and what it counts, or between a whole and a half.

    In text alone: attributes hold classes, and curves are numbers and letters.
    """
    words = {word for one in LANGUAGES for word in say(one, "pages.counted").split()}
    named = "|".join(re.escape(word) for word in sorted(words))
    after = rf"(?:(?:{named})(?![\w²/])|\d/\d)"
    # It begins with the space: a page has far fewer of them than digits.
    return re.compile(rf" (?<=[\d>] )(?={after}[^<>]*(?:<|\Z))")


@cache
def _likely() -> re.Pattern[str]:
    """The words in `(most likely 35)`: they go to a line of their own as a whole."""
    said = (say(one, "block.likely", range="", likely="").strip(" )") for one in LANGUAGES)
    return re.compile(rf"(?:{'|'.join(map(re.escape, said))}) (?=\d)")


def _joined(space: re.Match[str]) -> str:
    """The space without a break, where a number stands before it, in a mark of its own or not."""
    before = space.string[max(0, space.start() - _LONGEST_MARK) : space.start()]
    return _NO_BREAK_SPACE if _NUMBER.search(before) else " "


def keep_units_together(html: str) -> str:
    """The page with a space before a unit, and a hyphen in a command, that ends no line.

    Also where no number stands before the unit: that does no harm, and a page holds a quarter of a
    megabyte of drawing to look through.
    """
    pieces = _AS_TYPED.split(html)
    # Text, what is left as it is, and its tag, in turn.
    for at in range(0, len(pieces), 3):
        for unit in _UNITS:
            pieces[at] = pieces[at].replace(f" {unit}", _NO_BREAK_SPACE + unit)
        pieces[at] = _counted().sub(_joined, pieces[at])
        pieces[at] = _likely().sub(lambda words: unbroken(words[0]), pieces[at])
        pieces[at] = _TIMES.sub(_NO_BREAK_SPACE, pieces[at])
        pieces[at] = _LAST_IN_BRACKETS.sub(_NO_BREAK_SPACE, pieces[at])
    for at in range(1, len(pieces), 3):
        if pieces[at + 1] == "code":
            pieces[at] = _PIECE_OF_COMMAND.sub(r'<span class="pw-whole">\g<0></span>', pieces[at])
    return "".join(piece for at, piece in enumerate(pieces) if at % 3 != 2)
