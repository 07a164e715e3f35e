"""The irregularity of wood: numbers that look like chance but follow from a name.

The same vine gives the same drawing on every machine, so nothing here draws lots.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from hashlib import blake2b


@dataclass(frozen=True)
class Grain:
    """A source of irregularity for the wood of one name."""

    name: str

    def share(self, trait: str, number: int = 0) -> float:
        """A number from 0 to 1, fixed by the wood's name, the trait and the number."""
        return _share(self.name, trait, number)

    def within(self, low: float, high: float, trait: str, number: int = 0) -> float:
        """A number from `low` to `high`."""
        return low + (high - low) * self.share(trait, number)

    def sign(self, trait: str, number: int = 0) -> int:
        """Minus 1 or 1."""
        return 1 if self.share(trait, number) < 0.5 else -1


@lru_cache(maxsize=10_000)
def _share(name: str, trait: str, number: int) -> float:
    # Each bend of a rough edge asks for the same ones, and so does wood of other vines.
    text = f"{name}|{trait}|{number}".encode()
    return int.from_bytes(blake2b(text, digest_size=4).digest(), "big") / 2**32
