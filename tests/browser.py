"""How the tests drive Chromium, and what they never let a page do."""

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page, ViewportSize

CHROMIUM_NAMES = ("chromium", "chromium-browser", "google-chrome", "chrome")
CHROMIUM_ARGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def chromium_here() -> str | None:
    """Where this machine has Chromium, if it has."""
    return next((path for name in CHROMIUM_NAMES if (path := shutil.which(name))), None)


PHONE: ViewportSize = {"width": 390, "height": 844}
DESKTOP: ViewportSize = {"width": 1280, "height": 800}
# A learner may be in the row with no signal: a page may ask for nothing but its own files.
OWN_ADDRESSES = ("file:", "data:", "blob:", "about:", "http://127.0.0.1", "http://localhost")


WCAG = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")
"""Rules of axe-core for WCAG 2.2, levels A and AA (https://www.w3.org/TR/WCAG22/)."""


def unmet_by(page: Page, project: Path, within: str) -> list[str]:
    """What axe-core finds in a part of a page, named by a selector: rule, and up to three places.

    It is not put in as a script element, which the page's own policy would rightly refuse.
    """
    page.evaluate((project / "node_modules/axe-core/axe.min.js").read_text("utf-8"))
    found: list[str] = page.evaluate(
        "([within, tags]) => axe.run(within, { runOnly: tags }).then((all) => all.violations"
        ".map((one) => `${one.id}: ${one.nodes.slice(0, 3).map((node) => node.html)}`))",
        [within, list(WCAG)],
    )
    return found


def watched_page(browser: Browser, **context: Any) -> Iterator[Page]:
    """Open one page; afterwards fail if it met a script error or asked for a foreign address."""
    troubles: list[str] = []
    opened = browser.new_context(**context)
    page = opened.new_page()
    page.on("pageerror", lambda error: troubles.append(f"script error: {error}"))
    page.on(
        "request",
        lambda request: (
            None
            if request.url.startswith(OWN_ADDRESSES)
            else troubles.append(f"request to {request.url}")
        ),
    )
    yield page
    opened.close()
    assert not troubles, "\n".join(troubles)
