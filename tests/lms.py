"""A small learning system that shows a package in a frame and keeps its record.

Its run-time API is scorm-again (https://github.com/jcputney/scorm-again, MIT), which knows nothing
of us and enforces the data types of SCORM 1.2. It is taken from the browser tools (`npm ci`).
"""

import shutil
import threading
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from io import BytesIO
from pathlib import Path
from typing import Any

from lxml import etree
from playwright.sync_api import FrameLocator, Page

API_SCRIPT = "node_modules/scorm-again/dist/scorm12.min.js"
ROOM = 4096
"""Characters of cmi.suspend_data (SCORM 1.2, Run-Time Environment, section 3.4.4)."""
IMS = "{http://www.imsproject.org/xsd/imscp_rootv1p1p2}"
PAGE = """<!doctype html><html lang="en"><meta charset="utf-8"><title>Learning system</title>
<style>html, body { height: 100%; margin: 0 }
iframe { width: 100%; height: 100%; border: 0 }</style>
<link rel="icon" href="data:,"><script src="scorm12.min.js"></script><body></body></html>"""
BEGIN = """([kept, start, credit]) => {
  window.refused = [];
  window.API = new Scorm12API({ logLevel: 5 });
  const learner = { student_id: "007", student_name: "Prueba, Ana" };
  API.loadFromJSON({ ...kept, core: { ...learner, ...kept.core, ...credit } });
  const set = API.LMSSetValue.bind(API);
  const wrapped = (name, value) => {
    const done = set(name, value);
    if (`${done}` !== "true") window.refused.push([name, value, API.LMSGetLastError()]);
    return done;
  };
  Object.defineProperty(API, "LMSSetValue", { value: wrapped });
  const frame = document.createElement("iframe");
  frame.name = "part";
  frame.src = start;
  document.body.replaceChildren(frame);
}"""
# Away with the frame: what the part does then, it does in its last moment.
LEAVE = "() => document.querySelector('iframe').remove()"


class Quiet(SimpleHTTPRequestHandler):
    """Serves files and says nothing about it."""

    def log_message(self, *_: object) -> None:
        """Keep still."""


class LearningSystem:
    """A learning system with one package and one learner."""

    def __init__(self, address: str, start: str) -> None:
        self.address, self.start = address, start
        self.kept: dict[str, Any] = {}
        """The record between two visits."""

    def open(self, page: Page, **core: str) -> FrameLocator:
        """Show the package as at a visit; `core` are values that the system sets."""
        page.goto(f"{self.address}/lms.html")
        entry = {"entry": "resume" if self.kept else "ab-initio", **core}
        page.evaluate(BEGIN, [self.kept, self.start, entry])
        part = page.frame_locator("iframe")
        part.locator("[data-pencilwood-package]:not(:empty)").wait_for()
        return part

    def record(self, page: Page) -> dict[str, Any]:
        """The record as it stands while the package is shown."""
        found: dict[str, Any] = page.evaluate("() => JSON.parse(JSON.stringify(API.cmi))")
        return found

    def refused(self, page: Page) -> list[Any]:
        """What the API did not take: name, value, code of the standard."""
        found: list[Any] = page.evaluate("() => window.refused")
        return found

    def leave(self, page: Page) -> dict[str, Any]:
        """Close the package; gives the record and keeps it for the next visit."""
        page.evaluate(LEAVE)
        self.kept = self.record(page)
        assert page.evaluate("() => API.isTerminated()"), "LMSFinish was not called"
        return self.kept


def start_of(package: bytes) -> str:
    """The page that the manifest names."""
    with zipfile.ZipFile(BytesIO(package)) as archive:
        root = etree.fromstring(archive.read("imsmanifest.xml"))
    (resource,) = root.iter(f"{IMS}resource")
    return str(resource.get("href"))


@contextmanager
def learning_system(project: Path, folder: Path, package: bytes) -> Iterator[LearningSystem]:
    """Unpack a package into a folder and serve it, on this machine only."""
    with zipfile.ZipFile(BytesIO(package)) as archive:
        archive.extractall(folder / "package")
    shutil.copy(project / API_SCRIPT, folder)
    (folder / "lms.html").write_text(PAGE, encoding="utf-8")
    handler = partial(Quiet, directory=str(folder))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        serving = threading.Thread(target=server.serve_forever, daemon=True)
        serving.start()
        address = f"http://127.0.0.1:{server.server_address[1]}"
        yield LearningSystem(address, f"package/{start_of(package)}")
        server.shutdown()
        serving.join()


def outcome(record: dict[str, Any]) -> tuple[str, str]:
    """Status and score."""
    return record["core"]["lesson_status"], record["core"]["score"]["raw"]


def interactions(record: dict[str, Any]) -> list[dict[str, Any]]:
    """What was answered or tried, in order."""
    return list(record["interactions"].values())
