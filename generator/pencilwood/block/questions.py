"""Every sum as a question: which fields it asks for, and which function answers."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from pencilwood.block.answer import Answer
from pencilwood.block.bud_load import balanced_buds, buds_by_weight, buds_for_crop
from pencilwood.block.crew import crew
from pencilwood.block.crop_estimate import crop_estimate
from pencilwood.block.crop_load import crop_load, vigour
from pencilwood.block.errors import BlockError
from pencilwood.block.field import Field, Value
from pencilwood.block.field_list import FIELDS
from pencilwood.block.leaf_fruit import fruit_of_leaves, room_for_leaves
from pencilwood.block.renovation import renovation
from pencilwood.block.shoot_thinning import shoot_thinning
from pencilwood.block.spacing import buds_that_fit, room_on_arms
from pencilwood.block.vines_per_area import vines_per_area
from pencilwood.block.winter import buds_after_winter


@dataclass(frozen=True)
class Question:
    """One sum that can be asked for by itself."""

    name: str
    answer: Callable[..., Answer]
    asked: tuple[str, ...]
    """Names of the fields that must be given or have a default."""
    optional: tuple[str, ...] = ()

    @property
    def fields(self) -> tuple[Field, ...]:
        """All fields in the order of the form."""
        return tuple(FIELDS[name] for name in (*self.asked, *self.optional))

    def work(self, given: Mapping[str, Value]) -> Answer:
        """The answer for what is given; defaults stand in for the rest.

        Raises BlockError "missing" for a field that nobody gave and that has no default.
        """
        values: dict[str, Value] = {}
        for field in self.fields:
            value = given.get(field.name)
            if value is None and field.name in self.asked:
                value = field.usual()
                if value is None:
                    raise BlockError("missing").about(field.name)
            if value is not None:
                values[field.name] = value
        return self.answer(**values)


_LAYOUT = ("row_mm", "vine_mm", "missing_share")
_ARMS = ("arms", "arm_mm", "spur_spacing_mm", "buds_per_spur")
_PARTS = ("shoots_per_bud", "clusters_per_shoot", "cluster_g")

QUESTIONS: Mapping[str, Question] = {
    question.name: question
    for question in (
        Question(
            "buds",
            balanced_buds,
            ("prunings_g", "formula", "below_one_lb"),
            ("least_buds", "most_buds"),
        ),
        Question("buds-by-weight", buds_by_weight, ("prunings_g", "buds_per_g")),
        Question("buds-for-crop", buds_for_crop, ("target_crop_g_per_m2", *_LAYOUT, *_PARTS)),
        Question("winter", buds_after_winter, ("wanted_buds", "dead_share", "winter_rule")),
        Question("room", room_on_arms, _ARMS),
        Question("fit", buds_that_fit, ("wanted_buds", *_ARMS)),
        Question("crop", crop_estimate, ("buds", *_PARTS, *_LAYOUT), ("area_m2",)),
        Question("crop-load", crop_load, ("crop_g", "prunings_g", "crop_load_band")),
        Question("vigour", vigour, ("shoots_per_mm", "cane_g", "vigour_band")),
        Question("vines", vines_per_area, _LAYOUT, ("area_m2",)),
        Question(
            "leaves",
            room_for_leaves,
            ("trimming_mm", "arm_height_mm", "climb_mm", "shoot_mm", "nodes"),
        ),
        Question(
            "leaf-fruit",
            fruit_of_leaves,
            ("leaves_per_shoot", "leaf_mm2", "leaf_mm2_per_g"),
            ("shoots_per_mm", "fruit_g"),
        ),
        Question(
            "renovation",
            renovation,
            (
                *("way", "vines", "crop_g"),
                *("recovery_first", "recovery_second", "recovery_third"),
                *("wait_years", "share_a_year", "renewal_seconds"),
            ),
            ("rows", "pay_per_s", "price_per_g"),
        ),
        Question(
            "crew",
            crew,
            ("vines", "seconds_per_vine", "day_s"),
            (
                *("people", "days", "pay_per_s"),
                *("hand_seconds_after", "machine_s", "machine_pay_per_s"),
            ),
        ),
        Question(
            "thinning",
            shoot_thinning,
            (
                *("buds", "shoots_per_bud", "large_wounds", "shoots_per_wound"),
                *("canopy_mm", "target_shoots_per_mm"),
            ),
        ),
    )
}
