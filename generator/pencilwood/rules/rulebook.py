"""What each broken rule costs, in points. The handbook prints this table as it stands.

Prices are this project's own judgement (common practice, no source): how many points a fault
costs says how much it matters beside the others, not what it costs in money or crop.
A must rule speaks of wood that is left, so it can always be obeyed; broken, it keeps the score
below the pass mark whatever the points say.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Price:
    """Points = `first`, plus `each` for every whole `step` past the limit, at most `most`."""

    first: int
    each: int = 0
    step: int = 1
    most: int = 100
    must: bool = False

    def points(self, excess: int) -> int:
        """Points lost when the limit is passed by `excess`."""
        return min(self.most, self.first + self.each * (excess // self.step))


RULEBOOK: Mapping[tuple[str, str], Price] = {
    ("blank-on-arm", "too-long"): Price(4, each=2, step=50, most=24),
    ("cane-above-wire", "too-high"): Price(4, each=2, step=50, most=14),
    ("cane-far-from-head", "too-far"): Price(5, each=2, step=50, most=25),
    ("climbed-too-far", "too-high"): Price(3, each=2, step=50, most=13),
    ("crowded-spurs", "too-close"): Price(3, each=1, step=10, most=10),
    ("diseased-wood", "kept"): Price(12, must=True),
    ("doubled-spur", "two-at-one-place"): Price(7),
    ("head-wood", "kept"): Price(4),
    ("injured-wood", "kept"): Price(5),
    ("neither-spur-nor-cane", "in-between"): Price(8, must=True),
    ("neither-spur-nor-cane", "too-long"): Price(3, each=2, most=40),
    ("no-renewal-bud", "low-cane-removed"): Price(4),
    ("old-stub", "bare-end"): Price(4),
    ("old-stub", "dead-end"): Price(6),
    ("open-side", "too-wide"): Price(4, each=2, step=50, most=24),
    ("overladen-spur", "too-weak"): Price(4, each=3, most=10),
    ("spur-above-cane", "wrong-order"): Price(4),
    ("spur-too-long", "too-many-buds"): Price(4, each=3, most=34, must=True),
    ("too-few-buds", "below-target"): Price(0, each=3, most=300),
    ("too-little-leaf-room", "too-few-leaves"): Price(3, each=1, most=12),
    ("too-many-buds", "above-target"): Price(0, each=2, most=200),
    ("too-many-large-wounds", "above-limit"): Price(0, each=4, most=1000),
    ("upright-wood", "kept"): Price(6),
    ("wood-below-arm", "kept"): Price(6),
    ("wood-in-the-middle", "kept"): Price(6),
    ("wood-too-old", "no-cane-left"): Price(8, must=True),
    ("wood-too-thick", "bull-wood"): Price(4),
    ("wood-too-thin", "weak-cane"): Price(3, each=3, most=12),
    ("wrong-cane-count", "too-few"): Price(12, each=8, most=100),
    ("wrong-cane-count", "too-many"): Price(8, each=8, most=100),
    ("wrong-spur-count", "too-few-left"): Price(8),
    ("wrong-spur-count", "too-few-right"): Price(8),
    ("wrong-spur-count", "too-many-left"): Price(2, each=3, most=60),
    ("wrong-spur-count", "too-many-right"): Price(2, each=3, most=60),
    ("cane-not-tied", "both-to-one-side"): Price(8),
    ("cane-not-tied", "not-tied"): Price(8),
    ("cane-not-tied", "wrong-side"): Price(8),
    ("cut-too-close", "at-the-bud"): Price(5),
    ("passes-out-of-order", "earlier-pass"): Price(5),
    ("passes-out-of-order", "not-for-this-pass"): Price(5),
    ("passes-out-of-order", "rough-cut-too-long"): Price(2),
    ("stub-too-long", "long-stub"): Price(4),
    ("wrong-tool", "too-thick"): Price(8),
    ("wrong-tool", "clumsy"): Price(5),
}
