"""A part of a vine after its cuts: all that can be seen is there, and little else."""

from collections.abc import Callable
from io import BytesIO

import pytest
from PIL import Image, ImageChops
from playwright.sync_api import Page

from cane_vines import cane_vine
from pencilwood.drawing import Paper, WoodShown, draw_pruned, draw_vine
from pencilwood.drawing.ink.looks import stylesheet
from pencilwood.drawing.plate import RIGHT_MARGIN_MM, Frame, Window
from pencilwood.drawing.scene.stages import GONE, Stages
from pencilwood.drawing.scene.tied_canes import laid_canes
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.views.arm_view import window_on_arms
from pencilwood.drawing.views.pruned import on_phones_mm
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT
from pencilwood.vine.model import Side
from pencilwood.vine.passes import DoneCut, Pass, after_cuts
from pencilwood.vine.wood import Parts, Shortening, ThinningOut, Tie, divide, uncut
from svg_reading import of_class, points, read, view_box
from vines import arm, cane, old, vine

SMOOTHED = 8
"""Of 255: nobody sees so little."""

Pruned = tuple[Parts, list[DoneCut]]


def cordon() -> Pruned:
    pieces = [old("m", 60), cane("a", 6, on="m", at_mm=15), cane("b", 7, on="m", at_mm=58)]
    alone = [cane("a", 9), cane("b", 9)]
    parts = divide(vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 500, (150, pieces), (350, alone))))
    return parts, [
        DoneCut(Shortening("R1b", 5), Pass.ROUGH),
        DoneCut(Shortening("R2a", 6), Pass.ROUGH),
        DoneCut(ThinningOut("R1m above a"), Pass.THINNING_OUT),
        DoneCut(Shortening("R1a", 2), Pass.FINE),
        DoneCut(Shortening("R2a", 2), Pass.FINE),
        DoneCut(ThinningOut("R2b"), Pass.FINE),
    ]


def canes() -> Pruned:
    parts = divide(cane_vine())
    names = [part.name for part in parts.parts if part.is_cane]
    return parts, [
        *(DoneCut(ThinningOut(name), Pass.THINNING_OUT) for name in names[1:3]),
        DoneCut(Shortening(names[0], 6), Pass.FINE),
        DoneCut(Tie(names[0], Side.LEFT), Pass.TIE),
    ]


def with_all(parts: Parts, cuts: list[DoneCut], window: Frame) -> str:
    """The same drawing with all that it hides."""
    laid = laid_canes(after_cuts(uncut(parts), cuts), cuts)
    whole = plate_of(parts, laid).frame
    lying = {cane.part for cane in laid}
    shown = WoodShown(
        parts,
        Stages.leaving(after_cuts(uncut(parts), cuts)),
        cut_marks=tuple(one for one in cuts if one.cut.part not in lying),
        laid=laid,
        phone_mm=on_phones_mm(window, ""),
        lettered=(),
    )
    # Wires run to the edge.
    across = Frame(whole.left, whole.top, window.right + RIGHT_MARGIN_MM, whole.bottom)
    paper = Paper(
        "p",
        "en",
        title="t",
        description="d",
        window=Window(window, across),
        css_class="pw-in-part",
    )
    return draw_vine(shown, paper)


@pytest.mark.browser
@pytest.mark.parametrize("make", [cordon, canes])
def test_what_is_left_out_is_never_seen(desktop_page: Page, make: Callable[[], Pruned]) -> None:
    parts, cuts = make()
    left = after_cuts(uncut(parts), cuts)
    window = window_on_arms(left, laid_canes(left, cuts))
    light = draw_pruned(parts, cuts, window, Paper("p", "en", title="t", description="d"))
    seen = []
    for svg in (light, with_all(parts, cuts, window)):
        desktop_page.set_content(f"<style>{stylesheet()}</style>{svg}")
        picture = desktop_page.locator("svg").screenshot()
        seen.append(Image.open(BytesIO(picture)).convert("RGB"))
    unlike = ImageChops.difference(*seen).convert("L")
    # The browser smooths edges a little differently where a path has fewer strokes.
    assert not unlike.point(lambda level: 255 * (level > SMOOTHED)).getbbox()


def test_little_else_is_there() -> None:
    parts, cuts = cordon()
    window = window_on_arms(after_cuts(uncut(parts), cuts))
    light = draw_pruned(parts, cuts, window, Paper("p", "en", title="t", description="d"))
    assert len(light) < 0.6 * len(with_all(parts, cuts, window))
    drawing = read(light)
    assert not of_class(drawing, "pw-wire-height")
    gone = of_class(drawing, GONE)
    assert gone
    for ghost in gone:
        assert not of_class(ghost, "pw-bud")
    _, top, _, bottom = view_box(drawing)
    # A stretch of cane that reaches into the view is drawn whole; the last one has the tip.
    wood = [y for one in of_class(drawing, "pw-wood-all") for _, y in points(one)]
    assert min(wood) > top - 200
    assert max(wood) < bottom + 200
