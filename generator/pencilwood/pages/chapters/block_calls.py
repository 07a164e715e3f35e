"""The calls of a chapter that put in something large: drawings and safety boxes."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

from markupsafe import Markup

from pencilwood.drawing import Paper, scale_words
from pencilwood.drawing.describe import describe_position
from pencilwood.drawing.plates import PLATES, draw_plate
from pencilwood.drawing.views.close_up import PlaceShown, draw_close_up
from pencilwood.pages.chapters.prose import typed_figures
from pencilwood.pages.chapters.template import Where
from pencilwood.pages.chapters.vine_states import (
    STATES,
    Drawn,
    VineState,
    draw_down_to_ground,
    draw_near,
)
from pencilwood.pages.chapters.writing import Writing
from pencilwood.pages.rule_pages import examples_shown
from pencilwood.pages.sign import sign
from pencilwood.proof import CaseProof
from pencilwood.rules import RULE_BY_NAME
from pencilwood.rules.shapes import Rule
from pencilwood.vine.model import LETTER_OF_SIDE

_DOWN_TO = {"wood": draw_near, "ground": draw_down_to_ground}
"""How far down a vine is drawn."""


class BlockCalls:
    """Calls that stand alone on their line."""

    def __init__(self, writing: Writing) -> None:
        self._writing = writing
        self._desk = writing.desk

    def draw(
        self,
        where: Where,
        case: str,
        state: str = "before",
        at: str = "",
        caption: str = "",
        down_to: str = "wood",
    ) -> Markup:
        """A case's vine in one state, or one of its positions close up."""
        proof = self._writing.case(where, case)
        known = self._writing.known(where, state, STATES, "unknown-state")
        known &= self._writing.known(where, down_to, _DOWN_TO, "unknown-depth")
        if proof is None or not known:
            return Markup()
        places = [position.name for position in proof.parts.positions]
        if at and not self._writing.known(where, at, places, "unknown-position"):
            return Markup()

        def drawn(words: frozenset[str]) -> Drawn:
            vine, prefix = VineState(proof, state, words & set(places)), self._writing.prefix(case)
            if at:
                return self._close_up(vine, at, prefix)
            return _DOWN_TO[down_to](vine, prefix, self._titled(vine), self._desk)

        near = not at and down_to == "wood"
        more = self._desk.href(f"cases/{case}")
        names = self._names_told(proof)
        close = bool(at)
        return self._figure(where, drawn, caption, close=close, near=near, more=more, names=names)

    def _names_told(self, proof: CaseProof) -> Markup:
        """Beside the first drawing of such vines: how the places that it names are counted.

        A text that speaks of L, R or H alone tells it itself.
        """
        own = proof.parts.vine.own_words
        if own in self._writing.names_told:
            return Markup()
        self._writing.names_told.add(own)
        letters = {LETTER_OF_SIDE[side] for side in proof.parts.vine.form.sides}

        def told(words: frozenset[str]) -> Markup:
            if letters & words:
                return Markup()
            return Markup(" {}").format(self._desk.say_of(own, "case.words.names"))

        return self._writing.later(told)

    def _close_up(self, vine: VineState, at: str, prefix: str) -> Drawn:
        desk, units = self._desk, self._desk.profile.units
        paper = Paper(
            prefix,
            desk.language,
            title=desk.say("chapter.close-up", place=at, title=self._titled(vine)),
            description=describe_position(vine.parts, vine.left, at, desk.language, units),
            units=units,
        )
        return Drawn(draw_close_up(PlaceShown(vine.parts, at, vine.left), paper))

    def _titled(self, vine: VineState) -> str:
        desk, state = self._desk, vine.state
        said = desk.say(f"case.show.{'fine' if state == 'answer' else state}")
        return desk.say("chapter.drawing", title=desk.own(vine.proof.case.title), state=said)

    def right_and_wrong(self, where: Where, rule: str) -> Markup:
        """The bad and the good vine of a rule beside each other."""
        if not self._writing.known(where, rule, RULE_BY_NAME, "unknown-rule-called"):
            return Markup()
        self._alone(where)
        examples = self._writing.later(lambda _: self._examples(RULE_BY_NAME[rule]))
        return self._writing.one_line("chapter_examples.html", examples=examples)

    def _examples(self, rule: Rule) -> Markup:
        shown = tuple(examples_shown(self._desk, rule, self._writing.prefix("")))
        return self._writing.one_line("chapter_example_vines.html", examples=shown)

    def picture(self, where: Where, name: str, caption: str = "") -> Markup:
        """A plate of the handbook."""
        if not self._writing.known(where, name, PLATES, "unknown-picture"):
            return Markup()
        desk = self._desk

        def drawn(_: frozenset[str]) -> Drawn:
            prefix = self._writing.prefix(name)
            return Drawn(draw_plate(name, prefix, desk.language, desk.profile.units))

        return self._figure(where, drawn, caption)

    def safety(self, where: Where, note: str) -> Markup:
        """A safety note as a box with its signal word and its sign."""
        notes = self._desk.handbook.note_by_name
        if not self._writing.known(where, note, notes, "unknown-note-called"):
            return Markup()
        self._alone(where)
        first, self._writing.noted = not self._writing.noted, True
        shown = sign(self._desk, note)
        return self._writing.one_line(
            "chapter_safety.html", note=notes[note], sign=shown, first=first
        )

    def _figure(
        self,
        where: Where,
        draw: Callable[[frozenset[str]], Drawn],
        caption: str,
        *,
        close: bool = False,
        near: bool = False,
        more: str = "",
        names: str = "",
    ) -> Markup:
        """A drawing with its caption; `more` leads to the names that are left out of it.

        It has to name the places that the text speaks of, so it is drawn later.
        """
        self._alone(where)
        for _ in typed_figures(caption):
            self._writing.problems.add(where, "typed-number", found=caption)
            break
        drawn, writing = cache(draw), self._writing
        return writing.one_line(
            "chapter_figure.html",
            drawing=writing.later(lambda words: self._desk.late(drawn(words).html)),
            caption=caption,
            names=names,
            close=close,
            left_out=writing.later(lambda words: self._left_out(drawn(words).left_out, more)),
            scale=scale_words(self._desk.language) if near or close else "",
        )

    def _left_out(self, where: str, more: str) -> Markup:
        if not where:
            return Markup()
        told = self._writing.one_line("chapter_left_out.html", left_out=where, more=more)
        return Markup(" ") + told

    def _alone(self, where: Where) -> None:
        if not self._writing.stands_alone(where):
            self._writing.problems.add(where, "not-alone")
