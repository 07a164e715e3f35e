"""The page for a room, written to a disk with all that it asks for."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Page

from pencilwood.assets import asset_root
from pencilwood.pages.case_page import case_page
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.projector_page import projector_page
from pencilwood.proof import CaseProof, prove_case
from pencilwood.site.handbook import all_safety_notes, read_one_case
from workshop import PROJECT

CASE = "tidy-vine"
CANES = "two-new-canes"
ROOM = {"width": 1280, "height": 720}
_SCRIPTS = ("pencilwood-room.js", "pencilwood.js", "offline.js")


def proof_of(slug: str) -> CaseProof:
    profile, case, findings = read_one_case(PROJECT, slug)
    assert profile is not None, findings
    assert case is not None, findings
    return prove_case(case, profile)


def write_pages(site: Path, proof: CaseProof) -> None:
    """The page for a room, and the page of the vine that it takes the drawing from."""
    slug = proof.case.slug
    profile, _, _ = read_one_case(PROJECT, slug)
    assert profile is not None
    notes, _ = all_safety_notes(PROJECT, profile.languages)
    handbook = Handbook(profile, (proof,), {}, (), notes, ())
    for language, place in (("en", "project"), ("es", "es/project")):
        (site / place).mkdir(parents=True, exist_ok=True)
        text = projector_page(handbook, proof, language)
        (site / place / f"{slug}.html").write_text(text, "utf-8")
        vine = case_page(handbook, proof, language)
        alone = f'<!doctype html><meta charset="utf-8"><body>{vine.content("<h1>Vine</h1>")}</body>'
        (site / place).with_name("cases").mkdir(exist_ok=True)
        folder = "" if language == "en" else f"{language}/"
        own = site / place / ".." / "cases" / f"{slug}.html"
        own.write_text(vine.complete(alone, folder), "utf-8")


def write_assets(site: Path) -> None:
    """The styles and scripts of these pages."""
    for name in ("css/vine.css", "css/projector.css", "icons/favicon.svg", *_SCRIPTS):
        path = site / "assets" / "pencilwood" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes((asset_root() / name).read_bytes())


def open_room(page: Page, address: str) -> None:
    """Open the page and wait until it has its drawing."""
    page.goto(address)
    page.wait_for_selector("svg.pw-vine")


def count(page: Page) -> tuple[int, int]:
    at, of = page.locator(".pwp-count").inner_text().split(" / ")
    return int(at), int(of)
