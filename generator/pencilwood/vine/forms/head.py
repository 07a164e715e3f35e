"""Head-trained, spur-pruned vines: a short trunk without wires, spurs all around its head."""

from __future__ import annotations

from pencilwood.vine.model import Form, Line, Side

HEAD_TRAINED = Form("head-trained vine", (Side.ROUND,), line=Line.RING)
"""Its one "arm" is the crown of the head, as long as a tape once around it says."""
