"""Where the right choice stands: varied, evenly used, and the same at every build."""

from __future__ import annotations

import random
from collections import Counter
from dataclasses import replace

from pencilwood.quiz.made import Choices, MadeQuestion, Ordering


def place_evenly(questions: tuple[MadeQuestion, ...], quiz: str) -> tuple[MadeQuestion, ...]:
    """The questions with their choices put in the order in which they are shown.

    Each question takes, at random, one of the places that the right choice had least often so
    far. The chance comes from the names of quiz and question: another build shuffles alike.
    """
    used: Counter[int] = Counter()
    placed: list[MadeQuestion] = []
    for one in questions:
        chance = random.Random(f"{quiz}/{one.slug}")  # noqa: S311 - no secret; stable
        if isinstance(one.body, Choices) and not one.body.in_fixed_order:
            body = _choices(one.body, used, chance)
            used[body.right] += 1
            placed.append(replace(one, body=body))
        elif isinstance(one.body, Ordering):
            placed.append(replace(one, body=_shuffled(one.body, chance)))
        else:
            placed.append(one)
    return tuple(placed)


def _choices(body: Choices, used: Counter[int], chance: random.Random) -> Choices:
    places = range(len(body.options))
    fewest = min(used[place] for place in places)
    to = chance.choice([place for place in places if used[place] == fewest])
    wrong = [one for one in body.options if not one.right]
    chance.shuffle(wrong)
    return Choices((*wrong[:to], body.options[body.right], *wrong[to:]))


def _shuffled(body: Ordering, chance: random.Random) -> Ordering:
    """Items in an order that leaves none of the ends at its place."""
    numbers = list(range(len(body.items)))
    while numbers[0] == 0 or numbers[-1] == len(numbers) - 1:
        chance.shuffle(numbers)
    items = tuple(body.items[number] for number in numbers)
    return Ordering(items, tuple(numbers.index(number) for number in range(len(numbers))))
