"""Three winters of one vine: pruned by habit, grown, pruned again, and what that comes to.

Growth at a position depends on nothing but what was left there, so each position can follow its
own choices: a vine of mixed choices is put together from vines on which one was followed
everywhere.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from pencilwood.cases.case import Case, Profile
from pencilwood.plan.solver import solve
from pencilwood.proof.report import ProofReport
from pencilwood.score.judge import Charge, Target, judge, lost, score, target_for
from pencilwood.score.sheet import compile_sheet
from pencilwood.units import format_length
from pencilwood.vine.bands import Limits
from pencilwood.vine.growth import Summer, growth_by_place, next_winter
from pencilwood.vine.growth_figures import BASE_BUDS
from pencilwood.vine.measures import away_mm, climb_mm
from pencilwood.vine.model import Vine
from pencilwood.vine.spur_choice import Stays, states_with_spur
from pencilwood.vine.wood import Parts, WoodLeft, divide

WINTERS = 3
EACH = tuple(Stays)

Story = tuple[Stays, ...]
"""What was chosen at a position, winter by winter."""


@dataclass(frozen=True)
class PrunedWinter:
    """One winter of a vine: as it was found, as it was left, and what that costs."""

    parts: Parts
    left: WoodLeft
    charges: tuple[Charge, ...]
    plan_lost: int
    """Points that even the best pruning of this winter's vine loses."""
    score: int

    @cached_property
    def climb_mm(self) -> int:
        """How far from the arm the farthest spur's first bud stands."""
        return climb_mm(self.left)

    def within(self, most_mm: int) -> int:
        """Spurs whose first bud stands no farther than that from the arm."""
        kept = zip(self.parts.parts, self.left.states, strict=True)
        return sum(
            part.is_cane and state > 0 and away_mm(self.parts.vine, part) <= most_mm
            for part, state in kept
        )


class Winters:
    """A case's vine over the years, under the profile's figures."""

    def __init__(self, case: Case, profile: Profile) -> None:
        self.case = case
        self.limits: Limits = profile.limits_of(case.vine.form)
        self.pass_mark = profile.pass_mark
        self.target: Target = target_for(case.vine, self.limits, case.target_buds)
        self._summer = summer_of(case, profile)
        self._grown: dict[Story, Parts] = {(): divide(case.vine)}
        self._plan_lost: dict[tuple[Story, ...], int] = {}

    @property
    def names(self) -> tuple[str, ...]:
        """The vine's positions, along the line; they stay what they are."""
        return tuple(position.name for position in self._grown[()].positions)

    def grown(self, story: Story) -> Parts:
        """The vine at which every position has this story behind it, before it is pruned."""
        if story not in self._grown:
            before = self.grown(story[:-1])
            left = self.left(before, [story[-1]] * len(self.names))
            summer = replace(self._summer, seed=f"{self.case.slug}/{len(story)}")
            self._grown[story] = divide(next_winter(left, summer))
        return self._grown[story]

    def mixed(self, stories: Sequence[Story]) -> Parts:
        """The vine at which each position, along the line, has a story of its own behind it."""
        own = {
            name: next(one for one in self.grown(story).positions if one.name == name)
            for name, story in zip(self.names, stories, strict=True)
        }
        vine: Vine = self.case.vine
        arms = tuple(
            replace(arm, positions=tuple(own[one.name] for one in arm.positions))
            for arm in vine.arms
        )
        return divide(replace(vine, arms=arms))

    def left(self, parts: Parts, choices: Sequence[Stays]) -> WoodLeft:
        """The vine after one spur was left at each position, as chosen."""
        states: dict[int, int] = {}
        for name, stays in zip(self.names, choices, strict=True):
            states.update(states_with_spur(parts, name, stays, self.limits))
        return WoodLeft(parts, tuple(states[number] for number in range(len(parts.parts))))

    def pruned(self, stories: Sequence[Story], choices: Sequence[Stays]) -> PrunedWinter:
        """One winter, whatever was chosen at each position before and now."""
        parts = self.mixed(stories)
        left = self.left(parts, choices)
        charges = judge(left, self.limits, self.target)
        plan_lost = self._best(tuple(stories), parts)
        return PrunedWinter(
            parts, left, charges, plan_lost, score(charges, plan_lost, self.pass_mark)
        )

    def _best(self, stories: tuple[Story, ...], parts: Parts) -> int:
        if stories not in self._plan_lost:
            planned = solve(compile_sheet(parts, self.limits, self.target))
            self._plan_lost[stories] = lost(judge(planned, self.limits, self.target))
        return self._plan_lost[stories]

    def by_habit(self, stays: Stays) -> tuple[PrunedWinter, ...]:
        """Every winter of somebody who leaves the same cane everywhere, year after year."""
        count = len(self.names)
        return tuple(
            self.pruned([(stays,) * winter] * count, [stays] * count) for winter in range(WINTERS)
        )


def summer_of(case: Case, profile: Profile) -> Summer:
    """What is assumed of the summers of a case's vine; each gets a seed of its own."""
    limits = profile.limits_of(case.vine.form)
    return Summer(
        case.slug,
        profile.budbreak_percent,
        profile.latent_shoots_per_wound,
        limits["large wound from"],
        limits["stub above the bud"],
        BASE_BUDS.value,
        growth_by_place(case.vine),
    )


def check_winters(case: Case, profile: Profile, report: ProofReport) -> None:
    """The far cane climbs and the near one holds: worked out, or a finding says what came."""
    if not case.three_winters:
        return
    winters = Winters(case, profile)
    most_mm = winters.limits["climb at most"]
    ends = {stays: winters.by_habit(stays)[-1].within(most_mm) for stays in Stays}
    facts: dict[str, str | int] = {
        "winters": WINTERS,
        "most": format_length(most_mm, profile.units, report.language),
        "spurs": len(winters.names),
        **{str(stays): count for stays, count in ends.items()},
    }
    place = case.places.get("three winters", case.place)
    # More than half, because one spur may find no low cane by chance, as in a vineyard.
    if 2 * ends[Stays.NEAR] <= len(winters.names):
        report.add(place, "near-cane-climbs", level="error", **facts)
    if 2 * ends[Stays.FAR] >= len(winters.names):
        report.add(place, "far-cane-holds", level="error", **facts)
