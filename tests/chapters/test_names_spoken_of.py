"""On a phone a place that a chapter speaks of keeps its name; neighbours make room for it."""

import re
import shutil
from pathlib import Path

import pytest

from chapter_files import completed, small_handbook
from pencilwood.pages.handbook import Handbook
from pencilwood.site.handbook import open_handbook

_DRAWN = '{{ draw("hard-renovation") }}'


@pytest.fixture(scope="module")
def with_old_vine(project: Path, tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    """A handbook with a vine that has more names than a phone has room for."""
    root = small_handbook(project, tmp_path_factory.mktemp("old") / "one")
    cases = Path("content", "cases")
    shutil.copy(project / cases / "hard-renovation.yml", root / cases)
    handbook = open_handbook(root).handbook
    assert handbook is not None
    return handbook


def left_out(html: str) -> set[str]:
    return set(re.findall(r'class="pw-place pw-crowded[^"]*" data-position="(\w+)"', html))


@pytest.mark.parametrize(
    "text",
    [
        "Look at place NAME.\n\n" + _DRAWN,
        _DRAWN + "\n\nWe come back to **NAME** later.",
        '{{ draw("hard-renovation", caption="The spur at NAME.") }}',
        _DRAWN + '\n\nLarge wounds: {{ measured("hard-renovation", "large_wound_places") }}.',
    ],
)
def test_a_place_that_the_text_names_is_not_left_out(with_old_vine: Handbook, text: str) -> None:
    (name, *_) = left_out(completed(with_old_vine, _DRAWN))
    found = left_out(completed(with_old_vine, text.replace("NAME", name)))
    assert name not in found
    assert found, "a neighbour makes room"
