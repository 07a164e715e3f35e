"""Tries many thousand changed files on every reader and on all that follows; prints the figures.

    python tests/fuzz/long_run.py --inputs 50000 --seed 1

The same seed tries the same inputs. Whatever does not hold is printed with the number by which
`--only` tries it alone, and kept in a file under `--keep`. Stopped by Ctrl+C it prints the figures
so far, and `--first` with their number of inputs goes on from there.
"""

from __future__ import annotations

import argparse
import os
import random
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))
os.environ.setdefault("PENCILWOOD_CACHE", "off")

from fuzz.ground import Ground, ground
from fuzz.grown import grown_example
from fuzz.mutators import mutate
from fuzz.readers import Kind, kinds
from fuzz.trial import Tried, peak_bytes, try_file

WEIGHTS = {"case": 22, "example": 10, "sheet": 12, "quiz": 10, "chapter": 14, "profile": 8}
_OTHERS = 5
AGAIN_EACH = 4
"""So many are read for one that is read again, to see that the same findings come."""
USED_EACH, EXAMPLE_USED_EACH = 20, 3
"""So many are read for one that is also proved, drawn and shown, if it was taken: that takes a
hundred times as long. Few changed examples are taken, so of them more are used. Grown vines
always are."""
GROWN = 0.002
"""Share of inputs that are vines grown to any size, not changed files."""


@dataclass(frozen=True)
class Input:
    """One file to try."""

    number: int
    kind: Kind
    data: bytes
    language: str
    grown: bool = False


def inputs(on: Ground, seed: int, numbers: range) -> Iterator[Input]:
    """Inputs by their numbers; each follows from the seed and its number alone."""
    every = kinds(on)
    weights = [WEIGHTS.get(kind.name, _OTHERS) for kind in every]
    example = next(kind for kind in every if kind.name == "example")
    for number in numbers:
        rng = random.Random(f"{seed}:{number}")
        language = rng.choice(("en", "es"))
        if rng.random() < GROWN:
            yield Input(number, example, grown_example(rng), language, grown=True)
            continue
        kind = rng.choices(every, weights)[0]
        data = mutate(rng.choice(kind.seeds), rng, parts=kind.parts, others=kind.seeds)
        yield Input(number, kind, data, language)


@dataclass
class Tally:
    """The figures of a run."""

    inputs: int = 0
    accepted: int = 0
    findings: int = 0
    troubles: int = 0
    slowest: tuple[float, int, str] = (0.0, 0, "")
    names: Counter[str] = field(default_factory=Counter)
    kinds: Counter[str] = field(default_factory=Counter)

    def add(self, one: Input, tried: Tried) -> None:
        """Count one input."""
        self.inputs += 1
        self.accepted += tried.accepted
        self.findings += tried.findings
        self.troubles += bool(tried.trouble)
        self.slowest = max(self.slowest, (tried.took_s, one.number, one.kind.name))
        self.names[tried.name] += 1
        self.kinds[f"{one.kind.name} {'taken' if tried.accepted else 'refused'}"] += 1

    def lines(self) -> Iterator[str]:
        """The figures, a line each."""
        yield f"inputs: {self.inputs}, taken: {self.accepted}, findings: {self.findings}"
        yield f"troubles: {self.troubles}, kinds of first finding: {len(self.names)}"
        took_s, number, kind = self.slowest
        yield f"slowest: {took_s:.2f} s ({kind}, number {number})"
        yield f"peak memory: {peak_bytes() // 1_000_000} MB"
        yield ", ".join(f"{name}: {count}" for name, count in sorted(self.kinds.items()))


def run(seed: int, numbers: range, keep: Path) -> Tally:
    """Try the inputs of these numbers, until all are tried or somebody stops it."""
    on, tally = ground(), Tally()
    with tempfile.TemporaryDirectory() as folder, suppress(KeyboardInterrupt):
        for one in inputs(on, seed, numbers):
            each = EXAMPLE_USED_EACH if one.kind.name == "example" else USED_EACH
            use = one.grown or one.number % each == 0
            again = one.number % AGAIN_EACH == 0
            tried = try_file(
                one.kind, one.data, Path(folder), on, one.language, use=use, again=again
            )
            tally.add(one, tried)
            if tried.trouble:
                keep.mkdir(parents=True, exist_ok=True)
                (keep / f"{seed}-{one.number}-{one.kind.name}").write_bytes(one.data)
                print(f"{one.number} {one.kind.name}: {tried.trouble[:1500]}", flush=True)
    return tally


def main() -> int:
    """Read the command line and run."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    parser.add_argument("--inputs", type=int, default=50_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--first", type=int, default=0, help="number of the first input")
    parser.add_argument("--only", type=int, help="try the input of this number alone")
    keep = Path(tempfile.gettempdir()) / "pencilwood-fuzz"
    parser.add_argument("--keep", type=Path, default=keep, help=f"folder of troubles ({keep})")
    given = parser.parse_args()
    first, many = (given.first, given.inputs) if given.only is None else (given.only, 1)
    numbers = range(first, first + many)
    start = time.monotonic()
    tally = run(given.seed, numbers, given.keep)
    print(*tally.lines(), sep="\n")
    print(f"seed: {given.seed}, took: {time.monotonic() - start:.0f} s")
    return 1 if tally.troubles else 0


if __name__ == "__main__":
    sys.exit(main())
