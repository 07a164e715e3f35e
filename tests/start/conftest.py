"""A handbook that `pencilwood start` made, and a quick one to build."""

from collections.abc import Callable
from pathlib import Path

import pytest

from pencilwood.cli import main
from pencilwood.site.publish import publish
from starting import make_quick

Tree = dict[str, bytes]


@pytest.fixture(scope="session")
def tree() -> Callable[[Path], Tree]:
    """Every file of a folder by its path, but for what a build makes."""

    def take(folder: Path) -> Tree:
        return {
            name: path.read_bytes()
            for path in sorted(folder.rglob("*"))
            if path.is_file()
            and not (name := path.relative_to(folder).as_posix()).startswith(
                ("site/", ".pencilwood-cache/", ".site")
            )
        }

    return take


@pytest.fixture(scope="session")
def started(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A handbook in both languages, built; look, do not touch."""
    root = tmp_path_factory.mktemp("started") / "handbook"
    assert main(["start", str(root)]) == 0
    make_quick(root)
    published = publish(root, root / "site")
    assert published.succeeded, published.told
    assert published.told == ""
    return root
