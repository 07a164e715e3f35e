"""Three winters of a vine: the claim that is proved, and what the page looks up."""

from __future__ import annotations

import json
import random
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

import pytest

from pencilwood import kept
from pencilwood.cases.case import Case, Profile
from pencilwood.cases.case_writer import write_case
from pencilwood.proof.report import ProofReport
from pencilwood.proof.winter_table import charges_at, stories_of, winter_tables
from pencilwood.proof.winters import EACH, WINTERS, PrunedWinter, Winters, check_winters
from pencilwood.score.judge import lost
from pencilwood.vine.growth import next_winter
from pencilwood.vine.measures import buds_kept, spurs
from pencilwood.vine.spur_choice import Stays
from workshop import Workshop, make_workshop

Settled = tuple[Profile, Case]


def found(profile: Profile, case: Case, limits: Mapping[str, int], language: str) -> list[str]:
    report = ProofReport(language, profile.units)
    changed = replace(profile, limits={**profile.limits, **limits}, form_limits={})
    check_winters(case, changed, report)
    # A handbook that claims what does not hold is not built.
    assert all(finding.level == "error" for finding in report.findings)
    return [finding.render().split(": ", 1)[1] for finding in report.findings]


def test_the_demo_holds_near_the_arm_and_climbs_far_from_it(winters: Winters) -> None:
    most_mm = winters.limits["climb at most"]
    near, far = (winters.by_habit(stays) for stays in (Stays.NEAR, Stays.FAR))
    assert [one.within(most_mm) for one in near] == [4, 4, 4]
    assert far[-1].within(most_mm) == 0
    climbs = [one.climb_mm for one in far]
    assert climbs == sorted(climbs)
    assert climbs[-1] > 2 * near[-1].climb_mm
    # No pruning of one winter brings back what three winters have lost.
    assert far[-1].plan_lost > near[-1].plan_lost
    assert all(a.score >= b.score for a, b in zip(near, far, strict=True))


def test_every_position_keeps_one_spur(winters: Winters) -> None:
    for stays in Stays:
        for year in winters.by_habit(stays):
            assert len(spurs(year.left)) == len(winters.names)
            assert buds_kept(year.left) <= 2 * len(winters.names)


@pytest.mark.parametrize(
    ("limits", "problem"),
    [
        ({}, []),
        ({"climb at most": 60}, ["near-cane-climbs"]),
        ({"climb at most": 600}, ["far-cane-holds"]),
    ],
)
def test_a_claim_that_does_not_hold_is_refused(
    profile_and_case: Settled, limits: Mapping[str, int], problem: list[str]
) -> None:
    for language in ("en", "es"):
        told = found(*profile_and_case, limits, language)
        assert [one.rsplit("(", 1)[1].rstrip(")") for one in told] == problem


def test_the_words_of_a_refusal(profile_and_case: Settled) -> None:
    (told,) = found(*profile_and_case, {"climb at most": 60}, "en")
    assert told == (
        "leaving the near cane does not hold the spurs of this vine over 3 winters; "
        "expected more than half of the 4 spurs within 6 cm of the arm; found 0 (near-cane-climbs)"
    )


def test_a_case_that_asks_for_no_winters_is_not_followed(profile_and_case: Settled) -> None:
    profile, case = profile_and_case
    plain = replace(case, three_winters=False)
    assert found(profile, plain, {"climb at most": 80}, "en") == []


def test_a_mixed_vine_grows_as_its_parts_do(winters: Winters) -> None:
    """What is put together position by position is what the whole vine would have grown."""
    rng = random.Random(1)
    for _ in range(6):
        first = [(rng.choice(EACH),) for _ in winters.names]
        second = [rng.choice(EACH) for _ in winters.names]
        year = winters.pruned(first, second)
        summer = replace(winters._summer, seed=f"{winters.case.slug}/2")
        stories = [(*story, now) for story, now in zip(first, second, strict=True)]
        assert next_winter(year.left, summer) == winters.mixed(stories).vine


def test_the_table_says_what_the_rules_say(winters: Winters, profile_and_case: Settled) -> None:
    tables = winter_tables(winters, profile_and_case[0])
    assert [len(table.scores) for table in tables] == [16, 256, 4096]
    rng = random.Random(2)
    for number, table in enumerate(tables):
        stories = stories_of(number + 1)
        for _ in range(25):
            chosen = [rng.choice(stories) for _ in winters.names]
            year = winters.pruned([one[:-1] for one in chosen], [one[-1] for one in chosen])
            at, before = 0, 0
            for story in chosen:
                at = at * len(stories) + stories.index(story)
                before = before * len(stories) // 2 + stories_of(number).index(story[:-1])
            assert table.scores[at] == year.score
            assert table.best_lost[before] == year.plan_lost
            pieces = [
                charge
                for name, story in zip(winters.names, chosen, strict=True)
                for charge in charges_at(winters, name, story)
            ]
            assert lost(pieces) + lost(table.rests[table.rest[at]]) == lost(year.charges)


def test_a_vine_with_many_positions_has_no_table(
    winters: Winters, profile_and_case: Settled
) -> None:
    profile, case = profile_and_case
    (arm,) = case.vine.arms
    more = replace(arm.positions[0], name="R5", at_mm=560)
    larger = replace(case.vine, arms=(replace(arm, positions=(*arm.positions, more)),))
    assert winter_tables(Winters(replace(case, vine=larger), profile), profile) == ()


@pytest.mark.parametrize(
    ("bytes_lost", "made", "why"),
    [(0, 0, "kept whole, they are looked up"), (40, 1, "half a file is no table")],
)
def test_tables_are_kept_and_spoilt_ones_made_anew(
    profile_and_case: Settled, tmp_path: Path, bytes_lost: int, made: int, why: str
) -> None:
    profile, case = profile_and_case
    arm = case.vine.arms[0]
    small = replace(case.vine, arms=(replace(arm, positions=arm.positions[:1]),))
    winters = Winters(replace(case, vine=small), profile)
    before = kept.folder()
    kept.keep_in_folder(tmp_path)
    try:
        first = winter_tables(winters, profile)
        (file,) = (path for path in tmp_path.rglob("*") if path.is_file())
        data = file.read_bytes()
        file.write_bytes(data[: len(data) - bytes_lost])
        times = kept.times_made()
        assert winter_tables(winters, profile) == first, why
        assert kept.times_made() - times == made, why
    finally:
        kept.keep_in_folder(before)


@pytest.fixture
def workshop(
    tmp_path_factory: pytest.TempPathFactory,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> Workshop:
    root = make_workshop(tmp_path_factory.mktemp("years"), "four-spurs", "tidy-vine")
    return Workshop(root, capsys, monkeypatch)


def test_the_command_prints_what_is_proved(workshop: Workshop, winters: Winters) -> None:
    ran = workshop.run("winters", "four-spurs", "--json")
    assert ran.status == 0
    told = json.loads(ran.out)
    for stays in Stays:
        years = winters.by_habit(stays)
        assert [row["climb_mm"] for row in told[str(stays)]] == [one.climb_mm for one in years]
        assert [row["score"] for row in told[str(stays)]] == [one.score for one in years]
    lines = workshop.run("winters", "four-spurs", "--language", "es").out.splitlines()
    assert len(lines) == 2 * (WINTERS + 1)
    assert lines[0] == "Queda el sarmiento cercano al brazo"


@pytest.mark.parametrize(
    ("points", "en", "es"),
    [
        pytest.param(0, None, None, id="what costs nothing is not spoken of"),
        pytest.param(
            1,
            "vine loses 1 point, and the score does not count it.",
            "invierno pierde 1 punto, y el puntaje no lo cuenta.",
            id="one is one",
        ),
        pytest.param(
            27,
            "vine loses 27 points, and the score does not count them.",
            "invierno pierde 27 puntos, y el puntaje no los cuenta.",
            id="several",
        ),
    ],
)
def test_the_command_speaks_of_a_loss_where_there_is_one(
    points: int,
    en: str | None,
    es: str | None,
    workshop: Workshop,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    true = Winters.by_habit

    def by_habit(self: Winters, stays: Stays) -> tuple[PrunedWinter, ...]:
        return tuple(replace(year, plan_lost=points) for year in true(self, stays))

    monkeypatch.setattr(Winters, "by_habit", by_habit)
    for language, said, verb in (("en", en, "loses"), ("es", es, "pierde")):
        ran = workshop.run("winters", "four-spurs", "--language", language)
        rows = [line for line in ran.out.splitlines() if line.startswith("  ")]
        assert len(rows) == 2 * WINTERS
        for row in rows:
            assert row.endswith(".")
            assert row.endswith(said) if said else verb not in row


def test_any_case_can_be_followed(workshop: Workshop) -> None:
    assert workshop.run("winters", "tidy-vine").status == 0
    unknown = workshop.run("winters", "tidy-vines")
    assert unknown.status == 2
    assert "tidy-vine" in unknown.err


def test_the_case_file_keeps_the_wish(profile_and_case: Settled) -> None:
    assert "three winters: true" in write_case(profile_and_case[1], "en").splitlines()
