"""A crop is reckoned with the buds that winter has left alive, and says so."""

from fractions import Fraction

from block_asking import given_by
from pencilwood.block.answer import Answer
from pencilwood.block.whole_block import work_block


def test_a_block_counts_on_living_buds_only() -> None:
    given = given_by(
        arm_length="70 cm",
        prunings="4 lb",
        dead_buds="50 %",
        winter_rule="full",
        large_wounds="0",
    )
    worked = {one.question: one for one in work_block(given)}
    fit, thinning = worked["fit"], worked["thinning"]
    assert isinstance(fit, Answer)
    assert isinstance(thinning, Answer)
    assert fit.main.likely == 28
    assert fit.figure("living-buds").likely == 14
    assert thinning.figure("expected-shoots").likely == 14 * Fraction("0.75")


def test_a_crop_says_where_its_living_buds_come_from() -> None:
    layout = {"row_spacing": "2.5 m", "vine_spacing": "1.6 m", "cluster_weight": "100 g"}
    arms = {"arm_length": "60 cm", "spur_spacing": "10 cm", "prunings": "4 lb"}
    worked = {one.question: one for one in work_block(given_by(**layout, **arms, dead_buds="25 %"))}
    crop = worked["crop"]
    assert isinstance(crop, Answer)
    first, second = (one.text("step", "metric", "en") for one in crop.steps[:2])
    assert first == "Living buds: 24 buds left × (100% − 25% dead) = 18 buds."
    assert second.startswith("18 buds × ")
    # What the block gives by itself needs no such word.
    own = {
        one.question: one
        for one in work_block(given_by(**layout, **arms, dead_buds="25 %", buds="20"))
    }
    crop = own["crop"]
    assert isinstance(crop, Answer)
    assert crop.steps[0].text("step", "metric", "en").startswith("20 buds × ")
