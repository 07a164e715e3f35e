"""Plots of a block's numbers as small SVG drawings.

They are read without colour: every bar carries its number, a range is a line with two ends, a
limit is a dashed line with its words. Values come in the units that the page shows.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor, log10

from pencilwood.drawing.ink.shapes import Attributes
from pencilwood.drawing.ink.writer import element, escape

WIDTH = 360
_ROW = 46
_BAR = 16
_LABEL = 22
_LINE = 18
_LEFT, _RIGHT, _TOP, _BOTTOM = 44, 14, 16, 42
_PLOT_HEIGHT = 230
_TICKS = 5
_UNDER = 15
"""How far below a line its words stand."""
_SAMPLE = 34
"""A piece of a line beside the words that say what it is."""
_CHAR = 6.4
"""About how wide a letter is, to keep words inside the picture."""
_WIDE_CHAR = 7.4
"""The same on the safe side, where words would run into each other."""


@dataclass(frozen=True)
class Bar:
    """One bar with its words; `text` is the value as the page writes it."""

    label: str
    text: str
    low: float
    likely: float
    high: float


@dataclass(frozen=True)
class Limit:
    """A line that a bar or a curve is compared with."""

    label: str
    value: float


@dataclass(frozen=True)
class Axis:
    """What an axis measures, as far as it goes."""

    label: str
    most: float
    point: str = "."
    """The decimal sign of the page's language."""

    def tick(self, value: float) -> str:
        """A round number on the axis."""
        return f"{value:g}".replace(".", self.point)


@dataclass(frozen=True)
class Mark:
    """The block's own place on a curve."""

    label: str
    low: float
    likely: float
    high: float
    at: float
    """Height of the curve at the likely value."""


def bar_plot(name: str, title: str, bars: Sequence[Bar], limit: Limit | None = None) -> str:
    """Level bars one under another; `title` is read out, `name` keeps ids apart."""
    most = max([bar.high for bar in bars] + ([limit.value] if limit else [])) or 1
    scale = (WIDTH - 2 * _RIGHT) / most
    # Where a label and its number do not fit side by side, all numbers go under their bars.
    widest = max(len(bar.label) + len(bar.text) for bar in bars) * _WIDE_CHAR
    under = widest > WIDTH - 3 * _RIGHT
    row = _ROW + (_LINE if under else 0)
    drawn = [_bar(bar, number * row, scale, under) for number, bar in enumerate(bars)]
    height = len(bars) * row + 8
    if limit is not None:
        tops = [number * row for number in range(len(bars))]
        drawn.append(_upright_limit(limit, scale, tops, height))
        height += 24
    return _picture(name, title, height, "".join(drawn))


def _bar(bar: Bar, top: float, scale: float, under: bool) -> str:
    y = top + _LABEL
    middle = y + _BAR / 2
    box: Attributes = {
        "class": "pw-plot-bar",
        "x": _RIGHT,
        "y": y,
        "width": max(bar.likely * scale, 0.1),
        "height": _BAR,
    }
    words = _words(_RIGHT, y - 6, bar.label)
    if under:
        words += _words(_RIGHT, y + _BAR + 15, bar.text)
    else:
        words += _words(WIDTH - _RIGHT, y - 6, bar.text, "end")
    drawn = element("rect", box)
    if bar.low < bar.high:
        low, high = _RIGHT + bar.low * scale, _RIGHT + bar.high * scale
        drawn += _line("pw-plot-span", low, middle, high, middle)
        drawn += "".join(_line("pw-plot-span", x, middle - 6, x, middle + 6) for x in (low, high))
    return words + drawn


def _upright_limit(limit: Limit, scale: float, tops: Sequence[float], height: float) -> str:
    x = _RIGHT + limit.value * scale
    # A piece at each bar, so that it crosses no words.
    line = "".join(
        _line("pw-plot-limit", x, top + _LABEL - 3, x, top + _LABEL + _BAR + 4) for top in tops
    )
    anchor = "end" if x + len(limit.label) * _CHAR > WIDTH else "start"
    return line + _words(x, height + 12, limit.label, anchor)


def line_plot(
    name: str,
    title: str,
    points: Sequence[tuple[float, float]],
    axes: tuple[Axis, Axis],
    limit: Limit | None = None,
    mark: Mark | None = None,
) -> str:
    """A curve with the block's own place on it."""
    across, upward = axes
    x_scale = (WIDTH - _LEFT - _RIGHT) / across.most
    y_scale = (_PLOT_HEIGHT - _TOP) / upward.most

    def place(x: float, y: float) -> tuple[float, float]:
        return _LEFT + x * x_scale, _PLOT_HEIGHT - y * y_scale

    drawn = [_grid(across, upward, x_scale, y_scale)]
    corners = " ".join(f"{x:.1f},{y:.1f}" for x, y in (place(*point) for point in points))
    drawn.append(element("polyline", {"class": "pw-plot-line", "points": corners}))
    height = _PLOT_HEIGHT + _BOTTOM
    if limit is not None:
        _, y = place(0, limit.value)
        drawn.append(_line("pw-plot-limit", _LEFT, y, WIDTH - _RIGHT, y))
        in_the_way = [place(*point) for point in points]
        if mark is not None:
            in_the_way += [place(x, mark.at) for x in _steps(mark.low, mark.high)] + [
                place(mark.likely, mark.at)
            ]
        grid = [_PLOT_HEIGHT - value * y_scale for value in ticks(upward.most)]
        if _is_clear(limit, y, in_the_way, grid):
            drawn.append(_words(WIDTH - _RIGHT, y + _UNDER, limit.label, "end"))
        else:
            drawn.append(_line("pw-plot-limit", _LEFT, height + 6, _LEFT + _SAMPLE, height + 6))
            drawn.append(_words(_LEFT + _SAMPLE + 8, height + 10, limit.label))
            height += _LINE
    if mark is not None:
        drawn.append(_marked(mark, place(mark.likely, mark.at), x_scale))
    return _picture(name, title, height, "".join(drawn))


def _is_clear(
    limit: Limit, y: float, in_the_way: Sequence[tuple[float, float]], grid: Sequence[float]
) -> bool:
    """Whether the words of a level limit have room under the right end of their line.

    The curve mostly stands above it there, and lines of the grid seldom cross the words; where one
    does, they go below the whole plot.
    """
    left = WIDTH - _RIGHT - len(limit.label) * _WIDE_CHAR
    top, bottom = y + _UNDER - 14, y + _UNDER + 8
    levels = [*grid, *(level for x, level in in_the_way if x > left)]
    return bottom < _PLOT_HEIGHT and not any(top < level < bottom for level in levels)


def _steps(low: float, high: float) -> list[float]:
    return [low + (high - low) * number / 20 for number in range(21)]


def _marked(mark: Mark, place: tuple[float, float], x_scale: float) -> str:
    x, y = place
    drawn = element("circle", {"class": "pw-plot-point", "cx": x, "cy": y, "r": 5})
    if mark.low < mark.high:
        low, high = _LEFT + mark.low * x_scale, _LEFT + mark.high * x_scale
        drawn += _line("pw-plot-span", low, y, high, y)
        drawn += "".join(_line("pw-plot-span", end, y - 6, end, y + 6) for end in (low, high))
    # Above the curve, which rises to the right, there is room to the left.
    anchor = "end" if x - len(mark.label) * _CHAR > _LEFT else "start"
    return drawn + _words(x, y - 12, mark.label, anchor)


def _grid(across: Axis, upward: Axis, x_scale: float, y_scale: float) -> str:
    drawn = []
    for value in ticks(upward.most):
        y = _PLOT_HEIGHT - value * y_scale
        drawn.append(_line("pw-plot-grid", _LEFT, y, WIDTH - _RIGHT, y))
        drawn.append(_words(_LEFT - 6, y + 4, upward.tick(value), "end"))
    for value in ticks(across.most):
        x = _LEFT + value * x_scale
        drawn.append(_line("pw-plot-axis", x, _PLOT_HEIGHT, x, _PLOT_HEIGHT + 5))
        drawn.append(_words(x, _PLOT_HEIGHT + 18, across.tick(value), "middle"))
    drawn.append(_line("pw-plot-axis", _LEFT, _PLOT_HEIGHT, WIDTH - _RIGHT, _PLOT_HEIGHT))
    drawn.append(_line("pw-plot-axis", _LEFT, _TOP - 6, _LEFT, _PLOT_HEIGHT))
    drawn.append(_words(_LEFT, _TOP - 4, upward.label))
    drawn.append(_words(WIDTH - _RIGHT, _PLOT_HEIGHT + 36, across.label, "end"))
    return "".join(drawn)


def ticks(most: float) -> list[float]:
    """Round numbers from nothing up to `most`, about five of them."""
    rough = most / _TICKS
    power = 10.0 ** floor(log10(rough))
    step = next(size * power for size in (1, 2, 5, 10) if size * power >= rough * 0.999)
    return [number * step for number in range(int(most / step * 1.0001) + 1)]


def _line(name: str, x1: float, y1: float, x2: float, y2: float) -> str:
    return element("line", {"class": name, "x1": x1, "y1": y1, "x2": x2, "y2": y2})


def _words(x: float, y: float, text: str, anchor: str = "start") -> str:
    return element("text", {"x": x, "y": y, "text-anchor": anchor}, escape(text))


def _picture(name: str, title: str, height: float, inside: str) -> str:
    named = element("title", {"id": f"{name}-title"}, escape(title))
    frame: Attributes = {
        "class": "pw-plot",
        "viewBox": f"0 0 {WIDTH} {height:g}",
        "role": "img",
        "aria-labelledby": f"{name}-title",
        "xmlns": "http://www.w3.org/2000/svg",
    }
    return element("svg", frame, named + inside)
