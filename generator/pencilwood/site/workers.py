"""Spreads work over the cores of the machine; what comes out is the same with one core."""

from __future__ import annotations

import gc
import os
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from multiprocessing import get_context
from pathlib import Path
from typing import TypeVar

from pencilwood import kept

CORES = "PENCILWOOD_CORES"
"""The environment variable that says how many cores to use at most."""
FEWEST = 4
"""Starting a worker takes as long as a few pieces of work."""
MOST_AT_ONCE = 16
"""So many pieces of work are handed over in one go, however many there are: what a worker has been
handed, and what it has made of it, waits in its memory."""
PATIENCE = 10
"""So many things are worked out here before workers are called."""
MOST_WORKERS = 4
"""More take memory rather than time off."""

_MADE_BETWEEN = 50_000
"""So many things are made before Python looks for rings among them, which nothing else frees."""

Given = TypeVar("Given")
Made = TypeVar("Made")


def spread(work: Callable[[Given], Made], items: Iterable[Given]) -> list[Made]:
    """`work` done to every item, in their order; both must be picklable.

    Where no workers can be had, all is done here.
    """
    given = list(items)
    # Where all is kept from an earlier build there is nothing to hand out.
    done: list[Made] = []
    before = kept.times_made()
    while len(done) < len(given) and kept.times_made() - before < PATIENCE:
        done.append(work(given[len(done)]))
    return done + _handed_out(work, given[len(done) :])


@contextmanager
def one_crew() -> Iterator[None]:
    """The same workers for all that is spread within, if any are called.

    To start one takes it as long as to work out half a dozen vines: it reads all of our program.
    """
    global _crew
    before, _crew = _crew, _Crew()
    try:
        yield
    finally:
        _crew.dismiss()
        _crew = before


class _Crew:
    """Workers that wait for more work until they are dismissed."""

    def __init__(self) -> None:
        self._pool: ProcessPoolExecutor | None = None

    def called(self) -> ProcessPoolExecutor:
        """All of them; each is started when there is something for it to do."""
        if self._pool is None:
            self._pool = ProcessPoolExecutor(
                cores(), get_context("spawn"), initializer=_begin, initargs=(kept.folder(),)
            )
        return self._pool

    def dismiss(self) -> None:
        """End them once they have done what they were handed."""
        if self._pool is not None:
            self._pool.shutdown()
        self._pool = None


_crew: _Crew | None = None


def _handed_out(work: Callable[[Given], Made], given: list[Given]) -> list[Made]:
    workers = min(cores(), len(given) // FEWEST)
    if workers < 2:
        return [work(item) for item in given]
    crew = _crew or _Crew()
    fair = max(1, len(given) // (workers * 8))
    try:
        return list(crew.called().map(work, given, chunksize=min(fair, MOST_AT_ONCE)))
    except (BrokenProcessPool, OSError, ImportError):
        crew.dismiss()
        return [work(item) for item in given]
    finally:
        if crew is not _crew:
            crew.dismiss()


def cores() -> int:
    """How many cores there are for us."""
    said = os.environ.get(CORES, "")
    if said.isdecimal() and int(said) > 0:
        return int(said)
    return min(_own_cores(), MOST_WORKERS)


def _own_cores() -> int:
    # A container may be given fewer cores than its machine has; not every system tells.
    ours = getattr(os, "sched_getaffinity", None)
    return len(ours(0)) if ours else os.cpu_count() or 1


def collect_rarely() -> None:
    """Let Python look for garbage more rarely than every 700 things made.

    A drawing or a proof makes many small things and hardly a ring of them, so the looking took a
    seventh of a build and found nothing.
    """
    gc.set_threshold(_MADE_BETWEEN, 20, 100)


def _begin(folder: Path | None) -> None:
    """A worker keeps entries where its master does, and takes no workers itself."""
    collect_rarely()
    kept.keep_in_folder(folder)
    os.environ[CORES] = "1"
