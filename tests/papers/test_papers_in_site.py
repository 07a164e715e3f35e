"""The papers that a site carries for those without a command line: `pencilwood build --papers`."""

from __future__ import annotations

import re
import sys
import zipfile
from collections.abc import Iterator
from dataclasses import replace
from html import unescape
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort
from pypdf import PdfReader

from html_reading import leads_to_nothing
from pencilwood import kept
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook, SitePaper
from pencilwood.pages.papers_list import PAPERS, papers_list, told_size
from pencilwood.site import workers
from pencilwood.site.handbook import open_handbook
from pencilwood.site.papers import make_papers
from pencilwood.site.publish import CONFIG, LANGUAGE, PAPERS_SIZE, publish
from pencilwood.words import say
from pencilwood.worksheets.typeset import Paper, PaperSize, typeset
from small_handbook import change, make_small
from workshop import Workshop

VINES = ("tidy-vine", "one-new-cane")
"""Vines of two forms."""
OF_ALL = {"card", "measuring-sheet", "poster-tidy-vine", "poster-one-new-cane"}


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return make_small(tmp_path_factory.mktemp("papers") / "book", *VINES)


@pytest.fixture(scope="module")
def site(root: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """With papers; look, do not touch."""
    place = tmp_path_factory.mktemp("with") / "site"
    published = publish(root, place, papers="a4")
    assert published.succeeded, published.told
    return place


@pytest.fixture
def trainer(
    root: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> Workshop:
    return Workshop(root, capsys, monkeypatch)


@pytest.fixture
def nothing_kept(tmp_path: Path) -> Iterator[None]:
    before = kept.folder()
    kept.keep_in_folder(tmp_path / "kept")
    yield
    kept.keep_in_folder(before)


def handbook_of(root: Path) -> Handbook:
    before = kept.folder()
    opened = open_handbook(root)
    kept.keep_in_folder(before)
    assert opened.handbook is not None, opened.findings
    return opened.handbook


def raw_teachers(site: Path, language: str) -> str:
    folder = "" if language == "en" else f"{language}/"
    return (site / f"{folder}teachers.html").read_text("utf-8")


def teachers(site: Path, language: str) -> str:
    return unescape(raw_teachers(site, language))


def test_every_vine_every_form_and_the_handbook_have_papers_in_each_language(site: Path) -> None:
    of_vines = {f"{kind}-{vine}" for kind in ("worksheet", "key") for vine in VINES}
    wanted = {
        f"{name}-{language}-a4.pdf" for name in of_vines | OF_ALL for language in ("en", "es")
    }
    assert {path.name for path in (site / PAPERS).iterdir()} == wanted
    for path in (site / PAPERS).iterdir():
        box = PdfReader(path).pages[0].mediabox
        assert sorted((round(box.width), round(box.height))) == [595, 842], path.name


@pytest.mark.parametrize(
    ("home", "address"),
    [
        ("", "papers/card-en-a4.pdf"),
        ("https://vines.example/book", "https://vines.example/book/papers/card-en-a4.pdf"),
        ("https://vines.example/book/", "https://vines.example/book/papers/card-en-a4.pdf"),
    ],
)
def test_a_paper_has_its_whole_address_where_the_handbook_knows_its_own(
    root: Path, home: str, address: str
) -> None:
    book = handbook_of(root)
    card = SitePaper("card", "", "en", "card-en-a4.pdf", 30_000)
    book = replace(book, papers=(card,), profile=replace(book.profile, site_address=home))
    listed = papers_list(Desk(book, "teachers", "en"))
    assert listed is not None
    assert [one.address for one in listed.of_all] == [address]


@pytest.mark.parametrize("language", ["en", "es"])
def test_teachers_find_each_paper_in_their_language_with_its_size(
    site: Path, language: str
) -> None:
    html = teachers(site, language)
    up = "" if language == "en" else "../"
    links = re.findall(
        rf'href="({re.escape(up)}{PAPERS}/[^"]+)".*?>[^<]+</a> '
        r'<span data-address="([^"]+)">(.*?)</span>',
        html,
    )
    there = {path.name for path in (site / PAPERS).glob(f"*-{language}-a4.pdf")}
    assert {Path(href).name for href, *_ in links} == there
    # The address that paper prints, as seen from the handbook's own.
    assert all(href == f"{up}{address}" for href, address, _ in links)
    assert len(links) == len(there)
    for href, _, size in links:
        told = told_size((site / PAPERS / Path(href).name).stat().st_size, language)
        assert size == say(language, "pages.teachers.papers.size", size=told)
    assert say(language, "pages.teachers.papers.browser") not in html
    assert leads_to_nothing(site) == []


def test_a_size_is_told_as_people_say_it() -> None:
    assert told_size(400, "en") == "1\u00a0kB"
    assert told_size(119_600, "en") == "120\u00a0kB"
    assert told_size(999_400, "es") == "999\u00a0kB"
    assert told_size(999_600, "es") == "1\u00a0MB"
    assert told_size(1_350_000, "es") == "1,4\u00a0MB"


def test_no_device_is_asked_to_keep_them(site: Path) -> None:
    worker = (site / "offline-worker.js").read_text("utf-8")
    assert "teachers.html" in worker
    assert ".pdf" not in worker


def test_the_next_build_without_the_option_takes_them_away(
    root: Path, site: Path, tmp_path: Path
) -> None:
    place = tmp_path / "site"
    assert publish(root, place, papers="letter").succeeded
    assert list((place / PAPERS).glob("*-letter.pdf"))
    assert publish(root, place).succeeded
    assert not (place / PAPERS).exists()
    for language in ("en", "es"):
        html = teachers(place, language)
        assert ".pdf" not in html
        assert say(language, "pages.teachers.papers.browser") in html
        # A short command is never broken at a line's end, so it stands in a mark of its own.
        assert '<code><span class="pw-whole">pencilwood build --papers</span></code>' in html
        assert "&lt;code" not in raw_teachers(place, language)


def test_the_same_handbook_gives_the_same_papers(
    root: Path, site: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Though nothing is kept this time, so that all of them are set in type anew."""
    handbook = handbook_of(root)
    before = kept.folder()
    kept.keep_in_folder(None)
    made = make_papers(handbook, "a4")
    kept.keep_in_folder(before)
    assert not made.waiting
    assert dict(made.files) == {
        f"{PAPERS}/{path.name}": path.read_bytes() for path in (site / PAPERS).iterdir()
    }


def test_only_papers_that_changed_are_set_anew(
    tmp_path: Path, nothing_kept: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    set_anew: list[str] = []

    def noted(paper: Paper, size: PaperSize, footer: str) -> bytes:
        set_anew.append(f"{paper.name}-{paper.language}")
        return typeset(paper, size, footer)

    monkeypatch.setattr("pencilwood.site.papers.typeset", noted)
    monkeypatch.setenv(workers.CORES, "1")
    book = make_small(tmp_path / "book", *VINES)
    first = make_papers(handbook_of(book), "a4")
    assert not first.files
    assert len(set_anew) == len(first.listed) == len(first.waiting)
    set_anew.clear()
    assert make_papers(handbook_of(book), "a4").listed == first.listed
    assert set_anew == []
    change(book / "content/cases/one-new-cane.yml", "One new cane", "A single new cane")
    make_papers(handbook_of(book), "a4")
    kinds = ("worksheet", "key", "poster")
    assert sorted(set_anew) == sorted(
        f"{kind}-one-new-cane-{language}" for kind in kinds for language in ("en", "es")
    )


def test_a_zip_file_has_them_too(trainer: Workshop, tmp_path: Path) -> None:
    file = tmp_path / "handbook.zip"
    ran = trainer.run(
        "build", "--papers", "letter", "--site", str(tmp_path / "site"), "--zip", str(file)
    )
    assert ran.status == 0, ran.err
    with zipfile.ZipFile(file) as archive:
        names = archive.namelist()
    assert f"handbook/{PAPERS}/worksheet-tidy-vine-es-letter.pdf" in names


@pytest.mark.parametrize(("units", "size"), [("metric", "a4"), ("us", "letter")])
def test_the_usual_size_goes_with_the_units(
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    units: str,
    size: str,
) -> None:
    book = make_small(tmp_path / "book", "tidy-vine")
    profile = book / "content" / "profile.yml"
    told = re.sub(r"(?m)^units: .*$", f"units: {units}", profile.read_text("utf-8"))
    profile.write_text(told, "utf-8")
    ran = Workshop(book, capsys, monkeypatch).run("build", "--papers")
    assert ran.status == 0, ran.err
    assert {path.stem.rpartition("-")[2] for path in (book / "site" / PAPERS).iterdir()} == {size}


@pytest.mark.parametrize("language", ["en", "es"])
def test_without_typst_one_sentence_says_what_to_install_and_nothing_is_built(
    trainer: Workshop, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, language: str
) -> None:
    monkeypatch.setitem(sys.modules, "typst", None)
    place = tmp_path / "site"
    ran = trainer.run("build", "--papers", "--site", str(place), "--language", language)
    assert ran.status == 2
    assert ran.err == f"pencilwood: {say(language, 'print.no-typst')}\n"
    assert not place.exists()


@pytest.mark.parametrize("language", ["en", "es"])
def test_mkdocs_by_itself_says_the_same_sentence_before_anything_is_proved(
    root: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    tmp_path: Path,
    language: str,
) -> None:
    monkeypatch.setitem(sys.modules, "typst", None)
    monkeypatch.setenv(PAPERS_SIZE, "a4")
    monkeypatch.setenv(LANGUAGE, language)
    monkeypatch.setattr("pencilwood.mkdocs_plugin.open_handbook", None)
    place = tmp_path / "site"
    config = load_config(str(root / CONFIG), site_dir=str(place))
    with pytest.raises(Abort):
        build(config)
    assert capsys.readouterr().err == f"{say(language, 'print.no-typst')}\n"
    assert not place.exists()


def test_a_handbook_with_an_address_has_its_code_and_needs_what_makes_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    workshop = Workshop(make_small(tmp_path / "book", "tidy-vine"), capsys, monkeypatch)
    workshop.set_address("https://example.org/vines/")
    made = make_papers(handbook_of(workshop.root), "a4")
    assert [one.file for one in made.listed if one.kind == "qr"] == [
        "qr-en-a4.pdf",
        "qr-es-a4.pdf",
    ]
    monkeypatch.setitem(sys.modules, "segno", None)
    ran = workshop.run("build", "--papers")
    assert ran.status == 2
    assert "pencilwood[print]" in ran.err


def test_a_size_for_the_wall_is_none_for_a_site(trainer: Workshop) -> None:
    with pytest.raises(SystemExit) as ended:
        trainer.run("build", "--papers", "a2")
    assert ended.value.code == 2
