"""A handbook that an older package started is read and built by this one.

`started_with_0_1_0/` is a cut of what version 0.1.0 wrote. Do not bring it up to date: it stands
for the folders that trainers have. A newer starter gets a folder of its own beside it.
"""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from pencilwood.site.publish import publish

Tree = dict[str, bytes]
HERE = Path(__file__).parent


@pytest.mark.parametrize("starter", sorted(path.name for path in HERE.glob("started_with_*")))
def test_it_builds_and_keeps_every_byte(
    tmp_path: Path, tree: Callable[[Path], Tree], starter: str
) -> None:
    root = Path(shutil.copytree(HERE / starter, tmp_path / "book"))
    published = publish(root, root / "site")
    assert published.succeeded, published.told
    assert published.told == ""
    assert "High Bank" in (root / "site" / "es" / "index.html").read_text("utf-8")
    assert (root / "site" / "cases" / "tidy-vine.html").is_file()
    assert tree(root) == tree(HERE / starter)


def test_there_is_one_to_look_at() -> None:
    assert list(HERE.glob("started_with_*"))
