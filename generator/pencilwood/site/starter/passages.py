"""Takes out of a chapter the few lines that lead to what a new handbook does not have."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass

_VINE = re.compile(r'\{\{ vine\("([^"]+)"\) \}\}')
_NEXT = re.compile(r'(.*: \{\{ chapter\(")([^"]+)("\) \}\}\.?)')
_SCHEMA = re.compile(r"\A# yaml-language-server:[^\n]*\n(#\n)?")


@dataclass(frozen=True)
class Passages:
    """What a new handbook has, so that every link in its chapters leads somewhere."""

    vines: Collection[str]
    chapters: Collection[str]
    chapter: Callable[[str], str]
    """The whole text of any chapter of the demo."""

    def kept(self, name: str) -> str:
        """A chapter whose lists of vines to practise on, and whose next chapter, are all there."""
        text = self.chapter(name)
        lines = [kept for line in text.split("\n") for kept in self._line(line, name)]
        return "\n".join(lines)

    def _line(self, line: str, here: str) -> Iterator[str]:
        vines = _VINE.findall(line)
        following = _NEXT.fullmatch(line)
        if line.startswith("- ") and not set(vines) <= set(self.vines):
            there = [f'{{{{ vine("{vine}") }}}}' for vine in vines if vine in self.vines]
            if there:
                before = line[: line.index("{{")]
                yield before + ", ".join(there) + line[line.rindex("}}") + 2 :]
        elif following:
            name = self._nearest(following[2])
            if name not in (None, here):
                yield f"{following[1]}{name}{following[3]}"
        else:
            yield line

    def _nearest(self, name: str) -> str | None:
        """This chapter or the first after it that there is, by the demo's own way through."""
        seen: set[str] = set()
        while name not in self.chapters:
            ways = _NEXT.findall(self.chapter(name))
            if name in seen or not ways:
                return None
            seen.add(name)
            name = ways[-1][1]
        return name


def without_schema(text: str) -> str:
    """A YAML file without the line by which an editor finds its schema in a checkout."""
    return _SCHEMA.sub("", text, count=1)
