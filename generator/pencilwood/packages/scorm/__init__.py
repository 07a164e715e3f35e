"""An exercise or a quiz as a SCORM 1.2 package with one part that is scored.

The standard: Advanced Distributed Learning, SCORM 1.2, The SCORM Content Aggregation Model and The
SCORM Run-Time Environment, 2001. What the page tells the learning system stands in
`site_assets/js/lms/`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pencilwood.packages.package import Package, zipped
from pencilwood.packages.scorm.manifest import manifest


@dataclass(frozen=True)
class Content:
    """What a package is made of."""

    name: str
    """Short name of the case or quiz."""
    kind: str
    """`case` or `quiz`."""
    language: str
    title: str
    version: str
    start: str
    """Path of the page that the learning system opens."""
    files: Mapping[str, bytes]
    """Everything but the manifest, by path."""
    notes: tuple[str, ...]


def scorm_package(content: Content) -> Package:
    """The package as one zip file, the manifest first."""
    files = dict(sorted(content.files.items()))
    listed = manifest(
        f"{content.kind}.{content.name}.{content.language}",
        content.title,
        content.version,
        content.start,
        tuple(files),
    )
    name = f"{content.kind}-{content.name}-{content.language}-scorm12.zip"
    return Package(name, zipped({"imsmanifest.xml": listed, **files}), content.notes)
