"""What the browser part of an exercise needs: the scoring sheet, the words, the drawing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.describe import describe_vine
from pencilwood.drawing.names.labels import has_letter_without_room
from pencilwood.drawing.scene.stages import stages_of_passes
from pencilwood.drawing.scene.tied_canes import Laid, laid_canes
from pencilwood.drawing.scene.wood_text import unlettered
from pencilwood.pages.desk import Desk, paragraphs
from pencilwood.pages.wood_words import facts, label
from pencilwood.proof import CaseProof
from pencilwood.proof.reasons import answer_with_reasons, plan_with_reasons
from pencilwood.rules import RULE_BY_NAME
from pencilwood.score.sheet import dump
from pencilwood.vine.forms import OWN_WORDS
from pencilwood.vine.model import Vine
from pencilwood.vine.passes import DoneCut, after_each_pass
from pencilwood.vine.wood import Shortening, Tie, uncut
from pencilwood.words import catalogue, say

_OWN = tuple(f".{one}" for one in OWN_WORDS)
_TYING = ("exercise.tie.", "exercise.pass.tie")
_TALLIES = "exercise.measure.tally."


@dataclass(frozen=True)
class ExerciseParts:
    """The pieces of one exercise, ready to be put into a page."""

    slug: str
    drawing: str
    sheet: str
    words: str
    steps: tuple[tuple[str, str], ...]
    """Each pass by name and what is done in it, for those who have no script."""
    on_paper: str
    """Which wood has no letter there; empty where all has one."""


def exercise_parts(desk: Desk, proof: CaseProof) -> ExerciseParts:
    """Everything that an exercise needs on its page."""
    case, profile = proof.case, desk.profile
    title = desk.say("drawing.before", title=desk.own(case.title))
    described = describe_vine(proof.parts, None, desk.language, profile.units)
    # The same drawing shows the answer and the plan, once somebody has tried.
    stages = stages_of_passes(proof.parts, [one.done for one in case.answer], proof.plan.left)
    paper = Paper(
        f"x-{case.slug}",
        desk.language,
        title=title,
        description=described,
        units=profile.units,
        data={"case": case.slug, **_wire(proof)},
    )
    shown = WoodShown(
        proof.parts, stages, laid=_laid(proof), cutpoints=True, first_letters=proof.wood_named
    )
    drawing = draw_vine(shown, paper)
    words = _words(desk, proof)
    return ExerciseParts(
        case.slug,
        drawing,
        _in_script(proof.sheet_text),
        words,
        _steps(desk.language, proof),
        _on_paper(desk, shown, drawing),
    )


def _on_paper(desk: Desk, shown: WoodShown, drawing: str) -> str:
    names = ", ".join(unlettered(shown)) if has_letter_without_room(drawing) else ""
    return say(desk.language, "drawing.no-room-for-letters", names=names) if names else ""


def _steps(language: str, proof: CaseProof) -> tuple[tuple[str, str], ...]:
    said = _strings_for(*_kind_of(language, proof.parts.vine))
    keys = [f"exercise.pass.{one}" for one in proof.parts.vine.form.passes]
    return tuple((said[key], said[f"{key}.todo"]) for key in keys)


def _laid(proof: CaseProof) -> tuple[Laid, ...]:
    """The canes that the answer and the plan tie, for the stages that show it."""
    answer = [one.done for one in proof.case.answer]
    plan = [one.done for one in proof.plan.cuts]
    return (
        *(laid_canes(proof.answer_left, answer, "tie") if answer else ()),
        *laid_canes(proof.plan.left, plan, "plan"),
    )


def _wire(proof: CaseProof) -> dict[str, str]:
    """Height of the wire that canes are tied along, where the form ties any."""
    vine = proof.parts.vine
    return {"wire": str(vine.trellis.fruiting_wire_mm)} if vine.form.tied else {}


def script_json(body: object) -> str:
    """JSON that cannot end the script element it stands in."""
    return _in_script(dump(body))


def _in_script(text: str) -> str:
    return text.replace("<", "\\u003c")


def _joined(texts: Mapping[str, str]) -> str:
    """The same of values that are written already."""
    return "{" + ",".join(f"{script_json(key)}:{text}" for key, text in texts.items()) + "}"


def _words(desk: Desk, proof: CaseProof) -> str:
    """What the browser says, as JSON; what many vines share of it is written once."""
    done = [one.done for one in proof.case.answer]
    after = after_each_pass(proof.parts, done)
    own: dict[str, object] = {
        "pieces": {
            part.name: {"label": label(desk, part), "facts": facts(desk, proof.parts.vine, part)}
            for part in proof.parts.parts
        },
        "answer": {
            "cuts": [_cut(*one) for one in answer_with_reasons(proof, desk.language)],
            "states": {
                "before": uncut(proof.parts).states,
                **{str(in_pass): left.states for in_pass, left in after.items()},
            },
        },
        "plan": {
            "cuts": [_cut(*one) for one in plan_with_reasons(proof, desk.language)],
            "states": proof.plan.left.states,
        },
    }
    rules = {
        name: _rule_text(name, desk.language, _address(desk, name)) for name in proof.rules_charged
    }
    return _joined(
        {
            "language": script_json(desk.language),
            "units": script_json(desk.profile.units),
            "strings": _strings_text(*_kind_of(desk.language, proof.parts.vine)),
            "rules": _joined(rules),
            **{key: script_json(value) for key, value in own.items()},
        }
    )


def _kind_of(language: str, vine: Vine) -> tuple[str, str, bool, bool]:
    return language, vine.own_words, bool(vine.form.tied), bool(vine.form.tallies)


@cache
def _strings_text(language: str, own: str, has_tied: bool, has_tallies: bool) -> str:
    return script_json(_strings_for(language, own, has_tied, has_tallies))


@cache
def _strings_for(language: str, own: str, has_tied: bool, has_tallies: bool) -> dict[str, str]:
    """The exercise's sentences, those for arms put aside where a vine has its own."""
    texts = {key: text for key, text in catalogue(language).items() if key.startswith("exercise.")}
    usual = {key: text for key, text in texts.items() if not key.endswith(_OWN)}
    if not has_tied:
        usual = {key: text for key, text in usual.items() if not key.startswith(_TYING)}
    if not has_tallies:
        usual = {key: text for key, text in usual.items() if not key.startswith(_TALLIES)}
    special = {
        key.removesuffix(f".{own}"): text
        for key, text in texts.items()
        if own and key.endswith(f".{own}")
    }
    return usual | special


def rule_words(desk: Desk, name: str) -> dict[str, object]:
    """What the browser says of a rule: its title, sentences, reason and page."""
    return _rule_words(name, desk.language, _address(desk, name))


def _address(desk: Desk, rule: str) -> str:
    return desk.href(f"rules/{rule}")


@cache
def _rule_text(name: str, language: str, address: str) -> str:
    return script_json(_rule_words(name, language, address))


def _rule_words(name: str, language: str, address: str) -> dict[str, object]:
    rule = RULE_BY_NAME[name]
    why = paragraphs(rule.why(language))
    return {
        "title": rule.title[language],
        "messages": {key: text[language] for key, text in rule.messages.items()},
        "why": why[0] if why else "",
        "href": address,
    }


def _cut(done: DoneCut, why: str) -> dict[str, object]:
    buds = done.cut.buds if isinstance(done.cut, Shortening) else None
    tied = {"tied": str(done.cut.side)} if isinstance(done.cut, Tie) else {}
    return {"part": done.cut.part, "buds": buds, "pass": str(done.in_pass), "why": why, **tied}
