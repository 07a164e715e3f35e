"""The structure of QTI files by the standard's tables.

No package on npm or PyPI that we found carries the schemas of QTI 3.0, and their terms keep them
out of this project. So this is a check written after their tables. Source: 1EdTech, QTI 3.0
final, imsqti_asiv3p0_v1p0.xsd, complex types AssessmentItemDType, ResponseDeclarationDType,
OutcomeDeclarationDType, ChoiceInteractionDType, HotspotInteractionDType, HotspotChoiceDType,
OrderInteractionDType, ImgDType, ModalFeedbackDType, ResponseConditionDType, AssessmentTestDType,
TestPartDType, ItemSessionControlDType, AssessmentSectionDType, AssessmentItemRefDType,
OutcomeConditionDType, TestFeedbackDType.
"""

from __future__ import annotations

import re
from xml.etree import ElementTree as Xml

from qti_demo import QTI

XML_LANG = "{http://www.w3.org/XML/1998/namespace}lang"
SCHEMA_LOCATION = "{http://www.w3.org/2001/XMLSchema-instance}schemaLocation"

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
