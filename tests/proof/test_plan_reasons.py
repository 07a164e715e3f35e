"""What the pages say of a plan's cut is what was compared: one bud more, or the wood left there."""

from __future__ import annotations

import re

import pytest

from pencilwood.proof import prove_case
from pencilwood.proof.reasons import plan_with_reasons
from pencilwood.site.case_files import case_slugs
from pencilwood.site.handbook import read_one_case
from pencilwood.vine.wood import Shortening
from workshop import PROJECT

LEADS = {
    "en": ("One bud more? ", "And if it stays? ", r"(\d+) buds are left on this spur"),
    "es": ("¿Una yema más? ", "¿Y si se queda? ", r"[Qq]uedan (\d+) yemas en este pulgar"),
}


@pytest.mark.parametrize("slug", case_slugs(PROJECT))
def test_the_number_under_a_cut_is_that_of_one_bud_more(slug: str) -> None:
    profile, case, _ = read_one_case(PROJECT, slug)
    assert profile is not None
    assert case is not None
    proof = prove_case(case, profile)
    for language, (longer, stays, buds_told) in LEADS.items():
        for cut, (done, why) in zip(
            proof.plan.cuts, plan_with_reasons(proof, language), strict=True
        ):
            if not cut.reasons:
                continue
            is_shortened = isinstance(done.cut, Shortening)
            lead = longer if is_shortened else stays
            assert why.startswith(lead)
            assert why[len(lead)].isupper() or why[len(lead)].isdigit()
            told = re.search(buds_told, why)
            if told and isinstance(done.cut, Shortening):
                assert int(told[1]) == done.cut.buds + 1
