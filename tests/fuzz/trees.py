"""A YAML file as plain lists, changed as a whole: keys lost, doubled, swapped, put elsewhere.

A value is a text, `["list", ...]` or `["map", [key, value], ...]`. Writing it out again is ours
alone, so that keys may come twice and anchors, tags and cycles can stand anywhere.
"""

from __future__ import annotations

import copy
import random
from typing import Any

import yaml

from fuzz.scraps import LENGTHS, MARKS, NUMBERS, SEEN, UNITS, UNSEEN, WORDS

Tree = Any
_QUOTES = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\r": "\\r", "\t": "\\t", "\x00": "\\0"}


def read_tree(text: str) -> Tree:
    """The tree of a sound file; every value is text."""
    return _tree(yaml.compose(text, Loader=yaml.CSafeLoader))


def _tree(node: yaml.Node | None) -> Tree:
    if isinstance(node, yaml.MappingNode):
        return ["map", *([_tree(key), _tree(value)] for key, value in node.value)]
    if isinstance(node, yaml.SequenceNode):
        return ["list", *(_tree(item) for item in node.value)]
    return "" if node is None else str(node.value)


def write_tree(tree: Tree, style: float) -> str:
    """The tree as a file; `style` (0 to 1) sets how much is on a line and in quotes."""
    return _written(tree, 0, style) + "\n"


def _written(tree: Tree, depth: int, style: float) -> str:
    if isinstance(tree, str):
        return _scalar(tree, style)
    name, *items = tree
    if name == "raw":
        return str(items[0])
    gap = ",\n" + " " * depth if depth < 5 and style < 0.8 else ", "
    if name == "list":
        return "[" + gap.join(_written(item, depth + 1, style) for item in items) + "]"
    pairs = (
        f"{_written(key, depth + 1, style)}: {_written(value, depth + 1, style)}"
        for key, value in items
    )
    return "{" + gap.join(pairs) + "}"


def _scalar(text: str, style: float) -> str:
    if text and text.replace(" ", "a").isalnum() and text == text.strip() and style < 0.9:
        return text
    return '"' + "".join(_QUOTES.get(sign, sign) for sign in text) + '"'


def change(tree: Tree, rng: random.Random) -> Tree:
    """A copy with a few things changed."""
    tree = copy.deepcopy(tree)
    for _ in range(rng.choice((1, 1, 1, 2, 3, 6))):
        holders = [tree, *_holders(tree)]
        holder = rng.choice(holders)
        if isinstance(holder, list) and len(holder) > 1:
            rng.choice(_CHANGES)(holder, rng, holders)
    return tree


def _holders(tree: Tree) -> list[Tree]:
    """Every list and map below."""
    found: list[Tree] = []
    if isinstance(tree, list):
        for item in tree[1:]:
            inner = item[1] if tree[0] == "map" else item
            if isinstance(inner, list) and inner[0] != "raw":
                found += [inner, *_holders(inner)]
    return found


def _at(holder: Tree, rng: random.Random) -> int:
    return rng.randrange(1, len(holder))


def _set(holder: Tree, at: int, value: Tree) -> None:
    if holder[0] == "map":
        holder[at] = [holder[at][0], value]
    else:
        holder[at] = value


def _get(holder: Tree, at: int) -> Tree:
    return holder[at][1] if holder[0] == "map" else holder[at]


def _lose(holder: Tree, rng: random.Random, _: list[Tree]) -> None:
    del holder[_at(holder, rng)]


def _double(holder: Tree, rng: random.Random, _: list[Tree]) -> None:
    at = _at(holder, rng)
    for _again in range(rng.choice((1, 1, 2, 70, 450))):
        holder.insert(at, copy.deepcopy(holder[at]))


def _swap(holder: Tree, rng: random.Random, _: list[Tree]) -> None:
    one, other = _at(holder, rng), _at(holder, rng)
    holder[one], holder[other] = holder[other], holder[one]


def _swap_values(holder: Tree, rng: random.Random, _: list[Tree]) -> None:
    one, other = _at(holder, rng), _at(holder, rng)
    first, second = _get(holder, one), _get(holder, other)
    _set(holder, one, second)
    _set(holder, other, first)


def _move(holder: Tree, rng: random.Random, holders: list[Tree]) -> None:
    """Something into another place of the file, where it may fit or not."""
    value = copy.deepcopy(_get(holder, _at(holder, rng)))
    other = rng.choice(holders)
    if isinstance(other, list) and len(other) > 1:
        _set(other, _at(other, rng), value)


def _value(holder: Tree, rng: random.Random, _: list[Tree]) -> None:
    at = _at(holder, rng)
    _set(holder, at, new_value(_get(holder, at), rng))


def new_value(old: Tree, rng: random.Random) -> Tree:
    """Something else in the place of a value, often of the same kind."""
    pick = rng.random()
    if pick > 0.95:
        return _one_or_each(old, rng)
    if isinstance(old, str) and old[:1].isdigit() and pick < 0.6:
        number, _, unit = old.partition(" ")
        if pick < 0.3:
            return f"{rng.choice(NUMBERS)} {unit}".strip()
        if pick < 0.4:
            return f"{number} {rng.choice(UNITS)}"
        return rng.choice(LENGTHS) if unit else str(rng.choice((0, 1, 2, 5, 9, 60, 61, 100, 1000)))
    if isinstance(old, str) and pick < 0.75:
        at = rng.randint(0, len(old))
        return old[:at] + rng.choice(UNSEEN + SEEN + WORDS) + old[at:]
    return rng.choice(
        (
            rng.choice(WORDS), rng.choice(NUMBERS), ["list"], ["map"], ["list", old], "",
            "x" * 5000,
            ["map", [old, old]] if isinstance(old, str) else old, ["map", [["list", "a"], "b"]],
            ["raw", rng.choice(MARKS)], ["raw", "*a"], ["raw", "&a a"], ["raw", "!!int 5"],
        )
    )  # fmt: skip


def _one_or_each(old: Tree, rng: random.Random) -> Tree:
    """One text in place of one for each language, or the other way round."""
    if isinstance(old, str):
        spoken = rng.choice((("en", "es"), ("es", "en"), ("en",), ("es",), ("en", "es", "fr")))
        return ["map", *([language, old] for language in spoken)]
    return rng.choice([item[1] if old[0] == "map" else item for item in old[1:]] or [""])


def _key(holder: Tree, rng: random.Random, _: list[Tree]) -> None:
    if holder[0] == "map":
        at = _at(holder, rng)
        key, value = holder[at]
        keys = [key, str(key).upper(), f"{key}s", str(key)[1:], "<<", rng.choice(WORDS)]
        extra = rng.choice(UNSEEN)
        holder[at] = [rng.choice([*keys, f"{extra}{key}", f"{key} ", ["raw", "? a"]]), value]


def _nest(holder: Tree, rng: random.Random, _: list[Tree]) -> None:
    at = _at(holder, rng)
    value = _get(holder, at)
    for _deeper in range(rng.choice((1, 2, 5, 13, 60))):
        value = ["list", value] if rng.random() < 0.5 else ["map", ["a", value]]
    _set(holder, at, value)


def _mark(holder: Tree, rng: random.Random, _: list[Tree]) -> None:
    """An anchor or a tag before what stands there."""
    at = _at(holder, rng)
    before = rng.choice(("&a ", "!!str ", "!x ", "!!set ", "&b !!map "))
    _set(holder, at, ["raw", before + _written(_get(holder, at), 9, 0.5)])


_CHANGES = (
    _lose, _double, _swap, _swap_values, _move, _value, _value, _value, _value, _key, _nest, _mark,
)  # fmt: skip
