"""The demo's quizzes as packages of QTI 3.0, made once, and how tests read them."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from xml.etree import ElementTree as Xml

from pencilwood.packages.package import Package
from pencilwood.packages.qti import quiz_package
from pencilwood.pages.handbook import Handbook
from pencilwood.quiz.made import MadeQuestion, MadeQuiz
from pencilwood.site.handbook import open_handbook

PROJECT = Path(__file__).parent.parent
LANGUAGES = ("en", "es")
QUIZZES = ("before-the-first-day", "crew-leader", "first-week")
QTI = "{http://www.imsglobal.org/xsd/imsqtiasi_v3p0}"
Point = tuple[int, int]


@dataclass(frozen=True)
class Packed:
    """A package with the quiz that it was made of."""

    handbook: Handbook
    made: MadeQuiz
    language: str
    package: Package
    files: Mapping[str, bytes]

    @property
    def questions(self) -> tuple[MadeQuestion, ...]:
        return self.made.questions[self.language]

    def question(self, slug: str) -> MadeQuestion:
        return next(one for one in self.questions if one.slug == slug)

    def items(self) -> Iterator[tuple[str, Xml.Element]]:
        """Slug of the question and root of the item, in the order of the test."""
        test = read(self.files["assessment.xml"])
        for one in test.iter(f"{QTI}qti-assessment-item-ref"):
            href = one.attrib["href"]
            yield Path(href).stem, read(self.files[href])


@cache
def demo_handbook() -> Handbook:
    opened = open_handbook(PROJECT)
    assert opened.handbook is not None, [finding.render() for finding in opened.findings]
    return opened.handbook


@cache
def packed(quiz: str, language: str) -> Packed:
    handbook = demo_handbook()
    proof = next(one for one in handbook.quizzes if one.quiz.slug == quiz)
    chapters = {one.name: one.title for one in handbook.chapters if one.language == language}
    made = quiz_package(proof, handbook.case_by_slug, handbook.profile, chapters, language)
    assert made is not None
    return Packed(handbook, proof.made, language, made, files_of(made.content))


def all_packed() -> list[Packed]:
    return [packed(quiz, language) for quiz in QUIZZES for language in LANGUAGES]


def files_of(content: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        assert archive.testzip() is None
        return {name: archive.read(name) for name in archive.namelist()}


def read(content: bytes) -> Xml.Element:
    return Xml.fromstring(content)  # noqa: S314 - our own file


def polygons(item: Xml.Element) -> dict[str, list[Point]]:
    """Every hotspot of an item by its identifier, in the order listed."""
    found = {}
    for one in item.iter(f"{QTI}qti-hotspot-choice"):
        numbers = [int(number) for number in one.attrib["coords"].split(",")]
        found[one.attrib["identifier"]] = list(zip(numbers[::2], numbers[1::2], strict=True))
    return found


def place_to_tap(name: str, hotspots: Mapping[str, list[Point]], *, alone: bool) -> Point | None:
    """A place in this hotspot, some way from its edge, that no other takes.

    By the standard a hotspot hides those listed after it; `alone` shuns these as well.
    """
    names = list(hotspots)
    others = names if alone else names[: names.index(name)]
    xs, ys = zip(*hotspots[name], strict=True)
    for y in range(min(ys), max(ys)):
        for x in range(min(xs), max(xs)):
            around = [(x - 1, y), (x + 1, y), (x, y - 1), (x, y + 1)]
            if all(is_within(place, hotspots[name]) for place in around) and not any(
                is_within((x, y), hotspots[other]) for other in others if other != name
            ):
                return x, y
    return None


def is_within(place: Point, polygon: list[Point]) -> bool:
    """Whether a place lies in a polygon (even-odd rule, a ray to the right)."""
    x, y = place
    inside = False
    for (x1, y1), (x2, y2) in zip(polygon, [*polygon[1:], polygon[0]], strict=True):
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) * (x2 - x1) / (y2 - y1):
            inside = not inside
    return inside
