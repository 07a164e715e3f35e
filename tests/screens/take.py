"""Takes a picture of every kind of page, on every kind of screen, for people to look at.

Run with `make screens`, or `python tests/screens/take.py --only case --only home` after a build.
The pictures go into `.cache/screens/<page>/`, and a sheet of each page's pictures side by side
beside them. What a program can see by itself (a page wider than the screen, words cut off, targets
too small for a finger, one target over another) is printed once, with the pictures that show it;
what only an eye sees is yours to find.
"""

from __future__ import annotations

import argparse
import shutil
import sys
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from PIL import Image
from playwright.sync_api import Browser, Page, ViewportSize, sync_playwright

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from browser import CHROMIUM_ARGS, chromium_here

PROJECT = Path(__file__).resolve().parents[2]
TARGETS = Path(__file__).with_name("troubles.js")

SCREENS = {
    "phone": ViewportSize(width=390, height=844),
    "narrow": ViewportSize(width=320, height=568),
    "tablet": ViewportSize(width=820, height=1180),
    "desktop": ViewportSize(width=1280, height=800),
    "projector": ViewportSize(width=1920, height=1080),
}
LANGUAGES = {"en": "", "es": "es/"}
SHADES = ("light", "dark")
PAPER = ViewportSize(width=794, height=1123)
"""A4 at 96 dots an inch."""
ALL_PICTURES = """
Promise.all([...document.images].map((image) => {
  image.loading = "eager";
  return image.decode();
}))
"""
"""Loads those that wait until somebody scrolls to them."""
LONGEST_PX = 6000
"""A page is taken down to here; what comes below looks alike."""
SHEET_PX = 640


@dataclass(frozen=True)
class Shot:
    """One page as one reader meets it."""

    page: str
    language: str
    screen: str
    shade: str

    @property
    def size(self) -> ViewportSize:
        return SCREENS.get(self.screen, PAPER)

    @property
    def name(self) -> str:
        return f"{self.screen}-{self.language}-{self.shade}.png"


def kinds_of_pages(site: Path) -> list[str]:
    """Every page that stands alone, and the first of each folder of pages that are alike."""
    own = sorted(path.stem for path in site.glob("*.html") if path.stem != "404")
    folders = sorted(
        path.name
        for path in site.iterdir()
        if path.is_dir() and path.name not in LANGUAGES and any(path.glob("*.html"))
    )
    return own + [f"{name}/{min(site.glob(f'{name}/*.html')).stem}" for name in folders]


def shots_of(page: str) -> Iterator[Shot]:
    """A page on every screen, in both languages, light and dark, and once on paper."""
    for language in LANGUAGES:
        for screen in SCREENS:
            for shade in SHADES:
                yield Shot(page, language, screen, shade)
        yield Shot(page, language, "paper", "light")


def take(browser: Browser, site: Path, shot: Shot, folder: Path) -> list[str]:
    """Take one picture; what is wrong on it as far as a program can see."""
    address = site / f"{LANGUAGES[shot.language]}{shot.page}.html"
    if not address.is_file():
        return [f"there is no {address.relative_to(site)}"]
    opened = browser.new_context(
        viewport=shot.size, color_scheme="dark" if shot.shade == "dark" else "light"
    )
    page = opened.new_page()
    if shot.screen == "paper":
        page.emulate_media(media="print")
    page.goto(address.as_uri())
    page.wait_for_load_state("load")
    page.evaluate("document.fonts.ready")
    page.evaluate(ALL_PICTURES)
    if shot.screen == "paper":
        page.evaluate("dispatchEvent(new Event('beforeprint'))")
    troubles = [] if shot.screen == "paper" else troubles_on(page)
    picture(page, shot, folder / shot.name)
    opened.close()
    return troubles


def troubles_on(page: Page) -> list[str]:
    """What `troubles.js` finds on an open page."""
    found: list[str] = page.evaluate(TARGETS.read_text("utf-8"))
    return found


def picture(page: Page, shot: Shot, path: Path) -> None:
    """The whole page, or its upper part when it is very long."""
    height: int = page.evaluate("document.documentElement.scrollHeight")
    clip = {"x": 0, "y": 0, "width": shot.size["width"], "height": min(height, LONGEST_PX)}
    page.screenshot(path=path, full_page=True, clip=clip, animations="disabled")  # type: ignore[arg-type]


def sheet(folder: Path, screen: str) -> None:
    """All pictures of one page on one kind of screen side by side, as small as can be read."""
    shots = [Image.open(path) for path in sorted(folder.glob(f"{screen}-*.png"))]
    if not shots:
        return
    scale = min(1.0, SHEET_PX / shots[0].width)
    small = [
        shot.resize((int(shot.width * scale), int(shot.height * scale))).convert("RGB")
        for shot in shots
    ]
    whole = Image.new(
        "RGB",
        (sum(one.width + 8 for one in small), max(one.height for one in small)),
        "magenta",
    )
    across = 0
    for one in small:
        whole.paste(one, (across, 0))
        across += one.width + 8
    whole.save(folder / f"all-{screen}.png")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--site", type=Path, default=PROJECT / "site")
    parser.add_argument("--into", type=Path, default=PROJECT / ".cache" / "screens")
    parser.add_argument("--only", action="append", help="a page, as cases/tidy-vine; repeat it")
    parser.add_argument("--screen", action="append", help="phone, desktop, paper; repeat it")
    asked = parser.parse_args()
    site = asked.site.resolve()
    pages = asked.only or kinds_of_pages(site)
    chromium = chromium_here()
    taken, seen = 0, defaultdict[str, list[str]](list)
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=CHROMIUM_ARGS)
        for page in pages:
            folder = asked.into / page.replace("/", "-")
            shutil.rmtree(folder, ignore_errors=True)
            folder.mkdir(parents=True)
            for shot in shots_of(page):
                if asked.screen and shot.screen not in asked.screen:
                    continue
                taken += 1
                for trouble in take(browser, site, shot, folder):
                    seen[trouble].append(f"{page} {shot.name[:-4]}")
            for screen in (*SCREENS, "paper"):
                sheet(folder, screen)
        browser.close()
    for trouble, where in sorted(seen.items()):
        print(f"{trouble}: {where[0]}" + (f" and {len(where) - 1} more" if where[1:] else ""))
    print(f"{taken} pictures of {len(pages)} pages in {asked.into}; {len(seen)} troubles seen")


if __name__ == "__main__":
    main()
