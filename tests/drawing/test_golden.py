"""Whole drawings, byte for byte; refresh with `pytest --refresh-golden` and look at them."""

from collections.abc import Callable
from pathlib import Path

import pytest

from cane_vines import cane_vine
from drawn_states import draw_passes
from heads import head_vine
from high_cordons import high_vine
from pencilwood.drawing import Paper, WoodShown, describe_vine, draw_vine, summarise_vine
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Side, Vine
from pencilwood.vine.passes import DoneCut, Pass
from pencilwood.vine.wood import Shortening, ThinningOut, Tie, divide
from vines import arm, cane, old, sick_vine, vine

GOLDEN = Path(__file__).parent / "golden"


def small_vine() -> Vine:
    spur = (old("m", 60), cane("a", 6, on="m", at_mm=12), cane("b", 7, 9, on="m", at_mm=56))
    return vine(TWO_ARM_CORDON, arm(Side.LEFT, 300, (180, spur)), arm(Side.RIGHT, 320, (170, spur)))


def sick() -> str:
    parts = divide(sick_vine())
    words = describe_vine(parts, None, "es")
    return draw_vine(
        WoodShown(parts, cutpoints=True), Paper("sick", "es", title="Cepa", description=words)
    )


def small_passes() -> str:
    parts = divide(small_vine())
    cuts = [
        DoneCut(Shortening("L1b", 5), Pass.ROUGH),
        DoneCut(Shortening("R1b", 5), Pass.ROUGH),
        DoneCut(ThinningOut("L1m above a"), Pass.THINNING_OUT),
        DoneCut(ThinningOut("R1a"), Pass.THINNING_OUT),
        DoneCut(Shortening("L1a", 2), Pass.FINE),
        DoneCut(Shortening("R1b", 1), Pass.FINE),
    ]
    words = summarise_vine(parts, None, "en")
    return draw_passes(
        parts, cuts, Paper("small", "en", title="Small", description=words), show="fine"
    )


def hanging() -> str:
    parts = divide(high_vine())
    words = describe_vine(parts, None, "en")
    return draw_vine(
        WoodShown(parts, cutpoints=True), Paper("high", "en", title="High", description=words)
    )


def around_head() -> str:
    parts = divide(head_vine())
    words = describe_vine(parts, None, "en")
    return draw_vine(
        WoodShown(parts, cutpoints=True), Paper("head", "en", title="Head", description=words)
    )


def canes() -> str:
    parts = divide(cane_vine())
    words = describe_vine(parts, None, "en")
    return draw_vine(
        WoodShown(parts, cutpoints=True), Paper("canes", "en", title="Canes", description=words)
    )


def tied() -> str:
    parts = divide(cane_vine())
    cuts = [
        DoneCut(ThinningOut(name), Pass.THINNING_OUT)
        for name in ("L2m", "R3m", "R1a", "R2m above a")
    ]
    cuts += [DoneCut(Shortening("L1b", 10), Pass.FINE), DoneCut(Shortening("L1a", 2), Pass.FINE)]
    cuts += [DoneCut(Shortening("R2a", 8), Pass.FINE)]
    cuts += [DoneCut(Tie("L1b", Side.LEFT), Pass.TIE), DoneCut(Tie("R2a", Side.RIGHT), Pass.TIE)]
    words = summarise_vine(parts, None, "es")
    return draw_passes(
        parts, cuts, Paper("tied", "es", title="Amarrada", description=words), show="fine"
    )


@pytest.mark.parametrize("draw", [sick, small_passes, hanging, around_head, canes, tied])
def test_drawing_is_as_reviewed(draw: Callable[[], str], refresh_golden: bool) -> None:
    path = GOLDEN / f"{draw.__name__}.svg"
    if refresh_golden:
        path.parent.mkdir(exist_ok=True)
        path.write_text(draw() + "\n", encoding="utf-8", newline="\n")
    assert path.read_text(encoding="utf-8") == draw() + "\n"
