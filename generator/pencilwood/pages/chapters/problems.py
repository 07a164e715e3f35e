"""Collects what is wrong in the text of a chapter."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from pencilwood.cases.report import nearest
from pencilwood.findings import Finding, Level, worded
from pencilwood.places import Place
from pencilwood.words import say

_LONGEST_CHOICE = 24


class Problems:
    """Findings about one chapter, worded in the language of who checks it."""

    def __init__(self, file: str, language: str) -> None:
        self.file = file
        self.language = language
        self.findings: list[Finding] = []

    def add(self, where: tuple[int, int], name: str, /, **facts: str | int) -> None:
        """Note an error at a line and column; its words stand under `chapters.<name>`."""
        self._note("error", where, name, facts)

    def warn(self, where: tuple[int, int], name: str, /, **facts: str | int) -> None:
        """Note something that deserves a second look and stops nothing."""
        self._note("warning", where, name, facts)

    def _note(
        self, level: Level, where: tuple[int, int], name: str, facts: Mapping[str, str | int]
    ) -> None:
        place = Place(self.file, *where)
        self.findings.append(worded(place, f"chapters.{name}", self.language, facts, level))

    def hint(self, found: str, known: Iterable[str]) -> str:
        """`did you mean "tidy-vine"?`, or what there is to choose from."""
        names = sorted(known)
        near = nearest(found, names)
        if near is not None:
            return say(self.language, "chapters.did-you-mean", near=near)
        if len(names) > _LONGEST_CHOICE:
            names[_LONGEST_CHOICE:] = ["..."]
        return say(self.language, "chapters.one-of", names=", ".join(names) or "-")
