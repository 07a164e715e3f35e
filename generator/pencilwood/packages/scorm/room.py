"""How long the text gets in which a package keeps unfinished work.

The layout is that of `site_assets/js/lms/suspended.mjs` and `packed_work.mjs`; a test fills both.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from pencilwood.quiz.made import Choices, MadeQuestion, Ordering, Tapping
from pencilwood.vine.wood import Part, Parts

ROOM = 4096
"""Characters of `cmi.suspend_data` (SCORM 1.2, Run-Time Environment, section 3.4.4)."""
_AROUND = 80
"""Format, versions and brackets, with room to spare."""
_AROUND_VINE = 60
_AROUND_QUIZ = 80
_HOW = 3
"""Pass, tool and place of the cut."""
_BETWEEN = 1


def most_for_vines(vines: Iterable[Parts]) -> int:
    """Characters at most: every bud of every vine is cut by a cut of its own."""
    return _AROUND + sum(_AROUND_VINE + _most_for_vine(vine) for vine in vines)


def most_for_quiz(questions: Sequence[MadeQuestion]) -> int:
    """Characters at most for the answers of a quiz, its vines apart."""
    return _AROUND_QUIZ + sum(_most_for_answer(one) for one in questions)


def sure_cuts(vines: Sequence[Parts], left: int) -> int:
    """Single cuts that certainly fit into `left` characters beside what every vine needs."""
    widest = max(_off(len(vine.parts) - 1) + _digits(vine) for vine in vines)
    return max(0, left - most_for_vines(()) - _AROUND_VINE * len(vines)) // widest


def _most_for_vine(vine: Parts) -> int:
    return sum(_most_for_part(part, number) for number, part in enumerate(vine.parts))


def _most_for_part(part: Part, number: int) -> int:
    """A cane can be cut to each number of buds in turn, and then off; older wood only off."""
    shortened = sum(_off(number) + 1 + len(str(buds)) for buds in range(1, part.most))
    return shortened + _off(number)


def _off(number: int) -> int:
    """A step that takes off the piece with this number."""
    return _HOW + len(_base_36(number)) + _BETWEEN


def _digits(vine: Parts) -> int:
    """The number of buds and the point before it."""
    return 1 + max(len(str(part.most)) for part in vine.parts)


def _base_36(number: int) -> str:
    digits = "0123456789abcdefghijklmnopqrstuvwxyz"
    text = digits[number % 36]
    return text if number < 36 else _base_36(number // 36) + text


def _most_for_answer(one: MadeQuestion) -> int:
    """Its feedback mark, and the answer with brackets and comma."""
    body = one.body
    if isinstance(body, Choices):
        return 4 + len(str(len(body.options)))
    if isinstance(body, Ordering):
        return 6 + sum(len(str(place)) + 1 for place in range(len(body.items)))
    if isinstance(body, Tapping):
        return 6 + max(len(target.name) for target in body.targets)
    return 4 + len("1,100")
