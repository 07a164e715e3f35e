"""Who makes the trainer's cuts of the demo, and takes the saw for each of them."""

from dataclasses import replace

import pytest

from pencilwood.pages.handbook import Handbook
from pencilwood.proof import CaseProof
from pencilwood.score.judge import judge_cuts, lost
from pencilwood.vine.passes import Tool
from pencilwood.vine.wood import Tie
from qti_demo import demo_handbook

EACH = 5


@pytest.fixture(scope="module")
def handbook() -> Handbook:
    return demo_handbook()


def cutting_score(proof: CaseProof, tool: Tool | None = None) -> int:
    """How it was cut with the answer's tools, or with one for all."""
    done = [one.done if tool is None else replace(one.done, tool=tool) for one in proof.case.answer]
    return 100 - lost(judge_cuts(proof.parts, done, proof.sheet.limits))


def thin_cuts(proof: CaseProof) -> int:
    """Cuts of the answer in wood that hand shears are for."""
    up_to = proof.sheet.limits["hand shears up to"]
    cuts = [one.done.cut for one in proof.case.answer]
    named = [cut.part for cut in cuts if not isinstance(cut, Tie)]
    thick = [proof.parts.parts[proof.parts.index[name]].piece.thickness_mm for name in named]
    return sum(mm <= up_to for mm in thick)


def test_the_answers_own_tools_lose_nothing(handbook: Handbook) -> None:
    assert {cutting_score(proof) for proof in handbook.cases} == {100}


def test_the_saw_for_all_is_charged_for_each_thin_cut(handbook: Handbook) -> None:
    for proof in handbook.cases:
        thin = thin_cuts(proof)
        assert thin > 0
        assert cutting_score(proof, Tool.SAW) == 100 - EACH * thin, proof.case.slug
