"""Writes some entries of a file anew and leaves every other line as somebody typed it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from pencilwood.cases.yaml_nodes import MapNode


def with_entries(text: str, root: MapNode, entries: Mapping[str, Sequence[str]]) -> str:
    """The text with these entries of its outermost level as these lines; no lines take one out.

    `root` is what was read from the text. An entry that is not there yet goes behind the one
    before it in `entries`. Notes between entries stay where they are.
    """
    lines = text.splitlines()
    starts = {key.text: key.place.line - 1 for key, _ in root.pairs}
    ends = dict(zip(starts, [*list(starts.values())[1:], len(lines)], strict=True))
    changed: dict[int, tuple[int, Sequence[str]]] = {}
    behind = len(lines)
    for name, written in entries.items():
        if name in starts:
            start, end = starts[name], _without_notes(lines, ends[name])
            changed[start] = end, written
            behind = end
        elif written:
            before, also = changed.get(behind, (behind, ()))
            changed[behind] = before, [*also, *written]
    out: list[str] = []
    at = 0
    for start, (end, written) in sorted(changed.items()):
        out += [*lines[at:start], *written]
        at = max(at, end)
    return "\n".join([*out, *lines[at:]]) + "\n"


def _without_notes(lines: Sequence[str], end: int) -> int:
    """The end of an entry, without empty lines and notes that belong to what follows."""
    while not lines[end - 1].strip() or lines[end - 1].startswith("#"):
        end -= 1
    return end
