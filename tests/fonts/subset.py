"""Cuts the fonts of pages and papers down to what English and Spanish need, and writes fonts.css.

Run with `make fonts` after `npm ci`; the fonts come from the npm packages @fontsource/*, whose
versions package-lock.json pins. What it writes is committed, so building a site needs none of this.

Until a font has come over the line, text stands in one that the reader's machine has. So that no
line breaks elsewhere when the font comes, such a stand-in is made as wide as ours on the average of
the demo's chapters (`size-adjust`), and as high. Arial stands for all fonts of its widths.
"""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont

PROJECT = Path(__file__).resolve().parents[2]
PACKAGES = PROJECT / "node_modules" / "@fontsource"
FONTS = PROJECT / "site_assets" / "fonts"
PAPER_FONTS = PROJECT / "generator" / "pencilwood" / "worksheets" / "fonts"
"""The same for papers: the typesetter does not read the format that browsers take."""
STYLE = PROJECT / "site_assets" / "css" / "fonts.css"

LETTERS = "".join(map(chr, range(0x20, 0x7F))) + (
    "\u00a0¡¿«»ñÑáéíóúüÁÉÍÓÚÜ–—\u2018’“”…×÷±½¼¾°º²³ª€·•−£©§µ"
)
"""What the fonts have; other signs of the pages (≤, ≥, arrows, ticks) come from the machine's."""
FEATURES = ["kern", "liga", "mark", "mkmk", "ccmp", "locl", "lnum", "pnum", "tnum"]


@dataclass(frozen=True)
class StandIn:
    """A font that readers' machines have, with its widths."""

    names: tuple[str, ...]
    """What machines call it, and others of just its widths."""
    adjust: float
    """How wide ours is beside it, on average."""


@dataclass(frozen=True)
class Face:
    """One font of the pages."""

    family: str
    package: str
    weight: int
    stand_ins: tuple[StandIn, ...]

    @property
    def file(self) -> str:
        """Its name here."""
        return f"{self.package}-{self.weight}.woff2"

    @property
    def paper_file(self) -> str:
        """Its name beside the papers' templates."""
        return f"{self.package}-{self.weight}.ttf"

    @property
    def source(self) -> Path:
        """The whole font as its package has it."""
        name = f"{self.package}-latin-{self.weight}-normal.woff2"
        return PACKAGES / self.package / "files" / name


# Measured with `average_width` on Liberation (which has the widths of Arial and of Times New
# Roman), Roboto, DejaVu, Gelasio (the widths of Georgia) and Noto Serif.
FACES = (
    Face("Atkinson Hyperlegible", "atkinson-hyperlegible", 400, (
        StandIn(("Arial", "Liberation Sans", "Arimo", "Helvetica"), 0.986),
        StandIn(("Roboto",), 0.996),
        StandIn(("DejaVu Sans",), 0.868),
    )),
    Face("Atkinson Hyperlegible", "atkinson-hyperlegible", 700, (
        StandIn(("Arial Bold", "Liberation Sans Bold", "Arimo Bold", "Helvetica Bold"), 1.0),
        StandIn(("Roboto Bold",), 1.064),
        StandIn(("DejaVu Sans Bold",), 0.837),
    )),
    Face("Alegreya", "alegreya", 700, (
        StandIn(("Times New Roman Bold", "Liberation Serif Bold", "Tinos Bold"), 0.954),
        StandIn(("Noto Serif Bold",), 0.81),
        StandIn(("DejaVu Serif Bold",), 0.722),
    )),
)  # fmt: skip
TOP = """\
/* The letters of all pages, made by `make fonts`; do not edit. Running text is set in Atkinson
   Hyperlegible, drawn so that letters are told apart, headings in Alegreya. Both are under the
   SIL Open Font License 1.1 (../licences/), cut to what English and Spanish need. The faces named
   "... stand-in" hold their place until they are there, in the same widths and heights. */
"""


def cut(face: Face, to: Path) -> None:
    """Write what is needed of a font, in the format that the name of the file says."""
    flavor = "woff2" if to.suffix == ".woff2" else None
    options = subset.Options(flavor=flavor, layout_features=FEATURES, notdef_outline=True)
    if flavor is None:
        # Paper has no coarse dots that letters must be fitted to.
        options.hinting = False
    font = subset.load_font(str(face.source), options)
    font.flavor = flavor
    cutter = subset.Subsetter(options)
    cutter.populate(text=LETTERS)
    cutter.subset(font)
    subset.save_font(font, str(to), options)


def heights(face: Face) -> tuple[float, float]:
    """How far letters reach above and below the line, as shares of their size."""
    font = TTFont(FONTS / face.file)
    em = font["head"].unitsPerEm
    return font["hhea"].ascent / em, -font["hhea"].descent / em


def average_width(path: Path) -> float:
    """Width of a letter as a share of its size, on the average of the demo's chapters."""
    chapters = sorted(PROJECT.glob("content/chapters/*/*.md"))
    text = " ".join(each.read_text(encoding="utf-8") for each in chapters)
    letters = Counter(re.sub(r"\{\{.*?\}\}|[#*|`\[\]()\s]", " ", text))
    font = TTFont(path)
    known = font.getBestCmap()
    counted = {known[ord(one)]: n for one, n in letters.items() if ord(one) in known}
    width = sum(font["hmtx"][name][0] * n for name, n in counted.items())
    return float(width / sum(counted.values()) / font["head"].unitsPerEm)


def style(face: Face) -> str:
    """The face and its stand-ins, as a style says it."""
    above, below = heights(face)
    rules = [_rule(face.family, face.weight, f'url("../fonts/{face.file}") format("woff2")', [])]
    for number, one in enumerate(face.stand_ins, start=1):
        sources = ", ".join(f'local("{name}")' for name in one.names)
        sizes = [
            f"  size-adjust: {one.adjust:.1%};",
            f"  ascent-override: {above / one.adjust:.1%};",
            f"  descent-override: {below / one.adjust:.1%};",
            "  line-gap-override: 0%;",
        ]
        rules.append(_rule(f"{face.family} stand-in {number}", face.weight, sources, sizes))
    return "\n".join(rules)


def _rule(family: str, weight: int, sources: str, more: list[str]) -> str:
    lines = [
        "@font-face {",
        f'  font-family: "{family}";',
        f"  src: {sources};",
        f"  font-weight: {weight};",
        "  font-display: swap;",
        *more,
        "}",
    ]
    return "\n".join(lines) + "\n"


def written() -> str:
    """The whole of fonts.css."""
    return "\n".join([TOP, *(style(face) for face in FACES)])


if __name__ == "__main__":
    for one in FACES:
        cut(one, FONTS / one.file)
        cut(one, PAPER_FONTS / one.paper_file)
    STYLE.write_text(written(), encoding="utf-8", newline="\n")
