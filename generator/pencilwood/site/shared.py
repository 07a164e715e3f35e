"""What comes with the package, so that a handbook need not hold it.

These are the rule examples, the trade words, the sources, the figures and the safety notes. A
handbook may keep such files too. An entry of its own takes the place of ours with the same name,
and every other entry is added; of the rule examples, each file counts by itself.
"""

from __future__ import annotations

from pathlib import Path

from pencilwood.assets import handbook_root

_SHOWN = "pencilwood"


def shared_file(root: Path, name: str) -> Path | None:
    """The package's file of this name; None where it is the handbook's own."""
    path = handbook_root() / name
    if not path.is_file() or path.resolve() == (root / name).resolve():
        return None
    return path


def in_turn(root: Path, name: str) -> tuple[tuple[Path, str], ...]:
    """The package's file, then the handbook's own, each with the name that findings show.

    The handbook's own stands alone where the package has none, even if it is missing.
    """
    ours = shared_file(root, name)
    own = root / name
    if ours is None:
        return ((own, name),)
    both = ((ours, shown_as_ours(name)), (own, name))
    return both if own.exists() else both[:1]


def shown_as_ours(name: str) -> str:
    """How a finding names a file of the package."""
    return f"{_SHOWN}/{name}"
