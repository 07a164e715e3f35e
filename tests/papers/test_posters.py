"""Posters for a wall: their sizes, their names, and what refuses to be one."""

from __future__ import annotations

from pathlib import Path

import pytest
from pypdf import PdfReader

from pencilwood.words import say
from workshop import Workshop

WALL_SIZES_PT = {
    "a2": (1190.6, 1683.8),
    "a1": (1683.8, 2383.9),
    "ansi-c": (1224.0, 1584.0),
    "arch-c": (1296.0, 1728.0),
}
"""ISO 216: 420 x 594 mm and 594 x 841 mm. ASME Y14.1: 17 x 22 in. Arch C: 18 x 24 in (common
practice, no source). A point is 1/72 in."""


@pytest.mark.parametrize("what", ["poster", "qr"])
@pytest.mark.parametrize("paper", WALL_SIZES_PT)
def test_a_poster_for_the_wall_is_one_page_of_the_size_asked_for(
    workshop: Workshop, what: str, paper: str
) -> None:
    workshop.set_address("https://example.org/vines/")
    case = ("--case", "tidy-vine") if what == "poster" else ()
    ran = workshop.run("print", "--what", what, *case, "--paper", paper)
    assert ran.status == 0, ran.err
    (path,) = (workshop.root / "print").glob(f"{what}*-{paper}.pdf")
    (page,) = PdfReader(path).pages
    size = float(page.mediabox.width), float(page.mediabox.height)
    assert size == pytest.approx(WALL_SIZES_PT[paper], abs=0.5)


def title_pt(path: Path) -> float:
    """The height of the letters of a poster's title."""
    (page,) = PdfReader(path).pages
    sizes: list[float] = []

    def note(text: str, _cm: object, _tm: object, _font: object, size: float) -> None:
        if text.strip() == say("en", "print.poster.title"):
            sizes.append(size)

    page.extract_text(visitor_text=note)
    return max(sizes)


def test_letters_grow_with_the_sheet(workshop: Workshop) -> None:
    for paper in ("a4", "a2"):
        workshop.run("print", "--what", "poster", "--case", "tidy-vine", "--paper", paper)
    hand, wall = (
        title_pt(workshop.root / "print" / f"poster-tidy-vine-en-{paper}.pdf")
        for paper in ("a4", "a2")
    )
    assert wall == pytest.approx(2 * hand)


def test_posters_of_two_vines_are_two_files(workshop: Workshop) -> None:
    for slug in ("tidy-vine", "one-arm-vine"):
        workshop.run("print", "--what", "poster", "--case", slug)
    made = {path.name for path in (workshop.root / "print").glob("*.pdf")}
    assert made == {"poster-tidy-vine-en-a4.pdf", "poster-one-arm-vine-en-a4.pdf"}


@pytest.mark.parametrize("asked", [(), ("--what", "card"), ("--case", "tidy-vine")])
def test_other_papers_are_not_set_for_a_wall(workshop: Workshop, asked: tuple[str, ...]) -> None:
    ran = workshop.run("print", *asked, "--paper", "a2")
    assert ran.status == 2
    assert "a2 is a size for the wall; add --what poster or --what qr" in ran.err
    assert not (workshop.root / "print").exists()
