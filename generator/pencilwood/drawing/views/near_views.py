"""A vine seen from so near that its wood fills the picture: a picture for each of its views.

The ground, the posts and the words beside the wires are outside; what tells the views apart is
said in words below each picture, which keep their size on a small screen.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace

from pencilwood.drawing.ink.points import XY
from pencilwood.drawing.names.beside_trunk import LARGEST_ON_PHONES_MM
from pencilwood.drawing.names.place_names import (
    are_left_to_other_view,
    boxes_of_names,
    where_left_out,
)
from pencilwood.drawing.plate import RIGHT_MARGIN_MM, Frame, Plate, Window, frame_around_all
from pencilwood.drawing.scene.tied_canes import Laid
from pencilwood.drawing.scene.wood_shown import WoodShown
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.views.arm_view import length_left_mm
from pencilwood.vine.wood import Part, WoodLeft

NEAR = "pw-near"
"""The class of such a picture; `pw-one-view` stands beside it where the vine has several."""
ONE_VIEW = "pw-one-view"
_AROUND_MM = 45.0
_AROUND_NAMES_MM = 38.0
_LEAST_AHEAD_MM, _LEAST_BEHIND_MM = 260.0, 190.0
"""So much of what is ahead of the arms and behind them is seen, also where there is no wood."""
_WIDER = 1.1
_WIDEST_MM = 2200.0
"""A picture is made so much wider, or so wide, at most: names have to be readable on a phone."""
_PHONE_SHARE = 0.0385
"""How high the names are compared with the width of a chapter's picture on the narrowest phones;
chapters.css gives it."""
_STEPS = 6
_POSTS_MM = 300.0


@dataclass(frozen=True)
class NearView:
    """One picture of a vine."""

    view: str
    """Which view it is; empty where the vine has but one."""
    window: Frame
    says: tuple[str, ...]
    """Keys of the words below it."""

    def shown(self, *, clipped: bool = False) -> Window:
        """The picture with wires from edge to edge; what stands at their ends is outside."""
        one = self.window
        wires = Frame(one.left - _POSTS_MM, one.top, one.right + RIGHT_MARGIN_MM, one.bottom)
        return Window(one, wires, clipped, self.view)

    @property
    def css_class(self) -> str:
        """The classes that give its names their size."""
        return f"{NEAR} {ONE_VIEW}" if self.view else NEAR


def near_views(
    seen: WoodLeft, laid: Sequence[Laid] = (), *, beyond_mm: float = math.inf, left: WoodLeft
) -> tuple[NearView, ...]:
    """A picture for each view of the wood that is `seen`, ghosts included.

    It goes no more than `beyond_mm` past what is `left`: ghosts may run beyond the edge. Of a
    vine with arms all of its width is seen. `laid` are canes that are tied along the wire.
    """
    plate = plate_of(seen.parts, laid)
    lying = {one.part for one in laid}
    windows = alike([_window(view, seen, left, lying, beyond_mm) for view in plate.views])
    return tuple(
        NearView(
            view=view.looks.view,
            window=window,
            says=tuple(_says(view)),
        )
        for view, window in zip(plate.views, windows, strict=True)
    )


def _says(view: Plate) -> Iterator[str]:
    yield from (one.key for one in view.looks.captions(view.vine))
    if are_left_to_other_view(view):
        yield "view.more-names"


def on_phones(shown: WoodShown, window: Frame) -> WoodShown:
    """The same with its names as high as the narrowest phones show a chapter's picture."""
    return replace(shown, phone_mm=(window.right - window.left) * _PHONE_SHARE)


def names_left_out(shown: WoodShown) -> str:
    """Where pictures from near leave a name out that no other view gives; see `where_left_out`."""
    plate = plate_of(shown.parts, shown.laid)
    return where_left_out(plate, shown.first_names, shown.phone_mm) if plate.second is None else ""


def alike(frames: Sequence[Frame]) -> list[Frame]:
    """The same frames made equally wide and high, so that pictures side by side have one scale.

    Room is added on both sides, and above.
    """
    wide = max(one.right - one.left for one in frames)
    high = max(one.bottom - one.top for one in frames)
    return [
        Frame(middle - wide / 2, one.bottom - high, middle + wide / 2, one.bottom)
        for one in frames
        for middle in ((one.left + one.right) / 2,)
    ]


def in_one_window(rows: Sequence[Sequence[NearView]]) -> list[NearView]:
    """The views of several states of a vine, with a window that fits them all."""
    wide = alike([frame_around_all(one.window for one in same) for same in zip(*rows, strict=True)])
    return [replace(view, window=frame) for view, frame in zip(rows[0], wide, strict=True)]


def at_one_scale(views: Sequence[NearView], uncut: Sequence[NearView]) -> tuple[NearView, ...]:
    """One state of a vine with arms, across as much as the uncut vine and so at its scale.

    Not where long wood at the sides would make it too small to read. A head has two views, whose
    pictures are as large as what they show.
    """
    if len(views) > 1:
        return tuple(views)
    frames = zip(views, uncut, strict=True)
    return tuple(replace(one, window=_across(one.window, whole.window)) for one, whole in frames)


def _across(one: Frame, whole: Frame) -> Frame:
    both = Frame(min(one.left, whole.left), one.top, max(one.right, whole.right), one.bottom)
    widest_mm = max(_WIDER * (one.right - one.left), _WIDEST_MM)
    return both if both.right - both.left <= widest_mm else one


def to_compare(rows: Sequence[Sequence[NearView]]) -> list[list[NearView]]:
    """The views of several vines, to one scale: arms in one window, others in equally large ones.

    A head may stand beside a vine with arms, which has fewer views. Where a view from above lies
    on the drawing hangs on how wide its own vine is.
    """
    if not rows:
        return []
    if all(len(row) == 1 for row in rows):
        return [in_one_window(rows) for _ in rows]
    sizes = iter(alike([one.window for row in rows for one in row]))
    return [[replace(one, window=next(sizes)) for one in row] for row in rows]


def _window(
    plate: Plate, seen: WoodLeft, left: WoodLeft, lying: Collection[str], beyond_mm: float
) -> Frame:
    all_wood = _around(_wood(plate, seen, lying), _AROUND_MM)
    kept = _around(_wood(plate, left, lying), _AROUND_MM + min(beyond_mm, 1e6))
    wood = Frame(
        max(all_wood.left, kept.left),
        max(all_wood.top, kept.top),
        min(all_wood.right, kept.right),
        min(all_wood.bottom, kept.bottom),
    )
    # Large letters of a phone may need one row more.
    sizes = (0.0, LARGEST_ON_PHONES_MM)
    boxes = (box for high_mm in sizes for box in boxes_of_names(plate, high_mm))
    names = [_grown(box, _AROUND_NAMES_MM) for box in boxes]
    return frame_around_all([wood, *names, *_always(plate, all_wood)])


def _always(plate: Plate, all_wood: Frame) -> Iterator[Frame]:
    """What is seen however little wood is left: a stretch around the arms."""
    if _is_from_above(plate):
        return
    top, bottom = plate.around_arm(_LEAST_AHEAD_MM, _LEAST_BEHIND_MM)
    if plate.second is not None:
        corners = _around([(one.x, one.y) for one in plate.looks.corners(plate.vine)], _AROUND_MM)
        yield Frame(corners.left, top + _LEAST_AHEAD_MM, corners.right, bottom)
        return
    yield Frame(all_wood.left, top, all_wood.right, bottom)


def _is_from_above(plate: Plate) -> bool:
    """Whether it is the second of two views, where there is no arm to see from the side."""
    return plate.looks.view != "" and plate.second is None


def _wood(plate: Plate, left: WoodLeft, lying: Collection[str]) -> list[XY]:
    """Places along all wood that stands or hangs, the feet, and the tips of the arms."""
    points: list[XY] = [plate.foot(position) for position in plate.parts.positions]
    if plate.second is None and not _is_from_above(plate):
        points.extend(plate.looks.corners(plate.vine))
    points.extend(plate.reaching)
    for part, state in zip(left.parts.parts, left.states, strict=True):
        if state and part.name not in lying:
            points.extend(_along(plate, part, state))
    return points


def _along(plate: Plate, part: Part, state: int) -> Iterator[XY]:
    curve, long_mm = plate.stem(part).curve, length_left_mm(part, state)
    for step in range(_STEPS + 1):
        yield curve.at(part.start_mm + long_mm * step / _STEPS)


def _around(points: Sequence[XY], room_mm: float) -> Frame:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return _grown(Frame(min(xs), min(ys), max(xs), max(ys)), room_mm)


def _grown(frame: Frame, room_mm: float) -> Frame:
    return Frame(
        frame.left - room_mm, frame.top - room_mm, frame.right + room_mm, frame.bottom + room_mm
    )
