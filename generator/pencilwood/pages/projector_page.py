"""One case filling a screen: the room votes by hand, a key or a clicker shows the next step.

Letters are never smaller than a twenty-fifth of the screen's height, but for the help for keys.
On a picture 1.5 m high that makes capitals of about 40 mm, a two-hundredth of 8 m, from where they
can still be read (common practice, no source).

The page stands alone, without the site's menus. The drawing is that of the vine's own page, from
which the script brings it (`site_assets/js/room_drawing.mjs`). Without its script the page shows a
small picture of the vine and all steps one under another.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from pencilwood.cases.case import AnswerCut
from pencilwood.drawing.ink.writer import number
from pencilwood.drawing.plate import LEFT_MARGIN_MM, RIGHT_MARGIN_MM, Frame, Plate
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.kept import is_kept, kept_text
from pencilwood.pages.desk import Desk
from pencilwood.pages.finished import our_versions
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.wood_words import cut_words
from pencilwood.proof import CaseProof
from pencilwood.vine.measures import buds_kept, spurs
from pencilwood.vine.passes import Pass, after_cuts
from pencilwood.vine.wood import Shortening, Tie, WoodLeft, uncut
from pencilwood.words.filling import fill

_BEHIND_ARM_MM = 250.0
_ALL_BEHIND_ARM_MM = 360.0
"""Room for the names, which are larger the smaller the wood is drawn."""
_AHEAD_OF_ARM_MM = 560.0
_LEAST_CANE_MM, _ABOVE_WIRE_MM = 900, 60
"""So much of long canes is seen at least where they run on beyond the edge, and above a wire."""
_AROUND_FOOT_MM = 260.0
_MARGIN_MM = 30.0
_MOST_NAMED = 4
"""A screen that is read from afar lists no more pieces of wood than this."""
_TRUNK_SWELLS = 1.15
"""Names keep clear of a trunk so many times as thick as it was measured."""
_KIND = "room-page"
STYLES = ("tokens.css", "fonts.css", "vine.css", "projector.css")


@dataclass(frozen=True)
class Step:
    """What the screen shows at one press of the key."""

    heading: str
    say: str
    left: WoodLeft
    positions: tuple[str, ...] = ()
    """The places that the step is about; the drawing comes nearer where they are few."""
    why: str = ""
    asks: bool = False
    tied: tuple[str, ...] | None = None
    """Canes that lie along the wire by now; None before anything is tied."""

    @property
    def states(self) -> str:
        """What is left of each part, in the order of the parts."""
        return " ".join(str(state) for state in self.left.states)


def projector_path(slug: str) -> str:
    """Where the page stands, with neither language nor ending."""
    return f"project/{slug}"


def projector_page(handbook: Handbook, proof: CaseProof, language: str) -> str:
    """The page of one case in one language, from doctype to the closing tag."""
    facts = _facts(handbook, proof, language)
    return kept_text(_KIND, facts, lambda: _page(handbook, proof, language))


def has_kept_room(handbook: Handbook, proof: CaseProof, language: str) -> bool:
    """Whether the page is kept from an earlier build."""
    return is_kept(_KIND, _facts(handbook, proof, language))


def _facts(handbook: Handbook, proof: CaseProof, language: str) -> object:
    holds = None if handbook.holds is None else sorted(handbook.holds)
    return [proof.name, language, holds, our_versions()]


def _page(handbook: Handbook, proof: CaseProof, language: str) -> str:
    case = proof.case
    desk = Desk(handbook, projector_path(case.slug), language)
    whole, near = frames_of(plate_of(proof.parts))
    html = desk.render(
        "projector.html",
        title=desk.own(case.title),
        case=case,
        box=_box(whole),
        near=_box(near),
        trunk=number(proof.parts.vine.trunk_thickness_mm * THICKER / 2 * _TRUNK_SWELLS),
        parts=[part.name for part in proof.parts.parts],
        alt=desk.say("drawing.before", title=desk.own(case.title)),
        steps=tuple(_steps(desk, proof)),
        styles=STYLES,
        times=THICKER,
    )
    return desk.alone(html, frames=True)


def frames_of(plate: Plate) -> tuple[Frame, Frame]:
    """All of the vine above the ground, and the part near the arms, or the vine from above."""
    whole = plate.frame
    lowest = [stem.curve.corners[1][1] for stem in plate.stems.values()]
    lowest.append(-float(plate.vine.trellis.trimming_mm))
    _, below = plate.around_arm(0.0, _ALL_BEHIND_ARM_MM)
    bottom = max(below, *(y + _MARGIN_MM for y in lowest))
    # No wire is named here.
    unnamed_mm = RIGHT_MARGIN_MM - LEFT_MARGIN_MM if plate.has_words_beside else 0.0
    right = whole.right - unnamed_mm
    above_ground = Frame(whole.left, max(whole.top, _all_from(plate)), right, bottom)
    if plate.second is not None:
        return above_ground, _near_feet(plate.second)
    top, low = plate.around_arm(_AHEAD_OF_ARM_MM, _BEHIND_ARM_MM)
    return (
        above_ground,
        Frame(whole.left, max(whole.top, top), right, min(bottom, low)),
    )


def _all_from(plate: Plate) -> float:
    """The upper edge of all that is shown.

    Where no pass shortens long canes first, what goes above the top wire runs on beyond the edge:
    the wood around the head is what there is to see.
    """
    vine = plate.vine
    if plate.second is not None or Pass.ROUGH in vine.form.passes:
        return -math.inf
    highest_mm = max(vine.trellis.top_wire_mm, vine.cordon_height_mm + _LEAST_CANE_MM)
    return -float(highest_mm + _ABOVE_WIRE_MM)


def _near_feet(view: Plate) -> Frame:
    """All places of a second view with what the rough pass leaves of their wood."""
    points = [
        point
        for place in view.parts.positions
        for piece in place.pieces
        for point in view.stems[place.name + piece.letter].curve.points
        if point.away_from(view.foot(place)) <= _AROUND_FOOT_MM
    ]
    xs, ys = [point.x for point in points], [point.y for point in points]
    return Frame(
        min(xs) - _MARGIN_MM, min(ys) - _MARGIN_MM, max(xs) + _MARGIN_MM, max(ys) + _MARGIN_MM
    )


def _box(frame: Frame) -> str:
    return " ".join(number(value) for value in frame.box)


def _steps(desk: Desk, proof: CaseProof) -> Iterator[Step]:
    left = uncut(proof.parts)
    tied: tuple[str, ...] | None = None
    story = fill(desk.own(proof.case.story), proof.facts[desk.language])
    yield Step(desk.own(proof.case.title), story, left)
    for (in_pass, *_), group in groupby(proof.case.answer, key=_same_step):
        cuts = list(group)
        heading = desk.say_of(proof.parts.vine.own_words, f"pass.{in_pass}")
        positions = _positions(proof, cuts) if in_pass is not Pass.ROUGH else ()
        named = ", ".join(positions) if len(positions) <= _MOST_NAMED else ""
        question = desk.say(f"project.ask.{_asked(cuts[0])}")
        if in_pass is Pass.TIE:
            tied = tied or ()
        asking = f"{heading}: {named}" if named else heading
        yield Step(asking, question, left, positions, asks=True, tied=tied)
        left = after_cuts(left, (one.done for one in cuts))
        if tied is not None:
            tied = (*tied, *(one.done.cut.part for one in cuts))
        why = fill(desk.own(cuts[0].why), proof.facts[desk.language])
        yield Step(heading, _cuts(desk, proof, cuts), left, positions, why, tied=tied)
    yield Step(desk.say("project.end"), _end(desk, proof, left), left, tied=tied)


def _asked(one: AnswerCut) -> str:
    """The last word of the key of what the room votes on."""
    cut = one.done.cut
    if isinstance(cut, Tie):
        return "side"
    return "buds" if isinstance(cut, Shortening) else "wood"


def _same_step(one: AnswerCut) -> tuple[Pass, tuple[str, ...], int, str]:
    cut, why = one.done.cut, one.why
    buds = cut.buds if isinstance(cut, Shortening) else 0
    # Each cane has a vote of its own on where it is tied.
    tied = cut.part if isinstance(cut, Tie) else ""
    return one.done.in_pass, tuple(why.values()), buds, tied


def _positions(proof: CaseProof, cuts: list[AnswerCut]) -> tuple[str, ...]:
    wood = [proof.parts.parts[proof.parts.index[one.done.cut.part]] for one in cuts]
    return tuple(dict.fromkeys(part.position.name for part in wood))


def _cuts(desk: Desk, proof: CaseProof, cuts: list[AnswerCut]) -> str:
    """Each cut as a sentence, or how many alike."""
    if len(cuts) == 1:
        return cut_words(desk, proof.parts, cuts[0].done)
    cut = cuts[0].done.cut
    names = ", ".join(_short(desk, one.done.cut.part) for one in cuts)
    facts: dict[str, str | int] = {"n": len(cuts), "names": names}
    which = "named" if len(cuts) <= _MOST_NAMED else "many"
    if isinstance(cut, Shortening):
        key = f"project.cut.to.{'one' if cut.buds == 1 else 'many'}.{which}"
        return desk.say(key, buds=cut.buds, **facts)
    return desk.say(f"project.cut.off.{which}", **facts)


def _short(desk: Desk, part: str) -> str:
    """`L1a`, or `L1m above a`, with nothing around it."""
    wood, _, cane = part.partition(" above ")
    return desk.say("project.above", wood=wood, cane=cane) if cane else part


def _end(desk: Desk, proof: CaseProof, left: WoodLeft) -> str:
    return desk.say(
        "project.end.say",
        buds=buds_kept(left),
        least=proof.target.least,
        most=proof.target.most,
        spurs=len(spurs(left)),
    )
