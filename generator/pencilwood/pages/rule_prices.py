"""What each broken rule costs, in whole sentences with this vineyard's own limits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from pencilwood.pages.desk import Desk
from pencilwood.rules import RULES, bands_of, rules_of
from pencilwood.rules.rulebook import RULEBOOK, Price
from pencilwood.rules.shapes import Family, Rule
from pencilwood.units import format_number
from pencilwood.vine.bands import Band, told_limits
from pencilwood.vine.forms import FORMS
from pencilwood.vine.model import Form, own_words
from pencilwood.words import catalogue, fitting, say

_FULL_SCORE = 100


@dataclass(frozen=True)
class ShownPrice:
    """One way to break a rule, and what it costs."""

    when: tuple[str, ...]
    """When the points are lost; one sentence more for the forms that go by other figures."""
    points: str
    must: bool


@dataclass(frozen=True)
class ShownRule:
    """A rule with all ways to break it."""

    name: str
    title: str
    family: Family
    """Which of the two scores it lowers."""
    prices: tuple[ShownPrice, ...]


def rule_shown(desk: Desk, rule: Rule, *, among_others: bool = False) -> ShownRule:
    """What breaking a rule costs; ways that read the same, as left and right, are one.

    `among_others`: in a table of all rules, where each says for itself which vines go by it.
    """
    prices = dict.fromkeys(
        ShownPrice(
            when=tuple(_sentences(desk, rule, message, among_others)),
            points=price_words(desk, rule, message),
            must=RULEBOOK[rule.name, message].must,
        )
        for message in rule.messages
    )
    return ShownRule(rule.name, rule.title[desk.language], rule.family, tuple(prices))


def in_order() -> tuple[Rule, ...]:
    """Every rule: musts first, then those for all vines, those of one form together, dear first.

    Forms follow the list of forms, cordons at its head, so that readers of two languages find
    each rule at the same place.
    """

    def place(rule: Rule) -> tuple[bool, tuple[int, ...], int]:
        prices = [RULEBOOK[rule.name, message] for message in rule.messages]
        cost = max(price.first or price.each for price in prices)
        own = tuple(at for at, form in enumerate(FORMS) if rule in rules_of(form))
        shared = len(own) == len(FORMS)
        return not any(price.must for price in prices), () if shared else own, -cost

    return tuple(sorted(RULES, key=place))


def forms_of(desk: Desk, rule: Rule) -> tuple[str, ...]:
    """The forms whose vines go by a rule; empty when all do."""
    names = [form.name for form in FORMS if rule in rules_of(form)]
    if len(names) == len(FORMS):
        return ()
    return tuple(form_word(desk, name) for name in dict.fromkeys(names))


def form_word(desk: Desk, form: str) -> str:
    """A form in the reader's language, by its name in a file."""
    return say(desk.language, f"drawing.form.{form.replace(' ', '-')}")


def _sentences(desk: Desk, rule: Rule, message: str, among_others: bool) -> Iterator[str]:
    """When the points are lost; where forms differ, each sentence says whose it is."""
    forms: dict[str, list[str]] = {}
    for form in FORMS:
        if rule in rules_of(form):
            forms.setdefault(_when(desk, rule, message, form), []).append(form.name)
    if len(forms) == 1 and not (among_others and forms_of(desk, rule)):
        yield from forms
        return
    for sentence in forms:
        names = ", ".join(form_word(desk, name) for name in dict.fromkeys(forms[sentence]))
        names = names[0].upper() + names[1:]
        yield desk.say("scores.when.form", forms=names, when=sentence)


def _when(desk: Desk, rule: Rule, message: str, form: Form) -> str:
    """When vines of this form lose points, with the limits that they go by."""
    limits = desk.profile.limits_of(form)
    bands = tuple(band for band in bands_of(form) if band.name in limits)
    named = _named(desk, rule, message, form)
    counts = {limits[band.name] for band in named if band.kind == "count"}
    key = fitting(_when_key(rule, message, form), "one" if counts == {1} else "")
    return say(desk.language, key, **told_limits(bands, limits, desk.profile.units, desk.language))


def bands_named(desk: Desk, rule: Rule, form: Form) -> tuple[Band, ...]:
    """The figures that the sentences of a rule name for vines of one form, each once."""
    named = {band.name: band for one in rule.messages for band in _named(desk, rule, one, form)}
    return tuple(named.values())


def _named(desk: Desk, rule: Rule, message: str, form: Form) -> Iterator[Band]:
    words = catalogue(desk.language)[_when_key(rule, message, form)]
    limits = desk.profile.limits_of(form)
    for band in bands_of(form):
        if band.name in limits and f"{{{band.name}}}" in words:
            yield band


def _when_key(rule: Rule, message: str, form: Form) -> str:
    key = f"pages.price.{rule.name}.{message}.when"
    return fitting(key, form.words or own_words(form.sides[0]))


def price_words(desk: Desk, rule: Rule, message: str) -> str:
    """What a way to break a rule costs, in words."""
    price = RULEBOOK[rule.name, message]
    first = desk.say("scores.first", points=price.first)
    if not price.each:
        return first
    step = desk.say(f"price.{rule.name}.{message}.each", step=step_words(desk, price))
    more = desk.say("scores.more" if price.first else "scores.first", points=price.each)
    words = desk.say("scores.each", points=more, step=step)
    if price.first:
        words = desk.say("scores.first-and-each", first=first, each=words)
    # The most that can be lost is told only where there are points left to save by it.
    if price.most < _FULL_SCORE:
        words = desk.say("scores.at-most", price=words, most=price.most)
    return words


def step_words(desk: Desk, price: Price) -> str:
    """One step of a price, in the unit of the limit that it counts from: `1 cm`, `3/8 in`."""
    if desk.profile.units == "metric":
        return f"{format_number(Fraction(price.step, 10), 1, desk.language)} cm"
    return desk.length(price.step)
