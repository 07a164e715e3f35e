"""The pictures of a poster: what each pass leaves, and dotted what it takes off."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from pencilwood.drawing import Paper, WoodShown, describe_vine, draw_vine
from pencilwood.drawing.names.labels import LETTER
from pencilwood.drawing.plate import Frame
from pencilwood.drawing.scene.cut_marks import along_marks, draw_cut_marks
from pencilwood.drawing.scene.stages import GONE, Stage, Stages
from pencilwood.drawing.scene.tied_canes import Laid
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.views.near_views import NearView, in_one_window, near_views
from pencilwood.units import UnitSystem
from pencilwood.vine.passes import DoneCut, Pass
from pencilwood.vine.wood import WoodLeft
from pencilwood.words import say
from pencilwood.worksheets.print_drawing import EARLIER, for_print

_GHOSTS_MM, _GHOSTS_AROUND_MM = 80.0, 15.0
"""So much is seen of what comes off, past the edge that all wood has around it."""
_MOST_AHEAD_MM, _MOST_BEHIND_MM = 600.0, 400.0
_AHEAD_OF_TIED_MM, _BEHIND_TIED_MM = 430.0, 260.0
"""Canes that will be tied run on beyond any edge; what counts is at their foot."""
_AROUND_CUT_MM = 50.0
_AROUND_HEAD_MM = 180.0
"""So much is seen of the head on the side on which a vine has no wood."""
_UNTOLD = (LETTER, "pw-wire-name", "pw-wire-height")
"""Nothing on a poster speaks of a piece by its letter or of a wire, whose name would be cut off."""


@dataclass(frozen=True)
class OnePass:
    """The wood before and after a pass."""

    before: WoodLeft
    after: WoodLeft
    laid: tuple[Laid, ...] = ()
    cuts: tuple[DoneCut, ...] = ()
    """Those of this pass, shown as bars across the wood."""


def print_passes(
    passes: Sequence[OnePass], language: str, units: UnitSystem
) -> list[list[dict[str, object]]]:
    """For each pass its pictures, one a view, as a template has them; all are equally wide.

    What an earlier pass took off is not shown at all.
    """
    seen = [_near(one) for one in passes]
    wide = in_one_window(seen)
    return [
        [
            _picture(
                one, replace(view, window=_as_wide(view.window, widest.window)), language, units
            )
            for view, widest in zip(views, wide, strict=True)
        ]
        for one, views in zip(passes, seen, strict=True)
    ]


def _near(one: OnePass) -> tuple[NearView, ...]:
    """Long canes run on beyond the edge, so that the arms are seen large."""
    if plate_of(one.after.parts, one.laid).second is not None:
        # What comes off is dotted all around: any more of it would make two views small.
        return near_views(one.before, one.laid, beyond_mm=_GHOSTS_AROUND_MM, left=one.after)
    (view,) = near_views(one.before, one.laid, beyond_mm=_GHOSTS_MM, left=one.after)
    plate = plate_of(one.after.parts, one.laid)
    is_tied = Pass.TIE in plate.vine.form.passes
    ahead, behind = (
        (_AHEAD_OF_TIED_MM, _BEHIND_TIED_MM) if is_tied else (_MOST_AHEAD_MM, _MOST_BEHIND_MM)
    )
    top, bottom = plate.around_arm(ahead, behind)
    if is_tied:
        # Long canes are cut above that.
        marks = along_marks(draw_cut_marks(plate, one.cuts))
        top = min([top, *(y - _AROUND_CUT_MM for _, y in marks)])
    window = view.window
    inside = replace(
        window,
        left=min(window.left, -_AROUND_HEAD_MM),
        right=max(window.right, _AROUND_HEAD_MM),
        top=max(top, window.top),
        bottom=min(bottom, window.bottom),
    )
    return (replace(view, window=inside),)


def _as_wide(window: Frame, frame: Frame) -> Frame:
    return replace(window, left=frame.left, right=frame.right)


def _picture(one: OnePass, view: NearView, language: str, units: UnitSystem) -> dict[str, object]:
    parts = one.after.parts
    stages = Stages((Stage(EARLIER, one.before), Stage(GONE, one.after)))
    svg = draw_vine(
        WoodShown(parts, stages, cut_marks=one.cuts, laid=tuple(one.laid), hidden=_UNTOLD),
        Paper("print", language, title="", description="", units=units, window=view.shown()),
    )
    _, _, width_mm, height_mm = view.window.box
    return {
        "svg": for_print(svg),
        "width": width_mm,
        "height": height_mm,
        "alt": describe_vine(parts, one.after, language, units),
        "words": [say(language, f"drawing.{key}") for key in view.says],
    }
