"""The small picture that stands beside a chapter in the list for workers."""

import re
from pathlib import Path

import pytest

from chapter_files import chapter
from pencilwood.pages.chapters.list_pictures import ListPicture, list_pictures
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
        pytest.param('{{ vine("tidy-vine") }}', VINE, id="at last a vine that it leads to"),
        pytest.param('{{ term("spur") }} {{ rule("head-wood") }}', "", id="no other link"),
    ],
)
def test_a_chapter_is_found_again_by_its_picture(
    handbook: Handbook, text: str, expected: str
) -> None:
    desk = Desk(handbook, "workers", "en")
    (found,) = list_pictures(desk, [chapter(text)])
    assert found.address.partition("?")[0].endswith(expected)
    assert bool(found.address) == bool(expected)


PLATE_CALL, VINE_CALL = '{{ picture("tool-sizes") }}\n\n', '{{ draw("tidy-vine") }}\n\n'
NOTES = '{{ safety("no-sign-for-it") }}\n\n{{ safety("saw") }}\n\n'


@pytest.mark.parametrize(
    ("texts", "expected"),
    [
        pytest.param([PLATE_CALL, PLATE_CALL + VINE_CALL], [PLATE, VINE], id="its next one"),
        pytest.param([VINE_CALL, VINE_CALL + NOTES], [VINE, "saw"], id="the sign of a note"),
        pytest.param([VINE_CALL, VINE_CALL, VINE_CALL], [VINE, "", ""], id="or none"),
        pytest.param([NOTES, NOTES], ["saw", ""], id="nor is a sign shown twice"),
    ],
)
def test_no_two_chapters_of_a_list_share_a_picture(
    handbook: Handbook, texts: list[str], expected: list[str]
) -> None:
    desk = Desk(handbook, "workers", "en")
    found = list_pictures(desk, [chapter(text) for text in texts])
    for one, ending in zip(found, expected, strict=True):
        assert (one.address.partition("?")[0] or one.sign).endswith(ending)
    shown = [one for one in found if one != ListPicture()]
    assert len(shown) == len(set(shown))


@pytest.mark.slow
@pytest.mark.parametrize("folder", ["", "es/"])
def test_each_chapter_of_the_demo_has_one_that_is_there(built_site: Path, folder: str) -> None:
    page = (built_site / f"{folder}workers.html").read_text("utf-8")
    listed = re.findall(r'<ol class="pw-chapters">(.*?)</ol>', page, re.DOTALL)
    chapters = re.findall(r"<li>(.*?)</li>", listed[0], re.DOTALL)
    assert len(chapters) == 20
    shown = [
        re.findall(r'<img src="([^"?]*)|(<svg class="pw-sign".*</svg>)', one) for one in chapters
    ]
    assert all(len(one) == 1 for one in shown)
    pictures = [source or sign for ((source, sign),) in shown]
    assert len(set(pictures)) == len(pictures)
    for source in (one for one in pictures if not one.startswith("<svg")):
        assert ASSETS in source
        assert (built_site / folder / source).is_file(), source
