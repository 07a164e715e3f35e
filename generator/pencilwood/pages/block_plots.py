"""The plots on the page of a block."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from pencilwood.block.answer import Answer, Figure
from pencilwood.block.bud_load import balanced_buds
from pencilwood.block.field import Value
from pencilwood.block.measures import MEASURES
from pencilwood.block.numbers import Range, as_range
from pencilwood.block.questions import QUESTIONS
from pencilwood.drawing.plots import Axis, Bar, Limit, Mark, bar_plot, line_plot
from pencilwood.pages.desk import Desk
from pencilwood.words.languages import NUMBER_MARKS

_ASKING = {"buds-for-crop": "crop", "buds": "asked", "winter": "winter"}
_CURVE_STEPS = 40


def plot_of(
    desk: Desk, answer: Answer, answers: Mapping[str, Answer], given: Mapping[str, Value]
) -> str:
    """The plot that belongs to one sum; empty where a plot would tell nothing."""
    if answer.question == "buds":
        return _buds_curve(desk, answer, answers, given)
    if answer.question == "fit":
        return _buds_bars(desk, answers, given)
    if answer.question == "renovation":
        return _years(desk, answer)
    if answer.question == "thinning":
        bars = [bar(desk, one, one.label(desk.language)) for one in answer.figures]
        return bar_plot("shoots", desk.say("block.plot.shoots"), bars)
    return ""


def bar(desk: Desk, figure: Figure, label: str) -> Bar:
    """A figure as a bar, in the units that the page shows."""
    factor = MEASURES[figure.measure].factor(desk.profile.units)
    low, likely, high = (
        float(one / factor) for one in (figure.value.low, figure.value.likely, figure.value.high)
    )
    return Bar(label, figure.text(desk.profile.units, desk.language), low, likely, high)


def _buds_bars(desk: Desk, answers: Mapping[str, Answer], given: Mapping[str, Value]) -> str:
    """What each rule comes to, which of them is asked for, what the arms hold, what to leave."""
    asking = [name for name in _ASKING if name in answers]

    def bars() -> Iterator[Bar]:
        for name in asking:
            label = desk.say(f"block.plot.{_ASKING[name]}")
            # The last takes the place of those before it, unless the block names its own.
            if name == asking[-1] and "wanted_buds" not in given:
                label = desk.say("block.plot.asked-for", what=label)
            yield bar(desk, answers[name].figures[0], label)
        fit = answers["fit"]
        yield bar(desk, fit.named("room"), desk.say("block.plot.room"))
        yield bar(desk, fit.figures[0], desk.say("block.plot.leave"))

    return bar_plot("buds-left", desk.say("block.plot.buds"), list(bars()))


def _buds_curve(
    desk: Desk, answer: Answer, answers: Mapping[str, Answer], given: Mapping[str, Value]
) -> str:
    """The formula from no prunings to twice those of the block."""
    prunings = given["prunings_g"]
    assert isinstance(prunings, Range)  # noqa: S101 - the sum was done with it
    factor = MEASURES["vine-weight"].factor(desk.profile.units)
    most = prunings.high * 2
    values = {name: given[name] for name in QUESTIONS["buds"].asked if name in given}
    usual = {one.name: one.usual() for one in QUESTIONS["buds"].fields if one.default}
    limits = {name: given[name] for name in ("least_buds", "most_buds") if name in given}

    def buds(prunings_g: Fraction) -> float:
        known = {**usual, **values, **limits, "prunings_g": as_range(prunings_g)}
        return float(balanced_buds(**known).main.likely)  # type: ignore[arg-type]

    steps = [most * number / _CURVE_STEPS for number in range(1, _CURVE_STEPS + 1)]
    points = [(float(weight / factor), buds(weight)) for weight in steps]
    room = answers.get("room")
    limit = None
    if room is not None:
        told = room.figures[0].text(desk.profile.units, desk.language)
        words = desk.say("block.plot.arms", buds=told)
        limit = Limit(words, float(room.main.likely))
    low, likely, high = (
        float(one / factor) for one in (prunings.low, prunings.likely, prunings.high)
    )
    unit = MEASURES["vine-weight"].unit(desk.profile.units)
    point = NUMBER_MARKS[desk.language].decimal
    return line_plot(
        "buds-curve",
        desk.say("block.plot.curve"),
        points,
        (
            Axis(desk.say("block.plot.prunings", unit=unit), float(most / factor), point),
            Axis(desk.say("block.plot.buds-axis"), 1.1 * max(y for _, y in points), point),
        ),
        limit,
        Mark(desk.say("block.plot.this"), low, likely, high, float(answer.main.likely)),
    )


def _years(desk: Desk, answer: Answer) -> str:
    """The crop of each year beside a full one."""
    crops = [next(one for one in row if one.name == "year-crop") for row in answer.rows]
    bars = [
        bar(desk, crop, desk.say("block.plot.year", year=number))
        for number, crop in enumerate(crops, start=1)
    ]
    full = Limit(desk.say("block.plot.full"), bars[-1].likely)
    return bar_plot("years", desk.say("block.plot.years"), bars, full)
