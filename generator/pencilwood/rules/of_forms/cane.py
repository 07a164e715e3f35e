"""What cane-pruned vines go by: one or two long canes, a renewal spur for each, nothing else."""

from __future__ import annotations

from pencilwood.rules import (
    cane_above_wire,
    cane_far_from_head,
    cane_not_tied,
    cut_too_close,
    diseased_wood,
    injured_wood,
    neither_spur_nor_cane,
    old_stub,
    passes_out_of_order,
    spur_above_cane,
    stub_too_long,
    too_few_buds,
    too_many_buds,
    too_many_large_wounds,
    wood_too_old,
    wood_too_thick,
    wood_too_thin,
    wrong_cane_count,
    wrong_spur_count,
    wrong_tool,
)
from pencilwood.rules.shapes import RulesOfForm, rules_from
from pencilwood.vine.bands import Band
from pencilwood.vine.forms.cane import CANE_PRUNED

_CANE_SOURCE = {
    "en": (
        "canes of 5 to 15 buds (Oxford Companion to Wine, 2006); 8 (Burgundy); 10 (OENO One 2022); "
        "12 (Australian Journal of Grape and Wine Research, 2014); 10 to 12 if ripe (table-grape "
        "text)"
    ),
    "es": (
        "varas de 5 a 15 yemas (Oxford Companion to Wine, 2006); 8 (Borgoña); 10 (OENO One 2022); "
        "12 (Australian Journal of Grape and Wine Research, 2014); de 10 a 12 si están maduras "
        "(texto sobre uva de mesa)"
    ),
}

CANE = RulesOfForm(
    forms=CANE_PRUNED,
    rules=rules_from(
        cane_above_wire,
        cane_far_from_head,
        cane_not_tied,
        cut_too_close,
        diseased_wood,
        injured_wood,
        neither_spur_nor_cane,
        old_stub,
        passes_out_of_order,
        spur_above_cane,
        stub_too_long,
        too_few_buds,
        too_many_buds,
        too_many_large_wounds,
        wood_too_old,
        wood_too_thick,
        wood_too_thin,
        wrong_cane_count,
        wrong_spur_count,
        wrong_tool,
    ),
    bands=(
        Band(
            name="buds on a fruiting cane at least",
            kind="count",
            default=8,
            lowest=5,
            highest=12,
            status="published",
            source=_CANE_SOURCE,
        ),
        Band(
            name="buds on a fruiting cane at most",
            kind="count",
            default=12,
            lowest=8,
            highest=15,
            status="published",
            source=_CANE_SOURCE,
        ),
        Band(
            name="cane from the head at most",
            kind="length",
            default=150,
            lowest=80,
            highest=250,
            status="common practice, no source",
            source={
                "en": "the new cane begins near the head",
                "es": "la vara nueva nace cerca de la cabeza",
            },
        ),
    ),
)
