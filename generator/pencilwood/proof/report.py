"""Words for what a proof finds, in the trainer's language."""

from __future__ import annotations

from pencilwood.findings import Finding, Level, worded
from pencilwood.places import Place
from pencilwood.score.judge import Charge
from pencilwood.score.told import message_text
from pencilwood.units import UnitSystem
from pencilwood.words import say


class ProofReport:
    """Collects the findings of the proofs of one file."""

    def __init__(self, language: str, units: UnitSystem) -> None:
        self.language = language
        self._units: UnitSystem = units
        self.findings: list[Finding] = []

    def add(
        self, place: Place, problem: str, /, *, level: Level = "error", **facts: str | int
    ) -> None:
        """Report one problem; its words stand under `proof.<problem>` in the catalogue."""
        self.findings.append(worded(place, f"proof.{problem}", self.language, facts, level))

    def habit(self, name: str) -> str:
        """What somebody does who follows this habit, in words."""
        return say(self.language, f"proof.habit.{name}")

    def sentence(self, charge: Charge) -> str:
        """What a charge says, with its place and its points."""
        return say(
            self.language,
            "proof.charge",
            where=", ".join(charge.where) or say(self.language, "proof.whole-vine"),
            message=message_text(charge, self.language, self._units),
            points=charge.points,
        )
