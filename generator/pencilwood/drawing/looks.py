"""The colours of the drawing when it stands alone, and the style sheet that pages share.

Colours are a help only: what a piece is shows in its outline, hatching and marks as well.
"""

from __future__ import annotations

from pathlib import Path

from pencilwood.assets import asset_root

PAPER = "#fbf6ea"
INK = "#33291f"
FRAME = "#857a6e"
OLD = "#8a847b"
CANE = "#a3622f"
SPINDLY = "#ab7a48"
DISEASED = "#83603f"
DEAD = "#8c8983"
INJURED = "#a3622f"
BUD = "#5b2d16"
FACE = "#f0dcae"
PENCIL = "#6f675c"


def stylesheet_path(root: Path | None = None) -> Path:
    """Where the style sheet of the drawings is found."""
    return (root or asset_root()) / "css" / "vine.css"


def stylesheet() -> str:
    """The style sheet of the drawings, for an SVG file that stands alone."""
    return stylesheet_path().read_text(encoding="utf-8")
