"""Every piece that an answer speaks of can be found on the worksheet and on the key."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from itertools import combinations
from xml.etree import ElementTree as Xml

import pytest

from pencilwood.cases.case import Profile
from pencilwood.drawing.names.labels import ROOM_MM
from pencilwood.drawing.names.letter_places import Beside, LetterPlace, place_letters
from pencilwood.drawing.names.name_lines import along_line, signs_of
from pencilwood.drawing.names.whole_names import DOT_MM, whole_names
from pencilwood.drawing.plate import Plate
from pencilwood.proof import CaseProof
from pencilwood.site.handbook import open_handbook
from workshop import PROJECT

_SVG = "{http://www.w3.org/2000/svg}"
CROWDED = "a-cane-across-the-head"
Crowd = tuple[Plate, Mapping[str, LetterPlace], Mapping[str, LetterPlace]]


@pytest.fixture(scope="module")
def proofs() -> dict[str, CaseProof]:
    return {proof.case.slug: proof for proof in open_handbook(PROJECT).proofs}


@pytest.fixture(scope="module")
def profile() -> Profile:
    handbook = open_handbook(PROJECT).handbook
    assert handbook is not None
    return handbook.profile


def named_on(svg: str) -> Iterator[str]:
    """The wood whose letter or whole name such a drawing shows, inside its edges."""
    root = Xml.fromstring(svg)  # noqa: S314 - our own drawing
    left, top, wide, high = (float(one) for one in root.get("viewBox", "").split())
    for group in root.iter(f"{_SVG}g"):
        for child in group.findall(f"{_SVG}text"):
            x, y = float(child.get("x", "nan")), float(child.get("y", "nan"))
            is_seen = left < x < left + wide and top < y < top + high
            if is_seen and "pw-letter" in child.get("class", "").split():
                whole = group.get("data-letter")
                yield whole or group.get("data-part", "").partition(" ")[0]


@pytest.fixture(scope="module")
def crowd(proofs: dict[str, CaseProof]) -> Crowd:
    """A crowded vine, the places of its letters and those of its whole names."""
    proof = proofs[CROWDED]
    plate, beside = Plate(proof.parts), Beside(first=proof.wood_named)
    letters = place_letters(plate, ROOM_MM, beside)
    return plate, letters, whole_names(plate, ROOM_MM, beside, letters)


def test_a_name_in_a_crowd_has_its_line_from_the_middle_of_its_own_wood(
    crowd: Crowd,
) -> None:
    plate, _, names = crowd
    assert {"R1a", "R1b", "R1m", "L2m", "L1a"} <= names.keys()
    for name, place in names.items():
        assert place.foot is not None
        stem = plate.stems[name]
        assert min(math.dist(place.foot, bend) for bend in stem.curve.bends) < 4
        for other in plate.stems.values():
            if other.piece.is_cane and other is not stem and other.piece.grows_from != name[-1]:
                far = min(math.dist(place.foot, bend) for bend in other.curve.bends)
                assert far > DOT_MM, (name, other.name)


def test_names_in_a_crowd_lie_on_no_other_and_no_line_goes_over_one(
    crowd: Crowd,
) -> None:
    _, letters, names = crowd
    signs = {name: signs_of(one.middle, name, ROOM_MM) for name, one in names.items()}
    kept = {name: [one.middle] for name, one in letters.items() if name not in names}
    for (name, own), (other, theirs) in combinations((signs | kept).items(), 2):
        if name in names or other in names:
            least = min(math.dist(a, b) for a in own for b in theirs)
            assert least > ROOM_MM * 0.5, (name, other)
    for name, place in names.items():
        for other, theirs in (signs | kept).items():
            if other != name:
                least = min(math.dist(a, b) for a in along_line(place) for b in theirs)
                assert least > ROOM_MM * 0.35, (name, other)


def test_wood_that_stands_alone_keeps_its_letter(proofs: dict[str, CaseProof]) -> None:
    proof = proofs["four-spurs"]
    beside = Beside(first=proof.wood_named)
    letters = place_letters(Plate(proof.parts), ROOM_MM, beside)
    assert whole_names(Plate(proof.parts), ROOM_MM, beside, letters) == {}
