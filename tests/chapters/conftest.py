"""A small handbook without chapters, read once; tests give it chapters of their own."""

from collections.abc import Callable
from pathlib import Path

import pytest

from chapter_files import small_handbook
from pencilwood.pages.handbook import Handbook
from pencilwood.site.handbook import open_handbook


@pytest.fixture(scope="session")
def handbooks(project: Path, tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Handbook]:
    """The same handbook, by the lines that its profile has more."""
    read: dict[str, Handbook] = {}

    def opened(more: str = "") -> Handbook:
        if more not in read:
            root = small_handbook(project, tmp_path_factory.mktemp("handbook") / "one")
            profile = root / "content" / "profile.yml"
            text = profile.read_text("utf-8")
            if more.startswith("units:"):
                text = text.replace("units: metric", more)
            else:
                text += more
            profile.write_text(text, "utf-8")
            found = open_handbook(root)
            assert [one.render() for one in found.findings if one.level == "error"] == []
            assert found.handbook is not None
            read[more] = found.handbook
        return read[more]

    return opened


@pytest.fixture(scope="session")
def handbook(handbooks: Callable[[str], Handbook]) -> Handbook:
    """The handbook with one vine, a few sources, figures and words."""
    return handbooks("")
