"""The refusal of a sum that makes no sense, worded later in the reader's language."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.words import say


class BlockError(ValueError):
    """A sum that cannot be done; `problem` is a short stable name for the reason."""

    def __init__(self, problem: str, facts: Mapping[str, str | int] | None = None) -> None:
        super().__init__(problem)
        self.problem = problem
        self.facts = dict(facts or {})
        self.field = ""
        """The question that the answer belongs to, where it is known."""

    def told(self, language: str) -> str:
        """One plain sentence."""
        return say(language, f"block.problem.{self.problem}", **self.facts)

    def about(self, field: str) -> BlockError:
        """The same refusal, said of one field."""
        self.field = field
        return self
