"""Questions in the trainer's own words: choose, put in order, safe or stop."""

from __future__ import annotations

from pencilwood.cases.quiz import Choose, Deed, PutInOrder, SafeOrStop
from pencilwood.quiz.asker import Asker
from pencilwood.quiz.made import Choices, MadeQuestion, Option, Ordering, Picture
from pencilwood.quiz.vines import Vines, position_named, slip


def choose(question: Choose, vines: Vines, asker: Asker) -> MadeQuestion:
    """Choose the right answer; a drawing lends its numbers to the words."""
    seen = question.seen
    vine = None if seen is None else vines[seen.vine]
    facts = {} if vine is None else vine.facts[asker.language]
    options = (
        asker.option(question.right, right=True, facts=facts),
        *(asker.option(one, right=False, facts=facts) for one in question.wrong),
    )
    if len({one.text for one in options}) < len(options):
        raise slip("same-choice-twice")
    text = asker.own(question.ask, facts)
    body = Choices(options)
    if seen is None or vine is None:
        return MadeQuestion(question, "choose", text, body)
    at = None if seen.at is None else position_named(vine, seen.at)
    return MadeQuestion(question, "choose", text, body, Picture(seen.vine, seen.shown, at), at)


def put_in_order(question: PutInOrder, asker: Asker) -> MadeQuestion:
    """Steps in their right order; they are shuffled later."""
    items = tuple(asker.option(one, right=True) for one in question.steps)
    if len({one.text for one in items}) < len(items):
        raise slip("same-choice-twice")
    body = Ordering(items, tuple(range(len(items))))
    return MadeQuestion(question, "order", asker.own(question.ask), body)


def safe_or_stop(question: SafeOrStop, asker: Asker) -> MadeQuestion:
    """A scene of work, always with the same three things to do."""
    options = tuple(
        Option(
            asker.say(f"deed.{str(deed).replace(' ', '-')}"),
            asker.own(question.whys[deed]),
            deed is question.right,
        )
        for deed in Deed
    )
    text = asker.own(question.ask)
    return MadeQuestion(question, "safe", text, Choices(options, in_fixed_order=True))
