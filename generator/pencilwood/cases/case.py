"""What a trainer's files hold once they have been read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal, get_args

from pencilwood.places import Place
from pencilwood.units import UnitSystem
from pencilwood.vine.bands import Limits
from pencilwood.vine.model import Form, Side, Vine
from pencilwood.vine.passes import DoneCut

Text = Mapping[str, str]
"""The same words in each language, by language code."""

Level = Literal["easy", "middling", "hard"]
LEVELS: tuple[Level, ...] = get_args(Level)
"""From the easiest on."""


@dataclass(frozen=True, slots=True)
class AnswerCut:
    """One cut of the author's answer, with the reason for it."""

    done: DoneCut
    why: Text
    place: Place
    tool_given: bool = False
    """Whether the author named the tool; otherwise the thickness decides."""


@dataclass(frozen=True)
class Excuse:
    """The author's reason for breaking a should-rule."""

    rule: str
    at: str | None
    """A part or position the reason is limited to; None for the whole vine."""
    why: Text
    place: Place


@dataclass(frozen=True)
class Photo:
    """A photograph of the vine, as the case names it."""

    file: str
    """The way to it from the folder of the case."""
    alt: Text
    """What it shows, for people who do not see it."""
    place: Place


@dataclass(frozen=True)
class Case:
    """A measured vine with the author's answer."""

    slug: str
    place: Place
    title: Text
    level: Level
    teaches: tuple[tuple[str, Place], ...]
    story: Text
    story_places: Mapping[str, Place]
    vine: Vine
    answer: tuple[AnswerCut, ...]
    """In the order in which the file gives them: rough, thinning-out, fine."""
    target_buds: tuple[int, int] | None = None
    excuses: tuple[Excuse, ...] = ()
    far_from_plan: Text | None = None
    safety: tuple[tuple[str, Place], ...] = ()
    author: Text = field(default_factory=dict)
    """In each language, as what follows; empty where the case names nobody."""
    licence: Text = field(default_factory=dict)
    origin: Text = field(default_factory=dict)
    """The vineyard or the handbook that it comes from."""
    photo: Photo | None = None
    three_winters: bool = False
    """Whether a page follows the vine over three winters."""
    renewed_arm: Side | None = None
    """The arm that a page renews over three winters."""
    shared_in: str = ""
    """The folder of `content/shared/` that others filled; empty for the handbook's own case."""
    places: Mapping[str, Place] = field(default_factory=dict)
    """Where each position (`L1`), piece (`L1a`) and main key (`answer`) stands in the file."""


@dataclass(frozen=True)
class Profile:
    """`content/profile.yml`: the trainer's own vineyard, languages, units and bands."""

    vineyard: str
    languages: tuple[str, ...]
    units: UnitSystem
    limits: Limits
    pass_mark: int
    place: Place
    plan_distance: int = 10
    """Points within which the author's answer must be of the plan, unless it says why."""
    budbreak_percent: int = 90
    """Assumed share of kept buds that push in spring, in percent."""
    latent_shoots_per_wound: int = 1
    """Assumed shoots that a large wound wakes from latent buds."""
    practice_vines: int = 0
    """How many vines the practice page can draw."""
    site_address: str = ""
    invented: bool = False
    """Whether the vineyard is made up, so that the pages must not pass it off as real."""
    employer: Mapping[str, int | Text] = field(default_factory=dict)
    """What the employer has settled, by field: a length in millimetres, or words."""
    form_limits: Mapping[str, Limits] = field(default_factory=dict)
    """By the name of a form, all limits that its vines go by."""

    def limits_of(self, form: Form) -> Limits:
        """The limits that vines of this form go by."""
        return self.form_limits.get(form.name, self.limits)

    def all_limits(self) -> list[object]:
        """Every limit there is, in a fixed order."""
        return [
            sorted(self.limits.items()),
            *sorted((name, sorted(limits.items())) for name, limits in self.form_limits.items()),
        ]


@dataclass(frozen=True)
class RuleExample:
    """A good or bad vine of `content/rules/<rule>/`."""

    rule: str
    kind: Literal["good", "bad"]
    place: Place
    caption: Text
    vine: Vine
    cuts: tuple[DoneCut, ...]
    """What was done to the vine before the rule looks at it."""
    breaks: tuple[tuple[str, Place], ...]
    """Message names that the rule must report, in order; empty for a good vine."""
    target_buds: tuple[int, int] | None = None
