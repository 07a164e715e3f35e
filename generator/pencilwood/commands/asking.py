"""Asks questions in the terminal, each again until its answer can be read."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from typing import Any

from pencilwood.cases.field_columns import spellings
from pencilwood.cases.fields import Kind
from pencilwood.cases.report import Report
from pencilwood.cases.yaml_nodes import TextNode
from pencilwood.places import Place
from pencilwood.units import UnitSystem
from pencilwood.words import say

HERE = Place("")
"""An answer stands in no file."""


class StoppedError(Exception):
    """There are no more answers; whatever was given is dropped."""


class Terminal:
    """The person at the keyboard, or a file of answers in their place."""

    def __init__(self, language: str, units: UnitSystem) -> None:
        self.language = language
        self.units: UnitSystem = units

    def say(self, key: str, /, **facts: str | int) -> str:
        """A sentence of the dialogue."""
        return say(self.language, f"field.ask.{key}", **facts)

    def report(self) -> Report:
        """An empty report in the language and the units of the handbook."""
        return Report(self.language, units=self.units)

    def tell(self, text: str) -> None:
        """Print a line."""
        sys.stdout.write(f"{text}\n")

    def tell_findings(self, report: Report) -> None:
        """Print what is wrong, without the place: it is right above."""
        for one in report.findings():
            words = "; ".join(part for part in (one.what, one.expected, one.found) if part)
            self.tell(f"  {words} ({one.name})")

    def ask(self, question: str, default: str = "") -> str:
        """One line; the default when it is empty. Raises StoppedError at the end of input."""
        offered = f" [{default}]" if default else ""
        sys.stdout.write(f"{question}{offered}: ")
        sys.stdout.flush()
        line = sys.stdin.readline()
        if not line:
            self.tell("")
            raise StoppedError
        return line.strip() or default

    def ask_for(
        self, question: str, kind: Kind[Any], key: str, default: str = "", *, may_skip: bool = False
    ) -> str:
        """The text of an answer that can be read as `kind`; empty only where that is allowed."""
        while True:
            text = self.ask(question, default)
            if not text and may_skip:
                return ""
            report = self.report()
            kind.read(TextNode(HERE, text), key, report)
            if not report.errors:
                return text
            self.tell_findings(report)

    def choose(
        self, question: str, names: Iterable[str], default: str = "", *, may_skip: bool = False
    ) -> str:
        """One of a few words, given in any language that the program speaks."""
        listed = list(names)
        known = spellings("field.word", listed)
        offered = say(self.language, f"field.word.{default}") if default else ""
        while True:
            text = self.ask(question, offered)
            if not text and may_skip:
                return ""
            if text.lower() in known:
                return known[text.lower()]
            words = ", ".join(say(self.language, f"field.word.{name}") for name in listed)
            self.tell(f"  {self.say('not-one-of', names=words)}")
