"""What cordons on a vertical-shoot trellis go by: the rules this handbook began with."""

from __future__ import annotations

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
from pencilwood.rules.shapes import RulesOfForm, rules_from
from pencilwood.vine.forms.cordon import CORDONS

CORDON = RulesOfForm(
    forms=CORDONS,
    rules=rules_from(
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
    ),
)
