"""Reads a drawing back: elements by class, and the points its lines pass or bend toward."""

from __future__ import annotations

import re
from collections.abc import Iterator
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
Point = tuple[float, float]
_TOKEN = re.compile(r"[Mmlqtz]|-?\d+(?:\.\d+)?")


def read(svg: str) -> ElementTree.Element:
    """The root element; badly formed XML is an error."""
    return ElementTree.fromstring(svg)  # noqa: S314 - we wrote it ourselves


def of_class(root: ElementTree.Element, name: str) -> list[ElementTree.Element]:
    """All elements with a class, in the order drawn."""
    return [one for one in root.iter() if name in one.get("class", "").split()]


def view_box(root: ElementTree.Element) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of what the drawing shows."""
    left, top, width, height = (float(value) for value in root.attrib["viewBox"].split())
    return left, top, left + width, top + height


def points(root: ElementTree.Element) -> Iterator[Point]:
    """Every point of every path, circle, ellipse, rectangle and text."""
    for one in root.iter():
        if one.tag == f"{SVG}path":
            yield from path_points(one.attrib["d"])
        elif one.tag in (f"{SVG}circle", f"{SVG}ellipse"):
            yield float(one.attrib["cx"]), float(one.attrib["cy"])
        elif one.tag in (f"{SVG}rect", f"{SVG}text"):
            yield float(one.attrib["x"]), float(one.attrib["y"])


def path_points(drawn: str) -> Iterator[Point]:
    """Points of a path made of M, m, l, q, t and z, in absolute units."""
    tokens = _TOKEN.findall(drawn)
    at, here, first = 0, (0.0, 0.0), (0.0, 0.0)
    bend = here
    letter = ""
    while at < len(tokens):
        if tokens[at].isalpha():
            letter = tokens[at]
            here = first if letter == "z" else here
            at += 1
            continue
        numbers = [float(token) for token in tokens[at : at + (4 if letter == "q" else 2)]]
        at += len(numbers)
        start = (0.0, 0.0) if letter == "M" else here
        if letter == "t":
            bend = (2 * here[0] - bend[0], 2 * here[1] - bend[1])
            yield bend
        elif letter == "q":
            bend = (start[0] + numbers[0], start[1] + numbers[1])
        for x, y in zip(numbers[::2], numbers[1::2], strict=True):
            here = (start[0] + x, start[1] + y)
            first = here if letter in "Mm" else first
            yield here
