"""Workers stay for all that one crew is handed, and are gone after it."""

import os

import pytest

from pencilwood import kept
from pencilwood.site import workers
from pencilwood.site.workers import CORES, PATIENCE, one_crew, spread

MANY = range(PATIENCE + 24)


def who(number: int) -> tuple[int, int]:
    """A piece of work, and who did it."""
    return number, int(kept.kept_text("who", number, lambda: str(os.getpid())))


def give_up(number: int) -> tuple[int, int]:
    """Work at which every worker dies, as one does for which there is no memory."""
    if os.environ[CORES] == "1":
        os._exit(1)
    return who(number)


@pytest.fixture(autouse=True)
def two_cores(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(CORES, "2")
    monkeypatch.setattr(kept, "_folder", None)


def helpers(done: list[tuple[int, int]]) -> set[int]:
    assert [number for number, _ in done] == list(MANY)
    return {process for _, process in done} - {os.getpid()}


def test_one_crew_does_all_that_is_handed_out() -> None:
    with one_crew():
        first, second = helpers(spread(who, MANY)), helpers(spread(who, MANY))
    assert first
    assert len(first | second) <= 2
    assert workers._crew is None


def test_without_a_crew_workers_end_with_their_work() -> None:
    first, second = helpers(spread(who, MANY)), helpers(spread(who, MANY))
    assert first
    assert not first & second


def test_work_is_done_here_where_workers_die_and_others_are_called_after_it() -> None:
    with one_crew():
        assert not helpers(spread(give_up, MANY))
        assert helpers(spread(who, MANY))
