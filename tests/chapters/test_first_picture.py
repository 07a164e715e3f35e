"""The small picture that stands beside a chapter in the list for workers."""

import re
from pathlib import Path

import pytest

from chapter_files import chapter
from pencilwood.pages.chapters.first_picture import first_picture
from pencilwood.pages.desk import ASSETS, Desk
from pencilwood.pages.handbook import Handbook

VINE, PLATE = "vines/tidy-vine.svg", "plates/tool-sizes.svg"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        pytest.param('{{ draw("tidy-vine") }}', VINE, id="its vine"),
        pytest.param('{{ draw(case="tidy-vine") }}', VINE, id="named, the same"),
        pytest.param(
            '{{ draw("tidy-vine") }}\n\n{{ picture("tool-sizes") }}\n\n{{ picture("which-cane") }}',
            PLATE,
            id="its first plate, also behind a vine that other chapters show too",
        ),
        pytest.param('{{ picture(name="tool-sizes") }}', PLATE, id="named, the same plate"),
        pytest.param('{{ picture("no-such") }}\n\n{{ draw("none") }}', "", id="nothing unknown"),
        pytest.param("Words alone.", "", id="none where it shows none"),
        pytest.param('{{ term("spur") }} {{ vine("tidy-vine") }}', "", id="a link is no picture"),
    ],
)
def test_a_chapter_is_found_again_by_its_picture(
    handbook: Handbook, text: str, expected: str
) -> None:
    desk = Desk(handbook, "workers", "en")
    assert first_picture(desk, chapter(text)).partition("?")[0].endswith(expected)
    assert bool(first_picture(desk, chapter(text))) == bool(expected)


@pytest.mark.slow
@pytest.mark.parametrize("folder", ["", "es/"])
def test_each_chapter_of_the_demo_has_one_that_is_there(built_site: Path, folder: str) -> None:
    page = (built_site / f"{folder}workers.html").read_text("utf-8")
    listed = re.findall(r'<ol class="pw-chapters">(.*?)</ol>', page, re.DOTALL)
    chapters = re.findall(r"<li>(.*?)</li>", listed[0], re.DOTALL)
    assert len(chapters) == 20
    for one in chapters:
        source = re.search(r'<img src="([^"?]*)', one)
        assert source is not None, one
        assert ASSETS in source[1]
        assert (built_site / folder / source[1]).is_file(), source[1]
