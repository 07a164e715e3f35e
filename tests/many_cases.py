"""A handbook of any number of vines, all different, for the benchmarks.

The vines are grown by chance from the wood that trainers meet in the row. Each becomes a case file
as `pencilwood case` would write it, and only those stay that pass every proof of `pencilwood
check`. The same number gives the same file on every machine.
"""

from __future__ import annotations

import shutil
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from functools import cache
from itertools import cycle, islice, product
from pathlib import Path
from typing import Any

import yaml

from case_files import usual_tool
from pencilwood.cases.case import LEVELS, Case, Profile
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.case_writer import write_case
from pencilwood.cases.profile_file import read_profile
from pencilwood.cases.safety_file import read_safety
from pencilwood.findings import has_errors
from pencilwood.proof import prove_case
from pencilwood.proof.draft import draft_case
from pencilwood.quiz.practice_vines import grow
from pencilwood.rules import BANDS, RULE_BY_NAME

PROJECT = Path(__file__).resolve().parent.parent
MOST_TRIES = 40
"""So many vines in a row that no proof lets pass show that something else is wrong."""

LOOKS = ("crooked", "leaning", "low", "lonely", "mossy", "narrow", "old", "quiet", "rough",
         "shady", "slender", "sturdy", "sunny", "tall", "twisted", "wide", "windy",
         "young")  # fmt: skip
PLACES = ("at the gate", "behind the shed", "beside the ditch", "by the oak", "by the pump",
          "by the wall", "in the dip", "in the first row", "in the last row", "near the house",
          "near the road", "on stony ground", "on the bank", "on the corner", "on the slope",
          "under the hill", "under the wires", "where the fog lies")  # fmt: skip
STORIES = (
    "{positions} places carry wood here, {canes} canes in all. Keep {target_least} to "
    "{target_most} buds.",
    "Nobody has thinned this vine: {canes} canes on {positions} places. It should carry "
    "{target_least} to {target_most} buds. Look along both arms first.",
    "The arms measure {arm_length} together. Leave {target_least} to {target_most} buds, none of "
    "them far from the arm.",
    "Count before you cut: {buds_before} buds stand here and {target_least} to {target_most} may "
    "stay. Work pass by pass.",
)


def make_handbook(root: Path, cases: int, cores: int) -> Path:
    """A handbook of one language with so many cases; files that are there already stay."""
    folder = root / "content" / "cases"
    folder.mkdir(parents=True, exist_ok=True)
    _copy_the_rest(root)
    wanted = set(range(cases))
    for path in folder.glob("*.yml"):
        if int(path.stem.rpartition("-")[2]) not in wanted:
            path.unlink()
    new = [number for number in sorted(wanted) if not (folder / f"{slug_of(number)}.yml").exists()]
    with ProcessPoolExecutor(cores) as pool:
        list(pool.map(_write_one, [root] * len(new), new, chunksize=8))
    return root


def slug_of(number: int) -> str:
    """The short name of a case."""
    return f"vine-{number:05}"


def _copy_the_rest(root: Path) -> None:
    """The demo's profile in one language, its safety notes and the vines of its rules."""
    content = root / "content"
    for folder in ("safety", "rules"):
        for path in sorted((PROJECT / "content" / folder).rglob("*.yml")):
            copy = root / path.relative_to(PROJECT)
            copy.parent.mkdir(parents=True, exist_ok=True)
            read = yaml.safe_load(path.read_text("utf-8"))
            copy.write_text(yaml.safe_dump(_in_english(read), sort_keys=False), "utf-8")
    profile = (PROJECT / "content" / "profile.yml").read_text("utf-8")
    profile = profile.replace("languages: [en, es]", "languages: [en]")
    profile = profile.replace("practice vines: 200", "practice vines: 0")
    (content / "profile.yml").write_text(profile, "utf-8")
    (content / "chapters" / "en").mkdir(parents=True, exist_ok=True)
    (content / "chapters" / "en" / "home.md").write_text(
        "# Many vines\n\nPrune them all.\n", "utf-8"
    )
    shutil.copy(PROJECT / "mkdocs.yml", root / "mkdocs.yml")


def _in_english(value: Any) -> Any:
    """The same without its Spanish: a handbook may hold only the languages it names."""
    if isinstance(value, dict):
        return {key: _in_english(one) for key, one in value.items() if key != "es"}
    return [_in_english(one) for one in value] if isinstance(value, list) else value


def _write_one(root: Path, number: int) -> None:
    """The first vine of this number that passes every proof."""
    profile, names = _settings(root)
    for attempt in range(MOST_TRIES):
        text = _drafted(profile, names, number, attempt)
        path = root / "content" / "cases" / f"{slug_of(number)}.yml"
        path.write_text(text, "utf-8")
        case, findings = read_case(
            path, CaseSurroundings(profile.languages, list(RULE_BY_NAME), names, usual_tool)
        )
        if case is not None and not findings and not has_errors(prove_case(case, profile).findings):
            return
        path.unlink()
    raise SystemExit(f"vine {number}: nothing that was grown passes the proofs")


@cache
def _settings(root: Path) -> tuple[Profile, tuple[str, ...]]:
    profile, found = read_profile(root / "content" / "profile.yml", BANDS, "profile")
    if profile is None:
        raise SystemExit("\n".join(one.render() for one in found))
    notes, _ = read_safety(root / "content" / "safety" / "notes.yml", profile.languages, "notes")
    return profile, tuple(note.name for note in notes)


def _drafted(profile: Profile, names: Sequence[str], number: int, attempt: int) -> str:
    level = LEVELS[number % len(LEVELS)]
    look, place = next(islice(cycle(product(LOOKS, PLACES)), number * 7, None))
    title = {"en": f"The {look} vine {place}"}
    vine = grow(f"many/{number}/{attempt}", level)
    drafted = draft_case(vine, profile, slug_of(number), title, names, level=level)
    story = {"en": STORIES[number % len(STORIES)]}
    case: Case = replace(drafted, story=story, author={"en": "the Larkfell training crew"})
    return write_case(case, "en")
