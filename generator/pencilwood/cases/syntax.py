"""Puts a parser's complaint into words that name the slip and its cure."""

from __future__ import annotations

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
NAMES = frozenset({*(name for _, name in _SLIPS), OTHERWISE})
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
