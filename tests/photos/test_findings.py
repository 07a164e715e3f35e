"""What `pencilwood check` says of a photograph that cannot be shown."""

import os
import struct
import sys
from pathlib import Path

import pytest

from case_files import lines, read, sample
from pencilwood.cases.photo_file import (
    LARGEST_SOURCE_BYTES,
    MOST_SOURCE_PIXELS,
    PhotoError,
    read_photo,
    shrink,
)
from photo_files import claiming, encoded, vine_photo
from small_handbook import CASES, add_to, check, make_small

PHOTO = """\
photo:
  file: photos/vine.jpg
  alt: {en: A vine in winter, es: Una cepa en invierno}
"""
JPEG = encoded(vine_photo(), "JPEG")


@pytest.fixture
def handbook(tmp_path: Path) -> Path:
    """A handbook whose one case names a photograph that is not there yet."""
    root = make_small(tmp_path / "handbook", "tidy-vine")
    add_to(root / CASES / "tidy-vine.yml", PHOTO)
    (root / CASES / "photos").mkdir()
    return root


def line_of_file(root: Path) -> int:
    text = (root / CASES / "tidy-vine.yml").read_text("utf-8").splitlines()
    return text.index("  file: photos/vine.jpg") + 1


def test_a_good_photo_needs_no_word(handbook: Path) -> None:
    (handbook / CASES / "photos" / "vine.jpg").write_bytes(JPEG)
    assert check(handbook) == []


FILE = "content/cases/photos/vine.jpg"


@pytest.mark.parametrize(
    ("data", "finding"),
    [
        (None, f"there is no such photograph; expected it at {FILE} (photo-missing)"),
        (
            b"",
            "this file is no JPEG, PNG or WebP picture, whatever its name ends with; expected one "
            f"of these three; save a HEIC photo as JPEG first; found {FILE} (photo-not-a-picture)",
        ),
        (
            JPEG[: len(JPEG) // 2],
            "the photograph's file is damaged or was copied only in part; expected a whole "
            f"picture: copy it again; found {FILE} (photo-damaged)",
        ),
        (
            claiming(60_000, 60_000),
            "the photograph has too many pixels; expected at most 64 million; "
            f"found {FILE} (photo-too-many-pixels)",
        ),
    ],
    ids=["missing", "empty", "half", "bomb"],
)
def test_each_trouble_is_told_with_its_place(
    handbook: Path, data: bytes | None, finding: str
) -> None:
    if data is not None:
        (handbook / CASES / "photos" / "vine.jpg").write_bytes(data)
    at = f"content/cases/tidy-vine.yml:{line_of_file(handbook)}:3"
    assert check(handbook) == [f"{at}: {finding}"]


def test_the_same_in_spanish(handbook: Path) -> None:
    at = f"content/cases/tidy-vine.yml:{line_of_file(handbook)}:3"
    told = f"no existe esta fotografía; se esperaba en {FILE} (photo-missing)"
    assert check(handbook, "es") == [f"{at}: {told}"]


def heic() -> bytes:
    """The head of what some phones save instead of a JPEG (ISO/IEC 23008-12)."""
    return struct.pack(">I", 24) + b"ftypheic" + bytes(4) + b"mif1heic"


@pytest.mark.parametrize(
    "data",
    [
        b"a letter to the trainer\n",
        b"<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>",
        encoded(vine_photo(), "GIF"),
        encoded(vine_photo(), "TIFF"),
        encoded(vine_photo(), "BMP"),
        heic(),
        b"%PDF-1.7\n",
        b"PK\x03\x04",
    ],
    ids=["text", "svg", "gif", "tiff", "bmp", "heic", "pdf", "zip"],
)
def test_only_three_kinds_of_picture_are_taken(data: bytes) -> None:
    with pytest.raises(PhotoError) as told:
        shrink(data)
    assert told.value.problem == "photo-not-a-picture"


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_damage_anywhere_is_told_and_never_breaks_off(kind: str) -> None:
    """Half a file, and a file with a byte turned over, here and there."""
    data = encoded(vine_photo(120, 80), kind)
    told = set()
    for at in range(0, len(data), max(1, len(data) // 150)):
        turned = data[:at] + bytes([data[at] ^ 0xFF]) + data[at + 1 :]
        for damaged in (data[:at], turned):
            try:
                shrink(damaged)
            except PhotoError as error:
                told.add(error.problem)
    assert {"photo-not-a-picture", "photo-damaged"} <= told


def test_pixels_are_counted_before_they_are_unpacked() -> None:
    for width, height in ((MOST_SOURCE_PIXELS + 1, 1), (1, MOST_SOURCE_PIXELS + 1), (8001, 8000)):
        with pytest.raises(PhotoError) as told:
            shrink(claiming(width, height))
        assert told.value.problem == "photo-too-many-pixels"


def test_a_picture_of_just_the_most_pixels_is_opened() -> None:
    with pytest.raises(PhotoError) as told:
        shrink(claiming(8000, 8000))
    assert told.value.problem == "photo-damaged", "its pixels are missing, not too many"


def test_a_huge_file_is_not_read_to_its_end(tmp_path: Path) -> None:
    with (tmp_path / "vine.jpg").open("wb") as file:
        file.truncate(50 * LARGEST_SOURCE_BYTES)
    with pytest.raises(PhotoError) as told:
        read_photo(tmp_path, "vine.jpg")
    assert told.value.problem == "photo-too-large"


def test_a_folder_or_a_pipe_is_no_photo(tmp_path: Path) -> None:
    (tmp_path / "folder.jpg").mkdir()
    names = ["folder.jpg"]
    if hasattr(os, "mkfifo"):
        os.mkfifo(tmp_path / "pipe.jpg")
        names.append("pipe.jpg")
    for name in names:
        with pytest.raises(PhotoError) as told:
            read_photo(tmp_path, name)
        assert told.value.problem == "photo-unreadable"


def test_no_link_is_followed(tmp_path: Path) -> None:
    (tmp_path / "away").mkdir()
    (tmp_path / "away" / "vine.jpg").write_bytes(JPEG)
    case = tmp_path / "case"
    case.mkdir()
    (case / "vine.jpg").symlink_to(tmp_path / "away" / "vine.jpg")
    (case / "photos").symlink_to(tmp_path / "away")
    (case / "gone.jpg").symlink_to(tmp_path / "nowhere.jpg")
    for name in ("vine.jpg", "photos/vine.jpg", "gone.jpg", "../away/vine.jpg"):
        with pytest.raises(PhotoError) as told:
            read_photo(case, name)
        assert told.value.problem == "photo-link", name


def test_a_handbook_may_lie_behind_a_link(tmp_path: Path) -> None:
    """Only what is below the case's folder is looked at; where a trainer keeps that is theirs."""
    (tmp_path / "real").mkdir()
    (tmp_path / "real" / "vine.jpg").write_bytes(JPEG)
    (tmp_path / "linked").symlink_to(tmp_path / "real")
    assert read_photo(tmp_path / "linked", "vine.jpg").width_px == 640


@pytest.mark.parametrize(
    "file",
    [
        "../vine.jpg",
        "photos/../../vine.jpg",
        "/etc/vine.jpg",
        "//host/vine.jpg",
        "C:/vine.jpg",
        "photos\\vine.jpg",
        "~/vine.jpg",
        "./vine.jpg",
        ".vine.jpg",
        "photos//vine.jpg",
        "http://vine.example/vine.jpg",
        "vine.jpg/",
        "vine.svg",
        "vine.heic",
        "vine",
        "vine.jpg?x=1",
        ".jpg",
    ],
)
def test_a_path_leads_to_a_picture_beside_the_case(file: str, tmp_path: Path) -> None:
    text = sample() + PHOTO.replace("photos/vine.jpg", f"'{file}'")
    case, findings = read(text, tmp_path)
    assert case is None
    assert [finding.name for finding in findings] == ["not-a-photo-path"]
    line = len(sample().splitlines()) + 2
    assert (findings[0].place.line, findings[0].place.column) == (line, 9)


@pytest.mark.parametrize("file", ["vine.jpg", "a/b/cepa número 3.JPEG", "x.webp", "a.b/r7.2.png"])
def test_ordinary_paths_are_taken(file: str, tmp_path: Path) -> None:
    case, findings = read(sample() + PHOTO.replace("photos/vine.jpg", f"'{file}'"), tmp_path)
    assert lines(findings) == []
    assert case is not None
    assert case.photo is not None
    assert case.photo.file == file


@pytest.mark.parametrize(
    ("old", "new", "name"),
    [
        (", es: Una cepa en invierno", "", "missing-language"),
        ("es: Una cepa en invierno", "es: ''", "nothing-given"),
        ("  alt: {en: A vine in winter, es: Una cepa en invierno}\n", "", "missing-key"),
        ("  file: photos/vine.jpg\n", "", "missing-key"),
        ("file:", "flie:", "unknown-key"),
        ("file: photos/vine.jpg", "file: photos/vine.jpg\n  url: x.jpg", "unknown-key"),
    ],
)
def test_what_a_photo_needs(old: str, new: str, name: str, tmp_path: Path) -> None:
    assert old in PHOTO
    case, findings = read(sample() + PHOTO.replace(old, new), tmp_path)
    assert case is None
    assert [finding.name for finding in findings] == [name]


def test_a_number_in_what_it_shows_is_a_placeholder(handbook: Path) -> None:
    (handbook / CASES / "photos" / "vine.jpg").write_bytes(JPEG)
    path = handbook / CASES / "tidy-vine.yml"
    path.write_text(path.read_text("utf-8").replace("A vine in winter", "A vine with 11 places"))
    assert [line for line in check(handbook) if "(number-typed-by-hand)" in line]


def test_without_the_library_one_clear_error(
    handbook: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (handbook / CASES / "photos" / "vine.jpg").write_bytes(JPEG)
    monkeypatch.setitem(sys.modules, "PIL", None)
    monkeypatch.delitem(sys.modules, "PIL.features", raising=False)
    told = check(handbook)
    assert len(told) == 1
    assert "Pillow, which makes photographs small" in told[0]
    assert "python -m pip install pillow" in told[0]
    assert told[0].endswith(f"found a photograph, {FILE} (photo-no-library)")
