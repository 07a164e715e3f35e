"""Collects what is wrong with a handbook's files as a whole."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from pencilwood.cases.report import nearest
from pencilwood.findings import Finding, Level, worded
from pencilwood.places import Place
from pencilwood.words import say


class Notes:
    """Findings of a whole handbook, worded in one language."""

    def __init__(self, language: str) -> None:
        self.language = language
        self.findings: list[Finding] = []

    def add(self, place: Place, name: str, /, **facts: str | int) -> None:
        """Note one error; its words stand in the catalogue under `site.<name>`."""
        self._note("error", place, name, facts)

    def warn(self, place: Place, name: str, /, **facts: str | int) -> None:
        """Note something that deserves a second look and stops nothing."""
        self._note("warning", place, name, facts)

    def _note(self, level: Level, place: Place, name: str, facts: Mapping[str, str | int]) -> None:
        self.findings.append(worded(place, f"site.{name}", self.language, facts, level))

    def hint(self, found: str, known: Iterable[str]) -> str:
        """`did you mean "..."?`, or what there is to choose from."""
        names = list(known)
        near = nearest(found, names)
        if near is not None:
            return say(self.language, "site.did-you-mean", near=near)
        return say(self.language, "site.one-of", names=", ".join(names))
