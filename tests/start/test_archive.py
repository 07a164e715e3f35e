"""The handbook as one file: the same bytes every time, and pages that open with no network."""

import os
import stat
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from html_reading import Reading
from pencilwood.cli import main
from pencilwood.site.archive import FOLDER, START, write_archive

Tree = dict[str, bytes]


def make_site(folder: Path, names: list[str], when: int) -> Path:
    """A small site whose files were written in this order, at this time."""
    for name in names:
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(f"<p>{path.name} " + "vine " * 50, "utf-8")
        os.utime(path, (when, when))
        path.chmod(0o600 if when else 0o755)
    return folder


def test_the_same_site_gives_the_same_bytes(tmp_path: Path) -> None:
    names = ["index.html", "es/index.html", "cases/a.html", "assets/ñ.css"]
    write_archive(make_site(tmp_path / "one", names, 0), tmp_path / "one.zip", ("en", "es"))
    later = make_site(tmp_path / "two", names[::-1], 1_700_000_000)
    write_archive(later, tmp_path / "two.zip", ("en", "es"))
    assert (tmp_path / "one.zip").read_bytes() == (tmp_path / "two.zip").read_bytes()
    with zipfile.ZipFile(tmp_path / "one.zip") as archive:
        assert archive.testzip() is None
        assert archive.namelist() == [START, *(f"{FOLDER}/{name}" for name in sorted(names))]
        for entry in archive.infolist():
            assert entry.date_time == (1980, 1, 1, 0, 0, 0)
            assert entry.external_attr >> 16 == stat.S_IFREG | 0o644


@pytest.mark.parametrize(
    ("languages", "ways"),
    [
        (("en", "es"), ["index.html", "es/index.html"]),
        (("es", "en"), ["index.html", "en/index.html"]),
        (("es",), ["index.html", "index.html"]),
    ],
)
def test_the_first_page_speaks_both_languages(
    tmp_path: Path, languages: tuple[str, ...], ways: list[str]
) -> None:
    write_archive(make_site(tmp_path / "site", ways, 0), tmp_path / "one.zip", languages)
    with zipfile.ZipFile(tmp_path / "one.zip") as archive:
        page = Path(archive.extract(START, tmp_path)).read_text("utf-8")
        held = archive.namelist()
    links = Reading(tmp_path / START).leads
    assert links == [f"{FOLDER}/{way}" for way in ways]
    assert set(links) <= set(held)
    assert "Unpack the whole file first." in page
    assert "Primero descomprima todo el archivo." in page


@pytest.mark.parametrize(
    "file", ["content/chapters/en/book.zip", "quizzes/book.zip", "site/book.zip"]
)
def test_an_archive_is_kept_out_of_the_handbooks_own_files(
    started: Path,
    capsys: pytest.CaptureFixture[str],
    tree: Callable[[Path], Tree],
    file: str,
) -> None:
    before = tree(started)
    command = ["build", "--root", str(started), "--zip", str(started / file), "--language", "es"]
    assert main(command) == 2
    assert "nombre un archivo en otro lugar con --zip" in capsys.readouterr().err
    assert tree(started) == before


def test_a_file_that_is_something_else_is_left_alone(
    started: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    letter = tmp_path / "letter.zip"
    with zipfile.ZipFile(letter, "w") as archive:
        archive.writestr("letter.txt", "Dear crew")
    for file in (letter, started / "README.md", tmp_path):
        before = file.read_bytes() if file.is_file() else b""
        assert main(["build", "--root", str(started), "--zip", str(file)]) == 2
        assert "so it is left alone" in capsys.readouterr().err
        assert (file.read_bytes() if file.is_file() else b"") == before


def test_an_archive_is_there_whole_or_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    site = make_site(tmp_path / "site", ["index.html"], 0)
    file = tmp_path / "out" / "one.zip"
    write_archive(site, file, ("en",))
    before = file.read_bytes()

    def stop(*arguments: object) -> Path:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", stop)
    (site / "index.html").write_text("new", "utf-8")
    with pytest.raises(OSError, match="No space"):
        write_archive(site, file, ("en",))
    assert file.read_bytes() == before
    assert [path.name for path in file.parent.iterdir()] == ["one.zip"]


@pytest.mark.browser
@pytest.mark.parametrize(("opens", "title"), [(0, "Easy"), (1, "Fácil")])
def test_an_unpacked_handbook_opens_without_a_network(
    started: Path, tmp_path: Path, phone_page: Page, opens: int, title: str
) -> None:
    write_archive(started / "site", tmp_path / "book.zip", ("en", "es"))
    with zipfile.ZipFile(tmp_path / "book.zip") as archive:
        archive.extractall(tmp_path / "stick")
    phone_page.context.set_offline(True)
    phone_page.goto((tmp_path / "stick" / START).as_uri())
    phone_page.get_by_role("link").nth(opens).click()
    expect(phone_page.locator("[data-pencilwood-exercise] svg").first).to_be_visible()
    phone_page.locator("main a[href*='cases/']").first.click()
    expect(phone_page.locator(".pw-kicker")).to_have_text(title)
    expect(phone_page.locator("main svg").first).to_be_visible()
