"""How long the plan of a large vine takes, beside a general solver on the same vines.

Run with `make bench`. Prints medians over a few vines of 40 positions with three canes each.
"""

from __future__ import annotations

import random
import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from milp import programme_for
from pencilwood.plan import plan_for
from pencilwood.plan.solver import solve
from pencilwood.rules import BANDS
from pencilwood.score.judge import target_for
from pencilwood.score.sheet import compile_sheet
from pencilwood.vine.bands import default_limits
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Side, Vine
from pencilwood.vine.wood import divide
from vines import arm, cane, old, vine

VINES = 9
POSITIONS_PER_ARM = 20


def large_vine(rng: random.Random) -> Vine:
    """Forty positions, each with last year's spur and three canes."""
    arms = []
    for side in (Side.LEFT, Side.RIGHT):
        places, at_mm = [], 60
        for _ in range(POSITIONS_PER_ARM):
            at_mm += rng.randint(60, 160)
            spur = old("m", rng.choice((40, 60, 180)), rng.randint(12, 30))
            canes = (
                cane(letter, rng.randint(6, 12), rng.randint(5, 14), on="m", at_mm=height)
                for letter, height in zip(
                    "abc", (10, spur.length_mm // 2, spur.length_mm - 4), strict=True
                )
            )
            places.append((at_mm, (spur, *canes)))
        arms.append(arm(side, at_mm + 80, *places))
    return vine(TWO_ARM_CORDON, *arms)


def main() -> None:
    """Time each step on each vine and print the medians."""
    limits = default_limits(BANDS)
    compiled, solved, explained, general = [], [], [], []
    for number in range(VINES):
        parts = divide(large_vine(random.Random(number)))
        target = target_for(parts.vine, limits)
        start = time.perf_counter()
        sheet = compile_sheet(parts, limits, target)
        compiled.append(time.perf_counter() - start)
        start = time.perf_counter()
        solve(sheet)
        solved.append(time.perf_counter() - start)
        start = time.perf_counter()
        plan = plan_for(sheet)
        explained.append(time.perf_counter() - start)
        programme = programme_for(parts, limits, target)
        start = time.perf_counter()
        least = programme.solve()
        general.append(time.perf_counter() - start)
        if least != plan.lost:
            raise SystemExit(f"vine {number}: the plan loses {plan.lost}, the solver {least}")
    pairs = [mine / theirs for mine, theirs in zip(general, solved, strict=True)]
    print(f"{VINES} vines of {2 * POSITIONS_PER_ARM} positions, three canes each; medians")
    for label, times in (
        ("compile the scoring sheet", compiled),
        ("plan (solve)", solved),
        ("plan with a reason for every cut", explained),
        ("the same by HiGHS, programme built before", general),
    ):
        print(f"  {label:38} {statistics.median(times) * 1000:8.1f} ms")
    print(f"  plan against HiGHS: {statistics.median(pairs):.0f} times as fast")


if __name__ == "__main__":
    main()
