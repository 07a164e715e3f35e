"""Folders that nobody may open, and links that stay in the handbook or leave it."""

from __future__ import annotations

import errno
import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from case_files import lines
from pencilwood.cli import main
from pencilwood.site.folders import look_over
from photo_files import encoded, vine_photo
from small_handbook import CASES, SHARED, add_to, check, make_small

PHOTO = "photo: {file: photos/vine.jpg, alt: {en: A vine in winter, es: Una cepa en invierno}}\n"
SHUT = "this folder cannot be opened; expected a folder that you may read (unreadable-folder)"
SHUT_ES = (
    "esta carpeta no se puede abrir; se esperaba una carpeta que usted pueda leer "
    "(unreadable-folder)"
)
FOLDERS = (
    "quizzes",
    "content",
    "content/cases",
    "content/cases/photos",
    "content/chapters",
    "content/chapters/es",
    "content/rules",
    "content/safety",
    "content/shared",
    "content/shared/hollowmere",
)
Shut = Callable[[Path, int], None]


@pytest.fixture
def handbook(tmp_path: Path) -> Path:
    """A handbook with every folder that it may have, in which nothing is wrong."""
    root = make_small(tmp_path / "handbook", "tidy-vine")
    for name in ("quizzes", "content/cases/photos"):
        (root / name).mkdir()
    samples = Path(__file__).parent.parent / "sharing" / "samples"
    shutil.copytree(samples / "hollowmere", root / SHARED / "hollowmere")
    assert check(root) == []
    return root


@pytest.fixture
def shut(monkeypatch: pytest.MonkeyPatch) -> Shut:
    """Shuts a folder in the system's place: who runs the tests may be allowed to open any."""
    open_folder = os.scandir

    def shut_one(folder: Path, code: int) -> None:
        def scandir(path: str | Path = ".") -> object:
            if Path(path) == folder:
                raise OSError(code, os.strerror(code), str(path))
            return open_folder(path)

        monkeypatch.setattr(os, "scandir", scandir)

    return shut_one


@pytest.mark.parametrize("name", FOLDERS)
@pytest.mark.parametrize("code", [errno.EACCES, errno.EIO, errno.ESTALE])
def test_a_folder_that_cannot_be_opened_is_not_an_empty_one(
    handbook: Path, shut: Shut, name: str, code: int
) -> None:
    shut(handbook / name, code)
    assert lines(look_over(handbook, "en")) == [f"{name}:1:1: {SHUT}"]


@pytest.mark.parametrize("name", ["quizzes", "content/cases", "content/shared"])
def test_the_check_says_so_and_nothing_else(handbook: Path, shut: Shut, name: str) -> None:
    shut(handbook / name, errno.EACCES)
    assert check(handbook) == [f"{name}:1:1: {SHUT}"]
    assert check(handbook, "es") == [f"{name}:1:1: {SHUT_ES}"]


@pytest.mark.parametrize(
    "command",
    ["check", "draw tidy-vine", "plan tidy-vine", "measure tidy-vine", "export qti --all"],
)
def test_every_command_that_reads_a_handbook_says_so(
    handbook: Path, shut: Shut, command: str, capsys: pytest.CaptureFixture[str]
) -> None:
    shut(handbook / "quizzes", errno.EACCES)
    assert main([*command.split(), "--root", str(handbook)]) == 1
    told = capsys.readouterr()
    assert f"quizzes:1:1: {SHUT}" in told.out + told.err


def move_and_link(root: Path, name: str, to: str) -> None:
    """Keep something elsewhere in the handbook, with a link in its place."""
    (root / to).parent.mkdir(parents=True, exist_ok=True)
    (root / name).rename(root / to)
    (root / name).symlink_to(os.path.relpath(root / to, (root / name).parent))


@pytest.mark.parametrize(
    ("name", "to"),
    [
        ("content/cases/tidy-vine.yml", "row-seven/vine.yml"),
        ("content/cases", "vines"),
        ("content/profile.yml", "our-profile.yml"),
        ("content/chapters/en", "english"),
        ("content/chapters/en/home.md", "texts/home.md"),
        ("content/chapters", "texts"),
        ("content/rules/too-many-buds/bad.yml", "bad.yml"),
        ("content/safety", "safety"),
        ("quizzes", "content/quizzes"),
        ("content", "all"),
    ],
)
def test_a_link_within_the_handbook_is_fine(handbook: Path, name: str, to: str) -> None:
    move_and_link(handbook, name, to)
    assert look_over(handbook, "en") == []
    assert check(handbook) == []


def test_a_photograph_may_lie_elsewhere_in_the_handbook(handbook: Path) -> None:
    photo = handbook / CASES / "photos" / "vine.jpg"
    photo.write_bytes(encoded(vine_photo(), "JPEG"))
    move_and_link(handbook, "content/cases/photos/vine.jpg", "pictures/row-7.jpg")
    add_to(handbook / CASES / "tidy-vine.yml", PHOTO)
    assert check(handbook) == []


def test_a_photograph_from_others_may_not(handbook: Path) -> None:
    """A folder from others could show any picture of the handbook as its own."""
    folder = handbook / SHARED / "hollowmere"
    (handbook / "mine.jpg").write_bytes(encoded(vine_photo(), "JPEG"))
    (folder / "photos").mkdir()
    (folder / "photos" / "vine.jpg").symlink_to("../../../../mine.jpg")
    add_to(folder / "valley-vine.yml", PHOTO)
    names = {one.rpartition("(")[2] for one in check(handbook)}
    assert names == {"shared-link)", "photo-link)"}


def test_links_round_and_round_end(handbook: Path) -> None:
    (handbook / "content" / "cases" / "photos" / "round").symlink_to("..")
    (handbook / "more").mkdir()
    (handbook / "more" / "back").symlink_to("../content")
    (handbook / "content" / "cases" / "more").symlink_to("../../more")
    assert look_over(handbook, "en") == []


def test_what_editors_leave_beside_a_file_is_nobodys_business(handbook: Path) -> None:
    """Some lock a file by a hidden link that leads nowhere."""
    for name in ("content/cases/.#tidy-vine.yml", "content/chapters/en/.#home.md"):
        (handbook / name).symlink_to("somebody@machine.1234:5678")
    (handbook / "content/chapters/en/.notes").mkdir()
    (handbook / "content/chapters/en/.notes/mine.md").write_text("# Mine\n", "utf-8")
    assert check(handbook) == []


def test_a_handbook_may_itself_lie_behind_a_link(handbook: Path) -> None:
    linked = handbook.with_name("linked")
    linked.symlink_to(handbook)
    assert check(linked) == []


def kept(root: Path) -> Iterator[tuple[str, bytes]]:
    for path in sorted(root.rglob("*")):
        if path.is_file():
            yield path.relative_to(root).as_posix(), path.read_bytes()


def test_a_new_case_is_not_written_through_a_link(
    handbook: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A link to nothing would be made into a file at its other end."""
    (handbook / CASES / "new-vine.yml").symlink_to(handbook.parent / "away.yml")
    sheet = handbook / "vine.csv"
    main(["case", "to-csv", "tidy-vine", "--root", str(handbook), "-o", str(sheet)])
    before = list(kept(handbook))
    assert (
        main(["case", "from-csv", str(sheet), "--name", "new-vine", "--root", str(handbook)]) == 1
    )
    assert "(leads-nowhere)" in capsys.readouterr().out
    assert not (handbook.parent / "away.yml").exists()
    assert list(kept(handbook)) == before
