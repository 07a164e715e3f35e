"""What is kept between builds: found again, never out of date, never trusted when damaged."""

import gc
import os
import time
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from pencilwood import kept
from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.vine.wood import divide
from vines import climbing_vine


@pytest.fixture
def here(tmp_path: Path) -> Iterator[Path]:
    before = kept.folder()
    kept.keep_in_folder(tmp_path)
    yield tmp_path
    kept.keep_in_folder(before)


def never() -> str:
    raise AssertionError("worked out again")


def test_a_text_is_made_once(here: Path) -> None:
    assert kept.kept_text("text", ["a", 1], lambda: "Ñ<svg>") == "Ñ<svg>"
    assert kept.is_kept("text", ["a", 1])
    assert kept.kept_text("text", ["a", 1], never) == "Ñ<svg>"


@pytest.mark.parametrize("other", [["a", 2], ["a", 1, None], ["b", 1], ["a", "1"], {"a": 1}])
def test_other_facts_other_entry(here: Path, other: object) -> None:
    kept.kept_text("text", ["a", 1], lambda: "one")
    assert kept.kept_text("text", other, lambda: "other") == "other"


def test_every_measurement_of_a_vine_changes_its_name() -> None:
    vine = climbing_vine()
    names = {
        kept.key_of("drawing", one)
        for one in (
            vine,
            replace(vine, trunk_thickness_mm=vine.trunk_thickness_mm + 1),
            replace(vine, cordon_height_mm=vine.cordon_height_mm + 1),
            replace(vine, arms=vine.arms[:1]),
        )
    }
    assert len(names) == 4


def test_other_code_other_entry(here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    kept.kept_text("text", 1, lambda: "old")
    monkeypatch.setattr(kept, "_code", lambda: "edited")
    assert kept.kept_text("text", 1, lambda: "new") == "new"


def test_what_has_no_fixed_name_is_refused() -> None:
    with pytest.raises(TypeError, match="object"):
        kept.key_of("text", object())


def test_a_damaged_entry_is_made_anew(here: Path) -> None:
    kept.kept_text("text", 1, lambda: "whole " * 50)
    [entry] = (here / "text").iterdir()
    whole = entry.read_bytes()
    for damage in (
        b"",
        b"x",
        whole[: len(whole) // 2],
        whole[:40] + b"x" + whole[41:],
        whole[::-1],
    ):
        entry.write_bytes(damage)
        assert kept.kept_text("text", 1, lambda: "whole " * 50) == "whole " * 50
        assert entry.read_bytes() == whole
    entry.unlink()
    entry.mkdir()
    assert kept.kept_text("text", 1, lambda: "anyway") == "anyway"


def test_a_value_that_does_not_fit_is_worked_out_anew(here: Path) -> None:
    assert kept.kept_json("row", 1, lambda: [1], lambda _: True) == [1]
    assert kept.kept_json("row", 1, lambda: {"a": 1}, lambda value: value == {}) == {"a": 1}
    assert kept.kept_json("row", 1, lambda: "new", lambda value: isinstance(value, dict)) == {
        "a": 1
    }


def test_a_folder_that_cannot_be_written_to_costs_only_time(tmp_path: Path) -> None:
    blocked = tmp_path / "a-file"
    blocked.write_text("in the way", encoding="utf-8")
    before = kept.folder()
    kept.keep_in_folder(blocked)
    try:
        assert kept.kept_text("text", 1, lambda: "made") == "made"
        kept.forget_old()
    finally:
        kept.keep_in_folder(before)
    assert blocked.read_text(encoding="utf-8") == "in the way"


def test_where_entries_are_kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = kept.folder()
    try:
        monkeypatch.delenv(kept.WHERE, raising=False)
        assert kept.keep_in(tmp_path) == tmp_path.resolve() / ".pencilwood-cache"
        monkeypatch.setenv(kept.WHERE, str(tmp_path / "there"))
        assert kept.keep_in(tmp_path) == tmp_path.resolve() / "there"
        monkeypatch.setenv(kept.WHERE, "off")
        assert kept.keep_in(tmp_path) is None
        assert kept.kept_text("text", 1, lambda: "a") + kept.kept_text("text", 1, lambda: "b") == (
            "ab"
        )
    finally:
        kept.keep_in_folder(before)
    assert list(tmp_path.iterdir()) == []


def test_only_old_entries_go(here: Path) -> None:
    for number in (1, 2):
        kept.kept_text("text", number, lambda: "a")
    entries = sorted((here / "text").iterdir())
    stranger = here / "text" / "notes.txt"
    stranger.write_text("not ours", encoding="utf-8")
    long_ago = time.time() - 100 * 86_400
    for path in (entries[0], stranger):
        os.utime(path, (long_ago, long_ago))
    kept.forget_old()
    assert sorted((here / "text").iterdir()) == sorted([entries[1], stranger])


def test_a_kept_drawing_has_the_bytes_of_a_fresh_one(here: Path) -> None:
    parts = divide(climbing_vine())

    def drawn() -> str:
        return draw_vine(
            WoodShown(parts, cutpoints=True), Paper("p<", "es", title="t", description="d")
        )

    fresh, again = drawn(), drawn()
    kept.keep_in_folder(None)
    assert fresh == again == drawn()


def test_a_fact_is_named_once_and_the_same_fact_alike(
    here: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    vine, same, other = climbing_vine(), climbing_vine(), climbing_vine()
    other = replace(other, cordon_height_mm=other.cordon_height_mm + 1)
    name = kept.name_of(vine)
    assert kept.name_of(same) == name != kept.name_of(other)
    with monkeypatch.context() as patched:
        patched.setattr(kept, "key_of", never)
        assert kept.name_of(vine) == name
    # Nothing is held for a fact that is gone: another one may stand at its place in memory.
    number = id(other)
    del other
    gc.collect()
    assert number not in kept._names
