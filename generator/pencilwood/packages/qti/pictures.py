"""The drawings of questions as SVG files of a known size in pixels.

Files and not inline: a player that moves an item's XML into a page may lose the namespace of
inline SVG, and then nothing is drawn.
"""

from __future__ import annotations

from dataclasses import dataclass
from xml.etree import ElementTree as Xml

from pencilwood.cases.case import Profile
from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.describe import describe_position, describe_vine
from pencilwood.drawing.for_programs.outlines import Outlines, outlines, within
from pencilwood.drawing.ink.points import XY
from pencilwood.drawing.plate import Frame, Window
from pencilwood.drawing.scene.stages import Stages
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.views.close_up import CLOSE_UP, window_on_place
from pencilwood.packages.qti.markup import tag
from pencilwood.quiz.made import Picture
from pencilwood.quiz.pictures import wood_shown
from pencilwood.quiz.vines import ProvedVine
from pencilwood.vine.wood import Parts, WoodLeft
from pencilwood.words import say

_WHOLE_WIDTH_PX = 1200
_CLOSE_UP_PX_PER_MM = 1.2
_FINGER_MM = 11.0
"""Canes can be tapped so far to each side of their middle, whatever their thickness."""


@dataclass(frozen=True)
class PictureFile:
    """A drawing as a file of a package."""

    name: str
    content: bytes
    width_px: int
    height_px: int
    alt: str
    """The whole drawing in words, for those who cannot see it."""

    @property
    def file(self) -> str:
        """Its path in the package."""
        return f"images/{self.name}.svg"

    def image(self) -> Xml.Element:
        """The image as an item shows it; items lie in a folder of their own."""
        return tag(
            "img",
            {
                "src": f"../{self.file}",
                "alt": self.alt,
                "width": str(self.width_px),
                "height": str(self.height_px),
            },
        )


@dataclass(frozen=True)
class Drawn:
    """A drawing with the scale that leads from its millimetres to pixels."""

    file: PictureFile
    window: Frame
    px_per_mm: float
    parts: Parts

    def coords(self, points: tuple[XY, ...]) -> str | None:
        """A polygon in pixels, or None where nothing of it is in the picture."""
        window = self.window
        seen = within(points, window)
        pixels = dict.fromkeys(
            (self._px(x - window.left), self._px(y - window.top)) for x, y in seen
        )
        if len(pixels) < 3:
            return None
        return ",".join(f"{x},{y}" for x, y in pixels)

    def outlines(self, *, with_frame: bool) -> Outlines:
        """Every piece that can be tapped, the nearest first."""
        return outlines(self.parts, with_frame=with_frame, wider_mm=_FINGER_MM)

    def shows_all_wood(self) -> bool:
        """Whether some of every piece is in the picture."""
        return all(self.coords(points) for points in self.outlines(with_frame=False).values())

    def _px(self, length_mm: float) -> int:
        return round(length_mm * self.px_per_mm)


def draw(
    picture: Picture,
    vine: ProvedVine,
    profile: Profile,
    language: str,
    *,
    from_afar: bool = False,
) -> Drawn:
    """A picture of a question as a file: the window of a close-up, or all that is drawn."""
    parts, left = wood_shown(picture, vine)
    whole = plate_of(parts).frame
    window, scale = whole, _WHOLE_WIDTH_PX / (whole.right - whole.left)
    if picture.near is not None and not from_afar:
        window, scale = window_on_place(vine.parts, picture.near), _CLOSE_UP_PX_PER_MM
    width_px = round((window.right - window.left) * scale)
    height_px = round((window.bottom - window.top) * scale)
    title = vine.case.title[language]
    name = say(language, "qti.alt", title=title)
    if picture.near is not None:
        name = say(language, "qti.alt.near", title=title, position=picture.near)
    paper = Paper(
        picture.name,
        language,
        title=name,
        description="",
        units=profile.units,
        window=Window(window),
        css_class=CLOSE_UP if picture.near is not None else "",
        alone=True,
    )
    svg = draw_vine(WoodShown(parts, Stages.leaving(left)), paper)
    sized = svg.replace("<svg ", f'<svg width="{width_px}" height="{height_px}" ', 1)
    described = _described(picture, parts, left, profile, language)
    alt = f"{name}. {described}"
    file = PictureFile(picture.name, sized.encode(), width_px, height_px, alt)
    return Drawn(file, window, scale, parts)


def _described(
    picture: Picture,
    parts: Parts,
    left: WoodLeft | None,
    profile: Profile,
    language: str,
) -> str:
    """The drawing in words; of a close-up, the positions in its window."""
    units = profile.units
    if picture.near is None:
        return describe_vine(parts, left, language, units).replace("\n", " ")
    names = [position.name for position in parts.positions]
    return " ".join(describe_position(parts, left, name, language, units) for name in names)
