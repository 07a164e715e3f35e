"""The styles: each file of them reaches a page, once joined with what stands before it."""

import re
from pathlib import Path

from pencilwood.pages.projector_page import STYLES as ROOM
from pencilwood.pages.style_sheet import (
    DARK,
    ONLY_PARTS,
    PACKAGE,
    package_style_sheet,
    style_sheet,
)

OFFLINE = ("css/tokens.css", DARK, "css/fonts.css", "css/offline.css")
"""What the page asks for that stands in for one that is not on the device."""
COLOUR = re.compile(r"(--pwh-[\w-]+):\s*#")
WOOD = re.compile(r"^ +(--pw-[\w-]+):", re.MULTILINE)


def text_of(project: Path, name: str) -> str:
    return (project / "site_assets" / name).read_text("utf-8")


def test_every_file_is_part_of_some_page(project: Path) -> None:
    root = project / "site_assets"
    written = {path.relative_to(root).as_posix() for path in root.rglob("*.css")}
    asked_for = {*ONLY_PARTS, *OFFLINE, *(f"css/{name}" for name in ROOM), PACKAGE}
    assert written == asked_for


def test_joining_takes_comments_and_nothing_else(project: Path) -> None:
    rules = re.compile(r"/\*.*?\*/|\s", re.DOTALL)
    for sheet in (style_sheet().decode(), package_style_sheet().decode()):
        assert "/*" not in sheet
        assert sheet.count("{") == sheet.count("}") > 100
        for name in ("css/handbook/page.css", "css/exercise/hand.css", "css/quiz/question.css"):
            assert rules.sub("", text_of(project, name)) in rules.sub("", sheet)


def test_no_text_in_quotes_looks_like_a_comment(project: Path) -> None:
    for path in (project / "site_assets").rglob("*.css"):
        bare = re.sub(r"/\*.*?\*/", "", path.read_text("utf-8"), flags=re.DOTALL)
        assert re.findall(r"/\*|\*/", bare) == [], path.name


def test_each_dark_colour_has_a_light_one_and_turns_to_ink_on_paper(project: Path) -> None:
    light, on_paper = text_of(project, "css/tokens.css").split("@media print", 1)
    dark = COLOUR.findall(text_of(project, DARK))
    assert len(dark) > 10
    assert set(dark) == set(COLOUR.findall(light)) == set(COLOUR.findall(on_paper))
    assert "@media screen" in text_of(project, DARK)


def test_wood_has_a_colour_of_its_own_in_the_dark_and_a_grey_on_paper(project: Path) -> None:
    light, on_paper = text_of(project, "css/vine.css").split("@media print", 1)
    assert "slate" not in light + on_paper
    dark = WOOD.findall(text_of(project, DARK))
    assert len(dark) > 10
    assert set(dark) == set(WOOD.findall(light)) == set(WOOD.findall(on_paper))


def test_the_page_without_signal_is_dark_on_a_dark_device_only(built_site: Path) -> None:
    page = (built_site / "offline.html").read_text("utf-8")
    asked = [one for one in re.findall(r"<link[^>]*>", page) if "stylesheet" in one]
    assert [one for one in OFFLINE if not any(one in link for link in asked)] == []
    assert len(asked) == len(OFFLINE)
    (dark,) = (link for link in asked if DARK in link)
    assert 'media="(prefers-color-scheme: dark)"' in dark
    assert '<html lang="en" data-md-color-scheme="slate">' in page
    colours = [link for link in asked if "css/tokens.css" in link or DARK in link]
    assert colours[-1] == dark
