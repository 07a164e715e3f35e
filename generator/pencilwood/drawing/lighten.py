"""Leaves out of a drawing what its one state never shows, so that a page stays light."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from pencilwood.drawing.shapes import Group, Ink, Thing, Words

# A ghost shows the edge of the wood and the face of the cut, nothing else.
_OF_A_GHOST = ("pw-wood", "pw-face", "pw-stretch")


def without_hidden(
    things: Sequence[Thing], hidden: Collection[str], ghosts: Collection[str]
) -> Iterator[Thing]:
    """The things without those of a `hidden` class, and little of the groups of a ghost's."""
    for thing in things:
        if isinstance(thing, Group) and _has(thing, ghosts):
            yield _ghost(thing)
        elif _has(thing, hidden):
            continue
        elif isinstance(thing, Group):
            yield Group(tuple(without_hidden(thing.things, hidden, ghosts)), thing.attributes)
        else:
            yield thing


def _ghost(group: Group) -> Group:
    kept = (thing for thing in group.things if _has(thing, _OF_A_GHOST))
    inside = (_ghost(thing) if isinstance(thing, Group) else thing for thing in kept)
    return Group(tuple(inside), group.attributes)


def _has(thing: Thing, classes: Collection[str]) -> bool:
    if not isinstance(thing, Group | Ink | Words):
        return False
    return not set(classes).isdisjoint(str(thing.attributes.get("class", "")).split())
