"""Every part of the vine as a group that a class can show, ghost or hide."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.light import shaded_side
from pencilwood.drawing.ink.looks import CANE, DEAD, DISEASED, INJURED, INK, OLD, SPINDLY
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Thing
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.scene.stages import Stages
from pencilwood.drawing.wood.bark import bark, older_wood, older_wood_with_end
from pencilwood.drawing.wood.canes import cut_face, stretches
from pencilwood.drawing.wood.marks import condition_marks
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Condition, Growth, Lean
from pencilwood.vine.wood import STUB_WORTH_CUTTING_MM, Part

CANE_COLOURS = {
    Condition.SOUND: CANE,
    Condition.SPINDLY: SPINDLY,
    Condition.DISEASED: DISEASED,
    Condition.DEAD: DEAD,
    Condition.INJURED: INJURED,
}
_BEYOND_JOINT_MM = 8.0
_BEHIND_OPACITY = 0.45
"""Wood on the far side of the vine is paler."""


def draw_parts(
    plate: Plate, prefix: str, stages: Stages, letters: Mapping[str, Sequence[Thing]]
) -> tuple[Group, ...]:
    """One group for each part that stands, in an order in which each foot is covered."""
    return tuple(
        _part(plate, prefix, stages, number, letters)
        for number in sorted(_standing(plate), key=lambda number: _depth(plate, number))
    )


def draw_hanging(
    plate: Plate, prefix: str, stages: Stages, letters: Mapping[str, Sequence[Thing]]
) -> tuple[Group, ...]:
    """The wood that hangs down before the arm and the trunk."""
    return tuple(_part(plate, prefix, stages, number, letters) for number in _hanging(plate))


def nearest_first(plate: Plate) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Names of the parts that hang before the arm, and of those that stand; the nearest first."""
    standing = sorted(_standing(plate), key=lambda number: _depth(plate, number))
    names = [part.name for part in plate.parts.parts]
    hanging = tuple(names[number] for number in reversed(_hanging(plate)))
    return hanging, tuple(names[number] for number in reversed(standing))


def _hangs(plate: Plate, part: Part) -> bool:
    """Whether a part is before the arm: on the near side, or hanging.

    Old wood hangs before it only where all wood should.
    """
    if plate.looks.is_before(part.position, plate.vine):
        return True
    hangs_by_training = plate.vine.form.growth is Growth.DOWN
    return part.piece.lean is Lean.DOWN and (part.is_cane or hangs_by_training)


def _standing(plate: Plate) -> list[int]:
    return [number for number, part in enumerate(plate.parts.parts) if not _hangs(plate, part)]


def _hanging(plate: Plate) -> list[int]:
    """The farthest first."""
    numbers = [number for number, part in enumerate(plate.parts.parts) if _hangs(plate, part)]
    if plate.vine.form.growth is Growth.DOWN or plate.vine.is_ring:
        return sorted(numbers, key=lambda number: _depth(plate, number))
    return numbers


def _depth(plate: Plate, number: int) -> tuple[int, int, int, float]:
    """Canes behind old wood, younger behind older, and one piece of old wood foot first."""
    part = plate.parts.parts[number]
    place = plate.parts.place_of[part.position.name]
    if part.is_cane:
        return 0, place, -number, 0
    first = plate.parts.index[part.position.name + part.piece.letter]
    return 1, place, -first, part.start_mm


def _part(
    plate: Plate, prefix: str, stages: Stages, number: int, letters: Mapping[str, Sequence[Thing]]
) -> Group:
    part = plate.parts.parts[number]
    stem = plate.stem(part)
    things: list[Thing]
    if part.is_cane:
        things = [
            _paler(plate, part, stretch)
            for stretch in stretches(stem, lambda below: stages.of_stretch(number, below))
        ]
        things.append(cut_face(stem, 0.0))
    else:
        things = _old_wood(stem, part)
    if part.start_mm == 0:
        things.extend(letters[stem.name])
    return Group(tuple(things), _attributes(plate, part, prefix, stages.of_part(number)))


def _paler(plate: Plate, part: Part, stretch: Group) -> Group:
    """Stretch by stretch: what is cut off a cane is no paler ghost on the far side."""
    if not plate.looks.is_behind(part.position, plate.vine):
        return stretch
    return Group(stretch.things, {**stretch.attributes, "opacity": _BEHIND_OPACITY})


def _attributes(plate: Plate, part: Part, prefix: str, gone: str) -> Attributes:
    condition = part.piece.condition
    kind = "pw-cane" if part.is_cane else "pw-old"
    look: dict[str, str | float] = {
        "class": f"pw-part {kind} pw-{condition}{gone}",
        "data-part": part.name,
        "data-position": part.position.name,
        "id": f"{prefix}-{part.name.replace(' ', '-')}",
        "color": _colour(part),
        "fill": "currentColor",
        "stroke": INK,
        "stroke-width": 2.0,
    }
    if part.grows_from is not None:
        look["data-grows"] = part.grows_from
    if not part.is_cane and plate.looks.is_behind(part.position, plate.vine):
        look["opacity"] = _BEHIND_OPACITY
    if condition is Condition.SPINDLY:
        look["stroke-width"] = 1.3
    return look


def _colour(part: Part) -> str:
    if part.is_cane:
        return CANE_COLOURS[part.piece.condition]
    return DEAD if part.piece.condition is Condition.DEAD else OLD


def _old_wood(stem: Stem, part: Part) -> list[Thing]:
    start, end = drawn_from_mm(part), drawn_to_mm(part)
    ends = end >= part.piece.length_mm
    edge = (older_wood_with_end if ends else older_wood)(
        stem.curve, start, end, stem.half_mm, goes_on=part.start_mm > 0
    )
    shaded = shaded_side(stem.curve.heading_rad((start + end) / 2))
    return [
        Ink((edge,), {"class": "pw-wood"}),
        *bark(stem.curve, start, end, stem.half_mm, Grain(part.name), shaded=shaded),
        *condition_marks(stem, start, end, stem.half_mm),
        cut_face(stem, start),
    ]


def drawn_from_mm(part: Part) -> float:
    """Where along its piece the drawing of a part of older wood begins."""
    return part.start_mm + _BEYOND_JOINT_MM - 1.5 if part.start_mm else -4.0


def drawn_to_mm(part: Part) -> float:
    """A part reaches a little beyond the joint where it ends, or to a bare tip too short to cut."""
    rest = part.piece.length_mm - part.end_mm
    if rest < STUB_WORTH_CUTTING_MM:
        return part.piece.length_mm + (_BEYOND_JOINT_MM / 2 if rest < _BEYOND_JOINT_MM else 0)
    return part.end_mm + _BEYOND_JOINT_MM
