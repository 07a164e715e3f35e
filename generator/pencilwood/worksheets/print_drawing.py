"""The drawing of a vine for paper: greys instead of colours, what is cut off as a dotted ghost.

On a page the browser's style sheet does this; a typesetter knows only part of that language, so
here the SVG itself is changed.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from xml.etree import ElementTree as Xml

from pencilwood.drawing import Paper, WoodShown, describe_vine, draw_vine
from pencilwood.drawing.ink.looks import FACE, INK, PAPER, PENCIL
from pencilwood.drawing.names.labels import LETTER, LETTER_MM, NOT_ON_PAPER, TIGHT
from pencilwood.drawing.plate import Frame, Plate, Window
from pencilwood.drawing.scene.stages import GONE, Stages
from pencilwood.drawing.scene.tied_canes import Laid
from pencilwood.drawing.scene.wood_text import plate_of, unlettered
from pencilwood.units import UnitSystem
from pencilwood.vine.model import Growth
from pencilwood.vine.passes import DoneCut
from pencilwood.vine.wood import Parts, WoodLeft
from pencilwood.words import say

FONT = "Atkinson Hyperlegible"
_SVG = "http://www.w3.org/2000/svg"
_GREYS = {
    "pw-cane": "#b4b4b4",
    "pw-old": "#d4d4d4",
    "pw-spindly": "#d8d8d8",
    "pw-diseased": "#b4b4b4",
    "pw-dead": "#ececec",
}
_FILLS = {"pw-paper": "#ffffff", "pw-frame-wood": "#dcdcdc", "pw-frame-line": "#dcdcdc"}
_FILLS |= {"pw-bud": "#111111", "pw-face": "#ffffff"}
_NEW_COLOURS = {PENCIL: "#555555", INK: "#000000", PAPER: "#ffffff", FACE: "#ffffff"}
_GHOST = {"fill": "none", "stroke": "#777777", "stroke-width": "2.4", "stroke-dasharray": "3 9"}

EARLIER = "pw-off-earlier"
"""What an earlier pass took away, which a drawing of the next pass no longer shows."""

_BEHIND_ARM_MM = 250.0
_AHEAD_OF_ARM_MM = 520.0
_MARGIN_MM = 40.0
_PAPER_WIDE_MM, _PAPER_HIGH_MM = 178.0, 118.0
"""As large as a drawing is on the smaller paper, with all that stands around it."""
HAND_MM: Mapping[UnitSystem, float] = {"metric": 100.0, "us": 101.6}
HAND_WORDS: Mapping[UnitSystem, str] = {"metric": "10 cm", "us": "4 in"}
"""About a hand's width: a length that a ruler of the reader's shows, exactly as long as it says."""
_LETTER_PAPER_MM = 2.65
"""How high a letter beside the wood is on paper: 7.5 points."""


@dataclass(frozen=True)
class Printed:
    """A drawing ready for paper."""

    svg: str
    alt: str
    width_mm: float
    """How much of the row the drawing shows from its left to its right edge."""
    units: UnitSystem = "metric"
    without_letter: tuple[str, ...] = ()
    """Pieces whose letter has no room in any view."""
    tells_scale: bool = False
    """Whether the drawing has its scale in itself, as two views have."""

    def as_data(self, language: str) -> dict[str, object]:
        """The same for a template."""
        names = ", ".join(self.without_letter)
        told = say(language, "drawing.no-room-for-letters", names=names) if names else ""
        return {
            "svg": self.svg,
            "alt": self.alt,
            "width": self.width_mm,
            "tells-scale": self.tells_scale,
            "told": told,
            "bar": {"mm": HAND_MM[self.units], "length": HAND_WORDS[self.units]},
        }


def print_vine(
    parts: Parts,
    left: WoodLeft | None,
    language: str,
    units: UnitSystem,
    *,
    cut_marks: Sequence[DoneCut] = (),
    laid: Sequence[Laid] = (),
    first_letters: Sequence[str] = (),
) -> Printed:
    """A vine without the ground below it; uncut, or cut and seen from nearer by.

    The letters of wood that is spoken of are the last to be left out: `first_letters`.
    """
    plate = plate_of(parts, laid)
    frame = _window(plate, near=left is not None)
    letter_mm = _letter_mm(frame)
    shown = WoodShown(
        parts,
        Stages.leaving(left),
        cut_marks=tuple(cut_marks),
        laid=tuple(laid),
        letter_mm=letter_mm,
        first_letters=tuple(first_letters),
        seen=frame,
    )
    paper = Paper("print", language, title="", description="", units=units, window=Window(frame))
    svg = draw_vine(shown, paper)
    described = describe_vine(parts, left, language, units)
    return Printed(
        for_print(svg),
        described,
        frame.right - frame.left,
        units,
        without_letter=tuple(unlettered(shown)),
        tells_scale=plate.second is not None,
    )


def _letter_mm(frame: Frame) -> float:
    """How high letters of the drawing are that can be read on paper."""
    _, _, wide_mm, high_mm = frame.box
    scale = min(_PAPER_WIDE_MM / wide_mm, _PAPER_HIGH_MM / high_mm)
    return max(LETTER_MM, round(_LETTER_PAPER_MM / scale, 1))


def _window(plate: Plate, *, near: bool) -> Frame:
    """A single view without the ground; `near` leaves out what is far from the arm.

    Two views are shown whole, side by side, with the words below them.
    """
    whole = plate.frame
    if plate.second is not None:
        return whole
    ys = [point.y for stem in plate.stems.values() for point in stem.curve.points]
    ys.append(-float(plate.vine.trellis.trimming_mm))
    top, bottom = plate.around_arm(_AHEAD_OF_ARM_MM, _BEHIND_ARM_MM)
    if near and plate.vine.form.growth is Growth.DOWN:
        return Frame(whole.left, whole.top, whole.right, bottom)
    low = max(bottom, *(y + _MARGIN_MM for y in ys))
    return Frame(whole.left, max(whole.top, top) if near else whole.top, whole.right, low)


def for_print(svg: str) -> str:
    """One of our own drawings in greys, its classes turned into looks."""
    root = Xml.fromstring(svg)  # noqa: S314 - our own text, not somebody's file
    root.set("font-family", FONT)
    for child in list(root):
        if child.tag in (f"{{{_SVG}}}title", f"{{{_SVG}}}desc"):
            root.remove(child)
    for one in root.iter():
        _grey(one)
    for group in list(root.iter(f"{{{_SVG}}}g")):
        _remove(group, EARLIER, TIGHT, NOT_ON_PAPER)
        if "pw-part" in _classes(group):
            _show_cuts(group)
        if group.get("opacity"):
            # Far behind; the other view has its letter, and as dark as the others.
            _remove(group, LETTER)
    Xml.register_namespace("", _SVG)
    return Xml.tostring(root, encoding="unicode")


def _remove(group: Xml.Element, *names: str) -> None:
    for child in list(group):
        if not set(names).isdisjoint(_classes(child)):
            group.remove(child)


def _classes(one: Xml.Element) -> list[str]:
    return one.get("class", "").split()


def _grey(one: Xml.Element) -> None:
    for name in ("fill", "stroke", "color"):
        colour = one.get(name, "")
        if colour in _NEW_COLOURS:
            one.set(name, _NEW_COLOURS[colour])
    if "pw-shade" in _classes(one):
        # A line by itself needs no layer of its own: a third of a PDF was such layers.
        one.set("fill", "none")
        one.set("stroke-opacity", one.attrib.pop("opacity", "1"))
    for name in _classes(one):
        if name in _FILLS and one.get("fill") != "none":
            one.set("fill", _FILLS[name])
        if name in _GREYS:
            one.set("color", _GREYS[name])


def _show_cuts(part: Xml.Element) -> None:
    gone = GONE in _classes(part)
    _ghost(part, face=gone and "pw-fallen" not in _classes(part), gone=gone)
    before = gone
    for child in part:
        if "pw-stretch" not in _classes(child):
            continue
        here = gone or GONE in _classes(child)
        # Only the lowest stretch that went shows the cut; what was above it fell.
        _ghost(child, face=here and not before, gone=here)
        before = here


def _ghost(group: Xml.Element, *, face: bool, gone: bool) -> None:
    if not gone:
        return
    for child in list(group):
        names = _classes(child)
        if "pw-wood" in names:
            for name, value in _GHOST.items():
                child.set(name, value)
        elif "pw-face" in names and face:
            child.attrib.pop("display", None)
        elif "pw-stretch" not in names and LETTER not in names:
            group.remove(child)
