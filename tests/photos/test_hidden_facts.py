"""Nothing that a camera hides in its files reaches a page."""

import io
from pathlib import Path

import pytest
from PIL import Image

from pencilwood.cases.photo_file import read_photo, shrink
from photo_files import (
    CAMERA,
    PERSON,
    PLACE,
    camera_facts,
    encoded,
    segments,
    vine_photo,
    with_facts,
)

KINDS = ("JPEG", "PNG", "WEBP")
HIDDEN = [PERSON, CAMERA, PLACE, "Hidden", "SN-HIDDEN", "2026:01:17"]
MARKS = [b"Exif", b"xmpmeta", b"ns.adobe.com", b"Photoshop", b"8BIM", b"ICC_PROFILE", b"acsp"]
# ITU-T T.81, table B.1, and JFIF (ITU-T T.871): the picture itself and the one head it must have.
APP0, DQT, DHT, SOF0 = 0xE0, 0xDB, 0xC4, 0xC0


def needles() -> list[bytes]:
    words = [word.encode(coding) for word in HIDDEN for coding in ("ascii", "utf-16-le")]
    return [*words, *MARKS]


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
    jpeg = shrink(with_facts(kind)).jpeg
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
def test_the_library_finds_none_either(kind: str) -> None:
    with Image.open(io.BytesIO(shrink(with_facts(kind)).jpeg)) as image:
        image.load()
        assert image.format == "JPEG"
        assert image.mode == "RGB"
        assert dict(image.getexif()) == {}
        assert set(image.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}


def test_pictures_behind_the_picture_are_left_out() -> None:
    """Many phones write a second picture into the same file (MPO)."""
    out = io.BytesIO()
    second = vine_photo(320, 240)
    vine_photo().save(out, "MPO", save_all=True, append_images=[second], exif=camera_facts())
    assert out.getvalue().count(b"\xff\xd8\xff") > 1
    photo = shrink(out.getvalue())
    assert photo.jpeg.count(b"\xff\xd8\xff") == 1
    assert (photo.width_px, photo.height_px) == (640, 480)


def test_facts_too_damaged_to_read_are_left_out_too() -> None:
    data = encoded(vine_photo(), "JPEG", exif=b"Exif\0\0II*\0\xff\xff\xff\x7fHidden")
    photo = shrink(data)
    assert (photo.width_px, photo.height_px) == (640, 480)
    assert b"Hidden" not in photo.jpeg


def test_the_trainers_own_file_is_only_read(tmp_path: Path) -> None:
    path = tmp_path / "vine.jpg"
    path.write_bytes(with_facts("JPEG", orientation=6))
    path.chmod(0o444)
    before = path.read_bytes(), path.stat().st_mtime_ns
    read_photo(tmp_path, "vine.jpg")
    assert (path.read_bytes(), path.stat().st_mtime_ns) == before
    assert [one.name for one in tmp_path.iterdir()] == ["vine.jpg"]
