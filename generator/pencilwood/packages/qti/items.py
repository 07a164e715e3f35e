"""Questions as items of QTI 3.0, each with its marking and everything that is said about answers.

Sources: 1EdTech, Question and Test Interoperability (QTI) 3.0, Assessment, Section and Item
Information Model and its XML binding (imsqti_asiv3p0_v1p0.xsd), final, 2022-05-01.
"""

from __future__ import annotations

from dataclasses import dataclass
from textwrap import shorten
from xml.etree import ElementTree as Xml

from pencilwood.packages.qti.feedback import Saying
from pencilwood.packages.qti.markup import (
    QTI,
    QTI_SCHEMA,
    as_file,
    head_of,
    identifier,
    outcome,
    tag,
    value,
)
from pencilwood.packages.qti.pictures import PictureFile
from pencilwood.packages.qti.processing import Fits, Reply, processing
from pencilwood.quiz.made import Choices, MadeQuestion, Ordering

SCORED, MUST_KNOW = "scored", "must-know"
RESPONSE = "RESPONSE"
_LONGEST_TITLE = 100


@dataclass(frozen=True)
class Item:
    """One item of a package."""

    name: str
    identifier: str
    category: str
    """Whether it counts for the score or must be known."""
    content: bytes
    picture: PictureFile | None

    @property
    def file(self) -> str:
        """Its path in the package."""
        return f"items/{self.name}.xml"


@dataclass(frozen=True)
class Asked:
    """How an item asks, and what follows each answer."""

    cardinality: str
    correct: tuple[str, ...]
    """The right response, in order where the order counts."""
    body: tuple[Xml.Element, ...]
    replies: tuple[Reply, ...]


def item(
    one: MadeQuestion, quiz: str, language: str, asked: Asked, picture: PictureFile | None
) -> Item:
    """A question in the standard's words."""
    name = identifier("pencilwood", quiz, one.slug, language)
    given = {
        **head_of(QTI, QTI_SCHEMA),
        "identifier": name,
        "title": shorten(one.text, _LONGEST_TITLE, placeholder="…"),
        "xml:lang": language,
        "adaptive": "false",
        "time-dependent": "false",
    }
    root = tag(
        "qti-assessment-item",
        given,
        _response(asked),
        outcome("SCORE", "float", "0", highest=1),
        outcome("MAXSCORE", "float", "1"),
        outcome("FEEDBACK", "identifier"),
        tag("qti-item-body", None, *asked.body),
        processing(RESPONSE, asked.replies),
        *(_modal(reply) for reply in asked.replies),
    )
    category = MUST_KNOW if one.asked.common.must_know else SCORED
    return Item(one.slug, name, category, as_file(root), picture)


def choice(one: MadeQuestion, body: Choices, saying: Saying, picture: PictureFile | None) -> Asked:
    """Choose one: every wrong choice gets its own why."""
    names = [f"choice-{number}" for number in range(1, len(body.options) + 1)]
    right = names[body.right]
    offered = [
        tag("qti-simple-choice", {"identifier": name}, option.text)
        for name, option in zip(names, body.options, strict=True)
    ]
    replies = [
        Reply(name, option.right, saying.on_choice(one, body, number), answers=(name,))
        for number, (name, option) in enumerate(zip(names, body.options, strict=True))
    ]
    given = {"response-identifier": RESPONSE, "shuffle": "false", "max-choices": "1"}
    interaction = tag("qti-choice-interaction", given, _prompt(one.text), *offered)
    shown = () if picture is None else (tag("p", None, picture.image()),)
    nothing = Reply("no-answer", False, saying.on_nothing(one, body), Fits.REST)
    return Asked("single", (right,), (*shown, interaction), (*replies, nothing))


def order(one: MadeQuestion, body: Ordering, saying: Saying) -> Asked:
    """Put in order: the right order is told with the why of each step."""
    names = [f"step-{number}" for number in range(1, len(body.items) + 1)]
    offered = [
        tag("qti-simple-choice", {"identifier": name}, step.text)
        for name, step in zip(names, body.items, strict=True)
    ]
    given = {"response-identifier": RESPONSE, "shuffle": "false", "orientation": "vertical"}
    interaction = tag(
        "qti-order-interaction", given, _prompt(f"{one.text} {saying.in_order}"), *offered
    )
    right = tuple(names[number] for number in body.order)
    replies = (
        Reply("right", True, saying.on_order(one, body, "right"), Fits.WHOLE),
        Reply("no-answer", False, saying.on_order(one, body, "none"), Fits.NOTHING),
        Reply("wrong", False, saying.on_order(one, body, "wrong"), Fits.REST),
    )
    return Asked("ordered", right, (interaction,), replies)


def _prompt(text: str) -> Xml.Element:
    return tag("qti-prompt", None, text)


def _response(asked: Asked) -> Xml.Element:
    given = {
        "identifier": RESPONSE,
        "cardinality": asked.cardinality,
        "base-type": "identifier",
    }
    values = [value(name) for name in asked.correct]
    return tag("qti-response-declaration", given, tag("qti-correct-response", None, *values))


def _modal(reply: Reply) -> Xml.Element:
    given = {
        "outcome-identifier": "FEEDBACK",
        "identifier": reply.name,
        "show-hide": "show",
    }
    return tag("qti-modal-feedback", given, tag("qti-content-body", None, *reply.said))
