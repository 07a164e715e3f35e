"""Kills builds at random moments, fills disks, and lets builds meet; no part of the tests.

Run with `make kill-test`, or `python tests/hard/kill_builds.py --kills 20 --seed 7`. After each
misfortune the site must be one of two whole sites, file for file, and the build after it must
succeed and leave nothing beside the site. Needs Linux; filling a real disk needs root as well.
Prints its figures, and ends with status 1 at the first thing that is not as it must be.
"""

from __future__ import annotations

import argparse
import hashlib
import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from many_cases import make_handbook, slug_of

Hashes = dict[str, str]
CASES = 3
STEP_KB = 400
MEETINGS = 10
NAMES = ("first", "second")


@dataclass(frozen=True)
class Book:
    """A handbook in two wordings, and the site that each of them makes."""

    root: Path
    site: Path
    whole: dict[str, Hashes]

    def say(self, name: str) -> None:
        """Change the handbook to one of its wordings."""
        case = self.root / "content" / "cases" / f"{slug_of(0)}.yml"
        lines = case.read_text("utf-8").splitlines(keepends=True)
        titled = [f'title: {{en: "The {name} wording"}}\n' if one.startswith("title:") else one
                  for one in lines]  # fmt: skip
        case.write_text("".join(titled), "utf-8")

    def build(self, site: Path | None = None) -> subprocess.Popen[str]:
        """Start a build with a process group of its own."""
        command = [sys.executable, "-m", "pencilwood.cli", "build", "--root", str(self.root)]
        return subprocess.Popen(
            [*command, "--site", str(site or self.site)],
            start_new_session=True,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )

    def state(self, site: Path | None = None) -> str:
        """Which of the two whole sites stands there; ends all when it is neither."""
        found = hashes(site or self.site)
        for name, whole in self.whole.items():
            if found == whole:
                return name
        raise SystemExit(f"the site is not whole: {len(found)} files, none of the two sites")

    def must_build(self, name: str, site: Path | None = None) -> None:
        """Build one wording; nothing may be left beside the site."""
        self.say(name)
        process = self.build(site)
        _, told = process.communicate()
        place = site or self.site
        if process.returncode != 0 or self.state(place) != name:
            raise SystemExit(f"the build after a misfortune fails: {told}")
        beside = {path.name for path in place.parent.iterdir()} - {place.name, "book"}
        if beside:
            raise SystemExit(f"left beside the site: {sorted(beside)}")


def hashes(site: Path) -> Hashes:
    """Every file of a site by its path."""
    return {
        path.relative_to(site).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in site.rglob("*")
        if path.is_file()
    }


def make_book(folder: Path) -> Book:
    """A small handbook; both its sites are built once, undisturbed."""
    root = make_handbook(folder / "book", CASES, 1)
    book = Book(root, folder / "site", {})
    for name in NAMES:
        book.say(name)
        _, told = book.build().communicate()
        book.whole[name] = hashes(book.site)
        if not book.whole[name]:
            raise SystemExit(told)
    if book.whole[NAMES[0]] == book.whole[NAMES[1]]:
        raise SystemExit("both wordings make the same site; nothing could be told apart")
    return book


def kill_at_random(book: Book, kills: int, chance: random.Random) -> None:
    """Kill builds with all that they started; after each, one build runs to its end."""
    start = time.monotonic()
    book.must_build(NAMES[0])
    takes_s = time.monotonic() - start
    found: Counter[str] = Counter()
    for number in range(kills):
        wanted = NAMES[1 - number % 2]
        book.say(wanted)
        process = book.build()
        time.sleep(chance.uniform(0, 1.1 * takes_s))
        os.killpg(process.pid, signal.SIGKILL)
        process.communicate()
        left = "cleared up" if not waiting(book.site).exists() else "left beside the site"
        found[f"{'new' if book.state() == wanted else 'old'} site whole, the rest {left}"] += 1
        book.must_build(wanted)
    print(f"{kills} builds killed within {1.1 * takes_s:.1f} s of their start (SIGKILL, group):")
    for what, times in sorted(found.items()):
        print(f"  {times:4} x {what}")


def waiting(site: Path) -> Path:
    """The folder in which a build makes the new site."""
    return site.parent / f".{site.name}.building"


def meet(book: Book) -> None:
    """Start two builds at once, again and again."""
    found: Counter[int] = Counter()
    for number in range(MEETINGS):
        book.say(NAMES[number % 2])
        both = [book.build(), book.build()]
        told = [one.communicate()[1] for one in both]
        done = sum(one.returncode == 0 for one in both)
        found[done] += 1
        refused = [words for one, words in zip(both, told, strict=True) if one.returncode != 0]
        if not done or any("Another build is writing" not in words for words in refused):
            raise SystemExit(f"two builds at once: {told}")
        if book.state() != NAMES[number % 2]:
            raise SystemExit("two builds at once left the old site")
    book.must_build(NAMES[0])
    print(
        f"{MEETINGS} times two builds at once: {found[1]} x one refused, {found[2]} x both in turn"
    )


@contextmanager
def disk(folder: Path, size_kb: int) -> Iterator[Path]:
    """A disk in memory of a fixed size."""
    folder.mkdir()
    subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={size_kb}k", "none", folder], check=True)
    try:
        yield folder
    finally:
        subprocess.run(["umount", folder], check=True)


def resize(folder: Path, options: str) -> None:
    subprocess.run(["mount", "-o", f"remount,{options}", folder], check=True)


def fill_disk(book: Book, folder: Path) -> None:
    """Give a build a little more room each time, until it succeeds; then none may be written."""
    with disk(folder, 200_000) as place:
        site = place / "site"
        book.must_build(NAMES[0], site)
        used_kb = int(subprocess.check_output(["du", "-sk", place], text=True).split()[0])
        book.say(NAMES[1])
        full = 0
        for room_kb in range(0, 100_000, STEP_KB):
            resize(place, f"size={used_kb + room_kb}k")
            process = book.build(site)
            _, told = process.communicate()
            if process.returncode == 0:
                break
            full += 1
            if "there is no room for it on the disk" not in told or "Traceback" in told:
                raise SystemExit(f"a full disk is not told as such: {told}")
            if book.state(site) != NAMES[0]:
                raise SystemExit("a full disk changed the site")
        print(
            f"{full} builds with too little room, 0 to {(full - 1) * STEP_KB} kB: site whole, told"
        )
        book.must_build(NAMES[0], site)
        resize(place, "ro")
        process = book.build(site)
        told = process.communicate()[1]
        if "this disk can only be read" not in told or book.state(site) != NAMES[0]:
            raise SystemExit(f"a disk that can only be read: {told}")
        print("1 build on a disk that can only be read: site whole, told")


def main() -> None:
    """Do all of it."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n", maxsplit=1)[0])
    parser.add_argument("--kills", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    given = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="pencilwood-kill-") as folder:
        os.environ["PENCILWOOD_CACHE"] = str(Path(folder, "kept"))
        (Path(folder) / "room").mkdir()
        book = make_book(Path(folder) / "room")
        kill_at_random(book, given.kills, random.Random(given.seed))
        meet(book)
        if os.geteuid() == 0:
            fill_disk(book, Path(folder) / "disk")
        else:
            print("a full disk was not tried: that needs root")


if __name__ == "__main__":
    main()
