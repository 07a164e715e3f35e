"""Every rule, one module each. A new rule is one line in the list below."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.rules import (
    blank_on_arm,
    climbed_too_far,
    crowded_spurs,
    cut_too_close,
    diseased_wood,
    doubled_spur,
    head_wood,
    injured_wood,
    no_renewal_bud,
    old_stub,
    passes_out_of_order,
    spur_too_long,
    stub_too_long,
    too_few_buds,
    too_little_leaf_room,
    too_many_buds,
    too_many_large_wounds,
    wood_below_arm,
    wood_too_old,
    wood_too_thick,
    wood_too_thin,
    wrong_tool,
)
from pencilwood.rules.shapes import Rule, rule_from
from pencilwood.vine.bands import Band

RULES: tuple[Rule, ...] = tuple(
    rule_from(module)
    for module in (
        blank_on_arm,
        climbed_too_far,
        crowded_spurs,
        cut_too_close,
        diseased_wood,
        doubled_spur,
        head_wood,
        injured_wood,
        no_renewal_bud,
        old_stub,
        passes_out_of_order,
        spur_too_long,
        stub_too_long,
        too_few_buds,
        too_little_leaf_room,
        too_many_buds,
        too_many_large_wounds,
        wood_below_arm,
        wood_too_old,
        wood_too_thick,
        wood_too_thin,
        wrong_tool,
    )
)
RULE_BY_NAME: Mapping[str, Rule] = {rule.name: rule for rule in RULES}
BANDS: tuple[Band, ...] = tuple(band for rule in RULES for band in rule.bands)
"""Every figure a profile may set, in the order of the rules."""
