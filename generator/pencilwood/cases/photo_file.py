"""Makes a light picture without any hidden facts of a photograph or picture of a trainer's.

A camera writes into its files when and where a picture was taken, by whom and with what. None of
that is anybody's business: the colours are copied into a new picture, and nothing else is. The
trainer's own file is only read. This is the only module that knows the picture library.
"""

from __future__ import annotations

import base64
import hashlib
import io
import warnings
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from pencilwood.kept import kept_json

if TYPE_CHECKING:
    from PIL import Image

PictureKind = Literal["JPEG", "PNG", "WEBP"]
KINDS: Mapping[str, PictureKind] = {
    ".jpg": "JPEG", ".jpeg": "JPEG", ".png": "PNG", ".webp": "WEBP",
}  # fmt: skip
"""What a picture is written as, by the small letters that its name ends with."""
FORMATS = ("JPEG", "PNG", "WEBP", "MPO")
"""MPO is what many phones write into a .jpg: a JPEG with further pictures behind it."""
LARGEST_SOURCE_BYTES = 40_000_000
MOST_SOURCE_PIXELS = 64_000_000
"""More than phones take, and a quarter of a gigabyte in memory; a small file can claim far more."""
LONGEST_SIDE_PX = 1200
MOST_BYTES = 120_000
"""What a phone loads in a second or so in the row (common practice, no source)."""
_SIDES_PX = (LONGEST_SIDE_PX, 1000, 840, 700, 560, 400)
_WAYS: Mapping[PictureKind, tuple[Mapping[str, Any], ...]] = {
    "JPEG": tuple(
        {"quality": quality, "subsampling": "4:2:0", "optimize": True} for quality in (80, 70, 60)
    ),
    # A drawing stays as sharp as it is; a photograph is too heavy for that.
    "PNG": (
        {"optimize": True},
        {"optimize": True, "colours": 256},
        {"optimize": True, "colours": 64},
    ),
    "WEBP": tuple({"quality": quality, "method": 4} for quality in (80, 70, 60)),
}
"""How each kind is written, the finest first."""
_WHITE = (255, 255, 255)


class PhotoError(Exception):
    """A photograph that cannot be shown; `problem` names the finding."""

    def __init__(self, problem: str) -> None:
        super().__init__(problem)
        self.problem = problem


@dataclass(frozen=True)
class ShownPhoto:
    """A photograph as pages show it."""

    width_px: int
    height_px: int
    data: bytes
    """The whole file."""

    @property
    def is_tall(self) -> bool:
        """Whether it is higher than wide."""
        return self.height_px > self.width_px


def read_photo(
    folder: Path, file: str, kind: PictureKind = "JPEG", within: Path | None = None
) -> ShownPhoto:
    """The photograph at the path `file` below `folder`, to be shown as `kind`; raises PhotoError.

    A link is followed only to what is in `within`, the folder itself if nothing else is named.
    """
    data = _read(folder / file, within or folder)
    facts = [hashlib.sha256(data).hexdigest(), kind, _library()]
    kept = _as_photo(kept_json("photo", facts, lambda: _as_json(shrink(data, kind)), _fits))
    if kept is None:
        raise TypeError("what was kept of a photograph is none")
    return kept


def _read(path: Path, within: Path) -> bytes:
    # A link may lead anywhere, also out of a folder that somebody else sent.
    if not path.resolve().is_relative_to(within.resolve()):
        raise PhotoError("photo-link")
    if not path.exists():
        raise PhotoError("photo-missing")
    if not path.is_file():
        raise PhotoError("photo-unreadable")
    try:
        with path.open("rb") as source:
            data = source.read(LARGEST_SOURCE_BYTES + 1)
    except OSError:
        raise PhotoError("photo-unreadable") from None
    if len(data) > LARGEST_SOURCE_BYTES:
        raise PhotoError("photo-too-large")
    return data


def _library() -> str:
    """The versions that the bytes of a picture follow from; raises PhotoError without them."""
    try:
        from PIL import features
    except ImportError:
        raise PhotoError("photo-no-library") from None
    named = ("pil", "libjpeg_turbo", "jpg", "littlecms2", "webp", "zlib")
    return " ".join(f"{name} {features.version(name)}" for name in named)


def shrink(data: bytes, kind: PictureKind = "JPEG") -> ShownPhoto:
    """A small copy of the picture in `data`, upright and without hidden facts."""
    image = _opened(data)
    try:
        image = _in_usual_colours(_small(image))
    except Exception as error:  # Damaged pictures make the library fail in many ways.
        raise PhotoError("photo-damaged") from error
    return _light_enough(image, kind)


def _opened(data: bytes) -> Image.Image:
    """The picture before its pixels are unpacked, once it is known to be one and not too many."""
    from PIL import Image

    try:
        with warnings.catch_warnings():
            # The library warns of many pixels in its own words; ours are below.
            warnings.simplefilter("ignore")
            image = Image.open(io.BytesIO(data), formats=FORMATS)
    except Image.DecompressionBombError:
        raise PhotoError("photo-too-many-pixels") from None
    except Exception as error:  # As above: this is somebody else's file.
        raise PhotoError("photo-not-a-picture") from error
    width, height = image.size
    if width * height > MOST_SOURCE_PIXELS:
        raise PhotoError("photo-too-many-pixels")
    return image


def _small(image: Image.Image) -> Image.Image:
    """The picture unpacked and upright, no larger than a page needs."""
    from PIL import Image

    longest = (LONGEST_SIDE_PX, LONGEST_SIDE_PX)
    if image.format in ("JPEG", "MPO"):
        # JPEG can be unpacked at an eighth of its size: quicker, and it takes less memory.
        image.draft(image.mode, (2 * LONGEST_SIDE_PX, 2 * LONGEST_SIDE_PX))
    image.load()
    image = _upright(image)
    profile = image.info.get("icc_profile")
    if image.mode.startswith(("I", "F")):
        # Sixteen bits a pixel; the upper eight are what a screen shows.
        image = image.convert("I").point(lambda depth: depth * (1 / 256)).convert("L")
    elif image.mode == "1":
        image = image.convert("L")
    elif image.mode in ("P", "PA", "LA"):
        image = image.convert("RGBA")
    image.thumbnail(longest, Image.Resampling.LANCZOS)
    image.info = {} if profile is None else {"icc_profile": profile}
    return image


def _upright(image: Image.Image) -> Image.Image:
    """The picture turned as its camera was held."""
    from PIL import ImageOps

    try:
        return ImageOps.exif_transpose(image)
    except Exception:  # Facts too damaged to read; the picture itself is whole.
        return image


def _in_usual_colours(image: Image.Image) -> Image.Image:
    """The colours as every screen takes them (sRGB), on white, in a picture that holds no more."""
    from PIL import Image, ImageCms

    profile = image.info.get("icc_profile")
    if image.mode == "RGBA":
        sheet = Image.new("RGBA", image.size, _WHITE)
        sheet.alpha_composite(image)
        image = sheet.convert("RGB")
    if profile:
        try:
            own = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            usual = ImageCms.createProfile("sRGB")
            told = ImageCms.profileToProfile(image, own, usual, outputMode="RGB")
            image = image if told is None else told
        except (ImageCms.PyCMSError, OSError, ValueError, TypeError):
            pass  # A profile that is none; the colours are then taken for the usual ones.
    clean = Image.new("RGB", image.size)
    clean.paste(image.convert("RGB"))
    return clean


def _light_enough(image: Image.Image, kind: PictureKind) -> ShownPhoto:
    """The largest and finest picture of this kind that a page can carry."""
    from PIL import Image

    data = b""
    for side_px in _SIDES_PX:
        image.thumbnail((side_px, side_px), Image.Resampling.LANCZOS)
        for way in _WAYS[kind]:
            data = _written(image, kind, **way)
            if len(data) <= MOST_BYTES:
                return ShownPhoto(*image.size, data)
    return ShownPhoto(*image.size, data)


def _written(image: Image.Image, kind: PictureKind, colours: int = 0, **way: Any) -> bytes:
    out = io.BytesIO()
    (image.quantize(colours) if colours else image).save(out, kind, **way)
    return out.getvalue()


def _as_json(photo: ShownPhoto) -> dict[str, object]:
    text = base64.b64encode(photo.data).decode("ascii")
    return {"width_px": photo.width_px, "height_px": photo.height_px, "data": text}


def _fits(value: object) -> bool:
    return _as_photo(value) is not None


def _as_photo(value: object) -> ShownPhoto | None:
    match value:
        case {"width_px": int(width_px), "height_px": int(height_px), "data": str(data)}:
            return ShownPhoto(width_px, height_px, base64.b64decode(data))
    return None
