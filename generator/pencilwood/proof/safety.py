"""The safety notes that a case's tools, cut sizes and heights call for."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.cases.case import Case
from pencilwood.proof.report import ProofReport
from pencilwood.vine.passes import Tool
from pencilwood.vine.wood import Parts, Tie

REACH_MM = 1900
"""Cuts higher than this above the ground are taken to need a ladder.

Common practice, no source: about what a person of middle height reaches with bent arms. An
employer's own rule comes first.
"""

SHOULDER_MM = 1400
"""A vine with arms higher than this is taken to be pruned with raised hands.

Common practice, no source: about the shoulder of a person of middle height. A lone spur that has
climbed so high does not count: what tires is a whole row.
"""

LADDER = "ladder"
OVERHEAD = "overhead"
BENT = "bent-canes"
_NOTE_OF_TOOL = {Tool.SHEARS: "hand-shears", Tool.LOPPERS: "loppers", Tool.SAW: "saw"}


def needed_notes(case: Case, parts: Parts) -> Mapping[str, str]:
    """Names of the notes that must be there, each with the wood that calls for it."""
    needed: dict[str, str] = {"eyes": case.answer[0].done.cut.part if case.answer else ""}
    for one in case.answer:
        part = parts.parts[parts.index[one.done.cut.part]]
        if isinstance(one.done.cut, Tie):
            needed.setdefault(BENT, part.name)
        needed.setdefault(_NOTE_OF_TOOL[one.done.tool], part.name)
        if parts.vine.cordon_height_mm > SHOULDER_MM:
            needed.setdefault(OVERHEAD, part.name)
        if parts.vine.cordon_height_mm + part.base_height_mm > REACH_MM:
            needed.setdefault(LADDER, part.name)
    return needed


def check_safety(case: Case, parts: Parts, report: ProofReport) -> None:
    """Every note that is called for is named under `safety:`."""
    present = {name for name, _ in case.safety}
    for note, part in needed_notes(case, parts).items():
        if not any(name == note or name.startswith(f"{note}-") for name in present):
            place = case.places.get("safety", case.place)
            report.add(place, "safety-note-missing", note=note, part=part)
