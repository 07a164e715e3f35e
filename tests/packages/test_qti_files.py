"""The files of a QTI package: structure by the standard's tables, and what hangs together."""

from __future__ import annotations

import re
from pathlib import PurePosixPath
from posixpath import normpath

import pytest

from pencilwood.packages.qti import quiz_package
from qti_demo import (
    LANGUAGES,
    QTI,
    QUIZZES,
    Packed,
    all_packed,
    demo_handbook,
    packed,
    place_to_tap,
    polygons,
    read,
)
from qti_tables import faults

CP = "{http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1}"


@pytest.fixture(params=[(quiz, spoken) for quiz in QUIZZES for spoken in LANGUAGES], ids="-".join)
def one(request: pytest.FixtureRequest) -> Packed:
    return packed(*request.param)


def test_items_and_test_have_the_structure_of_the_standard(one: Packed) -> None:
    roots = [read(one.files["assessment.xml"]), *(root for _, root in one.items())]
    assert [fault for root in roots for fault in faults(root)] == []


def test_the_structure_check_finds_what_is_wrong() -> None:
    _, item = next(packed("crew-leader", "en").items())
    body = item.find(f"{QTI}qti-item-body")
    assert body is not None
    item.remove(body)
    item.append(body)
    body.set("colour", "red")
    del item.attrib["title"]
    assert len(faults(item)) == 3


def test_the_manifest_lists_every_file_and_nothing_else(one: Packed) -> None:
    # Source: 1EdTech, QTI 3.0 profile of IMS Content Packaging, imsqtiv3p0_imscpv1p2_v1p0.xsd.
    assert next(iter(one.files)) == "imsmanifest.xml"
    root = read(one.files["imsmanifest.xml"])
    assert [child.tag.removeprefix(CP) for child in root] == [
        "metadata",
        "organizations",
        "resources",
    ]
    assert root.findtext(f"{CP}metadata/{CP}schema") == "QTI Package"
    assert root.findtext(f"{CP}metadata/{CP}schemaversion") == "3.0.0"
    resources = root.findall(f"{CP}resources/{CP}resource")
    names = [one.attrib["identifier"] for one in resources]
    assert len(set(names)) == len(names)
    types = {resource.attrib["type"] for resource in resources}
    assert types <= {"imsqti_test_xmlv3p0", "imsqti_item_xmlv3p0", "webcontent"}
    listed = [file.attrib["href"] for file in root.iter(f"{CP}file")]
    assert sorted([*listed, "imsmanifest.xml"]) == sorted(one.files)
    for resource in resources:
        assert resource[0].tag == f"{CP}file"
        assert resource.attrib["href"] in one.files
        needs = {need.attrib["identifierref"] for need in resource.iter(f"{CP}dependency")}
        assert needs <= set(names)


def test_every_reference_leads_to_what_it_names(one: Packed) -> None:
    test = read(one.files["assessment.xml"])
    refs = list(test.iter(f"{QTI}qti-assessment-item-ref"))
    roots = [read(one.files[ref.attrib["href"]]) for ref in refs]
    assert [ref.attrib["identifier"] for ref in refs] == [r.attrib["identifier"] for r in roots]
    for ref, root in zip(refs, roots, strict=True):
        folder = PurePosixPath(ref.attrib["href"]).parent
        for image in root.iter(f"{QTI}img"):
            svg = read(one.files[normpath(folder / image.attrib["src"])])
            assert svg.attrib["width"] == image.attrib["width"]
            assert svg.attrib["height"] == image.attrib["height"]
            assert image.attrib["alt"].strip()
        feedback = {reply.attrib["identifier"] for reply in root.iter(f"{QTI}qti-modal-feedback")}
        assert {
            value.text
            for rule in root.iter(f"{QTI}qti-set-outcome-value")
            if rule.attrib["identifier"] == "FEEDBACK"
            for value in rule
        } == feedback


def test_identifiers_of_all_packages_differ() -> None:
    names = [root.attrib["identifier"] for one in all_packed() for _, root in one.items()]
    assert len(set(names)) == len(names)


def test_nothing_is_asked_for_from_outside(one: Packed) -> None:
    for name, content in one.files.items():
        text = re.sub(r'(xmlns(:\w+)?|xsi:schemaLocation)="[^"]*"', "", content.decode())
        assert not re.search(r"https?://|//[a-z]", text), name


def test_the_same_quiz_gives_the_same_bytes() -> None:
    known = packed("crew-leader", "es")
    handbook = demo_handbook()
    proof = next(one for one in handbook.quizzes if one.quiz.slug == "crew-leader")
    chapters = {one.name: one.title for one in handbook.chapters if one.language == "es"}
    again = quiz_package(proof, handbook.case_by_slug, handbook.profile, chapters, "es")
    assert again is not None
    assert again.content == known.package.content


def test_every_piece_can_be_tapped(one: Packed) -> None:
    for slug, root in one.items():
        hotspots = polygons(root)
        hidden = [name for name in hotspots if place_to_tap(name, hotspots, alone=False) is None]
        assert hidden == [], slug


def test_hotspots_lie_in_the_picture(one: Packed) -> None:
    for slug, root in one.items():
        for image in root.iter(f"{QTI}img"):
            width, height = int(image.attrib["width"]), int(image.attrib["height"])
            for name, points in polygons(root).items():
                assert all(0 <= x <= width and 0 <= y <= height for x, y in points), (slug, name)
