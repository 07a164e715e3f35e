"""Pages of winters by themselves: our own script and styles, and nothing of a theme's."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from pencilwood.assets import asset_root
from pencilwood.cases.case import Case, Profile
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.style_sheet import EXERCISE, WINTERS
from pencilwood.proof import CaseProof, prove_case

HEAD = "<!doctype html><meta charset='utf-8'><meta name='viewport' content='width=device-width'>"
STYLES = ("css/tokens.css", *EXERCISE, WINTERS)
LARGEST_BYTES = 350_000
"""What such a page may weigh as it goes over the air."""

PageOf = Callable[[Handbook, CaseProof, str], Page]


def write_pages(site: Path, profile: Profile, case: Case, page_of: PageOf, address: str) -> None:
    """A case's page in both languages, `address` being its place with no ending."""
    handbook = Handbook(profile, (prove_case(case, profile),), {}, (), (), ())
    for name in (*STYLES, "pencilwood-winters.js"):
        path = site / "assets" / "pencilwood" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes((asset_root() / name).read_bytes())
    for language, up, place in (("en", "..", ""), ("es", "../..", "es/")):
        page = page_of(handbook, handbook.cases[0], language)
        styles = "".join(
            f"<link rel='stylesheet' href='{up}/assets/pencilwood/{name}'>" for name in STYLES
        )
        html = f"{HEAD}<html lang='{language}'>{styles}<title>W</title>{page.content('')}"
        path = site / f"{place}{address}.html"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(page.complete(html, place), "utf-8")
