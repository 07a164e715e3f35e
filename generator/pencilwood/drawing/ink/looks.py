"""The colours of the drawing when it stands alone, and the style sheet that pages share.

Colours are a help only: what a piece is shows in its outline, hatching and marks as well.
"""

from __future__ import annotations

from pathlib import Path

from pencilwood.assets import asset_root

PAPER = "#fbf6ea"
INK = "#33291f"
FRAME = "#8d7c69"
OLD = "#9a8468"
CANE = "#b5733c"
SPINDLY = "#ad8352"
DISEASED = "#86664a"
DEAD = "#8c8983"
INJURED = "#b5733c"
BUD = "#5b2d16"
FACE = "#f3e2b9"
PENCIL = "#6f675c"
SAP = "#8fa65a"


def stylesheet_path(root: Path | None = None) -> Path:
    """Where the style sheet of the drawings is found."""
    return (root or asset_root()) / "css" / "vine.css"


def stylesheet() -> str:
    """The style sheet of the drawings, for an SVG file that stands alone."""
    return stylesheet_path().read_text(encoding="utf-8")


POSITION_MM = 52.0
"""Height of the letters in which positions are named."""
