"""The head zone, drawn where a picture teaches a rule that asks how wide it is."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from pencilwood.drawing.ink.shapes import Group
from pencilwood.drawing.names.head_zone import draw_head_zone, room_for_head_zone
from pencilwood.drawing.plate import frame_around_all
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.views.near_views import NearView
from pencilwood.pages.desk import Desk
from pencilwood.rules.shapes import Rule
from pencilwood.vine.wood import Parts

_ZONE = "head zone"


def has_zone(rules: Iterable[Rule], parts: Parts) -> bool:
    """Whether one of these rules has the width of the zone for its band; a ring has no arms."""
    return not parts.vine.is_ring and any(
        band.name == _ZONE for rule in rules for band in rule.bands
    )


def zone_drawn(desk: Desk, rules: Iterable[Rule], parts: Parts) -> Group | None:
    """Its limits by the profile, where one of these rules asks for them."""
    if not has_zone(rules, parts):
        return None
    return draw_head_zone(plate_of(parts), desk.profile.limits[_ZONE], desk.language)


def with_room_for_zone(
    desk: Desk, views: Sequence[NearView], rules: Iterable[Rule], parts: Parts
) -> tuple[NearView, ...]:
    """The same pictures with its lines and its name inside."""
    if not has_zone(rules, parts):
        return tuple(views)
    room = room_for_head_zone(plate_of(parts), desk.profile.limits[_ZONE], desk.language)
    return tuple(replace(one, window=frame_around_all([one.window, room])) for one in views)
