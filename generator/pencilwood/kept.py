"""Keeps what took long to work out from one build to the next, in a folder that may go any time.

An entry's name is made of everything its value follows from: the facts, our own code and the
Python that runs it. So an entry is never out of date; at most nobody asks for it any more. One
that cannot be read, or whose text is not what was written, is worked out anew.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import sys
import tempfile
import time
import weakref
import zlib
from collections.abc import Callable
from dataclasses import fields, is_dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path
from types import FunctionType
from typing import TypeVar

Made = TypeVar("Made")

FORMAT = 1
"""Goes up when entries are written in another way."""
WHERE = "PENCILWOOD_CACHE"
"""The environment variable that names the folder, or is `off`."""
FOLDER = ".pencilwood-cache"
DAYS_UNUSED = 14
MOST_BYTES = 2_000_000_000
_LARGEST_ENTRY = 100_000_000
_DAY_S = 86_400
_HOUR_S = 3_600
_SEAL_BYTES = 32

_folder: Path | None = None
_times_made = 0


def keep_in(root: Path | None) -> Path | None:
    """Keep entries in a handbook's folder from now on, or where the environment says."""
    global _folder
    said = os.environ.get(WHERE, "")
    if said.lower() == "off" or (root is None and not said):
        _folder = None
    else:
        _folder = Path(said).resolve() if said or root is None else root.resolve() / FOLDER
    return _folder


def keep_in_folder(folder: Path | None) -> None:
    """Keep entries in just this folder; None keeps nothing."""
    global _folder
    _folder = folder


def folder() -> Path | None:
    """Where entries are kept; None where nothing is."""
    return _folder


def times_made() -> int:
    """How often something had to be worked out in this process, because nothing was kept."""
    return _times_made


def _made(make: Callable[[], Made]) -> Made:
    global _times_made
    _times_made += 1
    return make()


def is_kept(kind: str, facts: object) -> bool:
    """Whether an earlier build has kept this, as far as one can tell without reading it."""
    return _folder is not None and (_folder / kind / key_of(kind, facts)).is_file()


def kept_text(kind: str, facts: object, make: Callable[[], str]) -> str:
    """The text that follows from `facts`, made only when no earlier build has kept it."""
    if _folder is None:
        return _made(make)
    path = _folder / kind / key_of(kind, facts)
    text = _read(path)
    if text is None:
        text = _made(make)
        _write(path, text)
    return text


def found_text(kind: str, facts: object) -> str | None:
    """The text that follows from `facts`, where an earlier build has kept it."""
    return None if _folder is None else _read(_folder / kind / key_of(kind, facts))


def keep_text(kind: str, facts: object, text: str) -> None:
    """Keep a text that `found_text` is to find."""
    if _folder is not None:
        _write(_folder / kind / key_of(kind, facts), text)


def kept_json(
    kind: str, facts: object, make: Callable[[], object], fits: Callable[[object], bool]
) -> object:
    """The same for a value that JSON can carry; one that does not fit is worked out anew."""
    if _folder is None:
        return _made(make)
    path = _folder / kind / key_of(kind, facts)
    text = _read(path)
    if text is not None:
        with contextlib.suppress(ValueError):
            value: object = json.loads(text)
            if fits(value):
                return value
    value = _made(make)
    _write(path, json.dumps(value, ensure_ascii=False))
    return value


def key_of(kind: str, facts: object) -> str:
    """Changes with every fact, every line of our code, and the version of Python."""
    return hashlib.sha256(
        json.dumps(
            [FORMAT, _code(), sys.version, kind, facts],
            default=_plain,
            ensure_ascii=False,
        ).encode()
    ).hexdigest()


_names: dict[int, tuple[weakref.ref[object], str]] = {}


def name_of(fact: object) -> str:
    """What `key_of` makes of a fact that does not change, worked out once as long as it lives.

    By identity: a large fact is not looked through again to find out that it is the same.
    """
    held = _names.get(id(fact))
    if held is None or held[0]() is not fact:
        number = id(fact)
        held = weakref.ref(fact, lambda gone: _forget_name(number, gone)), key_of("fact", fact)
        _names[number] = held
    return held[1]


def _forget_name(number: int, gone: weakref.ref[object]) -> None:
    # Another fact may have its number by now.
    if number in _names and _names[number][0] is gone:
        del _names[number]


def _plain(fact: object) -> object:
    if is_dataclass(fact) and not isinstance(fact, type):
        own = ((field.name, getattr(fact, field.name)) for field in fields(fact))
        return [type(fact).__name__, dict(own)]
    if isinstance(fact, Fraction):
        return str(fact)
    if isinstance(fact, FunctionType) and "<" not in fact.__qualname__:
        # What it does is among our code; one without a name of its own is told by nothing.
        return f"{fact.__module__}.{fact.__qualname__}"
    raise TypeError(f"no fact to name an entry by: {type(fact).__name__}")


@cache
def _code() -> str:
    """A digest of all that is installed with us."""
    digest = hashlib.sha256()
    here = Path(__file__).parent
    for path in sorted(here.rglob("*")):
        if path.is_file() and path.suffix != ".pyc":
            data = path.read_bytes()
            digest.update(f"{path.relative_to(here).as_posix()}\0{len(data)}\0".encode() + data)
    return digest.hexdigest()


def _read(path: Path) -> str | None:
    try:
        data = path.read_bytes()
        # No entry of ours is larger; a damaged one must not fill the memory.
        text = zlib.decompressobj().decompress(data[_SEAL_BYTES:], _LARGEST_ENTRY)
        if hashlib.sha256(text).digest() != data[:_SEAL_BYTES]:
            return None
        if path.stat().st_mtime < time.time() - _DAY_S:
            path.touch()
        return text.decode()
    except (OSError, ValueError, zlib.error):
        return None


def _write(path: Path, text: str) -> None:
    """Put an entry in place in one go; a folder that cannot be written to costs only time."""
    data = text.encode()
    new = None
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, new = tempfile.mkstemp(dir=path.parent, suffix=".new")
        with os.fdopen(handle, "wb") as file:
            file.write(hashlib.sha256(data).digest() + zlib.compress(data, 1))
        Path(new).replace(path)
    except OSError:
        if new is not None:
            with contextlib.suppress(OSError):
                Path(new).unlink()


def forget_old() -> None:
    """Take out what no build has asked for lately, and the oldest of what is too much."""
    if _folder is None:
        return
    found: list[tuple[float, int, Path]] = []
    with contextlib.suppress(OSError):
        for path in _folder.glob("*/*"):
            if path.suffix == ".new" or len(path.name) == 64:
                facts = path.stat()
                found.append((facts.st_mtime, facts.st_size, path))
    now = time.time()
    size = 0
    for used, more, path in sorted(found, reverse=True):
        size += more
        # A build writes an entry in a moment; one that is still unnamed was left by a killed one.
        unfinished = path.suffix == ".new" and used < now - _HOUR_S
        if unfinished or used < now - DAYS_UNUSED * _DAY_S or size > MOST_BYTES:
            with contextlib.suppress(OSError):
                path.unlink()
