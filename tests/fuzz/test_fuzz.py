"""A short run of changed files on every reader, the same each time; `make fuzz` is the long one."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from fuzz.ground import ground
from fuzz.long_run import inputs
from fuzz.readers import Kind, kind_named, kinds
from fuzz.trees import Tree, write_tree
from fuzz.trial import try_file, wrong_with
from pencilwood.findings import Finding
from pencilwood.places import Place

SEED = 20
EACH = 1000
USED_EACH = 50
KEYS = st.sampled_from(
    (
        *("case", "title", "en", "es", "vine", "arms", "left", "positions", "at", "wood", "cane"),
        *("quiz", "questions", "notes", "blocks", "figures", "bands", "languages", "source"),
        *("value", "word"),
    )
)
TEXTS = st.one_of(KEYS, st.text(max_size=8), st.from_regex(r"[0-9]{1,4} ?(mm|cm|in)?"))
TREES = st.recursive(
    TEXTS,
    lambda inner: st.one_of(
        st.lists(inner, max_size=4).map(lambda items: ["list", *items]),
        st.lists(st.tuples(KEYS, inner).map(list), max_size=6).map(lambda pairs: ["map", *pairs]),
    ),
    max_leaves=25,
)
YAML = (
    *("case", "example", "quiz", "profile", "blocks", "safety", "sources", "figures", "glossary"),
    "settings",
)


@pytest.mark.slow
@pytest.mark.parametrize("first", [0, EACH])
def test_changed_files(first: int, tmp_path: Path) -> None:
    on = ground()
    troubles, taken = [], 0
    for one in inputs(on, SEED, range(first, first + EACH)):
        use = one.number % USED_EACH == 0
        tried = try_file(one.kind, one.data, tmp_path, on, one.language, use=use)
        taken += tried.accepted
        if tried.trouble:
            troubles.append(f"{one.number} {one.kind.name}: {tried.trouble}")
    assert not troubles
    # Changes that spoil everything would prove nothing of what comes after reading.
    assert EACH / 10 < taken < EACH / 2


@pytest.mark.parametrize("name", YAML)
@settings(
    max_examples=40,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(tree=TREES)
def test_any_tree(name: str, tmp_path: Path, tree: Tree) -> None:
    kind = kind_named(ground(), name)
    data = write_tree(tree, 0.5).encode("utf-8", errors="surrogatepass")
    assert try_file(kind, data, tmp_path, ground(), "en", use=False).trouble == ""


def test_every_kind_is_tried() -> None:
    assert {kind.name for kind in kinds(ground()) if kind.parts} == set(YAML)


def test_what_is_not_as_it_must_be_is_noticed(tmp_path: Path) -> None:
    def read(found: list[Finding], root: Path) -> tuple[object, list[Finding]]:
        return None, found

    def tried(*found: Finding) -> str:
        kind = Kind("x", "x.yml", (), lambda root, *_: read(list(found), root), lambda *_: ())
        return try_file(kind, b"one\ntwo", tmp_path, ground(), "en").trouble

    assert tried() == "neither taken nor refused"
    assert "no such line" in tried(Finding(Place("x.yml", 3), "a", "b"))
    assert "no such column" in tried(Finding(Place("x.yml", 2, 5), "a", "b"))
    assert "another file" in tried(Finding(Place("y.yml"), "a", "b"))
    assert tried(Finding(Place("x.yml", 2, 4), "a", "b")) == ""
    assert wrong_with([Finding(Place("x.yml"), "a", "")], b"", "x.yml")
