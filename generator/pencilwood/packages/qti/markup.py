"""XML of QTI 3.0: elements, what many of them share, and whole files."""

from __future__ import annotations

from collections.abc import Iterable
from xml.etree import ElementTree as Xml

QTI = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0"
QTI_SCHEMA = "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0_v1p0.xsd"
_INSTANCE = "http://www.w3.org/2001/XMLSchema-instance"


def tag(name: str, given: dict[str, str] | None = None, *inside: Xml.Element | str) -> Xml.Element:
    """An element with its attributes and, in order, what stands in it: elements and text."""
    one = Xml.Element(name, given or {})
    for part in inside:
        if isinstance(part, Xml.Element):
            one.append(part)
        elif len(one):
            one[-1].tail = (one[-1].tail or "") + part
        else:
            one.text = (one.text or "") + part
    return one


def head_of(namespace: str, schema: str) -> dict[str, str]:
    """The attributes by which a file says of which standard it is."""
    return {
        "xmlns": namespace,
        "xmlns:xsi": _INSTANCE,
        "xsi:schemaLocation": f"{namespace} {schema}",
    }


def as_file(root: Xml.Element) -> bytes:
    """An element as the bytes of an XML file."""
    Xml.indent(root)
    text = Xml.tostring(root, encoding="unicode")
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{text}\n'.encode()


def identifier(*names: str) -> str:
    """Names as one identifier: letters, digits, hyphens; it may not begin with a digit."""
    joined = "-".join(names).replace(" ", "-")
    return joined if joined[0].isalpha() else f"q-{joined}"


def paragraph(text: str, bold: str = "") -> Xml.Element:
    """A paragraph; what is bold stands at its beginning."""
    return tag("p", None, tag("strong", None, bold), f" {text}") if bold else tag("p", None, text)


def outcome(
    name: str,
    base_type: str,
    default: str | None = None,
    *,
    cardinality: str = "single",
    highest: int | None = None,
) -> Xml.Element:
    """The declaration of an outcome variable."""
    given = {"identifier": name, "cardinality": cardinality, "base-type": base_type}
    if highest is not None:
        given |= {"normal-minimum": "0", "normal-maximum": str(highest)}
    values = [] if default is None else [tag("qti-default-value", None, value(default))]
    return tag("qti-outcome-declaration", given, *values)


def value(text: str) -> Xml.Element:
    """One value of a variable."""
    return tag("qti-value", None, text)


def variable(name: str) -> Xml.Element:
    """What a variable holds."""
    return tag("qti-variable", {"identifier": name})


def base_value(base_type: str, text: str) -> Xml.Element:
    """A fixed value in a sum or a comparison."""
    return tag("qti-base-value", {"base-type": base_type}, text)


def identifiers(names: Iterable[str]) -> Xml.Element:
    """Several identifiers as one value."""
    return tag("qti-multiple", None, *(base_value("identifier", name) for name in names))


def set_outcome(name: str, to: Xml.Element) -> Xml.Element:
    """Put a value into an outcome variable."""
    return tag("qti-set-outcome-value", {"identifier": name}, to)
