"""A page for each rule, and the page that lists them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from pencilwood.cases.case import RuleExample
from pencilwood.drawing import draw_pruned, scale_words, window_on_arms
from pencilwood.drawing.describe import describe_vine
from pencilwood.drawing.plate import Frame, frame_around_all
from pencilwood.drawing.tied_canes import laid_canes
from pencilwood.pages.desk import Desk, paragraphs
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.rule_prices import forms_of, in_order, rule_shown
from pencilwood.pages.score_page import bands_shown
from pencilwood.pages.wood_words import cut_words
from pencilwood.rules import RULES
from pencilwood.rules.rulebook import RULEBOOK
from pencilwood.rules.shapes import Rule
from pencilwood.vine.passes import after_cuts
from pencilwood.vine.wood import divide, uncut


@dataclass(frozen=True)
class Section:
    """One headed part of a rule's page."""

    anchor: str
    title: str
    paragraphs: tuple[str, ...]


@dataclass(frozen=True)
class ShownExample:
    """A good or bad vine, drawn."""

    kind: str
    title: str
    caption: str
    drawing: str
    cuts: tuple[str, ...]


ANCHORS = ("checks", "why", "instead", "limits", "source")


def rules_page(handbook: Handbook, language: str) -> Page:
    """Every rule by family, each with what it checks."""
    desk = Desk(handbook, "rules", language)
    checks = {rule.name: next(iter(rule.page[language].values())) for rule in RULES}
    musts = {name for (name, _), price in RULEBOOK.items() if price.must}
    forms = {rule.name: forms_of(desk, rule) for rule in RULES}
    families = {
        family: tuple(rule for rule in in_order(desk) if rule.family == family)
        for family in ("vine", "cutting")
    }
    return desk.write(
        "rules.html",
        desk.say("rules"),
        menu_title=desk.say("rules"),
        families=families,
        checks=checks,
        musts=musts,
        forms=forms,
    )


def rule_page(handbook: Handbook, rule: Rule, language: str) -> Page:
    """The page of one rule."""
    desk = Desk(handbook, f"rules/{rule.name}", language)
    sections = tuple(
        Section(anchor, title, paragraphs(text))
        for anchor, (title, text) in zip(ANCHORS, rule.page[language].items(), strict=True)
    )
    return desk.write(
        "rule.html",
        rule.title[language],
        description=sections[0].paragraphs[0],
        rule=rule,
        sections=sections,
        examples=tuple(examples_shown(desk, rule)),
        scale=scale_words(desk.language),
        prices=rule_shown(desk, rule),
        bands=bands_shown(desk, rule.bands),
        forms=forms_of(desk, rule),
        cases=handbook.cases_teaching(rule.name),
    )


def examples_shown(desk: Desk, rule: Rule, prefix: str = "") -> Iterator[ShownExample]:
    """The bad and the good vine of a rule, as far as they could be read.

    `prefix` keeps their ids apart where a page shows them a second time.
    """
    shown = desk.handbook.examples.get(rule.name, {})
    kinds = [kind for kind in ("bad", "good") if kind in shown]
    windows = [_window(shown[kind]) for kind in kinds]
    for kind in kinds:
        # In one window both are to one scale, so that they can be compared.
        yield _example(desk, rule, shown[kind], prefix, frame_around_all(windows))


def _window(example: RuleExample) -> Frame:
    left = after_cuts(uncut(divide(example.vine)), example.cuts)
    return window_on_arms(left, laid_canes(left, example.cuts))


def _example(
    desk: Desk, rule: Rule, example: RuleExample, prefix: str, window: Frame
) -> ShownExample:
    parts = divide(example.vine)
    left = after_cuts(uncut(parts), example.cuts)
    title = desk.say(f"rule.drawing-{example.kind}", title=rule.title[desk.language])
    drawing = draw_pruned(
        parts,
        example.cuts,
        f"{prefix}{example.kind}-{rule.name}",
        desk.language,
        title=title,
        description=describe_vine(parts, left, desk.language, desk.profile.units),
        units=desk.profile.units,
        window=window,
    )
    cuts = tuple(cut_words(desk, parts, done) for done in example.cuts)
    caption = desk.own(example.caption)
    return ShownExample(example.kind, desk.say(f"rule.{example.kind}"), caption, drawing, cuts)
