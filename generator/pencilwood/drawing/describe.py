"""The same facts as the drawing in words, computed from the measurements.

For who cannot see the drawing, and for who wants to check it: every arm, position and piece,
in the order in which one walks along the vine, and what has been cut.
"""

from __future__ import annotations

from pencilwood.units import UnitSystem, format_length
from pencilwood.vine.measures import buds_kept, spurs
from pencilwood.vine.model import Arm, Position, Trellis, own_words
from pencilwood.vine.wood import STUB_WORTH_CUTTING_MM, Part, Parts, WoodLeft, uncut
from pencilwood.words import fitting, say


def describe_vine(
    parts: Parts, left: WoodLeft | None, language: str, units: UnitSystem = "metric"
) -> str:
    """The whole vine, a line for each arm and position; `left` None describes it uncut."""
    said = _sayer_of(parts, language, units)
    left = left or uncut(parts)
    lines = [summarise_vine(parts, left, language, units), _trellis(parts, said)]
    for arm in parts.vine.arms:
        lines.append(_arm(arm, said))
        lines.extend(_position(parts, left, position, said) for position in arm.positions)
    return "\n".join(lines)


def summarise_vine(
    parts: Parts, left: WoodLeft | None, language: str, units: UnitSystem = "metric"
) -> str:
    """One or two sentences: form, arms, positions, canes, buds, and what is left of them."""
    said = _sayer_of(parts, language, units)
    canes = [part for part in parts.parts if part.is_cane]
    text = said.say(
        "summary",
        form=said.form(parts),
        length=said.length(parts.vine.line_length_mm),
        positions=said.count("positions", len(parts.positions)),
        canes=said.count("canes", len(canes)),
        buds=said.count("buds", sum(part.most for part in canes)),
    )
    if left is None or left.states == uncut(parts).states:
        return text
    kept = said.count("buds", buds_kept(left))
    spurs_left = said.count("positions", len(spurs(left)))
    return f"{text} {said.say('left', buds=kept, positions=spurs_left)}"


def describe_position(
    parts: Parts, left: WoodLeft | None, name: str, language: str, units: UnitSystem = "metric"
) -> str:
    """One position of the vine: where it is and every piece that grows there."""
    position = next(one for one in parts.positions if one.name == name)
    return _position(parts, left or uncut(parts), position, _sayer_of(parts, language, units))


def part_label(part: Part, language: str) -> str:
    """What a part is called: `Cane a at L1`, `Old wood m at L1, above a`."""
    return f"{_Sayer(language, 'metric').piece(part)}{_at(part, language)}"


def part_facts(
    part: Part, language: str, units: UnitSystem = "metric", own: str | None = None
) -> str:
    """What one part is like: where it grows, age, size, buds, lean and condition.

    `own` is `own_words` of its vine; None goes by the side the part stands on.
    """
    said = _Sayer(language, units, own_words(part.position.side) if own is None else own)
    if part.start_mm > 0:
        return said.say(
            "facts-further", length=said.length(_length_mm(part)), height=said.height(part)
        )
    facts = {
        "origin": said.origin(part),
        "length": said.length(part.piece.length_mm),
        "thickness": said.length(part.piece.thickness_mm),
        "lean": said.say(f"lean.{part.piece.lean}.{said.kind(part)}"),
        "condition": said.say(f"condition.{part.piece.condition}.{said.kind(part)}"),
    }
    if part.is_cane:
        buds = said.count("buds", part.piece.buds)
        apart = said.length(part.piece.internode_mm)
        return said.say("facts-cane", buds=buds, apart=apart, **facts)
    return said.say("facts-old", age=said.count("years", part.piece.age_years), **facts)


def _at(part: Part, language: str) -> str:
    return say(language, "drawing.at-position", position=part.position.name)


def _length_mm(part: Part) -> int:
    """Length of a part of older wood, a bare tip too short to cut included."""
    rest = part.piece.length_mm - part.end_mm
    return part.end_mm - part.start_mm + (rest if rest < STUB_WORTH_CUTTING_MM else 0)


def _heights(trellis: Trellis) -> str:
    if trellis.has_no_wire:
        return "heights-no-wire"
    return "heights-one-wire" if trellis.has_one_wire else "heights"


def _trellis(parts: Parts, said: _Sayer) -> str:
    trellis = parts.vine.trellis
    catch = [said.length(height) for height in trellis.catch_wires_mm]
    return said.say(
        _heights(trellis),
        trunk=said.length(parts.vine.trunk_thickness_mm),
        cordon=said.length(parts.vine.cordon_height_mm),
        fruiting=said.length(trellis.fruiting_wire_mm),
        catch=said.listed(catch) or said.say("none"),
        top=said.length(trellis.top_wire_mm),
        trimming=said.length(trellis.trimming_mm),
    )


def _arm(arm: Arm, said: _Sayer) -> str:
    return said.say(
        f"arm.{arm.side}",
        length=said.length(arm.length_mm),
        thickness=said.length(arm.thickness_mm),
        positions=said.count("positions", len(arm.positions)),
    )


def _position(parts: Parts, left: WoodLeft, position: Position, said: _Sayer) -> str:
    sentences = [
        f"{said.piece(part)}: {part_facts(part, said.language, said.units, said.own)}"
        + _fate(left, number, said)
        + "."
        for number in parts.of_position(position.name)
        for part in (parts.parts[number],)
    ]
    where = said.say("position", name=position.name, at=said.length(position.at_mm))
    return " ".join([where, *sentences])


def _fate(left: WoodLeft, number: int, said: _Sayer) -> str:
    """What has become of a part, or nothing when it is whole."""
    state, part = left.states[number], left.parts.parts[number]
    if state == part.most:
        return ""
    if state:
        return said.say("fate.shortened", buds=said.count("buds", state))
    how = "cut-off" if left.is_cut_face(number) else "fallen"
    return said.say(f"fate.{how}.{said.kind(part)}")


def _sayer_of(parts: Parts, language: str, units: UnitSystem) -> _Sayer:
    return _Sayer(language, units, parts.vine.own_words)


class _Sayer:
    """Says things in one language and one system of units, of arms or of places around a head."""

    def __init__(self, language: str, units: UnitSystem, own: str = "") -> None:
        self.language = language
        self.units = units
        self.own = own

    def say(self, key: str, **facts: str) -> str:
        return say(self.language, fitting(f"drawing.{key}", self.own), **facts)

    def length(self, length_mm: int) -> str:
        return format_length(length_mm, self.units, self.language)

    def count(self, what: str, number: int) -> str:
        many = "one" if number == 1 else "many"
        return say(self.language, f"drawing.count.{what}.{many}", number=number)

    def listed(self, items: list[str]) -> str:
        if len(items) < 2:
            return "".join(items)
        return self.say("and", first=", ".join(items[:-1]), last=items[-1])

    def form(self, parts: Parts) -> str:
        return self.say(f"form.{parts.vine.form.name.replace(' ', '-')}")

    def kind(self, part: Part) -> str:
        return "cane" if part.is_cane else "old"

    def piece(self, part: Part) -> str:
        """`Cane a`, `Old wood m`, `Old wood m above a`."""
        beyond = part.name.partition(" above ")[2]
        if beyond:
            return self.say("piece.beyond", letter=part.piece.letter, beyond=beyond)
        return self.say(f"piece.{self.kind(part)}", letter=part.piece.letter)

    def height(self, part: Part) -> str:
        side = "above-arm" if part.base_height_mm >= 0 else "below-arm"
        return self.say(side, height=self.length(abs(part.base_height_mm)))

    def origin(self, part: Part) -> str:
        below = part.piece.grows_from
        if below is None:
            return self.say(f"origin.arm.{self.kind(part)}")
        facts = {"below": below, "at": self.length(part.piece.at_mm)}
        return self.say(f"origin.wood.{self.kind(part)}", height=self.height(part), **facts)
