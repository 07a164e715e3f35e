"""A plate as small as a stamp: the same picture without its words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from pencilwood.drawing.ink.shapes import Group, Thing, Words
from pencilwood.drawing.ink.writer import SMALL, element, number, write
from pencilwood.drawing.plates import PLATES
from pencilwood.drawing.plates.board import WIDTH, Board, Remark
from pencilwood.kept import kept_text


def draw_small_plate(name: str) -> str:
    """A plate as a small SVG file with neither words nor ids, the same in every language.

    The page shows through, as it does with small vines.
    """
    return kept_text("small plate", [name], lambda: _drawn(name))


def _drawn(name: str) -> str:
    scene = PLATES[name](Board(name, "", "en", "metric"))
    box = f"0 0 {number(WIDTH)} {number(scene.height)}"
    root = {"xmlns": "http://www.w3.org/2000/svg", "viewBox": box, "stroke-linejoin": "round"}
    return element("svg", root, write(Group(tuple(_without_remarks(scene.things))), SMALL))


def _without_remarks(things: Iterable[Thing]) -> Iterator[Thing]:
    """What is drawn, by its look alone: nothing outside asks a small picture for its parts."""
    for thing in things:
        if isinstance(thing, Remark | Words) or thing.attributes.get("class") == "pw-paper":
            continue
        look = {key: value for key, value in thing.attributes.items() if _is_look(key)}
        if isinstance(thing, Group):
            inside = tuple(_without_remarks(thing.things))
            yield replace(thing, things=inside, attributes=look)
        else:
            yield replace(thing, attributes=look)


def _is_look(attribute: str) -> bool:
    return attribute not in {"class", "id"} and not attribute.startswith("data-")
