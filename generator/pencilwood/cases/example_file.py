"""Reads the good and the bad vine that show a rule."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from pathlib import Path
from typing import Literal

from pencilwood.cases import vine_keys
from pencilwood.cases.case import RuleExample
from pencilwood.cases.cut_steps import (
    CUT,
    STUB,
    TIE_CANE,
    TIE_TO,
    TO,
    TOOL,
    Cutting,
    ToolFor,
)
from pencilwood.cases.fields import Key, ListOf, Row, Table
from pencilwood.cases.kinds import Choice, Text, Words
from pencilwood.cases.report import Report
from pencilwood.cases.vine_file import NO_VINE, read_vine
from pencilwood.cases.vine_table import VINE
from pencilwood.cases.yaml_nodes import read_nodes
from pencilwood.findings import Finding
from pencilwood.units import UnitSystem
from pencilwood.vine.model import Vine
from pencilwood.vine.passes import CUTTING_PASSES, DoneCut, Pass
from pencilwood.words import LANGUAGES

CAPTION = Key("caption", Words(300), "What the picture shows, in each language.")
IN = Key(
    "in",
    Choice({in_pass.value: in_pass for in_pass in CUTTING_PASSES}),
    "The pass; left out: fine for a shortening, else thinning-out.",
    False,
)
CUTS = Key(
    "cuts",
    ListOf(Table("One cut, or several of a kind.", (CUT, TO, TOOL, STUB, IN)), 0, 200),
    "What is done to the vine before the rule looks at it.",
    False,
)
TIE = Key(
    "tie",
    ListOf(Table("A fruiting cane and its side of the vine.", (TIE_CANE, TIE_TO)), 0, 20),
    "Where the fruiting canes are tied, after the last cut.",
    False,
)
BREAKS = Key(
    "breaks",
    ListOf(Text()),
    "What the rule must report of a bad vine, by name and in order.",
    False,
)

EXAMPLE_TABLE = Table(
    "A vine that shows a rule kept (good.yml) or broken (bad.yml).",
    (CAPTION, VINE, CUTS, TIE, BREAKS, vine_keys.TARGET),
)

_KINDS: dict[str, Literal["good", "bad"]] = {"good": "good", "bad": "bad"}


def read_example(
    path: Path,
    rule: str,
    shown_as: str | None = None,
    *,
    languages: Sequence[str] = LANGUAGES,
    message_names: Collection[str] | None = None,
    language: str = "en",
    units: UnitSystem = "metric",
    tool_for: ToolFor,
) -> tuple[RuleExample | None, list[Finding]]:
    """The vine of `good.yml` or `bad.yml`, or None and every reason why it is none.

    `message_names` are those that the rule has; without them any name is taken. `tool_for` picks
    the tool where the file names none.
    """
    report = Report(language, languages, units)
    root = read_nodes(path, report, shown_as)
    row = None if root is None else EXAMPLE_TABLE.read(root, "", report)
    if row is None:
        return None, report.findings()
    kind = _kind(path, row, report)
    _check_breaks(row, kind, message_names, report)
    vine_row = row.get(VINE)
    vine = NO_VINE if vine_row is None else read_vine(vine_row, report)
    cuts = tuple(_cuts(row, Cutting(vine, tool_for, report))) if vine_row is not None else ()
    if report.errors or vine.parts is None or kind is None:
        return None, report.findings()
    return _example(row, rule, kind, vine.parts.vine, cuts), report.findings()


def _example(
    row: Row, rule: str, kind: Literal["good", "bad"], vine: Vine, cuts: tuple[DoneCut, ...]
) -> RuleExample:
    target = row.get(vine_keys.TARGET)
    return RuleExample(
        rule=rule,
        kind=kind,
        place=row.place,
        caption=row.need(CAPTION).words,
        vine=vine,
        cuts=cuts,
        breaks=tuple((one.value, one.place) for one in row.get(BREAKS) or ()),
        target_buds=None if target is None else target.need(vine_keys.TARGET_BUDS),
    )


def _kind(path: Path, row: Row, report: Report) -> Literal["good", "bad"] | None:
    kind = _KINDS.get(path.stem)
    if kind is None:
        report.add(row.place, "neither-good-nor-bad")
    return kind


def _check_breaks(
    row: Row, kind: str | None, message_names: Collection[str] | None, report: Report
) -> None:
    if kind == "good" and row.has(BREAKS):
        report.add(row.place_of(BREAKS), "good-breaks-nothing")
    if kind == "bad" and not row.has(BREAKS):
        report.add(row.place, "bad-breaks-what")
    for one in row.get(BREAKS) or ():
        if message_names is not None:
            report.check_known(one.value, one.place, message_names, "unknown-message")


def _cuts(row: Row, cutting: Cutting) -> Iterator[DoneCut]:
    for one in row.get(CUTS) or ():
        usual = Pass.FINE if one.value.has(TO) else Pass.THINNING_OUT
        for step in cutting.make(one.value, one.value.get(IN) or usual):
            yield step.done
    for one in row.get(TIE) or ():
        for step in cutting.tie(one.value):
            yield step.done
