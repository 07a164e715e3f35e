"""The largest vines that a file may hold are planned, proved and shown in a bearable time."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from fuzz.ground import ground
from fuzz.grown import full_example, grown_example
from fuzz.readers import kind_named
from fuzz.trial import LONGEST_S, try_file

LARGE = {
    "sixty canes, 592 buds": full_example(random.Random("((1, 1), 900)0"), (1, 1), 900),
    "197 pieces, 2510 buds": full_example(random.Random("((1, 6), 1500)0"), (1, 6), 1500),
    # The bound of the search is loose here, so that many states have to be opened.
    "many prunings that are nearly as good": grown_example(random.Random("g33")),
}


@pytest.mark.slow
@pytest.mark.parametrize("name", LARGE)
def test_a_large_vine_takes_a_few_seconds(name: str, tmp_path: Path) -> None:
    on = ground()
    tried = try_file(kind_named(on, "example"), LARGE[name], tmp_path, on, "en", again=False)
    assert tried.accepted
    assert tried.trouble == ""
    assert tried.took_s < LONGEST_S
