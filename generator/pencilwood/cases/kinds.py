"""The kinds of single values that a trainer's file holds."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Generic, TypeVar

from pencilwood.cases.fields import Schema, found, one_value
from pencilwood.cases.report import Fact, Report, quoted
from pencilwood.cases.yaml_nodes import LostNode, MapNode, Node
from pencilwood.places import Place
from pencilwood.units import SPELT, UNIT_NAMES, UnitError, parse_length
from pencilwood.words import LANGUAGES

T = TypeVar("T")

# More digits than any vineyard needs are a slip, and slow to work with.
_WHOLE = re.compile(r"[0-9]{1,9}")
_SPAN = re.compile(r"([0-9]{1,9}) +to +([0-9]{1,9})")
_LENGTH_PATTERN = (
    r"^([0-9]+([.,][0-9]+)?|([0-9]+ +)?[0-9]+/[0-9]+) *(" + "|".join((*UNIT_NAMES, *SPELT)) + ")$"
)


@dataclass(frozen=True)
class Length:
    """A length with its unit: `8 mm`."""

    low_mm: int
    high_mm: int
    example: str

    def read(self, node: Node, key: str, report: Report) -> int | None:
        """Whole millimetres."""
        text = one_value(node, key, report)
        if text is None:
            return None
        facts: dict[str, Fact] = {"key": key, "found": quoted(text)}
        facts["example"] = report.example(self.example)
        try:
            length_mm = parse_length(text)
        except UnitError as error:
            report.add(node.place, error.problem, units=", ".join(UNIT_NAMES), **facts)
            return None
        if not self.low_mm <= length_mm <= self.high_mm:
            low = report.length(self.low_mm)
            high = report.length(self.high_mm)
            report.add(node.place, "unlikely-length", low=low, high=high, **facts)
            return None
        return length_mm

    def schema(self) -> Schema:
        """Text of the right form; the bounds are told by the reader only."""
        return {"type": "string", "pattern": _LENGTH_PATTERN, "examples": [self.example]}


@dataclass(frozen=True)
class Whole:
    """A whole number without a unit."""

    low: int
    high: int

    def read(self, node: Node, key: str, report: Report) -> int | None:
        """The number."""
        text = one_value(node, key, report)
        if text is None:
            return None
        if _WHOLE.fullmatch(text) and self.low <= int(text) <= self.high:
            return int(text)
        facts: dict[str, Fact] = {
            "key": key,
            "low": self.low,
            "high": self.high,
            "found": quoted(text),
        }
        report.add(node.place, "not-such-a-number", **facts)
        return None

    def schema(self) -> Schema:
        """An integer."""
        return {"type": "integer", "minimum": self.low, "maximum": self.high}


@dataclass(frozen=True)
class Density:
    """Buds on each metre or each foot, with as many decimals as that length bears."""

    per: int
    """What one bud on such a length is as the figure is held, of which `units` tells why."""
    places: int

    def read(self, node: Node, key: str, report: Report) -> int | None:
        """The figure as it is held."""
        text = one_value(node, key, report)
        if text is None:
            return None
        if re.fullmatch(self._pattern, text):
            return int(Fraction(text.replace(",", ".")) * self.per)
        name = "not-such-a-density" if self.places else "not-such-a-number"
        report.add(node.place, name, key=key, low=0, high=9999, found=quoted(text))
        return None

    @property
    def _pattern(self) -> str:
        return "[0-9]{1,4}" + (rf"([.,][0-9]{{1,{self.places}}})?" if self.places else "")

    def schema(self) -> Schema:
        """A number."""
        whole = {"type": "integer" if not self.places else "number", "minimum": 0}
        return {**whole, "maximum": 9999}


@dataclass(frozen=True)
class Counted:
    """A whole number with the word for what it counts: `5 buds`, `2 years`, `90 %`."""

    one: str
    many: str
    low: int
    high: int
    example: str

    def read(self, node: Node, key: str, report: Report) -> int | None:
        """The number."""
        text = one_value(node, key, report)
        if text is None:
            return None
        match = re.fullmatch(rf"([0-9]{{1,9}}) *({self.one}|{self.many})", text)
        if match and self.low <= int(match[1]) <= self.high:
            return int(match[1])
        facts: dict[str, Fact] = {"low": self.low, "high": self.high, "example": self.example}
        report.add(node.place, "not-so-many", key=key, found=quoted(text), **facts)
        return None

    def schema(self) -> Schema:
        """Text of the right form."""
        pattern = f"^[0-9]+ *({self.one}|{self.many})$"
        return {"type": "string", "pattern": pattern, "examples": [self.example]}


@dataclass(frozen=True)
class Span:
    """A range of whole numbers: `24 to 30`."""

    low: int
    high: int

    def read(self, node: Node, key: str, report: Report) -> tuple[int, int] | None:
        """Both ends."""
        text = one_value(node, key, report)
        if text is None:
            return None
        match = _SPAN.fullmatch(text)
        if match and self.low <= int(match[1]) <= int(match[2]) <= self.high:
            return int(match[1]), int(match[2])
        facts: dict[str, Fact] = {"low": self.low, "high": self.high, "found": quoted(text)}
        report.add(node.place, "not-a-range", key=key, **facts)
        return None

    def schema(self) -> Schema:
        """Text of the right form."""
        return {
            "type": "string",
            "pattern": "^[0-9]+ +to +[0-9]+$",
            "examples": ["24 to 30"],
        }


@dataclass(frozen=True)
class Choice(Generic[T]):
    """One of a few words."""

    options: Mapping[str, T]
    tells_all: bool = False
    """Whether a wrong word is answered with every right one: where a likeness misleads."""

    def read(self, node: Node, key: str, report: Report) -> T | None:
        """What the word stands for."""
        text = one_value(node, key, report)
        if text is None:
            return None
        if text in self.options:
            return self.options[text]
        hint = report.hint(text, self.options)
        if self.tells_all:
            hint = report.say("one-of", names=", ".join(self.options))
        report.add(node.place, "not-a-choice", key=key, found=quoted(text), hint=hint)
        return None

    def schema(self) -> Schema:
        """An enumeration."""
        return {"enum": list(self.options)}


@dataclass(frozen=True)
class Text:
    """One line of text, such as a name; `pattern` limits what it may look like."""

    pattern: str = ".+"
    misfit: str = "not-such-text"
    """The finding for text that does not fit the pattern."""
    longest: int = 200

    def read(self, node: Node, key: str, report: Report) -> str | None:
        """The text without spaces around it."""
        text = one_value(node, key, report)
        if text is None:
            return None
        if len(text) > self.longest:
            report.add(node.place, "text-too-long", key=key, longest=self.longest, count=len(text))
            return None
        if not re.fullmatch(self.pattern, text):
            report.add(node.place, self.misfit, key=key, found=quoted(text))
            return None
        return text

    def schema(self) -> Schema:
        """Text of the right form."""
        return {"type": "string", "pattern": f"^{self.pattern}$", "maxLength": self.longest}


@dataclass(frozen=True)
class Spoken:
    """The same words in each language, and where each stands."""

    words: Mapping[str, str]
    places: Mapping[str, Place]


@dataclass(frozen=True)
class Words:
    """Text in every language of the handbook: `{en: ..., es: ...}`.

    It may stand there in a language that the handbook does not use, or does not use any more.
    """

    longest: int = 2000

    def read(self, node: Node, key: str, report: Report) -> Spoken | None:
        """The words; a finding for each language that is missing or unknown."""
        if isinstance(node, LostNode):
            return None
        if not isinstance(node, MapNode):
            facts: dict[str, Fact] = {
                "languages": ", ".join(report.languages),
                "found": found(node, report),
            }
            report.add(node.place, "not-in-languages", key=key, **facts)
            return None
        words: dict[str, str] = {}
        places: dict[str, Place] = {}
        for name, value in node.pairs:
            language = name.text
            if language in LANGUAGES and language not in report.languages:
                continue
            places[language] = value.place
            if report.check_known(language, name.place, report.languages, "unknown-language"):
                text = self._text(value, f"{key}: {language}", report)
                words.update({} if text is None else {language: text})
        for language in report.languages:
            if language not in places:
                report.add(node.place, "missing-language", key=key, language=language)
        return Spoken(words, places)

    def _text(self, node: Node, key: str, report: Report) -> str | None:
        text = one_value(node, key, report)
        if text is not None and len(text) > self.longest:
            report.add(node.place, "text-too-long", key=key, longest=self.longest, count=len(text))
            return None
        return text

    def schema(self) -> Schema:
        """Text by language code."""
        return {
            "type": "object",
            "minProperties": 1,
            "propertyNames": {"pattern": "^[a-z]{2,3}$"},
            "additionalProperties": {"type": "string", "minLength": 1, "maxLength": self.longest},
        }
