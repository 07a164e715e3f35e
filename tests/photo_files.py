"""Photographs made for tests, with everything in them that a camera hides in its files."""

from __future__ import annotations

import io
import struct
import zlib
from collections.abc import Iterator

from PIL import ExifTags, Image, PngImagePlugin

PERSON, CAMERA, PLACE = "Hidden Person", "Hidden Camera", "Hidden Place"
XMP = f"<x:xmpmeta xmlns:x='adobe:ns:meta/'><by>{PERSON}</by></x:xmpmeta>".encode()
NORTH, EAST = (44.0, 12.0, 34.56), (8.0, 55.0, 12.34)
HIDDEN = (PERSON, CAMERA, PLACE, "Hidden", "SN-HIDDEN", "2026:01:17")
MARKS = (b"Exif", b"xmpmeta", b"ns.adobe.com", b"Photoshop", b"8BIM", b"ICC_PROFILE", b"acsp")
CORNERS = {"top left": (250, 10, 10), "top right": (10, 250, 10), "bottom left": (10, 10, 250)}


def vine_photo(width: int = 640, height: int = 480, mode: str = "RGB") -> Image.Image:
    """A picture with another colour in three of its corners, so that one sees how it is turned."""
    image = Image.new("RGB", (width, height), (120, 110, 90))
    across, down = width // 4, height // 4
    image.paste(CORNERS["top left"], (0, 0, across, down))
    image.paste(CORNERS["top right"], (width - across, 0, width, down))
    image.paste(CORNERS["bottom left"], (0, height - down, across, height))
    return image.convert(mode)


def encoded(image: Image.Image, kind: str, **facts: object) -> bytes:
    """The picture as the bytes of a file."""
    out = io.BytesIO()
    image.save(out, kind, **facts)
    return out.getvalue()


def camera_facts(orientation: int = 1) -> Image.Exif:
    """Who, where, when and with what, as Exif."""
    exif = Image.Exif()
    exif[ExifTags.Base.Orientation] = orientation
    exif[ExifTags.Base.Make] = CAMERA
    exif[ExifTags.Base.Artist] = PERSON
    exif[ExifTags.Base.XPAuthor] = PERSON.encode("utf-16-le")
    exif[ExifTags.Base.ImageDescription] = PLACE
    exif[ExifTags.Base.DateTime] = "2026:01:17 09:41:07"
    place = exif.get_ifd(ExifTags.IFD.GPSInfo)
    place[ExifTags.GPS.GPSLatitudeRef], place[ExifTags.GPS.GPSLatitude] = "N", NORTH
    place[ExifTags.GPS.GPSLongitudeRef], place[ExifTags.GPS.GPSLongitude] = "E", EAST
    more = exif.get_ifd(ExifTags.IFD.Exif)
    more[ExifTags.Base.BodySerialNumber] = "SN-HIDDEN-7"
    more[ExifTags.Base.UserComment] = b"ASCII\0\0\0Hidden Comment"
    return exif


def needles() -> list[bytes]:
    """What must be in no picture of a site: hidden words, and the names that mark them."""
    words = [word.encode(coding) for word in HIDDEN for coding in ("ascii", "utf-16-le")]
    return [*words, *MARKS]


def with_facts(kind: str, image: Image.Image | None = None, orientation: int = 1) -> bytes:
    """A JPEG, PNG or WEBP with Exif, XMP, a comment and a colour profile; in JPEG also IPTC."""
    image = image or vine_photo()
    facts = {"exif": camera_facts(orientation), "icc_profile": swapped_profile()}
    if kind == "PNG":
        text = PngImagePlugin.PngInfo()
        text.add_text("Comment", f"Hidden Comment {PERSON}")
        text.add_itxt("XML:com.adobe.xmp", XMP.decode())
        return encoded(image, kind, pnginfo=text, **facts)
    if kind == "WEBP":
        return encoded(image, kind, xmp=XMP, **facts)
    data = encoded(image, kind, xmp=XMP, comment=b"Hidden Comment", **facts)
    return data[:2] + _iptc() + data[2:]


def _iptc() -> bytes:
    """IPTC-IIM by-line (2:80) and city (2:90) in the JPEG segment APP13."""
    rows = b"".join(
        b"\x1c\x02" + bytes([number]) + struct.pack(">H", len(text)) + text.encode()
        for number, text in ((80, PERSON), (90, PLACE))
    )
    held = b"Photoshop 3.0\x008BIM\x04\x04\0\0" + struct.pack(">I", len(rows)) + rows
    return b"\xff\xed" + struct.pack(">H", len(held) + 2) + held


def swapped_profile() -> bytes:
    """A colour profile (ICC.1, version 2) whose red is green and whose green is red.

    The three primaries are those of sRGB as the ICC's own profile gives them, adapted to D50.
    """

    def number(value: float) -> bytes:
        return struct.pack(">i", round(value * 65536))

    def xyz(*values: float) -> bytes:
        return b"XYZ \0\0\0\0" + b"".join(map(number, values))

    red, green, blue = (0.4361, 0.2225, 0.0139), (0.3851, 0.7169, 0.0971), (0.1431, 0.0606, 0.7141)
    curve = b"curv\0\0\0\0" + struct.pack(">IH", 1, round(2.2 * 256)) + b"\0\0"
    text = b"Hidden Profile\0"
    held = {
        b"desc": b"desc\0\0\0\0" + struct.pack(">I", len(text)) + text + b"\0" * 81,
        b"cprt": b"text\0\0\0\0none\0\0\0\0",
        b"wtpt": xyz(0.9642, 1.0, 0.8249),
        b"rXYZ": xyz(*green),
        b"gXYZ": xyz(*red),
        b"bXYZ": xyz(*blue),
        b"rTRC": curve,
        b"gTRC": curve,
        b"bTRC": curve,
    }
    table, body = b"", b""
    start = 128 + 4 + 12 * len(held)
    for name, data in held.items():
        table += name + struct.pack(">II", start + len(body), len(data))
        body += data + b"\0" * (-len(data) % 4)
    tags = struct.pack(">I", len(held)) + table + body
    head = struct.pack(
        ">I4sI4s4s4s", 128 + len(tags), b"none", 0x02400000, b"mntr", b"RGB ", b"XYZ "
    )
    head += b"\0" * 12 + b"acsp" + b"\0" * 28 + number(0.9642) + number(1.0) + number(0.8249)
    return head.ljust(128, b"\0") + tags


def claiming(width: int, height: int) -> bytes:
    """A PNG of a few bytes that says it has so many pixels."""

    def chunk(name: bytes, data: bytes) -> bytes:
        check = struct.pack(">I", zlib.crc32(name + data))
        return struct.pack(">I", len(data)) + name + data + check

    head = chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
    rows = chunk(b"IDAT", zlib.compress(bytes(99)))
    return b"\x89PNG\r\n\x1a\n" + head + rows + chunk(b"IEND", b"")


def segments(jpeg: bytes) -> Iterator[tuple[int, bytes]]:
    """Marker and content of each segment of a JPEG before its pixels (ITU-T T.81, annex B)."""
    assert jpeg[:2] == b"\xff\xd8"
    at = 2
    while jpeg[at + 1] != 0xDA:
        assert jpeg[at] == 0xFF
        length = struct.unpack(">H", jpeg[at + 2 : at + 4])[0]
        yield jpeg[at + 1], jpeg[at + 4 : at + 2 + length]
        at += 2 + length


def chunks(png: bytes) -> Iterator[tuple[bytes, bytes]]:
    """Name and content of each part of a PNG file."""
    assert png[:8] == b"\x89PNG\r\n\x1a\n"
    at = 8
    while at < len(png):
        length = struct.unpack(">I", png[at : at + 4])[0]
        yield png[at + 4 : at + 8], png[at + 8 : at + 8 + length]
        at += 12 + length
