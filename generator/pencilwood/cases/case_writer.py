"""Writes a case as a file that its trainer goes on editing.

Every line that asks for words of their own has a comment above it.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from pencilwood.cases.case import AnswerCut, Case, Text
from pencilwood.cases.field_writer import exact
from pencilwood.cases.forms import READING_OF
from pencilwood.vine.model import Arm, Condition, Lean, Piece, Vine
from pencilwood.vine.passes import CUTTING_PASSES
from pencilwood.vine.wood import Shortening, Tie
from pencilwood.words import say

_PLAIN = re.compile("[A-Za-z0-9]+(-[A-Za-z0-9]+)*")
_MOST_NAMES = 10
"""Names of wood on one line; a longer list is folded."""


@dataclass(frozen=True)
class UsualTarget:
    """What a vine without a target of its own is asked for, and what its best pruning keeps."""

    least: int
    most: int
    kept: int

    @property
    def is_met(self) -> bool:
        """Whether the best pruning keeps what is asked for."""
        return self.least <= self.kept <= self.most

    @property
    def met(self) -> tuple[int, int]:
        """The target nearest to this one that the best pruning meets."""
        return min(self.least, self.kept), max(self.most, self.kept)


def write_case(case: Case, language: str, usual: UsualTarget | None = None) -> str:
    """The text of the file, its comments in one language."""
    lines = [
        *_comment("top", language),
        f"case: {case.slug}",
        f"title: {_words(case.title)}",
        *_comment("level", language),
        f"level: {case.level}",
        *_comment("teaches", language),
        _teaches(case),
        *_comment("story", language),
        "story:",
        *_said(case.story, "  "),
        *_comment("vine", language),
        *_vine(case.vine),
        *_target(case, usual, language),
        *_comment("answer", language),
        *_answer(case.answer),
        *(_comment("exceptions", language) if case.excuses else []),
        *_exceptions(case),
        *_far_from_plan(case),
        *(["three winters: true"] if case.three_winters else []),
        *([f"renewed arm: {case.renewed_arm}"] if case.renewed_arm else []),
        *_comment("safety", language),
        f"safety: [{', '.join(name for name, _ in case.safety)}]",
        *_photo(case, language),
        *_comment("credits", language),
        _credit("author", case.author),
        _credit("licence", case.licence, " CC BY 4.0"),
        _credit("origin", case.origin),
    ]
    return "\n".join(lines) + "\n"


def answer_entries(case: Case) -> dict[str, list[str]]:
    """The lines of what the answer decides, by the entry of the file; none where it says nothing.

    Comments above an entry are left to the file that it goes into.
    """
    return {
        "teaches": [_teaches(case)],
        "answer": [*_answer(case.answer)],
        "exceptions": [*_exceptions(case)],
        "far from plan": [*_far_from_plan(case)],
    }


def quoted(text: str) -> str:
    """Text that no reader of the file can take for anything else."""
    return text if _PLAIN.fullmatch(text) else json.dumps(text, ensure_ascii=False)


def _comment(name: str, language: str, **facts: int) -> Iterator[str]:
    for line in say(language, f"field.comment.{name}", **facts).split("\n"):
        yield f"# {line}".rstrip()


def _words(text: Text) -> str:
    inside = ", ".join(f"{language}: {quoted(words)}" for language, words in text.items())
    return f"{{{inside}}}"


def _said(text: Text, indent: str) -> Iterator[str]:
    for language, words in text.items():
        yield f"{indent}{language}: {json.dumps(words, ensure_ascii=False)}"


def _vine(vine: Vine) -> Iterator[str]:
    yield "vine:"
    yield f"  form: {vine.form.name}"
    yield from READING_OF[vine.form.name].frame_lines(vine)
    yield "  positions:"
    for arm in vine.arms:
        yield from _positions(arm)


def _positions(arm: Arm) -> Iterator[str]:
    for position in arm.positions:
        yield f"    - position: {position.name}"
        yield f"      at: {exact(position.at_mm)}"
        yield "      wood:"
        for piece in position.pieces:
            yield f"        - {{{', '.join(_piece(piece))}}}"


def _piece(piece: Piece) -> Iterator[str]:
    yield f"{'cane' if piece.is_cane else 'old'}: {_letter(piece.letter)}"
    if piece.grows_from is not None:
        yield f"from: {_letter(piece.grows_from)}"
        yield f"up: {exact(piece.at_mm)}"
    if piece.is_cane:
        yield f"buds: {piece.buds}"
        yield f"internode: {exact(piece.internode_mm)}"
    else:
        yield f"age: {piece.age_years} years"
        yield f"length: {exact(piece.length_mm)}"
    yield f"thickness: {piece.thickness_mm} mm"
    if piece.condition is not Condition.SOUND:
        yield f"condition: {piece.condition}"
    if piece.lean is not Lean.UP:
        yield f"lean: {piece.lean}"


def _letter(letter: str) -> str:
    """A piece's letter; `no` or `y` would mean something else to other readers of the format."""
    return letter if letter not in ("y", "n", "no", "on") else f'"{letter}"'


def _teaches(case: Case) -> str:
    return f"teaches: [{', '.join(name for name, _ in case.teaches)}]"


def _target(case: Case, usual: UsualTarget | None, language: str) -> Iterator[str]:
    if case.target_buds is not None:
        yield target_line(*case.target_buds)
    elif usual is not None:
        name = "target" if usual.is_met else "target-beyond"
        yield from _comment(name, language, least=usual.least, most=usual.most, kept=usual.kept)
        # Where a vine has no target of its own, the line shows how one is written.
        yield f"# {target_line(*usual.met)}"


def target_line(least: int, most: int) -> str:
    """A vine's own target as its file says it."""
    return f"target: {{buds: {least} to {most}}}"


def _answer(answer: Sequence[AnswerCut]) -> Iterator[str]:
    yield "answer:"
    for in_pass in CUTTING_PASSES:
        cuts = [one for one in answer if one.done.in_pass is in_pass]
        if cuts:
            yield f"  {in_pass} pass:"
            rows: dict[object, list[AnswerCut]] = {}
            for one in cuts:
                rows.setdefault(_same_row(one), []).append(one)
            for row in rows.values():
                yield from _cuts(row)
    ties = [one for one in answer if isinstance(one.done.cut, Tie)]
    yield from ["  tie:"] if ties else []
    for one in ties:
        yield from _tie(one)


def _tie(one: AnswerCut) -> Iterator[str]:
    if isinstance(one.done.cut, Tie):
        yield f"    - cane: {quoted(one.done.cut.part)}"
        yield f"      to: {one.done.cut.side}"
        yield "      why:"
        yield from _said(one.why, "        ")


def _same_row(one: AnswerCut) -> tuple[str, int, str, str]:
    buds = one.done.cut.buds if isinstance(one.done.cut, Shortening) else 0
    tool = str(one.done.tool) if one.tool_given else ""
    return json.dumps(dict(one.why), sort_keys=True), buds, tool, str(one.done.stub)


def _cuts(cuts: Sequence[AnswerCut]) -> Iterator[str]:
    names = [quoted(one.done.cut.part) for one in cuts]
    if len(names) <= _MOST_NAMES:
        yield f"    - cut: [{', '.join(names)}]"
    else:
        yield "    - cut:"
        for start in range(0, len(names), _MOST_NAMES):
            opening = "        [" if start == 0 else "         "
            ending = "]" if start + _MOST_NAMES >= len(names) else ","
            yield f"{opening}{', '.join(names[start : start + _MOST_NAMES])}{ending}"
    yield from _how(cuts[0])
    yield "      why:"
    yield from _said(cuts[0].why, "        ")


def _how(one: AnswerCut) -> Iterator[str]:
    done = one.done
    if isinstance(done.cut, Shortening):
        yield f"      to: {done.cut.buds} {'bud' if done.cut.buds == 1 else 'buds'}"
    if one.tool_given:
        yield f"      tool: {done.tool}"
    if str(done.stub) != "right":
        yield f"      stub: {done.stub}"


def _exceptions(case: Case) -> Iterator[str]:
    if case.excuses:
        yield "exceptions:"
        for one in case.excuses:
            yield f"  - rule: {one.rule}"
            if one.at:
                yield f"    at: {quoted(one.at)}"
            yield "    why:"
            yield from _said(one.why, "      ")


def _far_from_plan(case: Case) -> Iterator[str]:
    if case.far_from_plan is not None:
        yield "far from plan:"
        yield "  why:"
        yield from _said(case.far_from_plan, "    ")


def _photo(case: Case, language: str) -> Iterator[str]:
    if case.photo is not None:
        yield from _comment("photo", language)
        yield "photo:"
        yield f"  file: {quoted(case.photo.file)}"
        yield "  alt:"
        yield from _said(case.photo.alt, "    ")


def _credit(name: str, said: Text, usual: str = "") -> str:
    """A line that says whose the case is; where nothing is said, a comment shows where it goes."""
    if not said:
        return f"# {name}:{usual}"
    one, *others = dict.fromkeys(said.values())
    return f"{name}: {_words(said) if others else quoted(one)}"


def case_title(slug: str, languages: Sequence[str]) -> Mapping[str, str]:
    """A title until the trainer writes one: the short name in words."""
    # Short names hold small letters, numbers and single hyphens, so no title is empty.
    return dict.fromkeys(languages, slug.replace("-", " ").capitalize())
