"""The practice page, and the script of each practice vine that it can load."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pencilwood.cases.case import Level
from pencilwood.drawing.for_programs.compact import compact_drawing
from pencilwood.pages.desk import ASSETS, Desk
from pencilwood.pages.exercise import rule_words
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.quiz_pages import strings_of
from pencilwood.plan import ReasonedCut
from pencilwood.proof.practice_proof import PracticeProof
from pencilwood.rules import RULES
from pencilwood.score.compact import compact
from pencilwood.score.sheet import as_json, dump
from pencilwood.vine.passes import PASSES
from pencilwood.vine.wood import Shortening

FOLDER = "practice"
CALL = "pencilwoodPractice"
"""The function that a vine's script calls; the page defines it beforehand."""

LARGEST_BYTES = 15_000
"""A practice vine's script is no larger; a larger vine is not given out."""
_OF_WOOD = ("pages.wood.", "pages.practice.", "pages.case.plan.reason")


@dataclass(frozen=True)
class PracticeVine:
    """A practice vine as the site carries it."""

    name: str
    level: Level
    teaches: tuple[str, ...]
    script: str


def practice_vine(
    name: str, level: Level, proof: PracticeProof, pass_mark: int
) -> PracticeVine | None:
    """The script of a proved vine; None when it would be too large."""
    sheet = as_json(proof.sheet, name, proof.plan.lost, pass_mark)
    messages = {
        (str(one["rule"]), str(one["name"])): number
        for number, one in enumerate(proof.sheet.ledger.messages())
    }
    body = {
        "format": 1,
        "name": name,
        "level": level,
        "teaches": list(proof.teaches),
        "sheet": compact(sheet),
        "vine": compact_drawing(proof.parts),
        "plan": {
            "states": list(proof.plan.left.states),
            "cuts": [_cut(proof, cut, messages) for cut in proof.plan.cuts],
        },
    }
    script = f"{CALL}({dump(body)});\n"
    if len(script.encode()) > LARGEST_BYTES:
        return None
    return PracticeVine(name, level, proof.teaches, script)


def _cut(
    proof: PracticeProof, cut: ReasonedCut, messages: dict[tuple[str, str], int]
) -> list[object]:
    done = cut.done
    buds = done.cut.buds if isinstance(done.cut, Shortening) else None
    place = [proof.parts.index[done.cut.part], buds, PASSES.index(done.in_pass)]
    if not cut.reasons:
        return [*place, -1, {}]
    first = cut.reasons[0]
    return [*place, messages[first.rule, first.message], dict(first.facts)]


def practice_files(vines: Sequence[PracticeVine]) -> dict[str, bytes]:
    """The script of every practice vine, by its path in the site."""
    return {f"{ASSETS}/{FOLDER}/{one.name}.js": one.script.encode() for one in vines}


def practice_page(
    handbook: Handbook, vines: Sequence[PracticeVine], version: str, language: str
) -> Page:
    """The page that draws practice vines by what a learner needs."""
    desk = Desk(handbook, "practice", language)
    levels = dict.fromkeys(one.level for one in vines)
    strings = {
        **strings_of(desk, "exercise.", "quiz."),
        **{key.removeprefix("pages."): text for key, text in strings_of(desk, *_OF_WOOD).items()},
    }
    data = {
        "format": 1,
        "version": version,
        "language": language,
        "units": handbook.profile.units,
        "folder": f"{desk.asset(FOLDER)}/",
        "vines": [
            {"name": one.name, "level": one.level, "teaches": list(one.teaches)} for one in vines
        ],
        "rules": {rule.name: rule_words(desk, rule.name) for rule in RULES},
        "strings": strings,
    }
    return desk.write(
        "practice.html",
        desk.say("practice"),
        menu_title=desk.say("practice"),
        description=desk.say("practice.short") + " " + desk.say("practice.more"),
        count=len(vines),
        levels=len(levels),
        data=dump(data).replace("<", "\\u003c"),
    )
