"""Response processing: what an answer is worth, and which feedback follows it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from xml.etree import ElementTree as Xml

from pencilwood.packages.qti.markup import base_value, identifiers, set_outcome, tag, variable


class Fits(Enum):
    """Which answers a reply follows."""

    ONE = "one of its answers"
    WHOLE = "the right response as a whole"
    NOTHING = "no answer at all"
    REST = "every answer that no reply before it follows"


@dataclass(frozen=True)
class Reply:
    """What follows some answers."""

    name: str
    """Identifier of the feedback."""
    right: bool
    said: tuple[Xml.Element, ...]
    fits: Fits = Fits.ONE
    answers: tuple[str, ...] = ()
    """Identifiers of the answers, for `Fits.ONE`."""


def processing(response: str, replies: Sequence[Reply]) -> Xml.Element:
    """Try the replies in turn; the first that fits gives score and feedback. The last is a REST.

    The standard's template `match_correct` gives a score alone. What follows each wrong answer
    must be written out, so the score is written out with it.
    """
    *tried, rest = replies
    steps = [
        tag(
            "qti-response-if" if number == 0 else "qti-response-else-if",
            None,
            _fits(response, reply),
            *_given(reply),
        )
        for number, reply in enumerate(tried)
    ]
    steps.append(tag("qti-response-else", None, *_given(rest)))
    return tag("qti-response-processing", None, tag("qti-response-condition", None, *steps))


def _fits(response: str, reply: Reply) -> Xml.Element:
    given = variable(response)
    if reply.fits is Fits.WHOLE:
        return tag("qti-match", None, given, tag("qti-correct", {"identifier": response}))
    if reply.fits is Fits.NOTHING:
        return tag("qti-is-null", None, given)
    return tag("qti-member", None, given, identifiers(reply.answers))


def _given(reply: Reply) -> list[Xml.Element]:
    return [
        set_outcome("SCORE", base_value("float", "1" if reply.right else "0")),
        set_outcome("FEEDBACK", base_value("identifier", reply.name)),
    ]
