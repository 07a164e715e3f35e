"""Grows the practice vines of a handbook, and keeps them from one build to the next.

Growing and proving two hundred vines takes about half a minute. They depend on nothing but the
profile's figures and on our own code, so they are kept under a name made of both.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path

import pencilwood
from pencilwood.cases.case import Level, Profile
from pencilwood.pages.practice_page import PracticeVine, practice_vine
from pencilwood.proof.practice_proof import prove_practice
from pencilwood.quiz.practice_vines import grow

LEVELS: tuple[Level, ...] = ("easy", "middling", "hard")
MOST_TRIES_FOR_ONE = 20
"""So many vines in a row that no proof lets pass show that the figures leave no room."""


def grow_practice(profile: Profile, cache: Path | None = None) -> tuple[PracticeVine, ...]:
    """As many proved vines as the profile asks for; `cache` keeps them for the next build."""
    if profile.practice_vines == 0:
        return ()
    if cache is None:
        return tuple(_grown(profile))
    kept = cache / f"practice-{fingerprint(profile)}.json"
    vines = _kept(kept)
    if vines is None:
        vines = tuple(_grown(profile))
        _keep(kept, vines)
    return vines


def fingerprint(profile: Profile) -> str:
    """Changes with every figure and every line of code that the vines depend on."""
    made_of = hashlib.sha256()
    settings = [profile.practice_vines, profile.pass_mark, sorted(profile.limits.items())]
    made_of.update(json.dumps(settings).encode())
    folder = Path(pencilwood.__file__).parent
    for path in sorted(folder.rglob("*.py")):
        made_of.update(path.read_bytes())
    return made_of.hexdigest()[:16]


def _grown(profile: Profile) -> Iterator[PracticeVine]:
    for number in range(profile.practice_vines):
        level = LEVELS[number % len(LEVELS)]
        vine = _one(profile, level, number // len(LEVELS) + 1)
        if vine is not None:
            yield vine


def _one(profile: Profile, level: Level, number: int) -> PracticeVine | None:
    """The first vine of this number that passes every proof and is small enough."""
    for attempt in range(MOST_TRIES_FOR_ONE):
        seed = f"{level}/{number}/{attempt}"
        proof = prove_practice(grow(seed, level), profile, seed)
        name = f"{level}-{number:03}"
        vine = proof and practice_vine(name, level, proof, profile.pass_mark)
        if vine:
            return vine
    return None


def _kept(path: Path) -> tuple[PracticeVine, ...] | None:
    """The vines of an earlier build; None when there are none, or the file is damaged."""
    try:
        rows = json.loads(path.read_text(encoding="utf-8"))
        return tuple(PracticeVine(**{**row, "teaches": tuple(row["teaches"])}) for row in rows)
    except (OSError, ValueError, TypeError, KeyError):
        return None


def _keep(path: Path, vines: tuple[PracticeVine, ...]) -> None:
    """Write the vines for the next build; a folder that cannot be written to costs only time."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        for old in path.parent.glob("practice-*.json"):
            old.unlink()
        new = path.with_suffix(".new")
        new.write_text(json.dumps([asdict(one) for one in vines]), encoding="utf-8")
        new.replace(path)
    except OSError:
        return
