"""Practice vines: grown alike everywhere, plausible, proved, small, and kept between builds."""

import json
import random
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from pencilwood import kept
from pencilwood.cases.case import LEVELS, Level, Profile
from pencilwood.pages.practice_page import LARGEST_BYTES, practice_files, practice_vine
from pencilwood.places import Place
from pencilwood.proof.luck import habits, random_states, wilson
from pencilwood.proof.practice_proof import TRIES, PracticeProof, prove_practice
from pencilwood.quiz import practice_wood
from pencilwood.quiz.practice_vines import LAYOUTS, TROUBLES, grow
from pencilwood.rules import BANDS
from pencilwood.score.lookup import LookUp
from pencilwood.site import practice, workers
from pencilwood.vine.bands import default_limits
from pencilwood.vine.model import Piece, Vine
from pencilwood.vine.wood import divide

PROFILE = Profile("Test", ("en", "es"), "metric", default_limits(BANDS), 80, Place("profile.yml"))
SEEDS = [(level, number) for level in LEVELS for number in range(12)]


def vine(level: Level, number: int) -> Vine:
    return grow(f"{level}/{number}", level)


def proved() -> list[PracticeProof]:
    found = [prove_practice(vine(*seed), PROFILE, "seed") for seed in SEEDS[::4]]
    return [one for one in found if one is not None]


def test_the_same_seed_grows_the_same_vine() -> None:
    assert vine("hard", 3) == vine("hard", 3)
    assert vine("hard", 3) != vine("hard", 4)


@pytest.mark.parametrize(("level", "number"), SEEDS)
def test_a_vine_could_have_been_measured(level: Level, number: int) -> None:
    grown = vine(level, number)
    assert grown.trunk_thickness_mm > max(arm.thickness_mm for arm in grown.arms)
    for arm in grown.arms:
        at = [position.at_mm for position in arm.positions]
        assert at == sorted(set(at))
        assert at[0] > 0
        assert at[-1] < arm.length_mm
        initial = arm.side[0].upper()
        names = [position.name for position in arm.positions]
        assert names == [f"{initial}{n}" for n in range(1, len(at) + 1)]
        for position in arm.positions:
            check_wood({piece.letter: piece for piece in position.pieces}, arm.thickness_mm)


def check_wood(pieces: dict[str, Piece], arm_mm: int) -> None:
    for piece in pieces.values():
        assert (piece.buds > 0) == piece.is_cane
        if piece.grows_from is None:
            assert piece.thickness_mm < arm_mm
            assert piece.at_mm == 0
            continue
        below = pieces[piece.grows_from]
        assert piece.age_years < below.age_years
        assert piece.thickness_mm < below.thickness_mm
        assert 0 < piece.at_mm <= below.length_mm


@pytest.mark.parametrize("name", TROUBLES)
def test_every_trouble_can_grow(name: str) -> None:
    chance = random.Random(name)
    for _ in range(40):
        pieces = {piece.letter: piece for piece in TROUBLES[name](chance)}
        check_wood(pieces, 60)
        assert any(piece.is_cane for piece in pieces.values())


def test_layouts_and_troubles_have_names_of_their_own() -> None:
    assert set(LAYOUTS).isdisjoint(TROUBLES)
    assert practice_wood.from_arm(random.Random(1))[0].is_cane


def test_a_proved_vine_cannot_be_passed_unlearned() -> None:
    found = proved()
    assert len(found) >= 6
    for one in found:
        look_up, lost = LookUp(one.sheet), one.plan.lost
        chance = random.Random("another seed")
        tried = [*habits(one.parts).values()]
        assert all(look_up.score(states, lost, 80) < 80 for states in tried)
        lucky = sum(
            look_up.score(random_states(one.parts, chance), lost, 80) >= 80 for _ in range(200)
        )
        assert lucky <= 2
        assert look_up.score(one.plan.left.states, lost, 80) == 100
        assert one.teaches


def test_no_pass_in_so_many_tries_means_less_than_one_percent() -> None:
    assert wilson(0, TRIES)[1] < 0.01


def test_a_vine_that_any_pruning_passes_is_not_given_out() -> None:
    # With a pass mark of nothing everybody passes.
    assert prove_practice(vine("easy", 0), replace(PROFILE, pass_mark=0), "seed") is None


def test_a_script_is_small_and_calls_one_function() -> None:
    for number, one in enumerate(proved()):
        made = practice_vine(f"hard-{number:03}", "hard", one, 80)
        assert made is not None
        assert len(made.script.encode()) <= LARGEST_BYTES
        assert made.script.startswith("pencilwoodPractice({")
        body = json.loads(made.script[len("pencilwoodPractice(") : -len(");\n")])
        assert body["name"] == f"hard-{number:03}"
        assert len(body["vine"]["shapes"]) == len(body["sheet"]["pieces"]) == len(one.parts.parts)
        assert body["plan"]["states"] == list(one.plan.left.states)
        assert len(body["plan"]["cuts"]) == len(one.plan.cuts)


def few(number: int) -> Profile:
    return replace(PROFILE, practice_vines=number)


def test_as_many_vines_as_the_profile_asks_for() -> None:
    assert practice.grow_practice(few(0)) == ()
    grown = practice.grow_practice(few(4))
    assert [one.name for one in grown] == ["easy-001", "middling-001", "hard-001", "easy-002"]
    files = practice_files(grown)
    assert set(files) == {f"assets/pencilwood/practice/{one.name}.js" for one in grown}


@pytest.fixture
def kept_here(tmp_path: Path) -> Iterator[Path]:
    """A folder of its own for what is kept."""
    before = kept.folder()
    kept.keep_in_folder(tmp_path / "kept")
    yield tmp_path / "kept" / "practice"
    kept.keep_in_folder(before)


def test_vines_are_kept_from_one_build_to_the_next(
    kept_here: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    grown = practice.grow_practice(few(2))
    assert len(list(kept_here.iterdir())) == 2

    def never(*_: object) -> None:
        raise AssertionError("grown again")

    with monkeypatch.context() as patch:
        patch.setattr(practice, "prove_practice", never)
        assert practice.grow_practice(few(2)) == grown
    # Another figure, another name: old vines are of no use any more.
    other = replace(few(2), limits={**PROFILE.limits, "head zone": 50})
    practice.grow_practice(other)
    assert len(list(kept_here.iterdir())) == 4


def test_damaged_vines_are_grown_again(kept_here: Path) -> None:
    grown = practice.grow_practice(few(1))
    [entry] = kept_here.iterdir()
    whole = entry.read_bytes()
    for damage in (b"", b"[{", whole[: len(whole) // 2], b"\0" + whole[1:]):
        entry.write_bytes(damage)
        assert practice.grow_practice(few(1)) == grown
        assert entry.read_bytes() == whole


def test_the_same_vines_from_one_core_and_from_two(monkeypatch: pytest.MonkeyPatch) -> None:
    before = kept.folder()
    kept.keep_in_folder(None)
    try:
        monkeypatch.setattr(workers, "PATIENCE", 0)
        monkeypatch.setenv(workers.CORES, "1")
        alone = practice.grow_practice(few(8))
        monkeypatch.setenv(workers.CORES, "2")
        assert practice.grow_practice(few(8)) == alone
    finally:
        kept.keep_in_folder(before)


def test_figures_that_leave_no_room_give_fewer_vines() -> None:
    assert practice.grow_practice(replace(few(3), pass_mark=0)) == ()


def test_parts_of_every_vine_have_names_of_their_own() -> None:
    for seed in SEEDS:
        names = [part.name for part in divide(vine(*seed)).parts]
        assert len(names) == len(set(names))
