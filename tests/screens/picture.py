"""Takes the picture of the exercise that stands in README.md, from a built site.

Run with `make picture`.
"""

from __future__ import annotations

import io
import sys
from pathlib import Path

from PIL import Image
from playwright.sync_api import sync_playwright

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from browser import CHROMIUM_ARGS, DESKTOP, chromium_here

PROJECT = Path(__file__).resolve().parents[2]
PICTURE = Path(__file__).with_name("exercise.webp")
VINE = "cases/climbing-spurs.html"
WIDE_PX = 1000


def main() -> None:
    chromium = chromium_here()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=CHROMIUM_ARGS)
        page = browser.new_page(viewport=DESKTOP)
        page.goto((PROJECT / "site" / VINE).as_uri())
        page.locator("[data-pencilwood-exercise] svg").first.wait_for()
        page.evaluate("document.fonts.ready")
        taken = Image.open(io.BytesIO(page.screenshot()))
        browser.close()
    small = taken.resize((WIDE_PX, round(WIDE_PX * taken.height / taken.width)))
    small.convert("RGB").save(PICTURE, quality=80, method=6)


if __name__ == "__main__":
    main()
