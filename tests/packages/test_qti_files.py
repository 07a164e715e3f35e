"""The files of a QTI package: structure by the standard's tables, and what hangs together."""

from __future__ import annotations

import re
from pathlib import PurePosixPath
from posixpath import normpath
from xml.etree import ElementTree as Xml

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

CP = "{http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1}"
XML_LANG = "{http://www.w3.org/XML/1998/namespace}lang"
SCHEMA_LOCATION = "{http://www.w3.org/2001/XMLSchema-instance}schemaLocation"

# No package on npm or PyPI that we found carries the schemas of QTI 3.0, and their terms keep
# them out of this project. So this is a check written after their tables. Source: 1EdTech, QTI
# 3.0 final, imsqti_asiv3p0_v1p0.xsd, complex types AssessmentItemDType, ResponseDeclarationDType,
# OutcomeDeclarationDType, ChoiceInteractionDType, HotspotInteractionDType, HotspotChoiceDType,
# OrderInteractionDType, ImgDType, ModalFeedbackDType, ResponseConditionDType, AssessmentTestDType,
# TestPartDType, ItemSessionControlDType, AssessmentSectionDType, AssessmentItemRefDType,
# OutcomeConditionDType, TestFeedbackDType.
#
# Element -> (children in order as a regular expression over their names, required attributes,
# further attributes that we use).
TEXT = r"(#|strong )*"
FLOW = r"(p |ol )+"
OPERATOR = r"(match|member|is-null|and|gte)"
RULES: dict[str, tuple[str, set[str], set[str]]] = {
    "qti-assessment-item": (
        r"(response-declaration )*(outcome-declaration )*(item-body )?(catalog-info )?"
        r"(response-processing )?(modal-feedback )*",
        {"identifier", "title", "time-dependent"},
        {"adaptive", XML_LANG, SCHEMA_LOCATION},
    ),
    "qti-response-declaration": (
        r"(correct-response )?",
        {"identifier", "cardinality"},
        {"base-type"},
    ),
    "qti-correct-response": (r"(value )+", set(), set()),
    "qti-outcome-declaration": (
        r"(default-value )?",
        {"identifier", "cardinality"},
        {"base-type", "normal-minimum", "normal-maximum"},
    ),
    "qti-default-value": (r"(value )+", set(), set()),
    "qti-value": (r"#", set(), set()),
    "qti-item-body": (r"(p )?(choice|hotspot|order)-interaction ", set(), set()),
    "qti-choice-interaction": (
        r"(prompt )?(simple-choice )+",
        {"response-identifier"},
        {"shuffle", "max-choices"},
    ),
    "qti-order-interaction": (
        r"(prompt )?(simple-choice )+",
        {"response-identifier"},
        {"shuffle", "orientation"},
    ),
    "qti-hotspot-interaction": (
        r"(prompt )?img (hotspot-choice )+",
        {"response-identifier"},
        {"min-choices", "max-choices"},
    ),
    "qti-hotspot-choice": (r"", {"identifier", "shape", "coords"}, {"hotspot-label"}),
    "qti-prompt": (r"#", set(), set()),
    "qti-simple-choice": (r"#", {"identifier"}, set()),
    "qti-response-processing": (r"(response-condition )*", set(), set()),
    "qti-response-condition": (
        r"response-if (response-else-if )*(response-else )?",
        set(),
        set(),
    ),
    "qti-response-if": (OPERATOR + r" (set-outcome-value )*", set(), set()),
    "qti-response-else-if": (OPERATOR + r" (set-outcome-value )*", set(), set()),
    "qti-response-else": (r"(set-outcome-value )*", set(), set()),
    "qti-match": (r"variable correct ", set(), set()),
    "qti-member": (r"variable multiple ", set(), set()),
    "qti-multiple": (r"(base-value )*", set(), set()),
    "qti-is-null": (r"variable ", set(), set()),
    "qti-and": (r"(gte )+", set(), set()),
    "qti-gte": (r"variable base-value ", set(), set()),
    "qti-sum": (r"(test-variables )+", set(), set()),
    "qti-variable": (r"", {"identifier"}, set()),
    "qti-correct": (r"", {"identifier"}, set()),
    "qti-base-value": (r"#", {"base-type"}, set()),
    "qti-set-outcome-value": (r"(base-value|sum) ", {"identifier"}, set()),
    "qti-modal-feedback": (
        r"content-body ",
        {"outcome-identifier", "show-hide", "identifier"},
        set(),
    ),
    "qti-content-body": (FLOW, set(), set()),
    "qti-assessment-test": (
        r"(outcome-declaration )*(test-part )+(outcome-processing )?(test-feedback )*",
        {"identifier", "title"},
        {SCHEMA_LOCATION},
    ),
    "qti-test-part": (
        r"(item-session-control )?(assessment-section )+",
        {"identifier", "navigation-mode", "submission-mode"},
        set(),
    ),
    "qti-item-session-control": (
        r"",
        set(),
        {"max-attempts", "show-feedback", "allow-skipping"},
    ),
    "qti-assessment-section": (
        r"(rubric-block )*(assessment-item-ref )*",
        {"identifier", "title", "visible"},
        set(),
    ),
    "qti-rubric-block": (r"content-body ", {"view"}, set()),
    "qti-assessment-item-ref": (r"", {"identifier", "href"}, {"category"}),
    "qti-outcome-processing": (r"(set-outcome-value |outcome-condition )*", set(), set()),
    "qti-outcome-condition": (
        r"outcome-if (outcome-else-if )*(outcome-else )?",
        set(),
        set(),
    ),
    "qti-outcome-if": (OPERATOR + r" (set-outcome-value )*", set(), set()),
    "qti-outcome-else": (r"(set-outcome-value )*", set(), set()),
    "qti-test-variables": (r"", {"variable-identifier"}, {"include-category"}),
    "qti-test-feedback": (
        r"content-body ",
        {"access", "outcome-identifier", "show-hide", "identifier"},
        set(),
    ),
    "p": (r"(img |" + TEXT + r")", set(), set()),
    "strong": (r"#", set(), set()),
    "ol": (r"(li )+", set(), set()),
    "li": (TEXT, set(), set()),
    "img": (r"", {"src", "alt"}, {"width", "height"}),
}
# The values that the same tables allow.
VALUES = {
    "cardinality": r"single|multiple|ordered|record",
    "base-type": r"boolean|float|identifier|integer",
    "shape": r"circle|default|ellipse|poly|rect",
    "coords": r"(\d+,){2}((\d+,){2})+\d+,\d+",  # CoordsDType, the part of it for poly
    "width": r"\d+%?",
    "height": r"\d+%?",
    "shuffle": r"true|false",
    "adaptive": r"true|false",
    "time-dependent": r"true|false",
    "visible": r"true|false",
    "show-feedback": r"true|false",
    "allow-skipping": r"true|false",
    "show-hide": r"show|hide",
    "access": r"atEnd|during",
    "navigation-mode": r"linear|nonlinear",
    "submission-mode": r"individual|simultaneous",
    "orientation": r"horizontal|vertical",
    "view": r"author|candidate|proctor|scorer|testConstructor|tutor",
    "identifier": r"[A-Za-z_][A-Za-z0-9_.\-]*",  # xs:NCName, the ASCII part of it
    "max-choices": r"\d+",
    "min-choices": r"\d+",
    "max-attempts": r"\d+",
}


def faults(root: Xml.Element) -> list[str]:
    """Where an element breaks the tables."""
    found = []
    for one in root.iter():
        name = one.tag.removeprefix(QTI)
        if name not in RULES:
            found.append(f"{name} is not known")
            continue
        children, required, further = RULES[name]
        if not re.fullmatch(children, inside(one)):
            found.append(f"{name} holds {inside(one)}")
        if required - set(one.attrib):
            found.append(f"{name} lacks {required - set(one.attrib)}")
        if set(one.attrib) - required - further:
            found.append(f"{name} may not have {set(one.attrib) - required - further}")
        for key, value in one.attrib.items():
            if not re.fullmatch(VALUES.get(key, ".*"), value, re.DOTALL):
                found.append(f"{name} has {key}={value}")
    return found


def inside(one: Xml.Element) -> str:
    """Names of the children, each with a blank, and # for text."""
    names = "#" if (one.text or "").strip() else ""
    for child in one:
        names += child.tag.removeprefix(QTI).removeprefix("qti-") + " "
        names += "#" if (child.tail or "").strip() else ""
    return names


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
