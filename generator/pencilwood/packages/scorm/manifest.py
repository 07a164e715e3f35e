"""The manifest of a package with one part (SCORM 1.2, Content Aggregation Model, section 2.3).

It names no pass mark (`adlcp:masteryscore`): a system would then decide by the score alone, and a
must rule or a must-know question counts apart from it. It names no schema files either, so that
none has to lie in the package.
"""

from __future__ import annotations

from collections.abc import Sequence
from urllib.parse import quote
from xml.etree.ElementTree import Element, SubElement, indent, tostring

_IMS = "http://www.imsproject.org/xsd/imscp_rootv1p1p2"
_ADL = "http://www.adlnet.org/xsd/adlcp_rootv1p2"


def manifest(identifier: str, title: str, version: str, start: str, files: Sequence[str]) -> bytes:
    """The manifest as UTF-8; `files` are all files of the package but this one.

    The identifier has letters, digits, hyphens and points only.
    """
    root = Element(
        "manifest",
        {
            "identifier": f"pencilwood.{identifier}",
            "version": version,
            "xmlns": _IMS,
            "xmlns:adlcp": _ADL,
        },
    )
    about = SubElement(root, "metadata")
    SubElement(about, "schema").text = "ADL SCORM"
    SubElement(about, "schemaversion").text = "1.2"
    _organization(root, title)
    _resource(root, start, files)
    indent(root)
    body: bytes = tostring(root, encoding="utf-8", xml_declaration=True)
    return body + b"\n"


def _organization(root: Element, title: str) -> None:
    organizations = SubElement(root, "organizations", {"default": "course"})
    organization = SubElement(organizations, "organization", {"identifier": "course"})
    SubElement(organization, "title").text = title
    part = {"identifier": "part", "identifierref": "page", "isvisible": "true"}
    SubElement(SubElement(organization, "item", part), "title").text = title


def _resource(root: Element, start: str, files: Sequence[str]) -> None:
    page = {
        "identifier": "page",
        "type": "webcontent",
        "adlcp:scormtype": "sco",
        "href": quote(start),
    }
    resource = SubElement(SubElement(root, "resources"), "resource", page)
    for file in files:
        SubElement(resource, "file", {"href": quote(file)})
