"""Reads a case: a measured vine with its author's pruning."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

from pencilwood.cases import case_keys as keys
from pencilwood.cases import vine_keys
from pencilwood.cases.case import AnswerCut, Case, Excuse, Photo
from pencilwood.cases.cut_steps import Cutting, ToolFor
from pencilwood.cases.fields import Key, Placed, Row
from pencilwood.cases.one_or_each import Said
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.sanitise import without_markup
from pencilwood.cases.vine_file import NO_VINE, VineRead, read_vine
from pencilwood.cases.vine_table import VINE
from pencilwood.cases.yaml_nodes import read_nodes
from pencilwood.findings import Finding
from pencilwood.places import Place
from pencilwood.units import UnitSystem
from pencilwood.vine.model import Form
from pencilwood.vine.passes import CUTTING_PASSES


@dataclass(frozen=True)
class CaseSurroundings:
    """What stands around a case in its handbook and decides what it may name."""

    languages: Sequence[str]
    """Those that each text needs."""
    rule_names: Collection[str]
    safety_names: Collection[str]
    tool_for: ToolFor
    """Picks the tool where the author names none."""
    units: UnitSystem = "metric"
    """What findings tell lengths in."""


def read_case(
    path: Path,
    around: CaseSurroundings,
    shown_as: str | None = None,
    *,
    language: str = "en",
    from_others: bool = False,
) -> tuple[Case | None, list[Finding]]:
    """The case of a file, or None and every reason why it is none.

    `shown_as` is the file's name in findings, `language` is theirs. What comes `from_others` is
    freed of markup and has to say whose it is.
    """
    report = Report(language, around.languages, around.units)
    root = read_nodes(path, report, shown_as)
    if root is not None and from_others:
        root = without_markup(root, report)
    row = None if root is None else keys.CASE_TABLE.read(root, "", report)
    if row is None:
        return None, report.findings()
    if from_others:
        _check_credits(row, report)
    check_slug(row.get(keys.CASE), row.place_of(keys.CASE), path, report)
    teaches = known_names(row.get(keys.TEACHES), around.rule_names, "unknown-rule", report)
    safety = known_names(row.get(keys.SAFETY), around.safety_names, "unknown-safety-note", report)
    vine_row = row.get(VINE)
    vine = NO_VINE if vine_row is None else read_vine(vine_row, report)
    answer = tuple(_answer(row, vine, around.tool_for, report)) if vine_row is not None else ()
    excuses = tuple(_excuses(row, around.rule_names, vine, report))
    if report.errors or vine.parts is None:
        return None, report.findings()
    return _case(row, vine, answer, excuses, teaches, safety), report.findings()


def check_slug(slug: str | None, place: Place, path: Path, report: Report) -> None:
    """Note a short name that is not the file's own."""
    if slug is not None and slug != path.stem:
        report.add(place, "not-the-file-name", file=quoted(path.stem), found=quoted(slug))


def _check_credits(row: Row, report: Report) -> None:
    for key in keys.CREDITS:
        if not row.has(key):
            report.add(row.place, "shared-without-credits", key=key.name)


def known_names(
    given: tuple[Placed[str], ...] | None, known: Collection[str], misfit: str, report: Report
) -> tuple[tuple[str, Place], ...]:
    """Names with their places; a finding for each that is unknown or comes again."""
    names: dict[str, Place] = {}
    for one in given or ():
        if one.value in names:
            line = names[one.value].line
            report.add(one.place, "named-twice", name=quoted(one.value), line=line)
        elif report.check_known(one.value, one.place, known, misfit):
            names[one.value] = one.place
    return tuple(names.items())


def _answer(row: Row, vine: VineRead, tool_for: ToolFor, report: Report) -> Iterator[AnswerCut]:
    """The author's cuts in the order of the passes."""
    answer = row.get(keys.ANSWER)
    if answer is None:
        return
    _check_passes(answer, report)
    if vine.parts is not None:
        _check_form(answer, vine.parts.vine.form, report)
    cutting = Cutting(vine, tool_for, report)
    for in_pass in CUTTING_PASSES:
        for cut_row in answer.get(keys.PASS_KEYS[in_pass]) or ():
            why = cut_row.value.get(keys.WHY)
            for step in cutting.make(cut_row.value, in_pass):
                if why is not None:
                    yield AnswerCut(step.done, why.words, step.place, step.tool_given)
    yield from _ties(answer, cutting)


def _ties(answer: Row, cutting: Cutting) -> Iterator[AnswerCut]:
    """The canes that are tied to the wire after the last cut."""
    for row in answer.get(keys.TIE) or ():
        why = row.value.get(keys.WHY)
        for step in cutting.tie(row.value):
            if why is not None:
                yield AnswerCut(step.done, why.words, step.place)


def _check_form(answer: Row, form: Form, report: Report) -> None:
    """The answer holds no pass that vines of this form do not have."""
    has = [key.name for in_pass, key in keys.PASS_KEYS.items() if in_pass in form.passes]
    for in_pass, key in keys.PASS_KEYS.items():
        if answer.has(key) and in_pass not in form.passes:
            place, names = answer.place_of(key), ", ".join(has)
            report.add(
                place, "no-such-pass", form=form.name, pass_name=quoted(key.name), names=names
            )
    if answer.has(keys.TIE) and not form.tied:
        report.add(answer.place_of(keys.TIE), "nothing-tied-here", form=form.name)


def _check_passes(answer: Row, report: Report) -> None:
    """The passes stand in the file in the order in which they are done."""
    names = [*(key.name for key in keys.PASS_KEYS.values()), keys.TIE.name]
    given = [(names.index(name), name) for name in answer.places if name in names]
    if not given:
        report.add(answer.place, "no-cut-at-all", names=", ".join(names))
    for (before, earlier), (number, later) in pairwise(given):
        if number < before:
            place = answer.places[later]
            report.add(place, "passes-out-of-order", pass_name=quoted(later), other=quoted(earlier))


def _excuses(
    row: Row, rule_names: Collection[str], vine: VineRead, report: Report
) -> Iterator[Excuse]:
    for placed in row.get(keys.EXCEPTIONS) or ():
        one = placed.value
        rule, at, why = one.get(keys.RULE), one.get(keys.AT), one.get(keys.WHY)
        if rule is not None:
            report.check_known(rule, one.place_of(keys.RULE), rule_names, "unknown-rule")
        if at is not None:
            vine.check_name(at, one.place_of(keys.AT), report, tuple(vine.places))
        if rule is not None and why is not None:
            yield Excuse(rule, at, why.words, placed.place)


def _case(
    row: Row,
    vine: VineRead,
    answer: tuple[AnswerCut, ...],
    excuses: tuple[Excuse, ...],
    teaches: tuple[tuple[str, Place], ...],
    safety: tuple[tuple[str, Place], ...],
) -> Case | None:
    target, far, story = (
        row.get(vine_keys.TARGET),
        row.get(keys.FAR_FROM_PLAN),
        row.need(keys.STORY),
    )
    if vine.parts is None:
        return None
    return Case(
        slug=row.need(keys.CASE),
        place=row.place,
        title=row.need(keys.TITLE).words,
        level=row.need(keys.LEVEL),
        teaches=teaches,
        story=story.words,
        story_places=story.places,
        vine=vine.parts.vine,
        answer=answer,
        target_buds=None if target is None else target.need(vine_keys.TARGET_BUDS),
        excuses=excuses,
        far_from_plan=None if far is None else far.need(keys.WHY).words,
        safety=safety,
        three_winters=row.get(keys.THREE_WINTERS) or False,
        renewed_arm=row.get(keys.RENEWED_ARM),
        author=_credit(row, keys.AUTHOR),
        licence=_credit(row, keys.LICENCE),
        origin=_credit(row, keys.ORIGIN),
        photo=_photo(row),
        places={**row.places, **vine.places},
    )


def _credit(row: Row, key: Key[Said]) -> Mapping[str, str]:
    said = row.get(key)
    return {} if said is None else said.words


def _photo(row: Row) -> Photo | None:
    given = row.get(keys.PHOTO)
    if given is None:
        return None
    file, alt = given.need(keys.PHOTO_FILE), given.need(keys.ALT).words
    return Photo(file, alt, given.place_of(keys.PHOTO_FILE))
