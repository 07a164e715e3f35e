"""What `pencilwood check` reports: one finding a line, in the user's words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Literal
from unicodedata import category

from pencilwood.places import Place
from pencilwood.words import knows, say

Level = Literal["error", "warning", "note"]
_LONGEST_PART = 600


@dataclass(frozen=True)
class Finding:
    """One thing that is wrong in a file, with what was expected and what was found."""

    place: Place
    name: str
    """Stable name of the problem, for tests and for looking it up: `spur-too-long`."""
    what: str
    expected: str = ""
    found: str = ""
    level: Level = "error"

    def render(self, language: str = "en") -> str:
        """`file:line:col: what is wrong; what was expected; what was found (name)`.

        The language is that of the words; what is no error says so before them.
        """
        prefix = "" if self.level == "error" else f"{say(language, f'cli.level.{self.level}')}: "
        parts = (self.what, self.expected, self.found)
        words = "; ".join(_not_endless(shown(part)) for part in parts if part)
        return f"{shown(str(self.place))}: {prefix}{words} ({self.name})"

    def as_json(self) -> dict[str, object]:
        """The same facts for a machine."""
        return {
            "file": self.place.file,
            "line": self.place.line,
            "column": self.place.column,
            "name": self.name,
            "level": self.level,
            "what": self.what,
            "expected": self.expected,
            "found": self.found,
        }


def _not_endless(part: str) -> str:
    """Words may quote a file, and a file may hold a word of any length."""
    return part if len(part) <= _LONGEST_PART else f"{part[:_LONGEST_PART]}..."


def shown(text: str) -> str:
    """Text on one line, with a code in the place of each character that nobody can see.

    A file's words and its very name may hold such characters; a terminal might obey them.
    """
    return text if text.isprintable() else "".join(map(_shown_sign, text))


def _shown_sign(sign: str) -> str:
    if sign.isprintable():
        return sign
    # Wide and narrow spaces are seen as spaces.
    return " " if category(sign) == "Zs" else f"<U+{ord(sign):04X}>"


def worded(
    place: Place,
    key: str,
    language: str,
    facts: Mapping[str, str | int],
    level: Level = "error",
) -> Finding:
    """A finding whose words stand in the catalogue under a key, as of `cases.no-unit`.

    The last word of the key is its name. What was expected and found is said where it is written.
    """
    what, expected, found = (
        say(language, part, **facts) if knows(part) else ""
        for part in (f"{key}.what", f"{key}.expected", f"{key}.found")
    )
    return Finding(place, key.rpartition(".")[2], what, expected, found, level)


def from_json(facts: Mapping[str, Any]) -> Finding:
    """The finding that `as_json` told; a missing fact raises KeyError."""
    place = Place(facts["file"], facts["line"], facts["column"])
    said = (facts[name] for name in ("name", "what", "expected", "found", "level"))
    return Finding(place, *said)


def in_order(findings: Iterable[Finding]) -> list[Finding]:
    """Findings by file, line and column, each once."""
    return sorted(set(findings), key=lambda finding: (finding.place, finding.name, finding.what))


def has_errors(findings: Iterable[Finding]) -> bool:
    """Whether anything here stops a build; warnings and notes do not."""
    return any(finding.level == "error" for finding in findings)
