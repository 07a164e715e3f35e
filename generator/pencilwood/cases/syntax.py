"""Puts a parser's complaint into words that name the slip and its cure."""

from __future__ import annotations

import re

_SLIPS = (
    # What the parser says (its problem or its context), and the finding that it becomes.
    ("while scanning a quoted scalar", "open-quote"),
    ("unknown escape character", "unknown-escape"),
    ("while scanning a double-quoted scalar", "unknown-escape"),
    ("found character '\\t'", "tab-in-front"),
    ("mapping values are not allowed", "colon-out-of-place"),
    ("could not find expected ':'", "missing-colon"),
    ("cannot start any token", "needs-quotes"),
    ("while parsing a flow mapping", "open-bracket"),
    ("while parsing a flow sequence", "open-bracket"),
    ("while parsing a flow node", "open-bracket"),
    ("while parsing a block mapping", "lines-do-not-line-up"),
    ("while parsing a block collection", "lines-do-not-line-up"),
    ("while scanning a block scalar", "lines-do-not-line-up"),
    ("sequence entries are not allowed", "dash-out-of-place"),
)

OTHERWISE = "cannot-be-read"
BEHIND_QUOTE = "text-behind-quote"
NAMES = frozenset({*(name for _, name in _SLIPS), OTHERWISE, BEHIND_QUOTE})
"""Every finding that comes of a parser's complaint."""

BEGINS_AT_CONTEXT = frozenset({"open-quote", "open-bracket"})
"""Slips whose beginning helps more than the place where the parser gave up."""


def slip(context: str, problem: str) -> str:
    """The name of the finding for what a parser complains about."""
    said = f"{problem} {context}"
    for part, name in _SLIPS:
        if part in said:
            return name
    return OTHERWISE


_NUMBER = re.compile(r"\d{1,6}")
_REST_OF_NUMBER = re.compile(r"\d{1,6} ?[^\W\d]+")
_TEXT_NAME = re.compile(r"[a-z]{2,3}")
_NO_NOTE = re.compile(r" +#\w")


def is_behind_quote(name: str, text: str, line: int, column: int) -> bool:
    """Whether what does not line up stands just behind a closing quotation mark."""
    if name != "lines-do-not-line-up":
        return False
    before = "".join(text.splitlines()[line : line + 1])[:column]
    return before.rstrip().endswith(("'", '"'))


def is_comma_in_number(before: str, name: str) -> bool:
    """Whether two parts between braces are one number: `34` and `5 mm` of `34,5 mm`."""
    return bool(_NUMBER.fullmatch(before) and _REST_OF_NUMBER.fullmatch(name))


def is_cut_off(name: str, value: str, behind: str) -> bool:
    """Whether a text in a language loses what stands behind: `en: Row #1` is only `Row`.

    A note behind a value has a space behind its mark.
    """
    is_text = _TEXT_NAME.fullmatch(name) and not value[:1].isdigit()
    return bool(is_text and _NO_NOTE.match(behind))
