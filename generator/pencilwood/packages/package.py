"""One package as a file, and how its bytes are put together."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass

_EARLIEST = (1980, 1, 1, 0, 0, 0)
"""The first moment that a zip file can name; a real one would make every build differ."""
_PLAIN_FILE = 0o100644 << 16


@dataclass(frozen=True)
class Package:
    """A package that is ready to be written."""

    file_name: str
    content: bytes
    notes: tuple[str, ...] = ()
    """What the standard cannot carry of this very content, in the reader's language."""


def zipped(files: Mapping[str, bytes]) -> bytes:
    """A zip file with these files in this order.

    The same files give the same bytes, on every machine with the same zlib.
    """
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w") as archive:
        for name, content in files.items():
            entry = zipfile.ZipInfo(name, _EARLIEST)
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.create_system = 3  # as on Unix, whatever the machine
            entry.external_attr = _PLAIN_FILE
            archive.writestr(entry, content)
    return held.getvalue()
