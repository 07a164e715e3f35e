"""Takes out of a chapter the few lines that lead to what a new handbook does not have."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass

_VINE = re.compile(r'\{\{ vine\("([^"]+)"\) \}\}')
_LEADS = re.compile(r'\{\{ (vine|measured|chapter)\("([^"]+)"')
_BETWEEN_SENTENCES = re.compile(r"(?:(?<=[.!?])|(?<=[.!?]\*)|(?<=[.!?]\*\*)) (?=\S)")
_SCHEMA = re.compile(r"\A# yaml-language-server:[^\n]*\n(#\n)?")


@dataclass(frozen=True)
class Passages:
    """What a new handbook has, so that every link in its chapters leads somewhere."""

    vines: Collection[str]
    chapters: Collection[str]

    def kept(self, text: str) -> str:
        """A chapter of the demo without the list items and sentences that lead elsewhere."""
        return "\n".join(kept for line in text.split("\n") for kept in self._line(line))

    def _line(self, line: str) -> Iterator[str]:
        vines = _VINE.findall(line)
        if line.startswith("- ") and not set(vines) <= set(self.vines):
            there = [f'{{{{ vine("{vine}") }}}}' for vine in vines if vine in self.vines]
            if there:
                before = line[: line.index("{{")]
                yield before + ", ".join(there) + line[line.rindex("}}") + 2 :]
        elif (sentences := self._sentences(line)) is not None:
            yield sentences

    def _sentences(self, line: str) -> str | None:
        """The line without the sentences that lead elsewhere; None where none is left."""
        sentences = _BETWEEN_SENTENCES.split(line)
        kept = [one for one in sentences if all(map(self._is_there, _LEADS.findall(one)))]
        return " ".join(kept) if kept else None

    def _is_there(self, led_to: tuple[str, str]) -> bool:
        kind, name = led_to
        return name in (self.chapters if kind == "chapter" else self.vines)


def without_schema(text: str) -> str:
    """A YAML file without the line by which an editor finds its schema in a checkout."""
    return _SCHEMA.sub("", text, count=1)
