"""What head-trained vines go by: the shared rules of spurs, and three of their own.

They have no arms, no wires and no height of trimming, so that head zone, blanks on an arm, wood
below it and leaf room are not judged. Buds are counted for the whole vine.
"""

from __future__ import annotations

from pencilwood.rules import (
    climbed_too_far,
    crowded_spurs,
    cut_too_close,
    diseased_wood,
    doubled_spur,
    injured_wood,
    no_renewal_bud,
    old_stub,
    open_side,
    overladen_spur,
    passes_out_of_order,
    spur_too_long,
    stub_too_long,
    too_few_buds,
    too_many_buds,
    too_many_large_wounds,
    wood_in_the_middle,
    wood_too_old,
    wood_too_thick,
    wood_too_thin,
    wrong_tool,
)
from pencilwood.rules.shapes import RulesOfForm, rules_from
from pencilwood.vine.bands import Band
from pencilwood.vine.forms.head import HEAD_TRAINED

_BY_VIGOUR = {
    "en": "spurs of 1, 2 or 3 internodes by vigour (U. P. Hedrick, Manual of American "
    "Grape-Growing)",
    "es": "pulgares de 1, 2 o 3 entrenudos según la fuerza (U. P. Hedrick, Manual of American "
    "Grape-Growing)",
}
_ON_A_VINE = {
    "en": "six to eight spurs of two buds, a few of one or three",
    "es": "de seis a ocho pulgares de dos yemas, algunos de una o de tres",
}
BANDS = (
    Band("buds on a spur at most", "count", 3, 1, 3, "published", _BY_VIGOUR),
    Band("buds on a vine at least", "count", 10, 6, 20, "common practice, no source", _ON_A_VINE),
    Band("buds on a vine at most", "count", 16, 10, 30, "common practice, no source", _ON_A_VINE),
    Band(
        "spur spacing at least",
        "length",
        100,
        80,
        200,
        "common practice, no source",
        {
            "en": "about a hand's width between spurs around the head",
            "es": "más o menos el ancho de una mano entre pulgares, alrededor de la cabeza",
        },
    ),
)

HEAD = RulesOfForm(
    forms=(HEAD_TRAINED,),
    rules=rules_from(
        climbed_too_far,
        crowded_spurs,
        cut_too_close,
        diseased_wood,
        doubled_spur,
        injured_wood,
        no_renewal_bud,
        old_stub,
        open_side,
        overladen_spur,
        passes_out_of_order,
        spur_too_long,
        stub_too_long,
        too_few_buds,
        too_many_buds,
        too_many_large_wounds,
        wood_in_the_middle,
        wood_too_old,
        wood_too_thick,
        wood_too_thin,
        wrong_tool,
    ),
    bands=BANDS,
)
