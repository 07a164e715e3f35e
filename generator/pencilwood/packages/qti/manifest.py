"""`imsmanifest.xml`: what lies in a package and which file needs which.

Source: 1EdTech, QTI 3.0 profile of IMS Content Packaging 1.2
(imsqtiv3p0_imscpv1p2_v1p0.xsd).
"""

from __future__ import annotations

from collections.abc import Sequence
from xml.etree import ElementTree as Xml

from pencilwood.packages.qti.assessment import ASSESSMENT_FILE
from pencilwood.packages.qti.items import Item
from pencilwood.packages.qti.markup import as_file, head_of, tag

MANIFEST_FILE = "imsmanifest.xml"
_PACKAGE = "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"
_SCHEMA = "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqtiv3p0_imscpv1p2_v1p0.xsd"


def manifest(test: str, items: Sequence[Item]) -> bytes:
    """The manifest of a package with one test, its items and their drawings."""
    pictures = {one.picture.name: one.picture.file for one in items if one.picture is not None}
    resources = [
        _resource(test, "imsqti_test_xmlv3p0", ASSESSMENT_FILE, [one.identifier for one in items]),
        *(
            _resource(
                one.identifier,
                "imsqti_item_xmlv3p0",
                one.file,
                [] if one.picture is None else [_picture(one.picture.name)],
            )
            for one in items
        ),
        *(_resource(_picture(name), "webcontent", file, []) for name, file in pictures.items()),
    ]
    kind = tag(
        "metadata",
        None,
        tag("schema", None, "QTI Package"),
        tag("schemaversion", None, "3.0.0"),
    )
    root = tag(
        "manifest",
        {**head_of(_PACKAGE, _SCHEMA), "identifier": f"package-{test}"},
        kind,
        tag("organizations"),
        tag("resources", None, *resources),
    )
    return as_file(root)


def _resource(name: str, kind: str, file: str, needs: Sequence[str]) -> Xml.Element:
    return tag(
        "resource",
        {"identifier": name, "type": kind, "href": file},
        tag("file", {"href": file}),
        *(tag("dependency", {"identifierref": one}) for one in needs),
    )


def _picture(name: str) -> str:
    return f"picture-{name}"
