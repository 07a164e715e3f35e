"""How many shoots come in spring, and how many of them to take off."""

from __future__ import annotations

from pencilwood.block.answer import Answer, Figure, Sentence
from pencilwood.block.numbers import Range


def shoot_thinning(
    *,
    buds: Range,
    shoots_per_bud: Range,
    large_wounds: Range,
    shoots_per_wound: Range,
    canopy_mm: Range,
    target_shoots_per_mm: Range,
) -> Answer:
    """Shoots to expect on a vine, shoots that it should keep, and those to take off.

    expected = buds x shoots for each bud + large wounds x shoots that a wound wakes;
    target = shoots wanted on a length of canopy x length of canopy; take off = expected - target,
    never below nothing.

    Limits: thin before bloom, when shoots are about a hand long; after frost or winter damage
    keep the second shoots. In a hot trial, taking off half did not change the crop, as bunches
    grew heavier (OENO One 2984, read).
    Source: 3 to 5 shoots on a foot of trellis (University of Maryland Extension 2021, read).
    """
    from_buds = buds * shoots_per_bud
    expected = from_buds + large_wounds * shoots_per_wound
    target = target_shoots_per_mm * canopy_mm
    off = (expected - target).at_least(0)
    facts = {
        "buds": ("buds", buds),
        "each": ("number", shoots_per_bud),
        "wounds": ("wounds", large_wounds),
        "woken": ("number", shoots_per_wound),
        "expected": ("shoots-per-vine", expected),
        "density": ("on-length", target_shoots_per_mm),
        "canopy": ("canopy", canopy_mm),
        "target": ("shoots-per-vine", target),
        "off": ("shoots-per-vine", off),
    }
    figures = (
        Figure("take-off", "shoots", off),
        Figure("expected-shoots", "shoots", expected),
        Figure("target-shoots", "shoots", target),
    )
    steps = tuple(Sentence(name, facts) for name in ("expected", "target", "take-off"))
    remarks = (Sentence("nothing-to-take-off"),) if off.high == 0 else ()
    return Answer("thinning", figures, steps, remarks)
