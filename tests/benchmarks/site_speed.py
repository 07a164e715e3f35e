"""How long a large handbook takes to build, beside plain MkDocs with the same theme and words.

Run with `make bench-site`, or `python tests/benchmarks/site_speed.py --cases 200 --work FOLDER`;
a folder is used again as long as it is there. `--only-ours` is for thousands of cases. The plain
site has a Markdown file for each page of ours that the theme surrounds, with its headings,
paragraphs and lists and without its drawings, its exercise and its links; the menu and the
settings of mkdocs.yml are the same. Warm and plain builds take turns, so that both meet the same
machine. Memory is the largest sum over all processes of a build, and is told on Linux only. What
processes share is divided among them there (what Linux calls PSS), so that it counts once;
beside it stands the sum that counts it for each of them (RSS).
"""

from __future__ import annotations

import argparse
import os
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request
import zlib
from collections.abc import Callable
from dataclasses import dataclass
from html.parser import HTMLParser
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from many_cases import make_handbook, slug_of

BLOCKS = {"h1": "# ", "h2": "## ", "h3": "### ", "li": "- ", "p": "", "dt": "", "dd": "",
          "summary": ""}  # fmt: skip
SILENT = ("svg", "script", "style", "figure", "fieldset")
ADDRESS = "127.0.0.1:8765"
PATIENCE_S = 1800
ROW = re.compile(r"^(\w+): +(\d+) kB$", re.MULTILINE)
KIB, MB = 1024, 1e6


@dataclass(frozen=True)
class Spent:
    """What one build took."""

    wall_s: float
    cpu_s: float
    peak_mb: float
    """What processes share counts once."""
    counted_often_mb: float
    """The same where it counts for each of them."""

    def __str__(self) -> str:
        memory = f"memory {self.peak_mb:4.0f} MB ({self.counted_often_mb:.0f} counted often)"
        return f"{self.wall_s:7.1f} s, CPU {self.cpu_s:7.1f} s, {memory}"


def spent(command: list[str], environment: dict[str, str]) -> Spent:
    """Run a build and see what it and all its children take."""
    start, peaks_mb = time.monotonic(), (0.0, 0.0)
    process = subprocess.Popen(command, env=environment, stdout=subprocess.DEVNULL)
    while True:
        done, status, used = os.wait4(process.pid, os.WNOHANG)
        if done:
            break
        now_mb = memory_mb(process.pid)
        peaks_mb = max(peaks_mb[0], now_mb[0]), max(peaks_mb[1], now_mb[1])
        # To ask takes the system a few milliseconds for each process.
        time.sleep(0.2)
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode:
        raise SystemExit(f"{' '.join(command)} fails")
    return Spent(time.monotonic() - start, used.ru_utime + used.ru_stime, *peaks_mb)


def memory_mb(pid: int) -> tuple[float, float]:
    """Memory of a process and of all that it started, as PSS and RSS; 0 where nobody tells."""
    try:
        told = Path(f"/proc/{pid}/smaps_rollup").read_text()
        children = Path(f"/proc/{pid}/task/{pid}/children").read_text().split()
    except OSError:
        return 0.0, 0.0
    kb = {name: int(value) for name, value in ROW.findall(told)}
    rows = [memory_mb(int(child)) for child in children]
    own = (kb.get("Pss", 0) * KIB / MB, kb.get("Rss", 0) * KIB / MB)
    return own[0] + sum(row[0] for row in rows), own[1] + sum(row[1] for row in rows)


class Words(HTMLParser):
    """The words of a page's article as Markdown."""

    def __init__(self) -> None:
        super().__init__()
        self.lines: list[str] = []
        self._inside = False
        self._silent = 0

    def handle_starttag(self, tag: str, attrs: object) -> None:  # noqa: ARG002
        self._inside = self._inside or tag == "article"
        self._silent += tag in SILENT
        if tag in BLOCKS:
            self.lines.append(BLOCKS[tag])

    def handle_endtag(self, tag: str) -> None:
        self._inside = self._inside and tag != "article"
        self._silent -= tag in SILENT

    def handle_data(self, data: str) -> None:
        if self._inside and not self._silent and self.lines:
            self.lines[-1] += data.replace("\n", " ").replace("<", "&lt;")

    def text(self) -> str:
        return "\n\n".join(line for line in self.lines if line.strip(" #-"))


def make_plain(site: Path, root: Path, plain: Path) -> int:
    """The same pages for MkDocs alone; how many there are."""
    shutil.rmtree(plain, ignore_errors=True)
    menu, pages = [], 0
    for path in sorted(site.rglob("*.html")):
        name = path.relative_to(site).with_suffix(".md").as_posix()
        reading = Words()
        reading.feed(path.read_text("utf-8"))
        if not reading.text().startswith("# "):
            continue  # no theme surrounds it, as on the pages for a room
        pages += 1
        file = plain / "docs" / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(reading.text(), "utf-8")
        if "/" not in name:
            menu.append(name)
    settings = (root / "mkdocs.yml").read_text("utf-8").splitlines()
    kept = [line for line in settings if "pencilwood" not in line and "polyfills" not in line]
    kept = [line.replace("content/chapters", "docs") for line in kept]
    listed = "".join(f"  - {name}\n" for name in menu)
    text = "\n".join(kept) + f"\nnav:\n{listed}not_in_nav: |\n  /cases/\n  /rules/\n"
    (plain / "mkdocs.yml").write_text(text, "utf-8")
    return pages


class Bench:
    """One handbook, built in every way."""

    def __init__(self, work: Path, cases: int) -> None:
        self.cases = cases
        self.root = make_handbook(work / f"cases-{cases}", cases, os.cpu_count() or 1)
        self.site = work / "site"
        self.plain = work / "plain"
        self.environment = {
            **os.environ,
            "PENCILWOOD_CACHE": str(work / "kept"),
            "NO_MKDOCS_2_WARNING": "1",
        }

    def ours(self) -> Spent:
        command = [sys.executable, "-m", "pencilwood.cli", "build", "--root", str(self.root)]
        return spent([*command, "--site", str(self.site)], self.environment)

    def theirs(self) -> Spent:
        command = [
            sys.executable,
            "-m",
            "mkdocs",
            "build",
            "-q",
            "-f",
            str(self.plain / "mkdocs.yml"),
        ]
        return spent([*command, "--site-dir", str(self.plain / "site")], self.environment)

    def run(self, pairs: int, *, only_ours: bool = False) -> None:
        shutil.rmtree(self.environment["PENCILWOOD_CACHE"], ignore_errors=True)
        cold = self.ours()
        print(f"cold build, nothing kept          {cold}")
        if only_ours:
            self.tell(cold, self.warm_only())
            return
        pages = make_plain(self.site, self.root, self.plain)
        warm, plain = zip(*((self.ours(), self.theirs()) for _ in range(pairs)), strict=True)
        mine, other = middle(warm), middle(plain)
        print(f"warm build, all kept              {mine}")
        print(f"plain MkDocs and theme, {pages:5} pages {other}")
        for name, value in (("wall", "wall_s"), ("CPU", "cpu_s")):
            ratios = [
                getattr(a, value) / getattr(b, value) for a, b in zip(warm, plain, strict=True)
            ]
            print(f"  warm / plain, {name}: {statistics.median(ratios):.2f} (at most 1.5)")
        self.tell(cold, mine)
        refreshed_s = self.edit()
        print(f"edit of one case in preview       {refreshed_s:7.1f} s")
        full = (refreshed_s / cold.wall_s, refreshed_s / mine.wall_s)
        print("  {:.2f} of a cold, {:.2f} of a warm full build (at most 0.25)".format(*full))

    def warm_only(self) -> Spent:
        """One warm build."""
        warm = self.ours()
        print(f"warm build, all kept              {warm}")
        return warm

    def tell(self, cold: Spent, warm: Spent) -> None:
        """What follows of both for each case."""
        each_ms = 1000 * (cold.cpu_s - warm.cpu_s) / self.cases
        print(f"  cold adds {each_ms:.0f} ms of CPU for each case (at most 25)")
        print(f"  most memory {max(cold.peak_mb, warm.peak_mb):.0f} MB (at most 300)")
        print(f"  {size_kb(self.site) / self.cases:.1f} kB for each case, compressed (at most 40)")

    def edit(self) -> float:
        """Seconds from saving a case to its page being there."""
        command = [sys.executable, "-m", "pencilwood.cli", "preview", "--root", str(self.root)]
        process = subprocess.Popen(
            [*command, "--address", ADDRESS],
            env=self.environment,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            start_new_session=True,
        )
        slug = slug_of(self.cases // 2)
        case = self.root / "content" / "cases" / f"{slug}.yml"
        before = case.read_text("utf-8")
        try:
            wait(lambda: "Larkfell" in fetched(slug))
            # The preview looks for changes after the first page is asked for.
            time.sleep(2)
            start = time.monotonic()
            case.write_text(
                before.replace('title: {en: "The ', 'title: {en: "The edited '), "utf-8"
            )
            wait(lambda: "The edited " in fetched(slug))
            return time.monotonic() - start
        finally:
            case.write_text(before, "utf-8")
            os.killpg(process.pid, 15)
            process.wait()


def middle(all_spent: tuple[Spent, ...]) -> Spent:
    """The middle of each figure."""
    return Spent(*(statistics.median(getattr(one, name) for one in all_spent)
                   for name in ("wall_s", "cpu_s", "peak_mb", "counted_often_mb")))  # fmt: skip


def wait(there: Callable[[], bool]) -> None:
    """Until it is there."""
    until = time.monotonic() + PATIENCE_S
    while not there():
        if time.monotonic() > until:
            raise SystemExit("the preview never showed the page")
        time.sleep(0.05)


def fetched(slug: str) -> str:
    """A case's page as the preview gives it just now, or nothing."""
    try:
        with urllib.request.urlopen(f"http://{ADDRESS}/cases/{slug}.html", timeout=600) as page:
            return str(page.read().decode())
    except (OSError, urllib.error.URLError):
        return ""


def size_kb(site: Path) -> float:
    """All files, each compressed as a server does."""
    files = (path for path in site.rglob("*") if path.is_file())
    return sum(len(zlib.compress(path.read_bytes(), 9)) for path in files) / 1000


def main() -> None:
    """Measure all of it and print the figures beside what they should be."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n", maxsplit=1)[0])
    parser.add_argument("--cases", type=int, default=1000)
    parser.add_argument("--pairs", type=int, default=3)
    parser.add_argument("--work", type=Path, help="folder to work in, and to find work in again")
    parser.add_argument(
        "--only-ours", action="store_true", help="one cold and one warm build, nothing beside them"
    )
    given = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="pencilwood-bench-") as folder:
        work = (given.work or Path(folder)).resolve()
        print(f"{given.cases} cases in one language, with all drawings and the exercise")
        Bench(work, given.cases).run(given.pairs, only_ours=given.only_ours)


if __name__ == "__main__":
    main()
