"""Fills in a chapter: Jinja2 in a sandbox, with every mistake told by line and column.

A chapter may only call what it is given, with plain texts; it cannot count, loop or look into
things, so that no chapter takes for ever or fills the memory. Each call is told the place where
it stands, so that a wrong name in the third call of a line is reported there, and all mistakes
are reported together.
"""

from __future__ import annotations

import inspect
import re
import traceback
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

import jinja2
from jinja2 import nodes
from jinja2.sandbox import SandboxedEnvironment
from markupsafe import Markup

from pencilwood.pages.chapters.problems import Problems

Where = tuple[int, int]
"""A line and a column, both counted from 1."""

_FILE = "chapter"
_PLACE = "_where"
# Jinja's own words that are no calls of ours, and harmless.
_JINJA_NAMES = frozenset({"loop", "true", "false", "none", "True", "False", "None"})
_OPENING = re.compile(r"\{\{|\{%|\{#")


@dataclass(frozen=True)
class Call:
    """Something that a chapter may call; its function takes the place first."""

    function: Callable[..., Markup]
    example: str


def fill_in(text: str, calls: Mapping[str, Call], problems: Problems) -> str | None:
    """The chapter with every call replaced, or None when it cannot be filled in."""
    environment = SandboxedEnvironment(
        undefined=jinja2.StrictUndefined, autoescape=True, keep_trailing_newline=True
    )
    # Only the calls: none of the helpers that Jinja brings along.
    environment.globals.clear()
    try:
        parsed = environment.parse(text, name=_FILE, filename=_FILE)
        if not (
            _names_known(parsed, text, calls, problems)
            and _only_calls(parsed, text, calls, problems)
        ):
            return None
        _tell_places(parsed, text, calls)
        template = environment.from_string(parsed)
        return template.render({name: _bound(name, calls[name], problems) for name in calls})
    except jinja2.TemplateSyntaxError as error:
        where = _opening_of(text, error.lineno)
        problems.add(where, "cannot-be-filled-in", said=error.message or "")
    except RecursionError:
        # Brackets in brackets, further down than anybody could mean.
        problems.add(_first_opening(text), "not-a-call")
    except Exception as error:
        problems.add(_where_raised(error, text), "cannot-be-filled-in", said=_said(error))
    return None


@lru_cache(maxsize=256)
def named_by_calls(text: str, call: str, argument: str) -> tuple[str, ...]:
    """What the calls of one name are handed first or under that argument, in the chapter's order.

    Nothing if the chapter cannot be read.
    """
    try:
        parsed = SandboxedEnvironment().parse(text)
    except (jinja2.TemplateSyntaxError, RecursionError):
        return ()
    return tuple(
        given.value
        for one in parsed.find_all(nodes.Call)
        if isinstance(one.node, nodes.Name) and one.node.name == call
        for given in (*one.args[:1], *(own.value for own in one.kwargs if own.key == argument))
        if isinstance(given, nodes.Const) and isinstance(given.value, str)
    )


def _said(error: Exception) -> str:
    return " ".join(str(error).split()) or type(error).__name__


def _names_known(
    parsed: nodes.Template, text: str, calls: Mapping[str, Call], problems: Problems
) -> bool:
    own = {name.name for name in parsed.find_all(nodes.Name) if name.ctx != "load"}
    known = {*calls, *own, *_JINJA_NAMES}
    seen: Counter[tuple[str, int]] = Counter()
    fine = True
    for name in parsed.find_all(nodes.Name):
        if name.name in known:
            continue
        where = _nth_word(text, name.lineno, name.name, seen)
        hint = problems.hint(name.name, calls)
        problems.add(where, "unknown-call", found=name.name, hint=hint)
        fine = False
    return fine


def _only_calls(
    parsed: nodes.Template, text: str, calls: Mapping[str, Call], problems: Problems
) -> bool:
    """Whether nothing but texts and calls of ours stands there; the first of all else is told."""
    for statement in parsed.body:
        inside = statement.nodes if isinstance(statement, nodes.Output) else [statement]
        for one in inside:
            if not isinstance(one, nodes.TemplateData) and not _is_call(one, calls):
                problems.add(_opening_of(text, one.lineno), "not-a-call")
                return False
    return True


def _is_call(one: nodes.Node, calls: Mapping[str, Call]) -> bool:
    """Whether this is a text, or a call with constants and other calls for arguments."""
    if not isinstance(one, nodes.Call):
        return isinstance(one, nodes.Const) and isinstance(one.value, str)
    if not isinstance(one.node, nodes.Name) or one.node.name not in calls:
        return False
    given = [*one.args, *(named.value for named in one.kwargs)]
    spread = one.dyn_args is not None or one.dyn_kwargs is not None
    return not spread and all(isinstance(a, nodes.Const) or _is_call(a, calls) for a in given)


def _first_opening(text: str) -> Where:
    match = _OPENING.search(text)
    before = text[: match.start() if match else 0].split("\n")
    return len(before), len(before[-1]) + 1


def _tell_places(parsed: nodes.Template, text: str, calls: Mapping[str, Call]) -> None:
    """Give each call of ours the place where it stands, as one more argument."""
    seen: Counter[tuple[str, int]] = Counter()
    for call in parsed.find_all(nodes.Call):
        if isinstance(call.node, nodes.Name) and call.node.name in calls:
            where = _nth_word(text, call.node.lineno, call.node.name, seen)
            place = nodes.Keyword(_PLACE, nodes.Const(where), lineno=call.lineno)
            call.kwargs.append(place)


def _bound(name: str, call: Call, problems: Problems) -> Callable[..., Markup]:
    """The call with its arguments looked at first, so that a wrong one is told in plain words."""
    signature = inspect.signature(call.function)

    def run(*arguments: object, **named: object) -> Markup:
        where = named.pop(_PLACE, (1, 1))
        try:
            bound = signature.bind(where, *arguments, **named)
        except TypeError:
            bound = None
        values = [*arguments, *named.values()]
        if bound is None or not all(isinstance(value, str) for value in values):
            place = where if isinstance(where, tuple) else (1, 1)
            problems.add(place, "wrong-call", call=name, example=call.example)
            return Markup()
        return call.function(*bound.args, **bound.kwargs)

    return run


def _nth_word(text: str, line: int, word: str, seen: Counter[tuple[str, int]]) -> Where:
    """Where a word stands for the next time on a line; Jinja itself knows only the line."""
    found = _words_at(_line(text, line), word)
    number = seen[word, line]
    seen[word, line] += 1
    column = found[min(number, len(found) - 1)] + 1 if found else 1
    return line, column


@lru_cache(maxsize=64)
def _words_at(row: str, word: str) -> tuple[int, ...]:
    """Where a word stands in a line's calls; a line may hold thousands of them."""
    return tuple(match.start() for match in re.finditer(rf"\b{re.escape(word)}\b", _code(row)))


@lru_cache(maxsize=4)
def _code(row: str) -> str:
    """A line with everything blanked that is prose or quoted, every column kept."""
    inside = re.sub(r"\"[^\"]*\"|'[^']*'", lambda match: " " * len(match[0]), row)
    kept = [" "] * len(row)
    for match in re.finditer(r"\{[{%].*?[%}]\}|\{[{%].*$|^.*?[%}]\}", inside):
        kept[match.start() : match.end()] = match[0]
    return "".join(kept)


def _opening_of(text: str, line: int) -> Where:
    match = _OPENING.search(_line(text, line))
    return line, match.start() + 1 if match else 1


def _line(text: str, line: int) -> str:
    rows = text.split("\n")
    return rows[line - 1] if 0 < line <= len(rows) else ""


def _where_raised(error: Exception, text: str) -> Where:
    lines: Iterator[int] = (
        frame.lineno or 1
        for frame in reversed(traceback.extract_tb(error.__traceback__))
        if frame.filename in (_FILE, "<template>")
    )
    return _opening_of(text, next(lines, 1))
