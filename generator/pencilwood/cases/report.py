"""Collects what is wrong in a file, worded in the reader's language."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from difflib import get_close_matches

from pencilwood.findings import Finding, Level, in_order, worded
from pencilwood.places import Place
from pencilwood.units import UnitSystem, format_length, parse_length
from pencilwood.words import LANGUAGES, say

Fact = str | int

MOST_FINDINGS = 500
"""So many things are told of one file."""
_LONGEST_QUOTE = 60
_LONGEST_CHOICE = 20
_MOST_COMPARED = 400
_LIKENESS = 0.7
"""How much of two names must agree; below this, "did you mean" is a guess that misleads."""


class Report:
    """All findings of one file, so that a trainer sees them together."""

    def __init__(
        self,
        language: str = "en",
        languages: Sequence[str] = LANGUAGES,
        units: UnitSystem = "metric",
    ) -> None:
        self.language = language
        """The language of the findings."""
        self.languages = tuple(languages)
        """The languages that every text of the file needs."""
        self.units: UnitSystem = units
        """What lengths in findings are told in."""
        self._findings: list[Finding] = []
        self._errors = 0
        self._compared = 0

    def add(self, place: Place, name: str, /, **facts: Fact) -> None:
        """Note one error; its words stand in the catalogue under `cases.<name>`."""
        self._note("error", place, name, facts)

    def warn(self, place: Place, name: str, /, **facts: Fact) -> None:
        """Note something that deserves a second look and stops nothing."""
        self._note("warning", place, name, facts)

    def _note(self, level: Level, place: Place, name: str, facts: Mapping[str, Fact]) -> None:
        self._errors += level == "error"
        if len(self._findings) >= MOST_FINDINGS:
            return
        if len(self._findings) == MOST_FINDINGS - 1:
            # A file so far from what is expected is of another kind; nobody reads on.
            name, facts = "and-more", {"most": MOST_FINDINGS - 1}
        self._findings.append(worded(place, f"cases.{name}", self.language, facts, level))

    def fresh(self) -> Report:
        """An empty report for a trial; `take` adds what came of it."""
        return Report(self.language, self.languages, self.units)

    def take(self, trial: Report) -> None:
        """Add the findings of a trial."""
        self._findings.extend(trial._findings)
        self._errors += trial._errors

    def say(self, key: str, /, **facts: Fact) -> str:
        """A sentence of the catalogue in the language of the findings."""
        return say(self.language, f"cases.{key}", **facts)

    def nearest(self, found: str, known: Iterable[str]) -> str | None:
        """The known name that somebody most likely meant; for the first few hundred only.

        A file with more unknown names than that is of another kind, and comparing takes long.
        """
        self._compared += 1
        return nearest(found, known) if self._compared <= _MOST_COMPARED else None

    def hint(self, found: str, known: Iterable[str]) -> str:
        """`did you mean "thickness"?`, or what there is to choose from."""
        names = list(known)
        near = self.nearest(found, names)
        if near is not None:
            return self.say("did-you-mean", near=near)
        if not names:
            return self.say("none-known")
        if len(names) > _LONGEST_CHOICE:
            names[_LONGEST_CHOICE:] = ["..."]
        return self.say("one-of", names=", ".join(names))

    def check_known(self, found: str, place: Place, known: Iterable[str], name: str) -> bool:
        """Whether `found` is one of the known names; if not, finding `name` is noted."""
        names = list(known)
        if found in names:
            return True
        self.add(place, name, found=quoted(found), hint=self.hint(found, names))
        return False

    def length(self, length_mm: int) -> str:
        """A length as a finding shows it."""
        return format_length(length_mm, self.units, self.language)

    def example(self, length: str) -> str:
        """A length that a file might hold, `14 cm`, in the units of whoever writes it."""
        return length if self.units == "metric" else self.length(parse_length(length))

    @property
    def errors(self) -> int:
        """How many errors are noted so far."""
        return self._errors

    def findings(self) -> list[Finding]:
        """Everything noted so far, by line."""
        return in_order(self._findings)


def nearest(found: str, known: Iterable[str]) -> str | None:
    """The known name that somebody most likely meant."""
    by_small = {name.lower(): name for name in known}
    near = get_close_matches(found.lower(), by_small, n=1, cutoff=_LIKENESS)
    return by_small[near[0]] if near else None


def quoted(text: str) -> str:
    """Text as a finding shows it: on one line, in quotes, not too long."""
    line = " ".join(text.split())
    if len(line) > _LONGEST_QUOTE:
        line = line[: _LONGEST_QUOTE - 3] + "..."
    return f'"{line}"'
