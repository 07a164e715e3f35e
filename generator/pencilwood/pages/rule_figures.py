"""The figures that a rule's page lists: the rule's own, and others that its sentences name."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from pencilwood.pages.desk import Desk
from pencilwood.pages.rule_prices import bands_named, form_word
from pencilwood.pages.score_page import ShownBand, bands_shown
from pencilwood.rules import rules_of
from pencilwood.rules.shapes import Rule
from pencilwood.vine.forms import FORMS


def figures_shown(desk: Desk, rule: Rule) -> tuple[ShownBand, ...]:
    """Every figure of the table of points, so that none stands there without its source.

    One that only some forms of a rule have is told with their names.
    """
    return (*bands_shown(desk, rule.bands), *_of_forms(desk, rule))


def _of_forms(desk: Desk, rule: Rule) -> Iterator[ShownBand]:
    forms = tuple(form for form in FORMS if rule in rules_of(form))
    shown: dict[ShownBand, list[str]] = {}
    for form in forms:
        bands = [band for band in bands_named(desk, rule, form) if band not in rule.bands]
        for band in bands_shown(desk, bands, desk.profile.limits_of(form)):
            shown.setdefault(band, []).append(form_word(desk, form.name))
    for band, names in shown.items():
        if len(names) == len(forms):
            yield band
        else:
            told = ", ".join(dict.fromkeys(names))
            yield replace(band, name=desk.say("rule.band.form", band=band.name, forms=told))
