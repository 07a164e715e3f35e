"""Writes the supply list: what a handbook is built with, tested with, and what of others it ships.

`make supply-list` writes `generator/supply-list.cdx.json` in CycloneDX 1.6, an open standard
(ECMA-424). The list rests on the pins (with their hashes), on what the installed packages say of
themselves, on `package-lock.json` and on `site_assets/licences/parts.json`. It holds no date and no
serial number, so the same facts give the same bytes.
"""

from __future__ import annotations

import base64
import json
import re
from importlib import metadata
from pathlib import Path
from typing import Any

from cyclonedx.spdx import is_supported_id

PROJECT = Path(__file__).resolve().parents[1]
LIST = PROJECT / "generator" / "supply-list.cdx.json"
HASH = re.compile(r"--hash=sha256:([0-9a-f]{64})")
IS_LICENCE = re.compile(r"License :: .* :: ")
PINNED = re.compile(r"^([A-Za-z0-9._-]+)==([^ ;\\]+)")

# From a package's words or classifiers to the name that SPDX has for the licence. Words that fit
# several licences, as "BSD License" does, stay as they are.
SPDX = {
    "Apache 2.0": "Apache-2.0",
    "Apache License 2.0": "Apache-2.0",
    "Apache Software License": "Apache-2.0",
    "BSD 3-Clause": "BSD-3-Clause",
    "ISC License (ISCL)": "ISC",
    "MIT License": "MIT",
    "Mozilla Public License 2.0 (MPL 2.0)": "MPL-2.0",
    "Python Software Foundation License": "PSF-2.0",
}


def supply_list() -> dict[str, Any]:
    """The whole list as CycloneDX has it."""
    site, test = _pins("site"), _pins("test")
    components = [
        _python(name, *test[name], "required" if name in site else "excluded") for name in test
    ]
    components += _browser_tools() + _shipped(site)
    return {
        "$schema": "http://cyclonedx.org/schema/bom-1.6.schema.json",
        "bomFormat": "CycloneDX",
        "specVersion": "1.6",
        "version": 1,
        "metadata": {
            "component": {
                "type": "application",
                "bom-ref": "pencilwood",
                "name": "pencilwood",
                "licenses": [{"license": {"id": "MIT"}}],
            }
        },
        "components": sorted(components, key=lambda each: str(each["bom-ref"])),
    }


def written() -> str:
    """The list as it stands in its file."""
    return json.dumps(supply_list(), indent=1, ensure_ascii=False) + "\n"


def _pins(name: str) -> dict[str, tuple[str, list[str]]]:
    """Version and hashes of each pinned package."""
    text = (PROJECT / "generator" / "requirements" / f"{name}.txt").read_text("utf-8")
    lines = text.replace("\\\n", " ").splitlines()
    found = {pin[1]: (pin[2], HASH.findall(line)) for line in lines if (pin := PINNED.match(line))}
    return dict(sorted(found.items()))


def _python(name: str, version: str, hashes: list[str], scope: str) -> dict[str, Any]:
    purl = f"pkg:pypi/{name.lower().replace('_', '-')}@{version}"
    return {
        "type": "library",
        "bom-ref": purl,
        "name": name,
        "version": version,
        "scope": scope,
        "licenses": [_licence(licence_of(name))],
        "purl": purl,
        # Each is the hash of one file of this version; a system takes the one that fits it.
        "externalReferences": [
            {
                "type": "distribution",
                "url": f"https://pypi.org/project/{name}/{version}/",
                "hashes": [{"alg": "SHA-256", "content": each} for each in hashes],
            }
        ],
    }


def licence_of(name: str) -> str:
    """The licence of an installed package, in the words of SPDX where it uses them."""
    about = metadata.metadata(name)
    if about["License-Expression"]:
        return str(about["License-Expression"])
    said = [
        line.rpartition(" :: ")[2]
        for line in about.get_all("Classifier") or ()
        if IS_LICENCE.match(line)
    ]
    known = [
        words
        for words in (about["License"] or "", *said)
        if is_supported_id(SPDX.get(words, words))
    ]
    for words in [*known, *said]:
        return str(SPDX.get(words, words))
    raise LookupError(f"{name}: what is its licence? It says {about['License']!r}")


def _browser_tools() -> list[dict[str, Any]]:
    """What `npm ci` installs; none of it is shipped."""
    lock = json.loads((PROJECT / "package-lock.json").read_text("utf-8"))["packages"]
    found = {}
    for path, entry in lock.items():
        if not path:
            continue
        name = path.rpartition("node_modules/")[2]
        purl = f"pkg:npm/{name.replace('@', '%40')}@{entry['version']}"
        alg, _, digest = entry["integrity"].partition("-")
        found[purl] = {
            "type": "library",
            "bom-ref": purl,
            "name": name,
            "version": entry["version"],
            "scope": "excluded",
            "licenses": [_licence(entry["license"])] if "license" in entry else [],
            "purl": purl,
            "hashes": [{"alg": f"SHA-{alg[3:]}", "content": base64.b64decode(digest).hex()}],
        }
    return list(found.values())


def _shipped(site: dict[str, tuple[str, list[str]]]) -> list[dict[str, Any]]:
    """What others made of the built site, and where in it each is."""
    parts = json.loads((PROJECT / "site_assets/licences/parts.json").read_text("utf-8"))["parts"]
    theme = site["mkdocs-material"][0]
    return [
        {
            "type": "library",
            "bom-ref": f"shipped/{part['name']}",
            "name": part["name"],
            "description": f"Shipped in every built site, as mkdocs-material {theme} carries it",
            "scope": "required",
            "licenses": [_licence(part["licence"])],
            "externalReferences": [{"type": "vcs", "url": part["source"]}],
            "properties": [
                {"name": f"pencilwood:{name}", "value": pattern}
                for name, key in (("shipped-in", "files"), ("in-papers", "in papers"))
                for pattern in part.get(key, ())
            ],
        }
        for part in parts
    ]


def _licence(said: str) -> dict[str, Any]:
    said = SPDX.get(said, said)
    if is_supported_id(said):
        return {"license": {"id": said}}
    if re.search(r" (OR|AND|WITH) ", said):
        return {"expression": said}
    return {"license": {"name": said}}


if __name__ == "__main__":
    LIST.write_text(written(), encoding="utf-8", newline="\n")
