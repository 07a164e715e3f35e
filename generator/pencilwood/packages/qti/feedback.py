"""What is said about each answer: right or not, why, and where to look again."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from xml.etree import ElementTree as Xml

from pencilwood.packages.qti.markup import paragraph, tag
from pencilwood.quiz.made import Choices, MadeQuestion, Ordering, Tapping
from pencilwood.rules import RULE_BY_NAME
from pencilwood.words import say

Said = tuple[Xml.Element, ...]

_NAMED = 4
"""Of many right pieces only some are named."""


@dataclass(frozen=True)
class Saying:
    """Says things in one language, with the sentences of the quiz pages."""

    language: str
    chapters: Mapping[str, str]
    """Titles of the chapters by their short names."""

    @property
    def in_order(self) -> str:
        """How a learner puts things in order."""
        return say(self.language, "qti.in-order")

    def on_choice(self, one: MadeQuestion, body: Choices, chosen: int) -> Said:
        """After one of the choices was taken."""
        option, right = body.options[chosen], body.options[body.right]
        told = self._answer("right-answer", right.text, right.why)
        if option.right:
            return self.verdict("right"), told
        yours = self._answer("yours", option.text, option.why)
        return self.verdict("wrong"), yours, told, *self.look_again(one)

    def on_nothing(self, one: MadeQuestion, body: Choices) -> Said:
        """After no choice was taken."""
        right = body.options[body.right]
        told = self._answer("right-answer", right.text, right.why)
        return self.verdict("none"), told, *self.look_again(one)

    def on_order(self, one: MadeQuestion, body: Ordering, verdict: str) -> Said:
        """After things were put in order: rightly, wrongly ("wrong") or not at all ("none")."""
        steps = (body.items[number] for number in body.order)
        rows = [tag("li", None, tag("strong", None, step.text), f" {step.why}") for step in steps]
        told = paragraph(self._say("feedback.order")), tag("ol", None, *rows)
        again = () if verdict == "right" else self.look_again(one)
        return self.verdict(verdict), *told, *again

    def on_right_part(self, body: Tapping) -> Said:
        """After a right piece was tapped."""
        return self.verdict("right"), self._right_parts(body)

    def on_wrong_part(self, one: MadeQuestion, body: Tapping, kind: str | None) -> Said:
        """After a wrong piece of some kind was tapped, or none at all."""
        if kind is None:
            return self.verdict("none"), self._right_parts(body), *self.look_again(one)
        why = paragraph(body.whys[kind])
        return self.verdict("wrong"), why, self._right_parts(body), *self.look_again(one)

    def _right_parts(self, body: Tapping) -> Xml.Element:
        labels = [target.label for target in body.targets if target.name in body.right]
        named = labels[:_NAMED]
        if len(labels) > _NAMED:
            named.append(self._say("feedback.more", n=len(labels) - _NAMED))
        key = "right-parts" if len(labels) > 1 else "right-answer"
        return self._answer(key, ", ".join(named), body.why)

    def look_again(self, one: MadeQuestion) -> Said:
        """Chapter and rules as titles: a package does not know where the handbook lies."""
        common = one.asked.common
        chapter = self.chapters.get(common.chapter or "")
        titles = [*([chapter] if chapter else [])]
        titles += [RULE_BY_NAME[name].title[self.language] for name in common.rules]
        if not titles:
            return ()
        return (paragraph(f"{'; '.join(titles)}.", bold=self._say("feedback.read")),)

    def _answer(self, key: str, text: str, why: str) -> Xml.Element:
        # An answer as part of a sentence, which brings a full stop of its own.
        return paragraph(why, bold=self._say(f"feedback.{key}", text=text.removesuffix(".")))

    def verdict(self, key: str) -> Xml.Element:
        """Whether an answer is right."""
        return tag("p", None, tag("strong", None, self._say(f"feedback.{key}")))

    def _say(self, key: str, **facts: str | int) -> str:
        return say(self.language, f"quiz.{key}", **facts)
