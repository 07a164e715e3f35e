"""The built site as readers get it."""

import json
import posixpath
import re
from collections.abc import Callable
from html import unescape
from pathlib import Path

import pytest

from html_reading import leads_to_nothing, pages
from pencilwood.pages.finished import content_hash
from pencilwood.rules import RULES
from pencilwood.site.publish import NotOursError, publish
from photo_files import CAMERA, PERSON, PLACE, needles, with_facts

pytestmark = pytest.mark.slow

Snapshot = Callable[[Path], dict[str, bytes]]


def test_every_page_is_there_in_both_languages(built: Path) -> None:
    wanted = [
        "index",
        "vines",
        "rules",
        "scores",
        "safety",
        "quizzes",
        "quizzes/small",
        "warm-up",
        "workers",
        "trainers",
        "spurs",
        "targets",
        "words",
        "sources",
        *(f"cases/{slug}" for slug in ("tidy-vine", "climbing-spurs", "one-arm-vine")),
        *(f"rules/{rule.name}" for rule in RULES),
    ]
    english = {f"{name}.html" for name in wanted}
    there = set(pages(built))
    assert english | {f"es/{name}" for name in english} <= there
    assert {f"es/{name}" for name in there if not name.startswith("es/")} == {
        name for name in there if name.startswith("es/")
    }


def test_every_page_says_its_language_and_knows_its_twin(built: Path) -> None:
    for name, page in pages(built).items():
        language = "es" if name.startswith("es/") else "en"
        assert page.languages == [language], name
        bare = name.removeprefix("es/")
        here = posixpath.dirname(name)
        twins = {
            lang: posixpath.normpath(posixpath.join(here, lead))
            for lang, lead in page.alternates.items()
        }
        both = {"en": bare, "es": f"es/{bare}"}
        # A page need not lead to itself.
        assert {**both, **twins} == both, name
        assert set(both) - {language} <= set(twins), name


def test_every_link_leads_somewhere_inside_the_site(built: Path) -> None:
    assert leads_to_nothing(built) == []


def test_no_id_stands_twice_on_a_page(built: Path) -> None:
    for name, page in pages(built).items():
        twice = {one for one in page.ids if page.ids.count(one) > 1}
        assert twice == set(), name


def test_styles_and_own_scripts_name_no_address(built: Path) -> None:
    ours = [*(built / "assets" / "pencilwood").rglob("*.css"), built / "assets/pencilwood"]
    for path in ours[:-1]:
        assert not re.search(r"url\(['\"]?(https?:)?//|@import", path.read_text("utf-8")), path


def test_a_page_waits_for_few_files(built: Path) -> None:
    """The exercise's script comes before all others; our styles are one file with all of them."""
    html = (built / "cases" / "tidy-vine.html").read_text("utf-8")
    scripts = re.findall(r'<script src="([^"?]+)[^>]*>', html)
    assert scripts[0] == "../assets/pencilwood/pencilwood.js"
    assert scripts.count(scripts[0]) == 1
    styles = re.findall(r'<link rel="stylesheet" href="([^"]+)"', html)
    ours = [one for one in styles if "/pencilwood/" in one]
    assert len(styles) == 3
    assert len(ours) == 1
    style = built / "cases" / ours[0].partition("?")[0]
    assert f"?v={content_hash(style.read_bytes())}" in ours[0]
    text = style.read_text("utf-8")
    for part in ("--pw-ink", ".pw-masthead", ".pw-vine", ".pw-exercise", ".pw-quiz"):
        assert part in text, part


def test_menu_holds_index_pages_of_one_language_only(built: Path) -> None:
    html = (built / "es" / "cases" / "tidy-vine.html").read_text("utf-8")
    menu = html.split('<nav class="pw-menu"')[1].split("</nav>")[0]
    leads = re.findall(r'href="([^"]+)"', menu)
    names = [lead.removeprefix("../").removesuffix(".html") for lead in leads]
    assert names[:2] == ["index", "workers"]
    assert {"trainers", "warm-up", "vines", "rules", "safety", "words", "sources"} <= set(names)
    # Of the chapters only their lists, or the menu of each page would grow with every chapter.
    assert not {"spurs", "targets", "cases/tidy-vine"} & set(names)
    assert 'href="../vines.html" aria-current="true">Las cepas</a>' in menu
    assert "Las cepas" in menu
    assert "The vines" not in menu


def test_theme_speaks_spanish_on_spanish_pages(built: Path) -> None:
    spanish = (built / "es" / "index.html").read_text("utf-8")
    english = (built / "index.html").read_text("utf-8")
    assert 'hreflang="en" lang="en">English</a>' in spanish
    assert "Manual de poda de Larkfell" in spanish
    assert "Cambiar a páginas oscuras" in spanish
    assert "Change to dark pages" in english


def searched(folder: Path) -> dict[str, str]:
    """What the search of one language knows of each page."""
    index = json.loads((folder / "search" / "search_index.json").read_text("utf-8"))
    script = (folder / "search" / "search_index.js").read_text("utf-8")
    assert json.loads(script.removeprefix("var __index = ")) == index
    text: dict[str, str] = {}
    for doc in index["docs"]:
        page = doc["location"].split("#")[0]
        text[page] = text.get(page, "") + doc["title"] + doc["text"]
    return text


def test_search_knows_stories_rules_and_chapters_in_both_languages(built: Path) -> None:
    english, spanish = (searched(built / folder) for folder in ("", "es"))
    assert english.keys() == spanish.keys()
    assert "Crowded spurs make crowded shoots" in english["rules/crowded-spurs.html"]
    assert "Una cepa ordenada" in spanish["cases/tidy-vine.html"]
    assert "Primero caliente" in spanish["warm-up.html"]
    assert "A hand from spur to spur" in english["spurs.html"]
    assert "Una mano de pulgar a pulgar" in spanish["spurs.html"]
    assert "Un sarmiento corto" in spanish["words.html"]
    assert "Hands & arms" in unescape(english["sources.html"])


def test_chapters_lead_on_to_one_another_and_to_their_sources(built: Path) -> None:
    chapter = (built / "es" / "spurs.html").read_text("utf-8")
    assert 'href="sources.html#source-a-study"' in chapter
    assert 'href="workers.html"' in chapter
    assert "pw-plate" in chapter
    assert chapter.count("pw-example-bad") == 1
    assert "Una cepa ordenada" not in chapter
    lists = (built / "es" / "workers.html").read_text("utf-8")
    assert re.search(r'href="spurs.html">(<img[^>]*>)?<span>Pulgares y manos</span></a>', lists)
    assert "Fijar metas" not in lists.split("<article")[1]


def test_both_vines_of_a_rule_are_shown_to_one_scale(built: Path) -> None:
    for rule in RULES:
        page = (built / "rules" / f"{rule.name}.html").read_text("utf-8")
        found = re.findall(r'<svg[^>]* id="(?:bad|good)-[^"]*"[^>]* viewBox="([^"]+)"', page)
        apart = {2: 0, 4: 2}[len(found)]  # The two views of a head lie apart.
        assert len({tuple(one.split()[apart:]) for one in found}) == 1, rule.name


def test_words_and_sources_lead_to_each_other(built: Path) -> None:
    words = (built / "es" / "words.html").read_text("utf-8")
    assert 'id="word-spur"' in words
    assert "pitón" in words
    assert '<strong lang="en">spur</strong>' in words
    sources = (built / "sources.html").read_text("utf-8")
    assert 'id="source-our-habit"' in sources
    assert 'id="band-spur-spacing-at-least"' in sources
    assert 'href="words.html#word-spur">spur</a>' in sources
    assert 'href="spurs.html">Spurs and hands</a>' in sources


def test_search_works_without_a_server_and_asks_nobody(built: Path) -> None:
    assert (built / "search" / "search_index.js").is_file()
    html = (built / "index.html").read_text("utf-8")
    assert 'src="assets/pencilwood/iframe-worker.js?v=' in html
    assert "unpkg" not in html


def test_small_pages_stay_small(built: Path) -> None:
    for name in ("workers", "vines", "quizzes", "safety", "es/teachers"):
        size = (built / f"{name}.html").stat().st_size
        assert size < 60_000, f"{name}: {size}"


def test_no_mark_is_left_open(built: Path) -> None:
    for path in built.rglob("*.html"):
        html = path.read_text("utf-8")
        assert "<!--pencilwood" not in html, path
        assert "data-search-exclude=" not in html, path


def test_pictures_of_a_chapter_are_published_beside_it(built: Path) -> None:
    assert (built / "stretch.png").read_bytes() == (built / "es/stretch.png").read_bytes()
    assert (built / "stretch.png").read_bytes()[:4] == b"\x89PNG"
    assert b"vine" in (built / "rows.svg").read_bytes()


def test_nothing_that_a_camera_hides_is_in_the_site(sample: Path) -> None:
    """Exif with the place, XMP, IPTC, comments; neither beside a case nor beside a chapter."""
    root = sample
    chapters, cases = root / "content/chapters/en", root / "content/cases"
    for name, kind in (("a.jpg", "JPEG"), ("b.JPEG", "JPEG"), ("c.png", "PNG"), ("d.webp", "WEBP")):
        (chapters / name).write_bytes(with_facts(kind))
    # Named as another kind than it is, and in a folder.
    (chapters / "more").mkdir()
    (chapters / "more" / "e.png").write_bytes(with_facts("JPEG"))
    (cases / "vine.jpg").write_bytes(with_facts("JPEG"))
    photo = "photo: {file: vine.jpg, alt: {en: A vine, es: Una cepa}}\n"
    case = cases / "tidy-vine.yml"
    case.write_text(case.read_text("utf-8") + photo, "utf-8")
    published = publish(root, root / "site")
    assert published.succeeded, published.told
    files = {path: path.read_bytes() for path in (root / "site").rglob("*") if path.is_file()}
    pictures = {path.name for path in files}
    assert {"a.jpg", "b.JPEG", "c.png", "d.webp", "e.png", "stretch.png"} <= pictures
    held = {
        path.relative_to(root).as_posix(): needle
        for path, data in files.items()
        for needle in needles()
        # The words of our own pages and scripts may well say "Exif" or "Hidden".
        if path.suffix.lower() in (".jpg", ".jpeg", ".png", ".webp") and needle in data
    }
    assert held == {}
    whole = b"".join(files.values())
    assert [word for word in (PERSON, CAMERA, PLACE) if word.encode() in whole] == []


def test_exercise_json_cannot_end_its_script_element(built: Path) -> None:
    html = (built / "cases" / "tidy-vine.html").read_text("utf-8")
    held = re.findall(r'<script type="application/json" class="pw-(\w+)">(.*?)</script>', html)
    assert [name for name, _ in held] == ["sheet", "words"]
    for _, body in held:
        assert "<" not in body
        json.loads(body)


def test_building_again_gives_the_same_bytes_and_leaves_the_sources_alone(
    sample: Path, snapshot: Snapshot
) -> None:
    before = snapshot(sample / "content")
    sites = []
    for _ in range(2):
        assert publish(sample, sample / "site").succeeded
        sites.append(snapshot(sample / "site"))
    assert sites[0] == sites[1]
    assert snapshot(sample / "content") == before
    assert sorted(path.name for path in sample.iterdir()) == [
        "content",
        "mkdocs.yml",
        "quizzes",
        "site",
    ]


def spoil(sample: Path) -> None:
    case = sample / "content" / "cases" / "tidy-vine.yml"
    text = case.read_text("utf-8")
    assert "teaches: [" in text
    case.write_text(text.replace("teaches: [", "teaches: [blank-on-arm, ", 1), "utf-8")


def last_good_site(sample: Path) -> Path:
    site = sample / "site"
    (site / "assets" / "pencilwood").mkdir(parents=True)
    (site / "index.html").write_text("the last good site", "utf-8")
    return site


def test_failed_proof_keeps_the_last_good_site(sample: Path, snapshot: Snapshot) -> None:
    spoil(sample)
    site = last_good_site(sample)
    before = snapshot(site)
    published = publish(sample, site)
    assert not published.succeeded
    assert "content/cases/tidy-vine.yml:" in published.told
    assert "(teaches-nothing)" in published.told
    assert "Traceback" not in published.told
    assert snapshot(site) == before
    assert [path.name for path in sample.iterdir() if path.name.startswith(".")] == []


@pytest.mark.parametrize("folder", ["content/cases", "content/new", "."])
def test_no_other_folder_is_replaced(sample: Path, folder: str) -> None:
    with pytest.raises(NotOursError):
        publish(sample, sample / folder)
    assert (sample / "content" / "cases" / "tidy-vine.yml").is_file()


def test_folder_with_other_files_is_not_replaced(sample: Path, tmp_path: Path) -> None:
    (tmp_path / "papers").mkdir()
    (tmp_path / "papers" / "will.txt").write_text("mine", "utf-8")
    with pytest.raises(NotOursError):
        publish(sample, tmp_path / "papers")
    assert (tmp_path / "papers" / "will.txt").read_text("utf-8") == "mine"
