"""How many hours a block takes, with how many people and days, and what it costs."""

from __future__ import annotations

from dataclasses import dataclass

from pencilwood.block.answer import Answer, Figure, Sentence
from pencilwood.block.errors import BlockError
from pencilwood.block.numbers import Range


@dataclass(frozen=True)
class PrePruning:
    """A machine that goes ahead of the crew."""

    hand_seconds: Range
    """Time for each vine that is still left to do by hand."""
    machine_s: Range | None
    pay_per_s: Range | None


def crew(
    *,
    vines: Range,
    seconds_per_vine: Range,
    day_s: Range,
    people: Range | None = None,
    days: Range | None = None,
    pay_per_s: Range | None = None,
    hand_seconds_after: Range | None = None,
    machine_s: Range | None = None,
    machine_pay_per_s: Range | None = None,
) -> Answer:
    """Hours of work, days for a crew or people for a number of days, and pay.

    Where `hand_seconds_after` is given, the same again after a machine has pre-pruned.

    hours = vines x time for each vine; days = hours / (people x hours of a day), rounded up;
    people = hours / (days x hours of a day), rounded up.

    Limits: working time at the vine only; walking, breaks, weather and learning come on top. Time
    your own crew on twenty vines.
    Errors: BlockError "people-or-days" when neither is given, "machine-without-hand" when
    machine hours stand without the time by hand that follows.
    Source: 60 to 70 h/ha by hand and 24 to 26 after a machine come from makers of equipment
    (Campagnola, Landini, read), so they are a start and no norm.
    """
    if people is None and days is None:
        raise BlockError("people-or-days").about("people")
    if hand_seconds_after is None and machine_s is not None:
        raise BlockError("machine-without-hand").about("hand_seconds_after")
    work_s = vines * seconds_per_vine
    figures = [Figure("work", "hours", work_s)]
    facts = {
        "vines": ("vines", vines),
        "each": ("seconds", seconds_per_vine),
        "work": ("hours", work_s),
    }
    steps = [Sentence("work", facts)]
    _add_crew(figures, steps, work_s, day_s, people, days)
    if pay_per_s is not None:
        _add_pay(figures, steps, work_s, pay_per_s)
    if hand_seconds_after is not None:
        pre = PrePruning(hand_seconds_after, machine_s, machine_pay_per_s)
        _add_pre_pruned(figures, steps, vines, work_s, pay_per_s, pre)
    return Answer("crew", tuple(figures), tuple(steps))


def _add_crew(
    figures: list[Figure],
    steps: list[Sentence],
    work_s: Range,
    day_s: Range,
    people: Range | None,
    days: Range | None,
) -> None:
    """Days for these people, people for these days, or both."""
    facts = {"work": ("hours", work_s), "day": ("hours", day_s)}
    if people is not None:
        needed = rounded_up(work_s / (people * day_s))
        figures.append(Figure("days", "days", needed))
        crew_facts = {"people": ("people", people), "days": ("days", needed)}
        steps.append(Sentence("days", {**facts, **crew_facts}))
    if days is not None:
        hands = rounded_up(work_s / (days * day_s))
        figures.append(Figure("people", "people", hands))
        crew_facts = {"days": ("days", days), "people": ("people", hands)}
        steps.append(Sentence("people", {**facts, **crew_facts}))


def rounded_up(value: Range) -> Range:
    """Whole days or people: a part of one is one."""
    return value.each(lambda one: -(-one // 1)).counted()


def _add_pay(figures: list[Figure], steps: list[Sentence], work_s: Range, pay_per_s: Range) -> None:
    cost = work_s * pay_per_s
    figures.append(Figure("pay", "money", cost))
    facts = {"work": ("hours", work_s), "pay": ("pay", pay_per_s), "cost": ("money", cost)}
    steps.append(Sentence("pay", facts))


def _add_pre_pruned(
    figures: list[Figure],
    steps: list[Sentence],
    vines: Range,
    work_s: Range,
    pay_per_s: Range | None,
    pre: PrePruning,
) -> None:
    """The same work after a machine: what is left by hand, and what the machine costs."""
    left_s = vines * pre.hand_seconds
    saved_s = (work_s - left_s).at_least(0)
    figures += [Figure("work-after", "hours", left_s), Figure("saved", "hours", saved_s)]
    facts = {
        "vines": ("vines", vines),
        "each": ("seconds", pre.hand_seconds),
        "left": ("hours", left_s),
        "saved": ("hours", saved_s),
    }
    steps.append(Sentence("pre-pruned", facts))
    if pay_per_s is None or pre.machine_s is None or pre.pay_per_s is None:
        return
    hand, machine = left_s * pay_per_s, pre.machine_s * pre.pay_per_s
    cost = hand + machine
    figures.append(Figure("pay-after", "money", cost))
    money = {"hand": ("money", hand), "machine": ("money", machine), "cost": ("money", cost)}
    steps.append(Sentence("pay-after", money))
