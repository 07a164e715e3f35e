"""A worn-out arm made new: the claims that are proved, and what the page looks up."""

from __future__ import annotations

import json
import random
from collections.abc import Mapping
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import svg_reading
from pencilwood.cases.case import Case, Profile
from pencilwood.cases.case_writer import write_case
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.renewal_drawings import name_of
from pencilwood.pages.renewal_page import RenewalTold, renewal_path
from pencilwood.proof import prove_case
from pencilwood.proof.renewal import WAYS, Renewal, check_renewal
from pencilwood.proof.report import ProofReport
from pencilwood.proof.winters import WINTERS
from pencilwood.vine.arm_renewal import Stage, Work
from pencilwood.vine.forms.high_cordon import HIGH_TWO_ARMS
from pencilwood.vine.measures import buds_kept
from pencilwood.vine.model import Condition, Side
from vines import random_vine

Settled = tuple[Profile, Case]


def problems(case: Case, profile: Profile, limits: Mapping[str, int], language: str) -> list[str]:
    report = ProofReport(language, profile.units)
    changed = replace(profile, limits={**profile.limits, **limits}, form_limits={})
    check_renewal(case, changed, report)
    for finding in report.findings:
        told = finding.render(language)
        assert "{" not in told
        assert told.split(":")[0].endswith("a-worn-out-arm.yml")
        # A handbook that claims what does not hold is not built.
        assert finding.level == "error"
    return [finding.name for finding in report.findings]


def test_the_three_ways_of_the_demo(renewal: Renewal) -> None:
    """Buds on the side winter by winter, and what is bare at the end, in mm."""
    told = {
        name: (renewal.buds(way), renewal.bare_mm(way), renewal.is_renewed(way))
        for name, way in WAYS.items()
    }
    assert told["tidy"] == ((6, 6, 6), 350, False)
    assert told["at-once"][0][0] == 0
    assert min(told["in-steps"][0]) > 0
    assert told["in-steps"][2]
    assert told["at-once"][2]


@pytest.mark.parametrize(
    ("limits", "problem", "why"),
    [
        ({}, [], "the demo as it is"),
        ({"blank at most": 360}, ["old-arm-would-do"], "a stretch of 35 cm would be allowed"),
        ({"blank at most": 80}, ["steps-do-not-renew"], "no two spurs may stand 8 cm apart"),
        ({"head zone": 30}, ["no-young-cane"], "the young cane stands at 4 cm"),
    ],
)
@pytest.mark.parametrize("language", ["en", "es"])
def test_a_claim_that_does_not_hold_is_refused(
    worn: Settled, limits: Mapping[str, int], problem: list[str], why: str, language: str
) -> None:
    profile, case = worn
    assert problems(case, profile, limits, language) == problem, why


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_vine_that_cannot_be_renewed_so_is_refused(worn: Settled, language: str) -> None:
    profile, case = worn
    hanging = replace(case, vine=replace(case.vine, form=HIGH_TWO_ARMS))
    assert problems(hanging, profile, {}, language) == ["form-cannot-be-renewed"]
    other = replace(case, renewed_arm=Side.RIGHT)
    assert problems(other, profile, {}, language) == ["no-young-cane"]
    one_arm = replace(
        case.vine, form=replace(case.vine.form, sides=(Side.RIGHT,)), arms=case.vine.arms[1:]
    )
    assert problems(replace(case, vine=one_arm), profile, {}, language) == ["no-arm-to-renew"]


def test_a_young_cane_that_is_not_sound_is_none(worn: Settled) -> None:
    profile, case = worn
    left, right = case.vine.arms
    head = left.positions[0]
    dead = tuple(replace(one, condition=Condition.DEAD) for one in head.pieces)
    arms = (replace(left, positions=(replace(head, pieces=dead), *left.positions[1:])), right)
    changed = replace(case, vine=replace(case.vine, arms=arms))
    assert problems(changed, profile, {}, "en") == ["no-young-cane"]


def test_a_case_that_asks_for_no_new_arm_is_not_followed(worn: Settled) -> None:
    profile, case = worn
    plain = replace(case, renewed_arm=None)
    assert problems(plain, profile, {"head zone": 30}, "en") == []


def test_every_story_ends_and_none_is_told_twice(renewal: Renewal) -> None:
    stories = tuple(renewal.stories())
    assert len(set(stories)) == len(stories)
    for story in stories:
        assert bool(renewal.works(story)) == (len(story) < WINTERS)
        stage = renewal.found(story).stage
        if story:
            before, work = renewal.found(story[:-1]).stage, story[-1]
            laid = work in (Work.LAY, Work.LENGTHEN)
            expected = Stage.NEW if laid else Stage.NONE if work is Work.OFF else before
            assert stage is expected


def test_the_rules_speak_of_arms_alone(renewal: Renewal) -> None:
    """Rules for cordons say nothing of a cane along the wire or of an arm that is not there."""
    for story in renewal.stories():
        if story:
            done = renewal.worked(story)
            whole = done.laid is None and not done.is_sawn and done.found.stage is not Stage.NONE
            assert whole or renewal.charges(story) == ()
    tidy = renewal.charges(WAYS["tidy"])
    assert {one.rule for one in tidy} == {"blank-on-arm"}


@pytest.mark.parametrize("language", ["en", "es"])
def test_the_page_looks_up_what_was_worked_out(
    worn: Settled, renewal: Renewal, language: str
) -> None:
    profile, case = worn
    handbook = Handbook(profile, (prove_case(case, profile),), {}, (), (), ())
    told = RenewalTold(Desk(handbook, renewal_path(case.slug), language), renewal)
    data = json.loads(told.script_data())
    assert data["winters"] == WINTERS
    stories = tuple(renewal.stories())
    assert set(data["stories"]) == {name_of(story) for story in stories}
    for story in stories:
        row = data["stories"][name_of(story)]
        assert row["works"] == [str(one) for one in renewal.works(story)]
        assert ("end" in row) == (len(story) == WINTERS)
        if story:
            done = renewal.worked(story)
            assert row["buds"] == done.buds_on_side
            assert row["sawn"] == done.is_sawn
            assert f"{buds_kept(done.left)} " in row["row"]
            assert len(row["losses"]) == len(renewal.charges(story))
        assert not any("{" in str(text) for text in row.values() if isinstance(text, str))


def test_the_end_says_how_many_winters_bore_nothing(worn: Settled, renewal: Renewal) -> None:
    profile, case = worn
    handbook = Handbook(profile, (prove_case(case, profile),), {}, (), (), ())
    told = RenewalTold(Desk(handbook, renewal_path(case.slug), "en"), renewal)
    assert told.end(WAYS["in-steps"]).endswith("It bore every year.")
    at_once = told.end(WAYS["at-once"])
    assert at_once.endswith("But in 1 of 3 years it bore nothing. This works only if a bud wakes.")
    assert told.end(WAYS["tidy"]).startswith("The old arm stands as before. A stretch of 35 cm")
    assert told.end((Work.KEEP, Work.KEEP, Work.OFF)) == "There is no arm on this side yet."
    assert told.end((Work.KEEP, Work.KEEP, Work.OFF)) == told.end((Work.OFF, Work.OFF, Work.OFF))


def test_the_case_file_keeps_the_wish(worn: Settled) -> None:
    assert "renewed arm: left" in write_case(worn[1], "en").splitlines()


@given(st.integers(0, 2**32 - 1))
@settings(max_examples=25, deadline=None)
def test_any_arm_of_an_upright_cordon_can_be_told_and_drawn(worn: Settled, seed: int) -> None:
    """Whatever was measured: every story has its words, and its drawings are whole."""
    profile, case = worn
    rng = random.Random(seed)
    measured = random_vine(rng, positions=rng.randint(1, 5), most_canes=2)
    side = rng.choice([one.side for one in measured.arms])
    changed = replace(case, vine=measured, renewed_arm=side)
    problems(changed, profile, {}, "en")
    renewal = Renewal(changed, profile, side)
    handbook = Handbook(profile, (prove_case(case, profile),), {}, (), (), ())
    told = RenewalTold(Desk(handbook, renewal_path(case.slug), "es"), renewal)
    rows = json.loads(told.script_data())["stories"]
    assert len(rows) == len(told.stories)
    for story in rng.sample(told.stories, 2):
        svg_reading.read(told.drawings.found(story))
        if story:
            svg_reading.read(told.drawings.pruned(story))
