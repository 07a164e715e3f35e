"""Vines of every size that a file may hold: from one thin cane to sixty positions full of wood.

They are written as the `vine:` block of a rule example, every value within the reader's bounds, so
that most of them are taken and all that follows (sheet, plan, drawing, proofs) has to cope.
"""

from __future__ import annotations

import random
from collections.abc import Iterator


def grown_example(rng: random.Random) -> bytes:
    """The text of a `good.yml` with such a vine."""
    return "\n".join(_lines(rng)).encode("utf-8") + b"\n"


def full_example(rng: random.Random, pieces: tuple[int, int], length_mm: int) -> bytes:
    """The text of such a file with sixty positions, and at each so many pieces, from and to."""
    rows = list(_frame(900, 2100, 35, dict.fromkeys(("left", "right"), length_mm)))
    for side in ("left", "right"):
        for number, at_mm in enumerate(sorted(rng.sample(range(1, length_mm + 1), 30)), start=1):
            rows += [f"    - position: {side[0].upper()}{number}", f"      at: {at_mm} mm"]
            rows += ["      wood:", *_wood(rng, rng.randint(*pieces), 35)]
    return "\n".join(rows).encode("utf-8") + b"\n"


def _frame(cordon_mm: int, trimmed_mm: int, arm_mm: int, arms_mm: dict[str, int]) -> Iterator[str]:
    """Everything above the positions."""
    yield 'caption: {en: "A vine", es: "Una cepa"}'
    yield "vine:"
    yield f"  form: {'two' if len(arms_mm) == 2 else 'one'}-arm cordon"
    yield "  trunk thickness: 500 mm"
    yield f"  cordon height: {cordon_mm} mm"
    yield f"  wires: {{fruiting: {cordon_mm} mm, catch: [], top: {cordon_mm + 900} mm}}"
    yield f"  trimmed at: {trimmed_mm} mm"
    arms = (f"{side}: {{length: {mm} mm, thickness: {arm_mm} mm}}" for side, mm in arms_mm.items())
    yield f"  arms: {{{', '.join(arms)}}}"
    yield "  positions:"


def _lines(rng: random.Random) -> Iterator[str]:
    two_arms = rng.random() < 0.8
    cordon_mm = rng.choice((100, 300, 900, 900, 900, 3000))
    length_mm = rng.choice((100, 500, 900, 1500, 15_000))
    arm_mm = rng.choice((5, 35, 35, 300))
    trimmed_mm = rng.choice((cordon_mm + 1, cordon_mm + 1200, 5000))
    sides = ("left", "right") if two_arms else (rng.choice(("left", "right")),)
    yield from _frame(cordon_mm, trimmed_mm, arm_mm, dict.fromkeys(sides, length_mm))
    most = min(rng.choice((1, 2, 4, 7, 7, 15, 30)), length_mm // 2)
    pieces = rng.choice((1, 1, 2, 3, 12))
    for side in sides:
        places = sorted(rng.sample(range(1, length_mm + 1), most))
        for number, at_mm in enumerate(places, start=1):
            yield f"    - position: {side[0].upper()}{number}"
            yield f"      at: {at_mm} mm"
            yield "      wood:"
            yield from _wood(rng, rng.randint(1, pieces), arm_mm)


def _wood(rng: random.Random, many: int, arm_mm: int) -> Iterator[str]:
    old: list[tuple[str, int, int, int]] = []
    for number in range(many):
        letter = "abcdefghijklmnop"[number]
        below = rng.choice([None, *old]) if old else None
        if rng.random() < 0.4 and (below is None or below[1] > 2):
            age = rng.choice((2, 3, 9, 150)) if below is None else rng.randint(2, below[1] - 1)
            length_mm = rng.choice((5, 20, 60, 300, 3000))
            thickness_mm = min(rng.choice((2, 14, 40, 250)), below[3] if below else arm_mm)
            old.append((letter, age, length_mm, thickness_mm))
            facts = f"old: {letter}, age: {age} years, length: {length_mm} mm"
        else:
            buds = rng.choice((1, 2, 5, 9, 20, 60))
            internode_mm = rng.choice((5, 30, 70, 120, 250))
            thickness_mm = min(rng.choice((1, 4, 8, 12, 50)), below[3] if below else arm_mm)
            facts = f"cane: {letter}, buds: {buds}, internode: {internode_mm} mm"
        condition = rng.choice(
            ("sound", "sound", "sound", "spindly", "diseased", "dead", "injured")
        )
        lean = rng.choice(("up", "up", "out", "in", "down"))
        joint = f", from: {below[0]}, up: {rng.randint(1, below[2])} mm" if below else ""
        yield (
            f"        - {{{facts}{joint}, thickness: {thickness_mm} mm, condition: {condition},"
            f" lean: {lean}}}"
        )
