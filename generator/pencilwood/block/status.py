"""How well a figure is known, printed beside every default."""

from __future__ import annotations

from typing import Literal

Status = Literal["published", "common practice, no source", "from memory", "assumption"]
