"""Changes a sound file as hands, editors and bad luck do: by bytes, by text, or by its parts."""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Sequence
from functools import cache

from fuzz.scraps import (
    BOMBS,
    CALLS,
    LENGTHS,
    LINKS,
    MARKS,
    NUMBERS,
    SEEN,
    UNITS,
    UNSEEN,
    WORDS,
)  # fmt: skip
from fuzz.trees import Tree, change, read_tree, write_tree

_NUMBER = re.compile(r"\d+(?:[.,]\d+)?")
_LENGTH = re.compile(r"\d+(?:[.,]\d+)? ?(?:mm|cm|m|in|ft)\b")
_WORD = re.compile(r"\w+")
_ENCODINGS = (
    "utf-16",
    "utf-16-le",
    "utf-16-be",
    "utf-32",
    "latin-1",
    "cp1252",
    "utf-7",
    "utf-8-sig",
)


def mutate(data: bytes, rng: random.Random, *, parts: bool, others: Sequence[bytes]) -> bytes:
    """The file, changed; `parts`: it is YAML and they can be moved; `others`: more such files."""
    pick = rng.random()
    if pick < 0.12:
        return _by_bytes(data, rng)
    if parts and pick < 0.60:
        text = write_tree(change(_tree_of(data), rng), rng.random())
        return _by_text(text, rng, others) if rng.random() < 0.1 else _encoded(text)
    return _by_text(data.decode("utf-8"), rng, others)


@cache
def _tree_of(data: bytes) -> Tree:
    return read_tree(data.decode("utf-8"))


def _encoded(text: str) -> bytes:
    return text.encode("utf-8", errors="surrogatepass")


def _by_bytes(data: bytes, rng: random.Random) -> bytes:
    changed = bytearray(data)
    for _ in range(rng.choice((1, 1, 2, 4, 16))):
        at = rng.randrange(len(changed) + 1)
        pick = rng.random()
        if pick < 0.4 and at < len(changed):
            changed[at] ^= 1 << rng.randrange(8)
        elif pick < 0.6:
            changed[at:at] = rng.randbytes(rng.choice((1, 2, 8)))
        elif pick < 0.8:
            del changed[at : at + rng.choice((1, 2, 10, 200))]
        elif pick < 0.9:
            changed[at:at] = changed[at : at + rng.choice((5, 100))]
        else:
            del changed[at:]
    return bytes(changed)


Texts = Sequence[bytes]


def _by_text(text: str, rng: random.Random, others: Texts) -> bytes:
    for _ in range(rng.choice((1, 1, 2, 3))):
        text = rng.choice(_TEXT_CHANGES)(text, rng, others)
    if rng.random() < 0.04:
        return text.encode(rng.choice(_ENCODINGS), errors="replace")
    return _encoded(text)


def _insert(text: str, rng: random.Random, what: str) -> str:
    at = rng.randint(0, len(text))
    return text[:at] + what + text[at:]


def _replaced(text: str, rng: random.Random, pattern: re.Pattern[str], new: str) -> str:
    found = list(pattern.finditer(text))
    if not found:
        return text + new
    match = rng.choice(found)
    return text[: match.start()] + new + text[match.end() :]


def _number(text: str, rng: random.Random, _: Texts) -> str:
    return _replaced(text, rng, _NUMBER, rng.choice(NUMBERS))


def _length(text: str, rng: random.Random, _: Texts) -> str:
    return _replaced(text, rng, _LENGTH, rng.choice(LENGTHS))


def _near(text: str, rng: random.Random, _: Texts) -> str:
    return _replaced(text, rng, _NUMBER, str(rng.choice((1, 2, 3, 6, 8, 12, 20, 45, 60, 90, 250))))


def _unit(text: str, rng: random.Random, _: Texts) -> str:
    return _replaced(text, rng, re.compile(r"\b(?:mm|cm|m|in|buds?|years?|%)\b"), rng.choice(UNITS))


def _word(text: str, rng: random.Random, _: Texts) -> str:
    found = _WORD.findall(text) or ["a"]
    return _replaced(text, rng, _WORD, rng.choice((rng.choice(found), rng.choice(WORDS), "")))


def _character(text: str, rng: random.Random, _: Texts) -> str:
    return _insert(text, rng, rng.choice(UNSEEN + SEEN))


def _mark(text: str, rng: random.Random, _: Texts) -> str:
    return _insert(text, rng, rng.choice(MARKS))


def _bomb(text: str, rng: random.Random, _: Texts) -> str:
    return _insert(text, rng, rng.choice(BOMBS))


def _call(text: str, rng: random.Random, _: Texts) -> str:
    return _insert(text, rng, rng.choice(CALLS))


def _link(text: str, rng: random.Random, _: Texts) -> str:
    return _insert(text, rng, rng.choice(LINKS))


def _lines(text: str, rng: random.Random, _: Texts) -> str:
    """Lines lost, doubled, swapped or pushed in."""
    rows = text.split("\n")
    one, other = rng.randrange(len(rows)), rng.randrange(len(rows))
    pick = rng.randrange(7)
    if pick == 0:
        del rows[one : one + rng.choice((1, 1, 3))]
    elif pick == 1:
        rows[one:one] = [rows[one]] * rng.choice((1, 1, 5, 500))
    elif pick == 2:
        rows[one], rows[other] = rows[other], rows[one]
    elif pick == 3:
        rows[one] = rng.choice((" ", "  ", "\t", "    ")) + rows[one]
    elif pick == 4:
        rows[one] = rows[one].lstrip()
    elif pick == 5:
        rows[one] = rows[one].split(":")[0] + ":"
    else:
        rows[one : one + 2] = ["".join(rows[one : one + 2])]
    return "\n".join(rows)


def _ends(text: str, rng: random.Random, _: Texts) -> str:
    return rng.choice((text.replace("\n", "\r\n"), text.replace("\n", "\r"), "\ufeff" + text))


def _cut_off(text: str, rng: random.Random, _: Texts) -> str:
    return text[: rng.randint(0, len(text))]


def _spliced(text: str, rng: random.Random, others: Texts) -> str:
    other = rng.choice(others).decode("utf-8")
    return text[: rng.randint(0, len(text))] + other[rng.randint(0, len(other)) :]


_TEXT_CHANGES: tuple[Callable[[str, random.Random, Texts], str], ...] = (
    _number, _number, _length, _length, _near, _near, _near, _unit, _word, _word, _character,
    _mark, _bomb, _call, _link, _lines, _lines, _lines, _ends, _cut_off, _spliced,
)  # fmt: skip
