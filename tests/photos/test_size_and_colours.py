"""A photograph comes out upright, small, light, and in the colours that it was taken in."""

import io
import random
import subprocess
import sys
from hashlib import sha256
from pathlib import Path

import pytest
from PIL import Image, ImageDraw

from pencilwood import kept
from pencilwood.cases.photo_file import (
    LONGEST_SIDE_PX,
    MOST_BYTES,
    PictureKind,
    ShownPhoto,
    read_photo,
    shrink,
)
from photo_files import CORNERS, camera_facts, encoded, swapped_profile, vine_photo

# Exif 2.32, tag 274: where the first row and the first column of the file belong in the picture,
# and with that the way to turn an upright picture so that a camera held that way would write it.
HELD = {
    1: None,
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_90,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_270,
}


def pixels(photo: ShownPhoto) -> Image.Image:
    return Image.open(io.BytesIO(photo.data))


def is_near(found: object, wanted: tuple[int, ...], by: int = 20) -> bool:
    assert isinstance(found, tuple)
    return all(abs(one - other) <= by for one, other in zip(found, wanted, strict=True))


def corners(image: Image.Image) -> dict[str, object]:
    right, bottom = image.width - 20, image.height - 20
    places = {"top left": (20, 20), "top right": (right, 20), "bottom left": (20, bottom)}
    return {name: image.getpixel(place) for name, place in places.items()}


@pytest.mark.parametrize("orientation", HELD)
@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_photo_stands_upright_however_the_camera_was_held(orientation: int, kind: str) -> None:
    turn = HELD[orientation]
    upright = vine_photo(600, 400)
    written = upright if turn is None else upright.transpose(turn)
    photo = shrink(encoded(written, kind, exif=camera_facts(orientation)))
    assert (photo.width_px, photo.height_px) == (600, 400)
    assert not photo.is_tall
    found = corners(pixels(photo))
    assert [name for name, colour in CORNERS.items() if not is_near(found[name], colour)] == []


@pytest.mark.parametrize("size", [(4032, 3024), (3024, 4032), (1201, 900), (1200, 1200), (90, 60)])
def test_the_longest_side_fits_a_page(size: tuple[int, int]) -> None:
    photo = shrink(encoded(vine_photo(*size), "JPEG"))
    assert pixels(photo).size == (photo.width_px, photo.height_px)
    assert max(photo.width_px, photo.height_px) == min(max(size), LONGEST_SIDE_PX)
    assert abs(photo.width_px * size[1] - photo.height_px * size[0]) <= max(size), "same shape"
    assert photo.is_tall == (size[1] > size[0])


@pytest.mark.parametrize("size", [(1600, 1200), (1200, 1600), (3000, 40)])
def test_even_noise_is_light_enough(size: tuple[int, int]) -> None:
    """Nothing is harder to make small; bark and grass come near it."""
    noise = random.Random(7).randbytes(size[0] * size[1] * 3)
    photo = shrink(encoded(Image.frombytes("RGB", size, noise), "PNG"))
    assert len(photo.data) <= MOST_BYTES
    assert max(photo.width_px, photo.height_px) >= 400


@pytest.mark.parametrize("kind", ["PNG", "WEBP"])
def test_so_is_what_stays_a_png_or_webp(kind: PictureKind) -> None:
    """Bark and grass are much like grey noise that is smoothed a little."""
    noise = random.Random(7).randbytes(800 * 600 * 3)
    rough = Image.frombytes("RGB", (800, 600), noise).resize((1600, 1200))
    photo = shrink(encoded(rough, "JPEG"), kind)
    assert len(photo.data) <= MOST_BYTES
    assert max(photo.width_px, photo.height_px) >= 400


def test_a_drawing_stays_as_sharp_as_it_is() -> None:
    lines = ImageDraw.Draw(drawn := Image.new("RGB", (900, 700), (255, 255, 255)))
    for at in range(0, 900, 30):
        lines.line((at, 0, 900 - at, 700), fill=(at % 256, 40, 90), width=2)
    photo = shrink(encoded(drawn, "PNG"), "PNG")
    assert pixels(photo).convert("RGB").tobytes() == drawn.tobytes()


@pytest.mark.parametrize(
    ("kind", "mode"),
    [
        ("JPEG", "L"),
        ("JPEG", "CMYK"),
        ("PNG", "L"),
        ("PNG", "P"),
        ("PNG", "LA"),
        ("PNG", "RGBA"),
        ("PNG", "1"),
        ("WEBP", "RGBA"),
    ],
)
def test_every_way_to_write_colours_is_read(kind: str, mode: str) -> None:
    photo = shrink(encoded(vine_photo(mode=mode), kind))
    wanted = vine_photo(mode=mode).convert("RGB").getpixel((20, 20))
    assert isinstance(wanted, tuple)
    assert is_near(pixels(photo).getpixel((20, 20)), wanted, by=30)


def test_sixteen_bits_are_shown_by_their_upper_eight() -> None:
    grey = Image.new("I;16", (64, 64), 200 * 256 + 17)
    assert is_near(pixels(shrink(encoded(grey, "PNG"))).getpixel((30, 30)), (200, 200, 200), by=2)


def test_what_is_clear_becomes_white() -> None:
    clear = Image.new("RGBA", (80, 80), (200, 0, 0, 0))
    assert is_near(pixels(shrink(encoded(clear, "PNG"))).getpixel((40, 40)), (255, 255, 255), by=2)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_colours_of_another_profile_are_put_into_the_usual_ones(kind: str) -> None:
    """With a profile that swaps red and green, a file's red has to be shown green."""
    red = Image.new("RGB", (64, 64), (255, 0, 0))
    plain = pixels(shrink(encoded(red, kind))).getpixel((30, 30))
    told = pixels(shrink(encoded(red, kind, icc_profile=swapped_profile()))).getpixel((30, 30))
    assert is_near(plain, (255, 0, 0))
    assert is_near(told, (0, 255, 0))


def test_a_profile_that_is_none_changes_nothing() -> None:
    red = Image.new("RGB", (64, 64), (255, 0, 0))
    photo = shrink(encoded(red, "PNG", icc_profile=b"no profile at all"))
    assert is_near(pixels(photo).getpixel((30, 30)), (255, 0, 0))


def test_the_same_photo_gives_the_same_bytes_in_any_process() -> None:
    data = encoded(vine_photo(1500, 1000), "JPEG", quality=90)
    code = (
        "import hashlib, sys; from pencilwood.cases.photo_file import shrink;"
        "print(hashlib.sha256(shrink(sys.stdin.buffer.read()).data).hexdigest())"
    )
    done = subprocess.run([sys.executable, "-c", code], input=data, capture_output=True, check=True)
    assert done.stdout.decode().strip() == sha256(shrink(data).data).hexdigest()


def test_what_is_kept_is_the_same_and_made_once(tmp_path: Path) -> None:
    (tmp_path / "vine.png").write_bytes(encoded(vine_photo(), "PNG"))
    before = kept.folder()
    try:
        kept.keep_in_folder(tmp_path / "kept")
        first, made = read_photo(tmp_path, "vine.png"), kept.times_made()
        assert read_photo(tmp_path, "vine.png") == first
        assert kept.times_made() == made
        (tmp_path / "vine.png").write_bytes(encoded(vine_photo(300, 200), "PNG"))
        assert read_photo(tmp_path, "vine.png") != first
        kept.keep_in_folder(None)
        (tmp_path / "vine.png").write_bytes(encoded(vine_photo(), "PNG"))
        assert read_photo(tmp_path, "vine.png") == first
    finally:
        kept.keep_in_folder(before)
