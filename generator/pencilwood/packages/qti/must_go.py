"""What is left of pruning a vine: which of its pieces come off in every pruning that passes.

A pruning has many right answers, and the standard's hotspots know one. This part of the answer
is the same in all of them, and it is worked out, not chosen.
"""

from __future__ import annotations

from pencilwood.cases.case import Profile
from pencilwood.drawing.describe import part_label
from pencilwood.packages.qti.feedback import Saying
from pencilwood.packages.qti.hotspots import hotspots
from pencilwood.packages.qti.items import Asked
from pencilwood.packages.qti.markup import identifier, paragraph
from pencilwood.packages.qti.pictures import Drawn
from pencilwood.packages.qti.processing import Fits, Reply
from pencilwood.plan.keeping import must_go
from pencilwood.quiz.made import MadeQuestion
from pencilwood.quiz.vines import ProvedVine
from pencilwood.score.judge import judge, new_charges
from pencilwood.score.told import message_text
from pencilwood.vine.wood import WoodLeft
from pencilwood.words import say


def pieces_to_mark(vine: ProvedVine, profile: Profile) -> tuple[str, ...]:
    """What has to come off, one name for a piece and all that falls with it.

    Empty where some of it has to come off for the score alone: nobody can see that on a drawing.
    """
    gone = must_go(vine.sheet, profile.pass_mark)
    return tuple(one.part for one in gone) if all(one.by_must for one in gone) else ()


def choices(vine: ProvedVine, gone: tuple[str, ...]) -> tuple[str, ...]:
    """What can be marked: every piece but those that fall with a piece that must go."""
    parts = vine.parts
    fallen = {back for name in gone for back in parts.carries[parts.index[name]]}
    return tuple(part.name for n, part in enumerate(parts.parts) if n not in fallen)


def which_must_go(
    one: MadeQuestion,
    vine: ProvedVine,
    gone: tuple[str, ...],
    profile: Profile,
    saying: Saying,
    drawn: Drawn,
) -> Asked:
    """Mark all pieces that must go and no other."""
    language = saying.language
    parts = vine.parts
    labels = {
        name: part_label(parts.parts[parts.index[name]], language) for name in choices(vine, gone)
    }
    prompt = say(language, "qti.must-go.ask", title=vine.case.title[language])
    named = ", ".join(labels[name] for name in gone)
    told = (
        paragraph(say(language, "qti.must-go.right", pieces=named)),
        *(paragraph(_why(name, vine, profile, language), labels[name] + ":") for name in gone),
    )
    right = tuple(identifier(name) for name in gone)
    again = saying.look_again(one)
    replies = (
        Reply("right", True, (saying.verdict("right"), *told), Fits.WHOLE),
        Reply("no-answer", False, (saying.verdict("none"), *told, *again), Fits.NOTHING),
        Reply("wrong", False, (saying.verdict("wrong"), *told, *again), Fits.REST),
    )
    return Asked("multiple", right, (hotspots(prompt, labels, drawn, highest=0),), replies)


def _why(name: str, vine: ProvedVine, profile: Profile, language: str) -> str:
    """What keeping the piece loses first, all else being as in the plan."""
    kept = judge(_with(vine.plan.left, name), vine.sheet.limits, vine.target)
    gravest, *_ = new_charges(kept, vine.plan.charges)
    return message_text(gravest, language, profile.units)


def _with(left: WoodLeft, name: str) -> WoodLeft:
    """The same wood with one piece kept, and what it grows from."""
    parts, states = left.parts, list(left.states)
    number = parts.index[name]
    for kept in (number, *parts.below(number)):
        states[kept] = max(1, states[kept])
    return WoodLeft(parts, tuple(states))
