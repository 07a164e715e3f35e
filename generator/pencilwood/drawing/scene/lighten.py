"""Leaves out of a drawing what its one state never shows, so that a page stays light."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace

from pencilwood.drawing.ink.shapes import Box, Dot, Group, Ink, Run, Thing, Words
from pencilwood.drawing.plate import Frame

# A ghost shows the edge of the wood and the face of the cut, nothing else.
_WOOD, _FACE, _STRETCH = "pw-wood", "pw-face", "pw-stretch"
_EDGE_MM = 12.0
"""Pens and the edges of paper around letters reach less far beyond what is drawn."""


def without_hidden(
    things: Sequence[Thing], hidden: Collection[str], ghosts: Collection[str]
) -> Iterator[Thing]:
    """The things without those of a `hidden` class, and little of the groups of a ghost's."""
    follows_ghost = False
    for thing in things:
        if isinstance(thing, Group) and _has(thing, ghosts):
            # The face of a cut shows once, on the lowest stretch that is gone.
            shows_face = not (follows_ghost and _has(thing, [_STRETCH]))
            yield _ghost(thing, shows_face=shows_face)
            follows_ghost = True
            continue
        follows_ghost = False
        if _has(thing, hidden):
            continue
        if isinstance(thing, Group):
            yield replace(thing, things=tuple(without_hidden(thing.things, hidden, ghosts)))
        else:
            yield thing


def _ghost(group: Group, *, shows_face: bool) -> Group:
    kept = [_WOOD, _FACE, _STRETCH] if shows_face else [_WOOD, _STRETCH]
    inside = (
        _ghost(thing, shows_face=False) if isinstance(thing, Group) else thing
        for thing in group.things
        if _has(thing, kept)
    )  # fmt: skip
    return replace(group, things=tuple(inside))


def _has(thing: Thing, classes: Collection[str]) -> bool:
    if not isinstance(thing, Group | Ink | Dot | Words):
        return False
    return not set(classes).isdisjoint(str(thing.attributes.get("class", "")).split())


def within(things: Sequence[Thing], window: Frame) -> Iterator[Thing]:
    """The things without those that lie outside a window, stroke by stroke.

    Groups stay, even if nothing is left in them: styles ask which group follows which.
    """
    for thing in things:
        if isinstance(thing, Group):
            yield replace(thing, things=tuple(within(thing.things, window)))
        elif isinstance(thing, Ink):
            runs = tuple(run for run in thing.runs if _meets(window, _room_of_run(run)))
            if runs:
                yield replace(thing, runs=runs)
        elif _meets(window, _room(thing)):
            yield thing


Edges = tuple[float, float, float, float]
"""Left, top, right and bottom."""


def _room_of_run(run: Run) -> Edges:
    """A smooth line stays between its points."""
    xs, ys = zip(*run.points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _room(thing: Dot | Box | Words) -> Edges:
    """What it takes; of words more than that, wherever their foot is in the line."""
    match thing:
        case Dot((x, y), radius_mm):
            return x - radius_mm, y - radius_mm, x + radius_mm, y + radius_mm
        case Box((x, y), width_mm, height_mm):
            return x, y, x + width_mm, y + height_mm
        case Words((x, y), text):
            high_mm = float(thing.attributes.get("font-size", 0.0))
            wide_mm = high_mm * len(text)
            return x - wide_mm, y - high_mm, x + wide_mm, y + high_mm


def _meets(window: Frame, edges: Edges) -> bool:
    left, top, right, bottom = edges
    return (
        left < window.right + _EDGE_MM
        and right > window.left - _EDGE_MM
        and top < window.bottom + _EDGE_MM
        and bottom > window.top - _EDGE_MM
    )
