"""Grows the practice vines of a handbook, and keeps them from one build to the next.

Growing and proving two hundred vines takes long. They depend on nothing but the profile's
figures and on our own code, so each is kept under a name made of both; see `pencilwood.kept`.
"""

from __future__ import annotations

import hashlib
import json
from dataclasses import asdict
from functools import cache, partial
from pathlib import Path

import pencilwood
from pencilwood.cases.case import LEVELS, Level, Profile
from pencilwood.kept import is_kept, kept_json
from pencilwood.pages.practice_page import PracticeVine, practice_vine
from pencilwood.proof.practice_proof import prove_practice
from pencilwood.quiz.practice_vines import grow
from pencilwood.site.workers import spread

MOST_TRIES_FOR_ONE = 20
"""So many vines in a row that no proof lets pass show that the figures leave no room."""


def grow_practice(profile: Profile) -> tuple[PracticeVine, ...]:
    """As many proved vines as the profile asks for, or as its figures leave room for."""
    numbers = range(profile.practice_vines)
    one = partial(_numbered, profile)
    new = [number for number in numbers if not is_kept("practice", _facts(profile, number))]
    grown = dict(zip(new, spread(one, new), strict=True))
    vines = (grown[number] if number in grown else one(number) for number in numbers)
    return tuple(vine for vine in vines if vine is not None)


def fingerprint(profile: Profile) -> str:
    """Changes with every figure and every line of code that the vines depend on."""
    settings = [profile.practice_vines, profile.pass_mark, profile.all_limits()]
    return _fingerprint(json.dumps(settings))


@cache
def _fingerprint(settings: str) -> str:
    made_of = hashlib.sha256(settings.encode())
    folder = Path(pencilwood.__file__).parent
    for path in sorted(folder.rglob("*.py")):
        made_of.update(path.read_bytes())
    return made_of.hexdigest()[:16]


def _numbered(profile: Profile, number: int) -> PracticeVine | None:
    """One vine of the row, as an earlier build kept it or grown now."""

    def grown() -> dict[str, object] | None:
        vine = _one(profile, *_place(number))
        return None if vine is None else asdict(vine)

    return _read(kept_json("practice", _facts(profile, number), grown, _fits))


def _place(number: int) -> tuple[Level, int]:
    """The levels take turns, and each counts its own vines."""
    return LEVELS[number % len(LEVELS)], number // len(LEVELS) + 1


def _facts(profile: Profile, number: int) -> list[object]:
    return [*_place(number), profile.pass_mark, profile.all_limits()]


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


def _fits(value: object) -> bool:
    return value is None or _read(value) is not None


def _read(value: object) -> PracticeVine | None:
    match value:
        case {
            "name": str(name),
            "level": "easy" | "middling" | "hard" as level,
            "teaches": [*teaches],
            "script": str(script),
        } if all(isinstance(rule, str) for rule in teaches):
            return PracticeVine(name, level, tuple(teaches), script)
    return None
