"""Nothing that a camera hides in its files reaches a page."""

import io
from pathlib import Path

import pytest
from PIL import Image

from pencilwood.cases.photo_file import PictureKind, read_photo, shrink
from photo_files import (
    PERSON,
    camera_facts,
    chunks,
    encoded,
    needles,
    segments,
    vine_photo,
    with_facts,
)

KINDS = ("JPEG", "PNG", "WEBP")
# ITU-T T.81, table B.1, and JFIF (ITU-T T.871): the picture itself and the one head it must have.
APP0, DQT, DHT, SOF0 = 0xE0, 0xDB, 0xC4, 0xC0


@pytest.mark.parametrize("kind", KINDS)
def test_the_sample_holds_what_is_to_be_taken_out(kind: str) -> None:
    """Otherwise the tests below could not fail."""
    data = with_facts(kind)
    with Image.open(io.BytesIO(data)) as image:
        exif = image.getexif()
        assert exif.get_ifd(0x8825)[2] == (44.0, 12.0, 34.56)
        assert exif[0x013B] == PERSON
        assert image.info["icc_profile"]
        assert image.info["xmp" if kind != "PNG" else "XML:com.adobe.xmp"]
    assert b"xmpmeta" in data
    assert PERSON.encode() in data
    if kind == "JPEG":
        assert {0xE1, 0xE2, 0xED, 0xFE} <= {marker for marker, _ in segments(data)}


@pytest.mark.parametrize("kind", KINDS)
def test_none_of_it_is_in_the_bytes(kind: str) -> None:
    jpeg = shrink(with_facts(kind)).data
    assert [needle for needle in needles() if needle in jpeg] == []
    markers = [marker for marker, _ in segments(jpeg)]
    assert set(markers) <= {APP0, DQT, DHT, SOF0}
    assert markers.count(APP0) == 1
    head = next(held for marker, held in segments(jpeg) if marker == APP0)
    # JFIF 1.01, no unit, square pixels, and a small picture of 0 x 0.
    assert head == b"JFIF\0\1\1\0\0\1\0\1\0\0"
    assert jpeg.endswith(b"\xff\xd9")
    assert jpeg.count(b"\xff\xd9") == 1, "nothing stands behind the picture"


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("written", KINDS)
def test_nor_in_those_of_another_kind(kind: str, written: PictureKind) -> None:
    data = shrink(with_facts(kind), written).data
    assert [needle for needle in needles() if needle in data] == []
    if written == "PNG":
        # PNG, third edition, 5.6: the parts without which there is no picture.
        assert [name for name, _ in chunks(data)] == [b"IHDR", b"IDAT", b"IEND"]
    if written == "WEBP":
        # RFC 9649, 2.5: the simple form, which has no room for facts.
        assert data[:4] == b"RIFF"
        assert data[8:16] == b"WEBPVP8 "
        assert int.from_bytes(data[4:8], "little") == len(data) - 8
        assert int.from_bytes(data[16:20], "little") == len(data) - 20


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("written", KINDS)
def test_the_library_finds_none_either(kind: str, written: PictureKind) -> None:
    with Image.open(io.BytesIO(shrink(with_facts(kind), written).data)) as image:
        image.load()
        assert image.format == written
        assert image.mode == "RGB"
        assert dict(image.getexif()) == {}
        # Of any WebP the library tells how it moves; ours stands still.
        of_films = {"loop", "background", "timestamp", "duration"}
        found = {name for name in image.info if "jfif" not in str(name)} - of_films
        assert found == set()


def test_pictures_behind_the_picture_are_left_out() -> None:
    """Many phones write a second picture into the same file (MPO)."""
    out = io.BytesIO()
    second = vine_photo(320, 240)
    vine_photo().save(out, "MPO", save_all=True, append_images=[second], exif=camera_facts())
    assert out.getvalue().count(b"\xff\xd8\xff") > 1
    photo = shrink(out.getvalue())
    assert photo.data.count(b"\xff\xd8\xff") == 1
    assert (photo.width_px, photo.height_px) == (640, 480)


def test_facts_too_damaged_to_read_are_left_out_too() -> None:
    data = encoded(vine_photo(), "JPEG", exif=b"Exif\0\0II*\0\xff\xff\xff\x7fHidden")
    photo = shrink(data)
    assert (photo.width_px, photo.height_px) == (640, 480)
    assert b"Hidden" not in photo.data


def test_the_trainers_own_file_is_only_read(tmp_path: Path) -> None:
    path = tmp_path / "vine.jpg"
    path.write_bytes(with_facts("JPEG", orientation=6))
    path.chmod(0o444)
    before = path.read_bytes(), path.stat().st_mtime_ns
    read_photo(tmp_path, "vine.jpg")
    assert (path.read_bytes(), path.stat().st_mtime_ns) == before
    assert [one.name for one in tmp_path.iterdir()] == ["vine.jpg"]
