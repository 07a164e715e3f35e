"""One arm of a vine made new over three winters: every way of doing it, and what it comes to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from pencilwood.cases.case import Case, Profile
from pencilwood.proof.report import ProofReport
from pencilwood.proof.winters import WINTERS, summer_of
from pencilwood.score.judge import Charge, Target, judge, target_for
from pencilwood.units import format_length
from pencilwood.vine.arm_renewal import (
    ArmFound,
    ArmWorked,
    Stage,
    Work,
    can_be_renewed,
    found_first,
    worked,
    works,
    young_cane,
)
from pencilwood.vine.bands import Limits
from pencilwood.vine.model import Side
from pencilwood.vine.new_arm import next_found, side_growth_mm

Story = tuple[Work, ...]
"""What was done with the arm, winter by winter."""

WAYS: Mapping[str, Story] = {
    "tidy": (Work.KEEP, Work.KEEP, Work.KEEP),
    "at-once": (Work.OFF, Work.LAY, Work.SPACE),
    "in-steps": (Work.SAVE, Work.LAY, Work.SPACE),
}
"""Three ways that the page sets side by side, each to be compared with the others."""


def steps_of(way: Story) -> tuple[Story, ...]:
    """What has been done after each winter of a way."""
    return tuple(way[: number + 1] for number in range(len(way)))


class Renewal:
    """A case's vine while one of its arms is renewed, under the profile's figures."""

    def __init__(self, case: Case, profile: Profile, side: Side) -> None:
        self.case = case
        self.limits: Limits = profile.limits_of(case.vine.form)
        self.target: Target = target_for(case.vine, self.limits, case.target_buds)
        self._summer = summer_of(case, profile)
        self._growth_mm = side_growth_mm(case.vine, side)
        self._found: dict[Story, ArmFound] = {(): found_first(case.vine, side)}
        self._worked: dict[Story, ArmWorked] = {}

    def found(self, story: Story) -> ArmFound:
        """The vine that has this story behind it, before it is pruned."""
        if story not in self._found:
            summer = replace(self._summer, seed=f"{self.case.slug}/{len(story)}")
            self._found[story] = next_found(self.worked(story), summer, self._growth_mm)
        return self._found[story]

    def works(self, story: Story) -> tuple[Work, ...]:
        """What can be done next; nothing after the last winter."""
        return works(self.found(story), self.limits) if len(story) < WINTERS else ()

    def worked(self, story: Story) -> ArmWorked:
        """The vine after the latest work of a story that is not empty."""
        if story not in self._worked:
            self._worked[story] = worked(self.found(story[:-1]), story[-1], self.limits)
        return self._worked[story]

    def stories(self, story: Story = ()) -> Iterator[Story]:
        """This story and all that can follow from it, each before those that are longer."""
        yield story
        for work in self.works(story):
            yield from self.stories((*story, work))

    def can_go(self, way: Story) -> bool:
        """Whether every work of a way can be done in its turn."""
        return all(work in self.works(way[:number]) for number, work in enumerate(way))

    def bare_mm(self, story: Story) -> int:
        """The longest stretch that its latest work left without a bud."""
        return self.worked(story).bare_mm(self.limits["head zone"])

    def buds(self, story: Story) -> tuple[int, ...]:
        """Buds left on the renewed side, winter by winter."""
        return tuple(self.worked(one).buds_on_side for one in steps_of(story))

    def is_renewed(self, story: Story) -> bool:
        """Whether spurs stand all along a new arm."""
        last = self.worked(story)
        is_new = last.found.stage is Stage.NEW and last.laid is None
        return is_new and self.bare_mm(story) <= self.limits["blank at most"]

    def charges(self, story: Story) -> tuple[Charge, ...]:
        """What the rules for cordons say of the latest work; nothing while an arm is missing."""
        last = self.worked(story)
        if last.laid is not None or last.is_sawn or last.found.stage is Stage.NONE:
            return ()
        return tuple(one for one in judge(last.left, self.limits, self.target) if one.points)


def check_renewal(case: Case, profile: Profile, report: ProofReport) -> None:
    """What the page claims of the three ways is worked out, or a finding says what came."""
    side = case.renewed_arm
    if side is None:
        return
    place = case.places.get("renewed arm", case.place)
    if not can_be_renewed(case.vine):
        report.add(place, "form-cannot-be-renewed", level="error", form=case.vine.form.name)
        return
    if side not in case.vine.form.sides:
        report.add(place, "no-arm-to-renew", level="error", side=str(side))
        return
    renewal = Renewal(case, profile, side)
    if young_cane(renewal.found(()), renewal.limits) is None:
        zone = format_length(renewal.limits["head zone"], profile.units, report.language)
        report.add(place, "no-young-cane", level="error", zone=zone)
        return
    for problem, way, bare_mm in _broken_claims(renewal):
        facts: dict[str, str | int] = {
            "winters": WINTERS,
            "most": format_length(renewal.limits["blank at most"], profile.units, report.language),
            "bare": format_length(bare_mm, profile.units, report.language),
            "buds": ", ".join(map(str, renewal.buds(way))),
        }
        report.add(place, problem, level="error", **facts)


def _broken_claims(renewal: Renewal) -> Iterator[tuple[str, Story, int]]:
    """Each claim that does not hold: its name, the way it is about, the stretch left bare."""
    tidy, at_once, in_steps = WAYS["tidy"], WAYS["at-once"], WAYS["in-steps"]
    most_mm = renewal.limits["blank at most"]
    if renewal.bare_mm(tidy) <= most_mm:
        yield "old-arm-would-do", tidy, renewal.bare_mm(tidy)
    if not renewal.can_go(in_steps):
        yield "steps-do-not-renew", in_steps[:1], renewal.bare_mm(in_steps[:1])
    elif not renewal.is_renewed(in_steps) or 0 in renewal.buds(in_steps):
        yield "steps-do-not-renew", in_steps, renewal.bare_mm(in_steps)
    if renewal.can_go(at_once) and min(renewal.buds(at_once)) > 0:
        yield "no-winter-without-fruit", at_once, renewal.bare_mm(at_once)
