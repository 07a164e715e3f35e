"""A page for each rule, and the page that lists them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from markupsafe import Markup

from pencilwood.cases.case import RuleExample
from pencilwood.drawing import Paper, draw_pruned, scale_words, window_on_arms
from pencilwood.drawing.describe import describe_vine
from pencilwood.drawing.names.labels import letters_named
from pencilwood.drawing.scene.tied_canes import laid_canes
from pencilwood.drawing.views.near_views import NearView, near_views, to_compare
from pencilwood.pages.desk import Desk, paragraphs
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.near_pictures import near_pictures
from pencilwood.pages.page import Page
from pencilwood.pages.rule_figures import figures_shown
from pencilwood.pages.rule_pictures import fault_picture
from pencilwood.pages.rule_prices import forms_of, in_order, rule_shown
from pencilwood.pages.unbroken import keep_whole
from pencilwood.pages.wood_words import cut_words
from pencilwood.pages.zone_shown import with_room_for_zone, zone_drawn
from pencilwood.rules import RULES
from pencilwood.rules.rulebook import RULEBOOK
from pencilwood.rules.shapes import Rule
from pencilwood.vine.passes import after_cuts
from pencilwood.vine.wood import Parts, divide, uncut
from pencilwood.words import say


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
    no_room: str
    """Which wood has no letter in the drawing; empty where all that is named has one."""


_GHOSTS_MM = 40.0
"""So much is seen of what was cut, past the wood that is left."""
ANCHORS = ("checks", "why", "instead", "limits", "source")


def rules_page(handbook: Handbook, language: str) -> Page:
    """Every rule by family, each with what it checks."""
    desk = Desk(handbook, "rules", language)
    checks = {rule.name: next(iter(rule.page[language].values())) for rule in RULES}
    musts = {name for (name, _), price in RULEBOOK.items() if price.must}
    forms = {rule.name: _only_for(desk, rule) for rule in RULES}
    families = {
        family: tuple(rule for rule in in_order() if rule.family == family)
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
        pictures=dict(_pictures(desk)),
    )


def _only_for(desk: Desk, rule: Rule) -> Markup:
    """Which forms go by the rule; empty when all do."""
    forms = forms_of(desk, rule)
    if not forms:
        return Markup()
    return keep_whole(desk.say("rules.forms", forms=", ".join(forms)), forms)


def _pictures(desk: Desk) -> Iterator[tuple[str, Markup]]:
    """Each rule's fault, as far as its bad example could be read."""
    for rule in RULES:
        example = desk.handbook.examples.get(rule.name, {}).get("bad")
        if example is not None:
            yield rule.name, desk.late(fault_picture(rule, example, desk.profile))


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
        kinds=_kinds_shown(desk, rule),
        prices=rule_shown(desk, rule),
        bands=figures_shown(desk, rule),
        forms=forms_of(desk, rule),
        cases=handbook.cases_teaching(rule.name),
    )


def examples_shown(desk: Desk, rule: Rule, prefix: str = "") -> Iterator[ShownExample]:
    """The bad and the good vine of a rule, as far as they could be read.

    `prefix` keeps their ids apart on a page that is not the rule's own and lists no cuts.
    """
    shown = desk.handbook.examples.get(rule.name, {})
    kinds = [kind for kind in ("bad", "good") if kind in shown]
    views = to_compare([_views(desk, rule, shown[kind]) for kind in kinds])
    for kind, own in zip(kinds, views, strict=True):
        yield _example(desk, rule, shown[kind], prefix, own)


def _kinds_shown(desk: Desk, rule: Rule) -> tuple[str, ...]:
    """What texts about the vines of its examples are filed under, each once."""
    examples = desk.handbook.examples.get(rule.name, {}).values()
    return tuple(dict.fromkeys(one.vine.own_words for one in examples))


def _views(desk: Desk, rule: Rule, example: RuleExample) -> tuple[NearView, ...]:
    """Of arms the wood that is left; of a head also a little of what came off."""
    before = uncut(divide(example.vine))
    left = after_cuts(before, example.cuts)
    laid = laid_canes(left, example.cuts)
    views = near_views(before, laid, beyond_mm=_GHOSTS_MM, left=left)
    if len(views) > 1:
        return views
    near = replace(views[0], window=window_on_arms(left, laid))
    return with_room_for_zone(desk, [near], [rule], left.parts)


def _example(
    desk: Desk, rule: Rule, example: RuleExample, prefix: str, views: Sequence[NearView]
) -> ShownExample:
    parts = divide(example.vine)
    left = after_cuts(uncut(parts), example.cuts)
    cuts = tuple(cut_words(desk, parts, done, made=True) for done in example.cuts)
    caption = desk.own(example.caption)
    named = _pieces_named(parts, [caption] if prefix else [caption, *cuts])

    def draw(near: NearView, own_prefix: str) -> str:
        paper = Paper(
            own_prefix,
            desk.language,
            title=desk.say(f"rule.drawing-{example.kind}", title=rule.title[desk.language]),
            description=describe_vine(parts, left, desk.language, desk.profile.units),
            units=desk.profile.units,
            over=zone_drawn(desk, [rule], parts),
            css_class=near.css_class if near.view else "",
        )
        return draw_pruned(parts, example.cuts, near.window, paper, lettered=named, view=near.view)

    drawing = near_pictures(desk, views, f"{prefix}{example.kind}-{rule.name}", draw)
    without = ", ".join(name for name in named if name not in letters_named(drawing))
    return ShownExample(
        kind=example.kind,
        title=desk.say(f"rule.{example.kind}"),
        caption=caption,
        drawing=drawing,
        cuts=cuts,
        no_room=say(desk.language, "drawing.no-room-for-letters", names=without) if without else "",
    )


def _pieces_named(parts: Parts, told: Sequence[str]) -> dict[str, str]:
    """The wood that a text beside the drawing names by its letter, each with its place."""
    words = {word for text in told for word in re.findall(r"\w+", text)}
    names = {f"{one.position.name}{one.piece.letter}": one.position.name for one in parts.parts}
    return {name: place for name, place in names.items() if name in words}
