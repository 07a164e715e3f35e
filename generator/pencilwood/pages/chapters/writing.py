"""What all calls of one chapter share: its desk, its problems, and what it has used so far."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection
from dataclasses import dataclass, field

from markupsafe import Markup

from pencilwood.pages.chapters.problems import Problems
from pencilwood.pages.chapters.template import Where
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Chapter
from pencilwood.proof import CaseProof

_ROW = re.compile(r"(?:[-*] )?[^{}*_`:]+:[ \t]*\{\{[^{}]*\}\}[ \t]*")
_LATER = re.compile(r"<!--later-\d+-->")
_TAG = re.compile(r"<[^>]*>")
_WORD = re.compile(r"\w+")
_ALONE = re.compile(r"\{\{[^{}]*\}\}[ \t]*")


Later = Callable[[frozenset[str]], Markup]
"""Makes what hangs on all words of the chapter, names of places among them."""


@dataclass
class Writing:
    """One chapter while it is filled in."""

    desk: Desk
    chapter: Chapter
    problems: Problems
    unread_cases: Collection[str] = ()
    """Cases whose files could not be read; what is wrong with them is told already."""
    terms: dict[str, Where] = field(default_factory=dict)
    """Trade words that the chapter explains, and where it does so first."""
    sources: set[str] = field(default_factory=set)
    """Sources that the chapter names or whose figures it shows."""
    noted: bool = False
    """Whether the chapter has shown a safety note, and the way to all of them."""
    names_told: set[str] = field(default_factory=set)
    """The kinds of vines, by their `own_words`, of which it was told how places are counted."""
    _drawn: int = 0
    _later: dict[str, Later] = field(default_factory=dict)

    def known(self, where: Where, name: str, names: Collection[str], problem: str) -> bool:
        """Whether a name is among those that exist; if not, it is told with the nearest."""
        if name in names:
            return True
        self.problems.add(where, problem, found=name, hint=self.problems.hint(name, names))
        return False

    def case(self, where: Where, slug: str) -> CaseProof | None:
        """A case by its short name."""
        cases = self.desk.handbook.case_by_slug
        if slug in self.unread_cases:
            return None
        return cases[slug] if self.known(where, slug, cases, "unknown-case-called") else None

    def prefix(self, name: str) -> str:
        """A beginning for the ids of a drawing that no other on the page has."""
        self._drawn += 1
        return f"c{self._drawn}-{name}"

    def later(self, make: Later) -> Markup:
        """A mark for what is made when all of the text is there."""
        mark = f"<!--later-{len(self._later) + 1}-->"
        self._later[mark] = make
        return Markup(mark)  # noqa: S704 - made here, of nothing but a number

    def completed(self, filled: str) -> str:
        """The text with what was to come later; who only checks a text does without."""
        words = frozenset(_WORD.findall(_TAG.sub(" ", filled)))
        known = self._later
        return _LATER.sub(
            lambda mark: known[mark[0]](words) if mark[0] in known else mark[0], filled
        )

    def one_line(self, template: str, **values: object) -> Markup:
        """HTML on one line, so that the lines of the text keep their numbers."""
        html = self.desk.render(template, **values)
        return Markup(" ".join(html.split()))  # noqa: S704 - rendered with escaping

    def stands_alone(self, where: Where) -> bool:
        """Whether nothing but one call stands on a line, and a free line above and below."""
        rows = self.chapter.markdown.split("\n")
        line = where[0] - 1
        above = rows[line - 1] if line else ""
        below = rows[line + 1] if line + 1 < len(rows) else ""
        return not above.strip() and not below.strip() and bool(_ALONE.fullmatch(rows[line]))

    def is_row_to_fill(self, where: Where) -> bool:
        """Whether a line holds nothing but a label, a colon and one call: `Gloves: {{ … }}`."""
        return bool(_ROW.fullmatch(self.chapter.markdown.split("\n")[where[0] - 1]))

    def is_announced(self, where: Where) -> bool:
        """Whether the words before a call say what comes: `Emergency number: {{ … }}`."""
        line, column = where
        before, _, _ = self.chapter.markdown.split("\n")[line - 1][: column - 1].rpartition("{{")
        return before.rstrip().endswith(":")
