"""A photograph and credits on the pages, and words that try to be more than words."""

import io
import json
import shutil
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import quote

import pytest
from PIL import Image
from playwright.sync_api import Dialog, Page, Route

from pencilwood.cases.photo_file import MOST_BYTES
from pencilwood.site.publish import publish
from photo_files import vine_photo, with_facts
from small_handbook import CASES, CREW, SHARED, add_to, change, make_small

pytestmark = pytest.mark.slow
SAMPLE = Path(__file__).parent / "samples" / "hollowmere"
SHARED_PAGE, OWN_PAGE = "cases/hollowmere-valley-vine.html", "cases/tidy-vine.html"
PHOTO = "assets/pencilwood/photos/hollowmere-valley-vine.jpg"
ALT = {"en": "Canes of {positions} places in winter", "es": "Sarmientos de {positions} lugares"}
TITLE = (
    '</title>"><i class=planted><script>alert(document.title)</script> '
    "*x* [y](http://far.example/) [z]: #k"
)
STORY = (
    '"><i class=planted><img src="http://far.example/a.png" onerror="alert(document.title)"> '
    "`alert(name)`"
)
CREDITS = {
    "en": "Measured and written by The crew of Hollowmere. Licence: CC BY 4.0. "
    "Origin: Hollowmere, rows by the stream. This vine came from others. "
    "It was proved here against this vineyard's own rules.",
    "es": "Medida y escrita por The crew of Hollowmere. Licencia: CC BY 4.0. "
    "Origen: Hollowmere, rows by the stream. Esta cepa viene de otras personas. "
    "Se comprobó aquí con las reglas de este viñedo.",
}


class Elements(HTMLParser):
    """Every element of a page with its attributes, and the words between."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str]]] = []
        self.words = ""
        self.feed(path.read_text("utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, {name: value or "" for name, value in attrs}))

    def handle_data(self, data: str) -> None:
        self.words += data

    def named(self, tag: str) -> list[dict[str, str]]:
        return [given for name, given in self.elements if name == tag]


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site with a shared case that has a photograph, and an own case with words of every sort."""
    root = make_small(tmp_path_factory.mktemp("shared") / "handbook", "tidy-vine")
    folder = root / SHARED / "hollowmere"
    shutil.copytree(SAMPLE, folder)
    (folder / "photos").mkdir()
    photo = with_facts("JPEG", vine_photo(1600, 1200), orientation=6)
    (folder / "photos" / "vine.jpg").write_bytes(photo)
    told = json.dumps({"file": "photos/vine.jpg", "alt": ALT})
    add_to(folder / "valley-vine.yml", f"photo: {told}\n")
    change(root / "content" / "profile.yml", "vineyard: Larkfell", "vineyard: A <i class=planted>")
    own = root / CASES / "tidy-vine.yml"
    change(own, "en: A tidy vine", f"en: {json.dumps(TITLE)}")
    change(own, "    This vine was pruned well last winter:", f"    {STORY} This vine:")
    change(own, CREW, "author: '<b onclick=go>Ana & Co</b>'")
    published = publish(root, root / "site")
    assert published.succeeded, published.told
    return published.site


@pytest.mark.parametrize("language", ["en", "es"])
def test_the_page_shows_the_photo_in_its_language(built: Path, language: str) -> None:
    page = Elements(built / ("es" if language == "es" else ".") / SHARED_PAGE)
    (image,) = [one for one in page.named("img") if "photos/" in one["src"]]
    assert image["alt"] == ALT[language].format(positions=11)
    assert (image["width"], image["height"]) == ("900", "1200"), "turned upright, at most 1200 px"
    assert (image["loading"], image["decoding"]) == ("lazy", "async")
    assert image["src"] == ("../../" if language == "es" else "../") + PHOTO
    assert "style" not in image


def test_the_published_photo_is_light_and_holds_no_facts(built: Path) -> None:
    data = (built / PHOTO).read_bytes()
    assert len(data) <= MOST_BYTES
    assert b"Hidden" not in data
    with Image.open(io.BytesIO(data)) as image:
        assert image.size == (900, 1200)
        assert dict(image.getexif()) == {}


def test_nothing_else_of_the_folder_is_published(built: Path) -> None:
    ends = {path.suffix for path in built.rglob("*") if path.is_file()}
    assert ".yml" not in ends
    assert [path.name for path in built.rglob("*.jpg")] == ["hollowmere-valley-vine.jpg"]
    assert [path for path in built.rglob("*") if "shared" in path.parts[-2:]] == []


@pytest.mark.parametrize("language", ["en", "es"])
def test_the_page_says_whose_vine_it_is(built: Path, language: str) -> None:
    page = Elements(built / ("es" if language == "es" else ".") / SHARED_PAGE)
    assert CREDITS[language] in page.words


def test_words_are_words_on_every_page(built: Path) -> None:
    """No element, no attribute and no address came of a title, a story or a name."""
    pages = [path for path in built.rglob("*.html") if path.name != "404.html"]
    for path in pages:
        page = Elements(path)
        leads = [value for _, given in page.elements for value in given.values()]
        assert [one for one in leads if one.startswith("http://far.example")] == [], path
        handlers = [name for _, given in page.elements for name in given if name.startswith("on")]
        assert handlers == [], path
        assert [given for _, given in page.elements if given.get("class") == "planted"] == [], path
    own = Elements(built / OWN_PAGE)
    assert TITLE in own.words, "the title stands there as it was typed"
    (about,) = [one for one in own.named("meta") if one.get("name") == "description"]
    assert about["content"].startswith(STORY)
    assert "<b onclick=go>Ana & Co</b>" in own.words


@pytest.mark.browser
@pytest.mark.parametrize("path", [OWN_PAGE, "vines.html", "project/tidy-vine.html"])
def test_nothing_of_it_runs_or_asks_for_anything(built: Path, phone_page: Page, path: str) -> None:
    """The page fixture fails on a request to anywhere else."""
    asked: list[str] = []

    def note(dialog: Dialog) -> None:
        asked.append(dialog.message)
        dialog.dismiss()

    phone_page.on("dialog", note)
    phone_page.goto(f"file://{quote(str(built))}/{path}")
    phone_page.wait_for_timeout(300)
    assert asked == []
    assert phone_page.locator("[onclick], [onerror]").count() == 0


@pytest.mark.browser
@pytest.mark.parametrize("prefix", ["", "es/"])
@pytest.mark.parametrize("width", ["phone_page", "desktop_page"])
def test_nothing_moves_when_the_photo_arrives(
    built: Path, request: pytest.FixtureRequest, width: str, prefix: str
) -> None:
    page: Page = request.getfixturevalue(width)
    address = f"file://{quote(str(built))}/{prefix}{SHARED_PAGE}"
    size = "() => {const b = document.querySelector('.pw-photo img').getBoundingClientRect();"
    size += " return [Math.round(b.width), Math.round(b.height)];}"
    # The photo is held back until the empty place has been measured.
    held: list[Route] = []

    def hold(route: Route) -> None:
        held.append(route)

    page.route("**/photos/*.jpg", hold)
    page.goto(address, wait_until="domcontentloaded")
    page.locator(".pw-photo img").scroll_into_view_if_needed()
    before = page.evaluate(size)
    page.wait_for_timeout(200)
    assert page.evaluate("() => document.querySelector('.pw-photo img').naturalWidth") == 0
    for route in held:
        route.continue_()
    page.wait_for_function("() => document.querySelector('.pw-photo img').naturalWidth > 0")
    assert page.evaluate(size) == before
    across, down = before
    assert abs(across / down - 900 / 1200) < 0.01
    assert page.evaluate("() => document.documentElement.scrollWidth <= innerWidth")
