"""Name the part: what can be tapped on a drawing, and which of it is meant."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import cache

from pencilwood.cases.quiz import Find, NamePart
from pencilwood.quiz.asker import Asker
from pencilwood.quiz.made import MadeQuestion, Picture, Tapping, WoodToTap
from pencilwood.quiz.pictures import near
from pencilwood.quiz.vines import ProvedVine, position_named, slip
from pencilwood.rules import rules_of
from pencilwood.vine import measures
from pencilwood.vine.model import Condition, Form, Lean, Vine
from pencilwood.vine.wood import Part, divide

MOST_RIGHT_SHARE = 3
"""At most one third of what can be tapped may be right, as with three choices."""

_FRAME = {Find.TRUNK: ("trunk",), Find.HEAD: ("head",), Find.ARM: ("left arm", "right arm")}
_SPUR_YEARS = 2

_OF_CONDITION = {
    Condition.DISEASED: Find.DISEASED,
    Condition.DEAD: Find.DEAD,
    Condition.INJURED: Find.INJURED,
    Condition.SPINDLY: Find.SPINDLY,
}


@cache
def _faults(form: Form) -> frozenset[str]:
    """Names of the rules that vines of a form go by: what is a fault on one is right on another."""
    return frozenset(rule.name for rule in rules_of(form))


def kind_of(part: Part, vine: ProvedVine) -> Find:
    """What a part is called first: by its health, then by its place, age, thickness and lean."""
    faults, limits = _faults(vine.parts.vine.form), vine.sheet.limits
    if part.piece.condition in _OF_CONDITION:
        return _OF_CONDITION[part.piece.condition]
    hangs = part.base_height_mm < 0 or (part.is_cane and part.bud_height_mm(1) < 0)
    if hangs and "wood-below-arm" in faults:
        return Find.HANGING
    if not part.is_cane:
        return _old_kind(part, vine.parts.vine.form)
    if part.piece.thickness_mm > limits["cane thickness at most"]:
        return Find.BULL
    if "head-wood" in faults and part.position.at_mm < limits["head zone"]:
        return Find.HEAD_CANE
    if part.piece.lean is Lean.UP and "upright-wood" in faults:
        return Find.UPRIGHT_CANE
    if part.piece.lean is Lean.IN and "wood-in-the-middle" in faults:
        return Find.INWARD_CANE
    return Find.CANE


def _old_kind(part: Part, form: Form) -> Find:
    if form.tied and part.piece.lean is Lean.ALONG:
        return Find.LAST_YEARS_CANE
    return Find.LAST_YEARS_SPUR if part.piece.age_years == _SPUR_YEARS else Find.OLD_WOOD


_ALSO: Mapping[Find, Callable[[Part], bool]] = {
    # What a part may be called besides its first name.
    Find.CANE: lambda part: part.is_cane,
    Find.OLD_WOOD: lambda part: not part.is_cane and part.piece.age_years > _SPUR_YEARS,
    Find.LAST_YEARS_SPUR: lambda part: (
        part.piece.age_years == _SPUR_YEARS and part.piece.lean is not Lean.ALONG
    ),
}


def name_part(question: NamePart, vine: ProvedVine, asker: Asker) -> MadeQuestion:
    """The question, worked out; QuestionError where nothing, or too much, would be right."""
    at = None if question.seen.at is None else position_named(vine, question.seen.at)
    wood = list(vine.parts.parts if at is None else divide(near(vine.parts.vine, at)).parts)
    targets = tuple(_targets(wood, vine, asker, with_frame=at is None))
    right = _right(question.find, wood, vine, at)
    if not right:
        raise slip("nothing-to-find", find=str(question.find), vine=vine.case.slug)
    if len(right) * MOST_RIGHT_SHARE > len(targets):
        raise slip("too-much-is-right", right=len(right), of=len(targets))
    kind, own = _key(question.find), vine.parts.vine.own_words
    meaning = f"part.meaning.{kind}"
    return MadeQuestion(
        question,
        "part",
        asker.say_of(own, f"part.ask.{kind}", position=at or ""),
        Tapping(targets, right, asker.say_of(own, meaning), _whys(targets, own, asker)),
        Picture(vine.case.slug, "before", at),
        at,
    )


def _right(find: Find, wood: list[Part], vine: ProvedVine, at: str | None) -> tuple[str, ...]:
    if find in _FRAME:
        arms = _arms(vine.parts.vine)
        return tuple(name for name in _FRAME[find] if find is not Find.ARM or name in arms)
    if find is Find.LOWEST_CANE:
        canes = [
            p for p in wood if p.is_cane and p.piece.is_alive and at in (None, p.position.name)
        ]
        away_mm = {part.name: measures.away_mm(vine.parts.vine, part) for part in canes}
        return tuple(name for name, mm in away_mm.items() if mm == min(away_mm.values()))
    also = _ALSO.get(find)
    return tuple(
        part.name
        for part in wood
        if kind_of(part, vine) is find or (also is not None and also(part))
    )


def _targets(
    wood: list[Part], vine: ProvedVine, asker: Asker, *, with_frame: bool
) -> Iterator[WoodToTap]:
    if with_frame:
        arms = _arms(vine.parts.vine)
        for find, names in _FRAME.items():
            for name in names:
                if find is not Find.ARM or name in arms:
                    label = asker.say(f"part.frame.{name.replace(' ', '-')}")
                    yield WoodToTap(name, label, _key(find))
    for part in wood:
        yield WoodToTap(part.name, asker.wood(part), _key(kind_of(part, vine)))


def _arms(vine: Vine) -> set[str]:
    """What arms are drawn; a vine with words of its own has none, only room on a wire or a ring."""
    return set() if vine.own_words else {f"{arm.side} arm" for arm in vine.arms}


def _whys(targets: tuple[WoodToTap, ...], own: str, asker: Asker) -> dict[str, str]:
    kinds = dict.fromkeys(target.kind for target in targets)
    return {
        kind: asker.say("part.wrong", meaning=asker.say_of(own, f"part.meaning.{kind}"))
        for kind in kinds
    }


def _key(find: Find) -> str:
    return str(find).replace("'", "").replace(" ", "-")
