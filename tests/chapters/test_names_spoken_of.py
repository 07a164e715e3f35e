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


_COUNTED = "Places are counted from the head outward."


def test_the_first_drawing_tells_how_places_are_counted(with_old_vine: Handbook) -> None:
    html = completed(with_old_vine, f"Look at the vine.\n\n{_DRAWN}\n\n{_DRAWN}")
    assert html.count(_COUNTED) == 1
    assert _COUNTED in html[: html.index("</figure>")]


def test_a_text_that_tells_it_itself_needs_no_more(with_old_vine: Handbook) -> None:
    text = "R is on the right. So R2b stands there."
    assert _COUNTED not in completed(with_old_vine, f"{text}\n\n{_DRAWN}")
