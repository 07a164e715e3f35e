"""The numbers that a case's words may use, computed from the measured vine.

A text writes `{buds_kept}` or `{L3a.thickness}`, never the number, so it cannot go stale.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from pencilwood.cases.case import Profile
from pencilwood.rules import bands_of
from pencilwood.score.judge import Target
from pencilwood.units import format_density, format_length, format_number
from pencilwood.vine import measures
from pencilwood.vine.bands import told_limits
from pencilwood.vine.wood import Part, WoodLeft, uncut
from pencilwood.words import say


def facts_of(left: WoodLeft, target: Target, profile: Profile, language: str) -> Mapping[str, str]:
    """Every placeholder and its text; `left` is the vine after the author's answer."""
    form = left.parts.vine.form
    return {
        **_vine_facts(left, target, profile, language),
        **told_limits(bands_of(form), profile.limits_of(form), profile.units, language),
        **_wood_facts(left, profile, language),
    }


def _vine_facts(left: WoodLeft, target: Target, profile: Profile, language: str) -> dict[str, str]:
    vine = left.parts.vine
    limits = profile.limits_of(vine.form)
    lengths = {
        "arm_length": vine.line_length_mm,
        "cordon_height": vine.cordon_height_mm,
        "longest_blank": measures.blank_mm(left, limits["head zone"]),
        "highest_spur": measures.climb_mm(left),
    }
    if vine.trellis.is_trimmed:
        lengths["trimming_height"] = vine.trellis.trimming_mm
    counts = {
        "positions": len(left.parts.positions),
        "canes": sum(part.is_cane for part in left.parts.parts),
        "buds_before": measures.buds_kept(uncut(left.parts)),
        "buds_kept": measures.buds_kept(left),
        "target_least": target.least,
        "target_most": target.most,
        "spurs": len(measures.spurs(left)),
        "large_wounds": measures.large_wounds(left, limits["large wound from"]),
        "pass_mark": profile.pass_mark,
    }
    shares = {
        "expected_shoots": measures.expected_shoots(
            left,
            Fraction(profile.budbreak_percent, 100),
            Fraction(profile.latent_shoots_per_wound),
            limits["large wound from"],
        ),
    }
    if not vine.is_ring:
        shares["buds_per_metre"] = measures.buds_per_metre(left)
    on_foot = {} if vine.is_ring else {"buds_per_foot": measures.buds_on_length(left)}
    return {
        **{name: format_density(buds, "us", language) for name, buds in on_foot.items()},
        **{name: format_length(mm, profile.units, language) for name, mm in lengths.items()},
        **{name: str(count) for name, count in counts.items()},
        **{name: format_number(value, 0, language) for name, value in shares.items()},
        "large_wound_places": _large_wound_places(left, limits["large wound from"], language),
    }


def _large_wound_places(left: WoodLeft, large_wound_mm: int, language: str) -> str:
    """The positions with a large wound, as `L2, R2 and R5`; a dash where there is none."""
    parts = left.parts.parts
    wounded = (n for n in range(len(parts)) if measures.is_large_cut(left, n, large_wound_mm))
    *first, last = dict.fromkeys(parts[number].position.name for number in wounded) or ("–",)
    if not first:
        return last
    return say(language, "drawing.and", first=", ".join(first), last=last)


def _wood_facts(left: WoodLeft, profile: Profile, language: str) -> dict[str, str]:
    def length(mm: int) -> str:
        return format_length(mm, profile.units, language)

    facts = {f"{p.name}.at": length(p.at_mm) for p in left.parts.positions}
    for part in left.parts.parts:
        facts[f"{part.name}.thickness"] = length(part.piece.thickness_mm)
        facts[f"{part.name}.length"] = length(part.end_mm - part.start_mm)
        facts[f"{part.name}.height"] = length(part.base_height_mm)
        facts |= _cane_facts(left, part) if part.is_cane else _old_facts(part)
    return facts


def _cane_facts(left: WoodLeft, part: Part) -> dict[str, str]:
    facts = {f"{part.name}.buds": str(part.most)}
    if left.parts.vine.trellis.is_trimmed:
        facts[f"{part.name}.leaves"] = str(measures.leaf_room(left.parts.vine, part, 1))
    return facts


def _old_facts(part: Part) -> dict[str, str]:
    return {f"{part.name}.age": str(part.piece.age_years)}
