"""Count: the right number and the wrong ones, each worked out by making the usual mistake."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from pencilwood.cases.quiz import Count, CountIt, Shown
from pencilwood.quiz.asker import Asker
from pencilwood.quiz.made import Choices, MadeQuestion, Option, Picture
from pencilwood.quiz.pictures import position_of
from pencilwood.quiz.vines import ProvedVine, cane_named, position_named, slip
from pencilwood.units import DENSITY_MM, PER_METRE, round_half_up
from pencilwood.vine import measures
from pencilwood.vine.wood import WoodLeft

FEWEST_WRONG, MOST_WRONG = 2, 3
_ALONG_ARMS = {Count.BUDS_PER_METRE, Count.LEAF_ROOM, Count.SPACING, Count.TARGET}
"""What is counted along arms, or up from them, and so not around a head."""

Mistake = tuple[str, str]
"""Name of a usual mistake, and the number that it leads to, in words."""


@dataclass(frozen=True)
class _Worked:
    """A count with its answer, its mistakes and the facts of the question's words."""

    right: str
    mistakes: tuple[Mistake, ...]
    facts: Mapping[str, str | int] = field(default_factory=dict)
    shown: Shown = "before"
    near: str | None = None


def count_it(question: CountIt, vine: ProvedVine, asker: Asker) -> MadeQuestion:
    """The question, worked out; QuestionError where the mistakes lead to too few numbers."""
    if vine.parts.vine.is_ring and question.count in _ALONG_ARMS:
        raise slip("no-arms", vine=vine.case.slug, count=str(question.count))
    worked = _WORK[question.count](vine, asker, question.seen.at)
    name = str(question.count).replace(" ", "-")
    wrong = list(_distinct(worked))[:MOST_WRONG]
    if len(wrong) < FEWEST_WRONG:
        raise slip("too-few-mistakes", right=worked.right)
    facts = {**worked.facts, "right": worked.right}
    options = [
        Option(worked.right, asker.say(f"count.{name}.why", **facts), True),
        *(
            Option(text, asker.say(f"count.{name}.mistake.{mistake}", **facts), False)
            for mistake, text in wrong
        ),
    ]
    near = worked.near
    return MadeQuestion(
        question,
        "count",
        asker.say(f"count.{name}.ask", **facts),
        Choices(tuple(options)),
        Picture(vine.case.slug, worked.shown, near),
        near,
    )


def _distinct(worked: _Worked) -> Iterator[Mistake]:
    """Mistakes that lead to a wrong number, each number once."""
    seen = {worked.right}
    for name, text in worked.mistakes:
        if text not in seen:
            seen.add(text)
            yield name, text


def _buds_of_cane(vine: ProvedVine, asker: Asker, at: str | None) -> _Worked:
    cane = cane_named(vine, at)
    buds = cane.piece.buds

    def told(number: int) -> str:
        return asker.count("buds", number)

    return _Worked(
        told(buds),
        (
            ("basal", told(buds + 1)),
            ("last", told(buds - 1)),
            ("basal-and-tip", told(buds + 2)),
        ),
        {"name": cane.name},
        near=cane.position.name,
    )


def _buds_left(vine: ProvedVine, asker: Asker, _: str | None) -> _Worked:
    left = vine.answer_left
    buds, canes = measures.buds_kept(left), len(_canes_left(left))
    mistakes = [("basal", buds + canes)]
    arms = [measures.buds_kept(left, side) for side in vine.parts.vine.form.sides]
    if len(arms) > 1:
        mistakes.append(("one-arm", max(arms)))
    mistakes += [("spurs", canes), ("two-each", 2 * canes)]
    return _Worked(
        asker.count("buds", buds),
        tuple((name, asker.count("buds", number)) for name, number in mistakes),
        {"spurs": canes},
        shown="answer",
    )


def _canes_left(left: WoodLeft) -> list[str]:
    return [part.name for part in left.parts.parts if part.is_cane and left.state(part.name)]


def _buds_per_metre(vine: ProvedVine, asker: Asker, _: str | None) -> _Worked:
    left = vine.answer_left
    buds, length_mm = measures.buds_kept(left), vine.parts.vine.line_length_mm
    first_mm = vine.parts.vine.arms[0].length_mm

    def told(buds: int, length_mm: int) -> str:
        whole = asker.profile.units == "metric"
        each = Fraction(buds * DENSITY_MM, length_mm)
        return per_length(asker.density(_whole_metre(each) if whole else each))

    def per_length(number: str) -> str:
        return asker.say(f"buds-per-metre.{'one' if number == '1' else 'many'}", n=number)

    mistakes = [("per-vine", per_length(str(buds)))]
    if first_mm != length_mm:
        mistakes.insert(0, ("one-arm", told(buds, first_mm)))
    mistakes += [
        ("basal", told(buds + len(_canes_left(left)), length_mm)),
        ("spurs", told(len(_canes_left(left)), length_mm)),
    ]
    facts = {"buds": asker.count("buds", buds), "length": asker.length(length_mm)}
    return _Worked(told(buds, length_mm), tuple(mistakes), facts, shown="answer")


def _whole_metre(buds: Fraction) -> int:
    """A foot is short, so there a tenth of a bud counts; on a metre a whole one does."""
    return round_half_up(buds / PER_METRE) * PER_METRE


def _leaf_room(vine: ProvedVine, asker: Asker, at: str | None) -> _Worked:
    cane = cane_named(vine, at)
    model = vine.parts.vine
    trimming_mm, cordon_mm = model.trellis.trimming_mm, model.cordon_height_mm
    internode_mm, height_mm = cane.piece.internode_mm, cane.bud_height_mm(1)
    right = measures.leaf_room(model, cane, 1)

    def told(leaves: int) -> str:
        return asker.count("leaves", leaves)

    return _Worked(
        told(right),
        (
            ("from-arm", told(measures.leaves_that_fit(trimming_mm - cordon_mm, internode_mm))),
            ("from-ground", told(measures.leaves_that_fit(trimming_mm, internode_mm))),
            ("rounded-up", told(right + 1)),
            ("bud-only", told(measures.leaves_that_fit(trimming_mm - height_mm, internode_mm))),
        ),
        {
            "name": cane.name,
            "trimming": asker.length(trimming_mm),
            "bud": asker.length(cordon_mm + height_mm),
            "cordon": asker.length(cordon_mm),
            "internode": asker.length(internode_mm),
        },
        near=cane.position.name,
    )


def _spacing(vine: ProvedVine, asker: Asker, at: str | None) -> _Worked:
    """From a position to the next one further out."""
    name = position_named(vine, at or "")
    here = position_of(vine, name)
    line = sorted(
        (p for p in vine.parts.positions if p.side is here.side), key=lambda one: one.at_mm
    )
    number = line.index(here)
    if number + 1 >= len(line):
        raise slip("no-next-position", position=name)
    after = line[number + 1]
    mistakes = [
        ("from-head", asker.length(after.at_mm)),
        ("added", asker.length(after.at_mm + here.at_mm)),
    ]
    if number + 2 < len(line):
        skipped_mm = line[number + 2].at_mm - here.at_mm
        mistakes.insert(1, ("skipped", asker.length(skipped_mm)))
    facts = {
        "here": here.name,
        "after": after.name,
        "here_at": asker.length(here.at_mm),
        "after_at": asker.length(after.at_mm),
    }
    return _Worked(asker.length(after.at_mm - here.at_mm), tuple(mistakes), facts, near=name)


def _target(vine: ProvedVine, asker: Asker, _: str | None) -> _Worked:
    limits, arms = vine.sheet.limits, vine.parts.vine.arms
    low, high = limits["buds per metre at least"], limits["buds per metre at most"]
    length_mm = vine.parts.vine.line_length_mm

    def told(length_mm: int, share: int = 1) -> str:
        over_mm = DENSITY_MM * share
        least, most = -(-low * length_mm // over_mm), high * length_mm // over_mm
        return asker.say("buds-range", least=least, most=most)

    least, most = asker.density(low), asker.density(high)
    mistakes = [("per-metre", asker.say("buds-range", least=least, most=most))]
    if len(arms) > 1:
        mistakes.insert(0, ("one-arm", told(max(arm.length_mm for arm in arms))))
    mistakes.append(("spurs", told(length_mm, 2)))
    mistakes.append(("doubled", told(2 * length_mm)))
    lengths = [asker.length(arm.length_mm) for arm in arms]
    facts: dict[str, str | int] = {"lengths": asker.listed(lengths), "low": least, "high": most}
    return _Worked(told(length_mm), tuple(mistakes), facts)


_WORK: Mapping[Count, Callable[[ProvedVine, Asker, str | None], _Worked]] = {
    Count.BUDS_OF_CANE: _buds_of_cane,
    Count.BUDS_LEFT: _buds_left,
    Count.BUDS_PER_METRE: _buds_per_metre,
    Count.LEAF_ROOM: _leaf_room,
    Count.SPACING: _spacing,
    Count.TARGET: _target,
}
