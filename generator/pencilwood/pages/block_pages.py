"""Pages for supervisors: the list of blocks, a page for each, and the sums as forms."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from typing import cast

from pencilwood.block.answer import Answer, Figure
from pencilwood.block.crop_load import BANDS, NamedBand
from pencilwood.block.field import Value
from pencilwood.block.field_list import FIELDS
from pencilwood.block.for_browser import page_data, usual_words
from pencilwood.block.questions import QUESTIONS
from pencilwood.block.shown import shown_ends
from pencilwood.block.whole_block import Refusal, Worked, work_block
from pencilwood.cases.blocks_file import Block
from pencilwood.pages.block_plots import plot_of
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.units import UnitSystem
from pencilwood.words import say

SUMS = "sums"
# What a supervisor looks for first.
_SHORT = (("fit", "buds"), ("crop", "block-crop"), ("crew", "work"), ("renovation", "lost-crop"))


@dataclass(frozen=True)
class ShownUsual:
    """A usual value that a sum took, and how well it is known."""

    label: str
    value: str
    status: str
    source: str


@dataclass(frozen=True)
class ShownSum:
    """One sum on the page of a block."""

    name: str
    title: str
    figures: tuple[tuple[str, str], ...]
    remarks: tuple[str, ...]
    steps: tuple[str, ...]
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    limits: str
    usual: tuple[ShownUsual, ...]
    plot: str
    refused: str = ""


def blocks_page(handbook: Handbook, language: str) -> Page:
    """The list of blocks and the way to the forms."""
    desk = Desk(handbook, "blocks", language)
    short = {block.slug: _short(desk, work_block(figures_of(block))) for block in handbook.blocks}
    return desk.write(
        "blocks.html",
        desk.say("blocks"),
        description=desk.say("blocks.lead"),
        menu_title=desk.say("blocks"),
        blocks=handbook.blocks,
        short=short,
    )


def sums_page(handbook: Handbook, language: str) -> Page:
    """Every sum as a form."""
    desk = Desk(handbook, SUMS, language)
    data = json.dumps(page_data(language, desk.profile.units), ensure_ascii=False)
    return desk.write(
        "sums.html",
        desk.say("blocks.sums"),
        description=desk.say("blocks.sums.lead"),
        menu_title=desk.say("blocks.sums"),
        # A closing tag inside a string would end the script element.
        data=data.replace("</", "<\\/"),
        sums=list(QUESTIONS),
        bands={name: _bands(desk, name) for name in QUESTIONS},
        said=partial(say, language),
    )


# The unit of each sum's result that its bands are told in.
_BANDS_IN = {"crop-load": "number", "vigour": "prunings-on-length"}


def _bands(desk: Desk, question: str) -> list[str]:
    """Every band that a sum may be compared with, for paper, where nothing can be chosen."""
    return [
        desk.say(
            "sums.band",
            name=FIELDS[field].text(choice, desk.profile.units, desk.language),
            range=_in_all_units(desk, band, _BANDS_IN[question]),
            status=say(desk.language, f"block.status.{band.status}"),
            source=desk.say(f"sums.source.{band.source}"),
        )
        for field in QUESTIONS[question].asked
        for choice, band in BANDS.get(field, {}).items()
    ]


def _in_all_units(desk: Desk, band: NamedBand, measure: str) -> str:
    """The page's own units first; paper cannot be changed to the others."""
    other: UnitSystem = "us" if desk.profile.units == "metric" else "metric"
    own, others = (
        shown_ends(band.low, band.high, measure, units, desk.language)
        for units in (desk.profile.units, other)
    )
    return own if own == others else f"{own} ({others})"


def block_page(handbook: Handbook, block: Block, language: str) -> Page:
    """The page of one block."""
    desk = Desk(handbook, f"blocks/{block.slug}", language)
    given = figures_of(block)
    worked = work_block(given)
    answers = {one.question: one for one in worked if isinstance(one, Answer)}
    return desk.write(
        "block.html",
        desk.own(block.title),
        description=desk.say("blocks.lead"),
        block=block,
        known=[
            (
                FIELDS[name].label(desk.profile.units, language),
                FIELDS[name].text(value, desk.profile.units, language),
            )
            for name, value in given.items()
        ],
        short=_short(desk, worked),
        sums=[_shown(desk, one, answers, given) for one in worked],
        said=partial(say, language),
    )


def figures_of(block: Block) -> Mapping[str, Value]:
    """What is known of a block, as the sums take it."""
    return cast("Mapping[str, Value]", block.figures)


def _short(desk: Desk, worked: tuple[Worked, ...]) -> list[tuple[str, str]]:
    answers = {one.question: one for one in worked if isinstance(one, Answer)}
    return [
        _figure(desk, figure, answers[question])
        for question, name in _SHORT
        for figure in (answers[question].figures if question in answers else ())
        if figure.name == name
    ]


def _figure(desk: Desk, figure: Figure, answer: Answer) -> tuple[str, str]:
    label = figure.label(desk.language, answer.question)
    return label, figure.text(desk.profile.units, desk.language)


def _shown(
    desk: Desk, worked: Worked, answers: Mapping[str, Answer], given: Mapping[str, Value]
) -> ShownSum:
    units, language = desk.profile.units, desk.language
    name = worked.question
    title = say(language, f"block.question.{name}")
    limits = say(language, f"block.limits.{name}")
    if isinstance(worked, Refusal):
        told = worked.error.told(language)
        return ShownSum(name, title, (), (), (), (), (), limits, (), "", told)
    return ShownSum(
        name=name,
        title=title,
        figures=tuple(_figure(desk, one, worked) for one in worked.figures),
        remarks=tuple(one.text("remark", units, language) for one in worked.remarks),
        steps=tuple(one.text("step", units, language) for one in worked.steps),
        columns=tuple(one.label(language) for one in worked.rows[0]) if worked.rows else (),
        rows=tuple(tuple(one.text(units, language) for one in row) for row in worked.rows),
        limits=limits,
        usual=_usual(desk, name, given),
        plot=plot_of(desk, worked, answers, given),
    )


def _usual(desk: Desk, question: str, given: Mapping[str, Value]) -> tuple[ShownUsual, ...]:
    """The usual values that stood in for what the block does not give."""
    language = desk.language
    return tuple(
        ShownUsual(
            label=FIELDS[name].label(desk.profile.units, language),
            value=usual_words(FIELDS[name], language, desk.profile.units),
            status=say(language, f"block.status.{FIELDS[name].status}"),
            source=FIELDS[name].source_in(language),
        )
        for name in QUESTIONS[question].asked
        if name not in given and FIELDS[name].default
    )
