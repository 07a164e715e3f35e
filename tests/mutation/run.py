"""Mutation testing of rules, score, plan, the block's sums and winters to come; see README.md here.

`make mutants` runs it. It works on a copy of the sources, so nothing here is ever changed.

    python tests/mutation/run.py [--sample 400] [--seed 1] [--only NAMES ...] [--minutes 60]
        [--tests tests/vine tests/winters]

Each result is kept as it comes, so a run that was stopped goes on where it was; `--again` tries
what survived anew.
"""

from __future__ import annotations

import argparse
import fnmatch
import json
import os
import random
import re
import shutil
import signal
import subprocess
import sys
import time
from collections import Counter
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[2]
COPY = PROJECT / ".cache" / "mutants"
# mutmut finds a package only under `src` or at the top, so the copy has it there.
COPIED = {
    "generator/pencilwood": "src/pencilwood",
    "tests": "tests",
    "content": "content",
    "quizzes": "quizzes",
    "site_assets": "site_assets",
    "pyproject.toml": "pyproject.toml",
    "mkdocs.yml": "mkdocs.yml",
}
# Which test runs which function.
STATISTICS = "mutmut-stats.json"
# As many names as a command line holds.
BATCH = 1000
KILLED = {1: "killed", 3: "killed", 24: "timeout", 36: "timeout", 255: "timeout", 152: "timeout"}
KILLED |= {-24: "timeout", -9: "timeout", -11: "killed"}
LEFT = {0: "survived", 33: "no tests", 5: "no tests"}


def main() -> int:
    """Run the chosen mutants and print what became of them."""
    wanted = _wanted()
    until = time.monotonic() + 60 * wanted.minutes if wanted.minutes else None
    _copy()
    if wanted.tests:
        _ask_only(wanted.tests)
    _mutmut("--version")
    # Asked for no mutant, mutmut makes all of them and learns which test runs which function.
    _mutmut("run", "pencilwood.rules.none.x_none__mutmut_1")
    names = sorted(_results())
    chosen = [name for name in names if any(fnmatch.fnmatch(name, only) for only in wanted.only)]
    if wanted.sample and wanted.sample < len(chosen):
        # A larger sample of the same seed holds the smaller one.
        random.Random(wanted.seed).shuffle(chosen)
        chosen = sorted(chosen[: wanted.sample])
    print(f"{len(names)} mutants, {len(chosen)} of them chosen (seed {wanted.seed})", flush=True)
    # More tests cannot save a mutant that is dead; mutmut forgets it when its function changes.
    results = _results()
    done = KILLED if wanted.again else KILLED | LEFT
    left = [name for name in chosen if results[name] not in done]
    print(f"{len(chosen) - len(left)} are known from earlier runs", flush=True)
    for start in range(0, len(left), BATCH):
        batch = left[start : start + BATCH]
        in_time = _mutmut("run", "--max-children", str(wanted.cores), *batch, until=until)
        if not in_time:
            print("the time is over; the same command goes on", flush=True)
            return _report(chosen)
    _report(chosen)
    if any(_results()[name] is None for name in chosen):
        print(f"some were not run, though there was time: the end of {COPY / 'log.txt'} tells why")
        return 1
    return 0


def _wanted() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Mutation testing")
    parser.add_argument("--sample", type=int, default=0, help="how many mutants; 0 is all")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument(
        "--only", nargs="+", default=["*"], help="names of mutants, with * for anything"
    )
    parser.add_argument(
        "--tests", nargs="+", help="folders of tests to ask; fewer are learnt sooner"
    )
    parser.add_argument("--minutes", type=float, default=0, help="stop after them; 0 is never")
    parser.add_argument("--again", action="store_true", help="try anew what survived")
    parser.add_argument("--cores", type=int, default=os.cpu_count() or 1)
    return parser.parse_args()


def _copy() -> None:
    for source, target in COPIED.items():
        place = COPY / target
        if place.is_dir():
            shutil.rmtree(place)
        place.parent.mkdir(parents=True, exist_ok=True)
        if (PROJECT / source).is_dir():
            shutil.copytree(
                PROJECT / source, place, ignore=shutil.ignore_patterns("__pycache__", ".cache")
            )
        else:
            shutil.copy2(PROJECT / source, place)
    _forget_old()


def _forget_old() -> None:
    """Take away what mutmut copied in an earlier run and would never copy again.

    What it has changed itself has its results in a `.meta` beside it, and is made anew in time.
    """
    held = COPY / "mutants"
    for path in sorted(held.rglob("*")):
        is_kept = path.suffix == ".meta" or Path(f"{path}.meta").exists()
        if path.is_file() and not is_kept and path.name != STATISTICS:
            path.unlink()
    for path in sorted((held / "src").rglob("*.meta")):
        source = path.with_suffix("")
        if not (COPY / source.relative_to(held)).exists():
            path.unlink()
            source.unlink(missing_ok=True)


def _ask_only(tests: list[str]) -> None:
    """Name these tests in the copy's settings, in place of all."""
    path = COPY / "pyproject.toml"
    key = "pytest_add_cli_args_test_selection"
    changed = re.sub(rf"{key} = \[[^]]*\]", f"{key} = {json.dumps(tests)}", path.read_text("utf-8"))
    path.write_text(changed, "utf-8")


def _mutmut(*arguments: str, until: float | None = None) -> bool:
    """Run it; whether it came to its end before `until`, on the clock that never goes back."""
    # The copy's own package, no kept work of the unchanged code, and no other processes.
    environment = {
        **os.environ,
        "PYTHONPATH": str(COPY / "src"),
        "PENCILWOOD_CACHE": "off",
        "PENCILWOOD_CORES": "1",
    }
    with (COPY / "log.txt").open("a", encoding="utf-8") as log:
        process = subprocess.Popen(
            [sys.executable, "-m", "mutmut", *arguments],
            cwd=COPY,
            env=environment,
            stdout=log,
            stderr=log,
            start_new_session=True,
        )
        try:
            process.wait(None if until is None else max(1.0, until - time.monotonic()))
        except subprocess.TimeoutExpired:
            return False
        finally:
            if process.poll() is None:
                # With all that it has forked.
                os.killpg(process.pid, signal.SIGKILL)
    return True


def _results() -> dict[str, int | None]:
    found: dict[str, int | None] = {}
    for path in sorted((COPY / "mutants" / "src").rglob("*.meta")):
        found |= json.loads(path.read_text("utf-8"))["exit_code_by_key"]
    return found


def _report(chosen: list[str]) -> int:
    results = _results()
    fates: dict[str, Counter[str]] = {}
    for name in chosen:
        code = results[name]
        fate = "not run" if code is None else (KILLED | LEFT).get(code, f"exit {code}")
        fates.setdefault(name.split(".")[1], Counter())[fate] += 1
        if fate not in ("killed", "timeout"):
            print(f"{fate}: {name}")
    for package, counted in [*fates.items(), ("all", sum(fates.values(), Counter()))]:
        dead = counted["killed"] + counted["timeout"]
        whole = counted.total()
        print(f"{package}: {dead} of {whole} killed ({dead / whole:.1%}); {dict(counted)}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
