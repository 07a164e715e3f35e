"""The long proofs of a case are kept: found again whole, and never taken when they do not fit."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import pytest

from case_files import usual_tool
from pencilwood import kept
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.profile_file import read_profile
from pencilwood.proof.luck import TRIES
from pencilwood.proof.worked import ToWorkOut, Worked, work_out
from pencilwood.rules import BANDS, FORM_BANDS, RULE_BY_NAME
from pencilwood.score.judge import target_for
from pencilwood.score.sheet import Sheet, compile_sheet
from pencilwood.vine.wood import divide

CONTENT = Path(__file__).resolve().parents[2] / "content"
NOTES = ("eyes", "hand-shears", "loppers", "saw", "cold", "first-aid", "bent-canes")
Row = list[Any]


@dataclass
class Kept:
    """A case that was worked out once, and the file where that is kept."""

    given: ToWorkOut
    first: Worked
    file: Path
    whole: bytes
    asked: list[str]

    def again(self, **other: Any) -> Worked:
        """Work it out once more, with some facts changed."""
        self.asked.clear()
        return work_out(replace(self.given, **other))

    @contextmanager
    def changed(self, change: Callable[[Row], object]) -> Iterator[None]:
        """Another row in its place for a while, sealed as all that is kept."""
        row = json.loads(str(kept._read(self.file)))
        before = json.dumps(row)
        change(row)
        assert json.dumps(row) != before
        kept._write(self.file, json.dumps(row, ensure_ascii=False))
        yield
        self.file.write_bytes(self.whole)


@pytest.fixture(scope="module", params=["tidy-vine", "two-new-canes"])
def once(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Kept]:
    profile, _ = read_profile(CONTENT / "profile.yml", BANDS, form_bands=FORM_BANDS)
    assert profile is not None
    path = CONTENT / f"cases/{request.param}.yml"
    case, found = read_case(
        path, CaseSurroundings(profile.languages, list(RULE_BY_NAME), NOTES, usual_tool), path.name
    )
    assert case is not None, [one.render() for one in found]
    own, parts, asked = profile.limits_of(case.vine.form), divide(case.vine), list[str]()
    target = target_for(case.vine, own, case.target_buds)

    def sheet() -> Sheet:
        asked.append(case.slug)
        return compile_sheet(parts, own, target)

    folder = tmp_path_factory.mktemp("kept")
    before = kept.folder()
    kept.keep_in_folder(folder)
    given = ToWorkOut(case, profile, parts, own, target, sheet)
    first = work_out(given)
    (file,) = (one for one in folder.rglob("*") if one.is_file())
    yield Kept(given, first, file, file.read_bytes(), asked)
    kept.keep_in_folder(before)


def test_all_of_it_is_found_again(once: Kept) -> None:
    assert once.again() == once.first
    assert once.asked == []
    assert json.loads(once.first.sheet_text)["case"] == once.given.case.slug
    assert any(cut.reasons for cut in once.first.plan.cuts)


def test_other_facts_are_worked_out_anew(once: Kept) -> None:
    given = once.given
    (arm, *arms) = given.case.vine.arms
    thicker = replace(
        given.case.vine, arms=(replace(arm, thickness_mm=arm.thickness_mm + 1), *arms)
    )
    changes: dict[str, dict[str, Any]] = {
        "pass mark": {"profile": replace(given.profile, pass_mark=81)},
        "figures": {
            "limits": {**given.limits, "large wound from": given.limits["large wound from"] + 1}
        },
        "target": {"target": replace(given.target, most=given.target.most + 1)},
        "rules taught": {"case": replace(given.case, teaches=given.case.teaches[:1])},
        "vine": {"case": replace(given.case, vine=thicker)},
        "name": {"case": replace(given.case, slug="another-vine")},
    }
    for told, change in changes.items():
        once.again(**change)
        assert len(once.asked) == 1, told
        once.again(**change)
        assert once.asked == [], told


def _set(*path: int, to: object) -> Callable[[Row], None]:
    def change(row: Row) -> None:
        *above, last = path
        for step in above:
            row = row[step]
        row[last] = to

    return change


SPOILT: dict[str, Callable[[Row], object]] = {
    "a state is missing": lambda row: row[0].pop(),
    "a state too many": lambda row: row[0].append(0),
    "more buds than the cane has": _set(0, 0, to=999),
    "fewer than none": _set(0, 0, to=-1),
    "a state in words": _set(0, 0, to="1"),
    "half a state": _set(0, 0, to=0.5),
    "a charge that is none": lambda row: row[1].append(["spur-too-long"]),
    "a charge without a list": lambda row: row[1].append("spur-too-long"),
    "points in words": lambda row: row[1].append(["a", "b", "5", False, {}, []]),
    "a cut without reasons": lambda row: row[2].pop(),
    "reasons of no cut": lambda row: row[2].append([]),
    "reasons in words": _set(2, 0, to="spur-too-long"),
    "a lesson is missing": lambda row: row[3].pop(),
    "a lesson too many": lambda row: row[3].append(row[3][0]),
    "a lesson in words": _set(3, 0, to="spur-too-long"),
    "a lesson that is half told": lambda row: row[3][0].pop(),
    "a lesson's score in words": _set(3, 0, 1, to="79"),
    "a habit is missing": lambda row: row[4].popitem(),
    "a habit that nobody has": lambda row: row[4].update({"leave-it": 3}),
    "a habit's score in words": lambda row: row[4].update(dict.fromkeys(row[4], "3")),
    "fewer passes than none": _set(5, to=-1),
    "more passes than tries": _set(5, to=TRIES + 1),
    "passes in words": _set(5, to="0"),
    "a sheet that is no text": _set(6, to={}),
    "no list of rules": _set(7, to="spur-too-long"),
    "a part is missing": lambda row: row.pop(),
    "a part too many": lambda row: row.append(0),
}


@pytest.mark.parametrize("spoilt", SPOILT)
def test_an_entry_that_does_not_fit_is_worked_out_anew(once: Kept, spoilt: str) -> None:
    with once.changed(SPOILT[spoilt]):
        assert once.again() == once.first
        assert len(once.asked) == 1
        assert once.file.read_bytes() == once.whole


@pytest.mark.parametrize("passes", [1, TRIES])
def test_as_many_passes_as_there_can_be_are_taken(once: Kept, passes: int) -> None:
    with once.changed(_set(5, to=passes)):
        assert once.again().luck.passes == passes
        assert once.asked == []
