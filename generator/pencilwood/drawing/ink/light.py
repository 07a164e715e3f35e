"""Where the light comes from: from the left and a little from above, on every drawing.

Ink shows it by one darker line along the edge that lies away from it, not by gradients.
"""

from __future__ import annotations

import math

_FROM_ABOVE = 0.5


def shaded_side(heading_rad: float) -> int:
    """The side of wood that lies in shade: 1 is to the right of who walks along it, -1 to the left.

    A heading of 0 is up, positive is to the right.
    """
    return 1 if math.cos(heading_rad) + _FROM_ABOVE * math.sin(heading_rad) >= 0 else -1
