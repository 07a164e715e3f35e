"""The page of a vine whose worn-out arm is made new: three ways, and a try of one's own.

Everything is worked out here. The page's script shows a drawing for each story and looks the
rest up.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pencilwood.drawing.wood.stems import THICKER
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.quiz_pages import strings_of
from pencilwood.pages.renewal_drawings import RenewalDrawings, name_of
from pencilwood.pages.unbroken import keep_units_together, unbroken
from pencilwood.pages.winters_page import figures_shown, losses_told
from pencilwood.proof import CaseProof
from pencilwood.proof.renewal import WAYS, Renewal, Story, steps_of
from pencilwood.proof.winters import WINTERS
from pencilwood.score.sheet import dump
from pencilwood.vine.arm_renewal import ArmWorked, Stage, Work, found_first, young_cane
from pencilwood.vine.measures import buds_kept

_WHEN = "https://extension.oregonstate.edu/video/how-renew-grapevine-cordon"
"""Where it stands when an arm is made new."""


@dataclass(frozen=True)
class WorkShown:
    """One winter's work, as the page tells it."""

    work: str
    row: str
    told: str = ""
    """What can come of it, where nothing stays on this side."""
    drawing: str = ""


@dataclass(frozen=True)
class WayShown:
    """One way over the winters, and what came of it."""

    title: str
    winters: tuple[WorkShown, ...]
    end: str
    drawing: str


def renewal_path(slug: str) -> str:
    """Where the page of a case's new arm stands, with neither language nor ending."""
    return f"new-arm/{slug}"


def renewal_page(handbook: Handbook, proof: CaseProof, language: str) -> Page:
    """The page of one vine's new arm in one language; the case names the arm."""
    case = proof.case
    if case.renewed_arm is None:
        raise ValueError(case.slug)
    desk = Desk(handbook, renewal_path(case.slug), language)
    renewal = Renewal(case, desk.profile, case.renewed_arm)
    told = RenewalTold(desk, renewal)
    young = young_cane(found_first(case.vine, case.renewed_arm), renewal.limits)
    title = desk.say("renewal.title", title=desk.own(case.title))
    return desk.write(
        "renewal.html",
        title,
        description=desk.say(f"renewal.lead.{case.renewed_arm}"),
        case=case,
        ways=told.ways(),
        most=desk.length(renewal.limits["blank at most"]),
        figures=figures_shown(desk),
        data=told.script_data(),
        drawings="".join(
            told.drawings.found(story) for story in told.stories if len(story) < WINTERS
        ),
        source=_WHEN,
        times=THICKER,
        winters=tuple(range(WINTERS)),
        young="" if young is None else young.name,
    )


class RenewalTold:
    """What the page says of one vine's renewal."""

    def __init__(self, desk: Desk, renewal: Renewal) -> None:
        self.desk = desk
        self.renewal = renewal
        self.stories = tuple(renewal.stories())
        self.drawings = RenewalDrawings(renewal, desk, self.stories)

    def ways(self) -> tuple[WayShown, ...]:
        """The ways that this vine allows, side by side."""
        return tuple(self._way(name, way) for name, way in WAYS.items() if self.renewal.can_go(way))

    def _way(self, name: str, way: Story) -> WayShown:
        winters = tuple(
            WorkShown(self.work(one), self.row(one), self._hope(one), self.drawings.pruned(one))
            for one in steps_of(way)
        )
        title, drawing = self.desk.say(f"renewal.way.{name}"), self.drawings.found(way)
        return WayShown(title, winters, self.end(way), drawing)

    def _hope(self, story: Story) -> str:
        return "" if self.renewal.worked(story).buds_on_side else self.told(story)

    def work(self, story: Story) -> str:
        """What the latest choice is called."""
        done = self.renewal.worked(story)
        name = str(done.work)
        if done.is_sawn:
            name += "-sawn"
        elif done.work is Work.SAVE and done.found.stage is Stage.NONE:
            name += "-bare"
        elif _is_of_woken_bud(story):
            name += "-woken"
        elif self._keeps_without_young(done):
            name += "-gone"
        limits = self.renewal.limits
        return self.desk.say(
            f"renewal.work.{name}",
            most=limits["buds on a spur at most"],
            apart=self.desk.length(limits["spur spacing at least"]),
        )

    def told(self, story: Story) -> str:
        """Why the latest choice does what it does."""
        done = self.renewal.worked(story)
        name, facts = str(done.work), self._cane_facts(done)
        least = self.renewal.limits["cane thickness at least"]
        if done.work is Work.LAY and done.laid and done.laid.piece.thickness_mm < least:
            name += "-thin"
        if done.work is Work.OFF and not done.is_sawn:
            name += "-bare"
        if self._keeps_without_young(done):
            name += "-gone"
        return self.desk.say(f"renewal.told.{name}", least=self.desk.length(least), **facts)

    def _keeps_without_young(self, done: ArmWorked) -> bool:
        """Whether the old arm stays in a winter in which no young cane stands beside it."""
        return done.work is Work.KEEP and young_cane(done.found, self.renewal.limits) is None

    def _cane_facts(self, done: ArmWorked) -> Mapping[str, str]:
        if done.laid is None:
            return {}
        length = self.desk.length
        return {
            "thickness": length(done.laid.piece.thickness_mm),
            "reach": length(done.end_mm),
            "room": length(done.found.room_mm),
        }

    def row(self, story: Story) -> str:
        """The latest winter in numbers."""
        done = self.renewal.worked(story)
        wounds = done.large_wounds(self.renewal.limits["large wound from"])
        row = self.desk.say(
            "renewal.row",
            buds=done.buds_on_side,
            all=buds_kept(done.left),
            bare=self.desk.length(self.renewal.bare_mm(story)),
        )
        return f"{row} {self.desk.say('renewal.wounds', n=wounds)}" if wounds else row

    def end(self, story: Story) -> str:
        """What came of all winters."""
        renewal, last = self.renewal, self.renewal.worked(story)
        gaps = renewal.buds(story).count(0)
        if renewal.is_renewed(story):
            name = "renewed-gap" if gaps else "renewed"
        elif last.laid is not None:
            name = "begun"
        elif last.is_sawn or last.found.stage is Stage.NONE:
            name = "none"
        else:
            name = "short" if last.found.stage is Stage.NEW else "old"
        bare = self.desk.length(
            renewal.limits["blank at most"]
            if name.startswith("renewed")
            else renewal.bare_mm(story)
        )
        end = self.desk.say(f"renewal.end.{name}", bare=bare, gaps=gaps, count=WINTERS)
        woken = any(_is_of_woken_bud(one) for one in steps_of(story))
        return f"{end} {self.desk.say('renewal.end.if-woken')}" if woken else end

    def script_data(self) -> str:
        """What the page's script looks up, as JSON that cannot end its script element."""
        body = {
            "format": 1,
            "winters": WINTERS,
            "stories": {name_of(story): self._story(story) for story in self.stories},
            "strings": {
                key.removeprefix(_SCRIPT): text
                for key, text in strings_of(self.desk, _SCRIPT).items()
            },
        }
        # What a script puts on the page, nobody looks through for units any more.
        return keep_units_together(dump(body).replace("<", "\\u003c"))

    def _story(self, story: Story) -> dict[str, object]:
        found: dict[str, object] = {"works": [str(one) for one in self.renewal.works(story)]}
        if len(story) == WINTERS:
            found["end"] = self.end(story)
        if not story:
            return found
        done = self.renewal.worked(story)
        losses = losses_told(self.desk, done.left.parts, self.renewal.charges(story))
        return found | {
            "work": self.work(story),
            "told": self.told(story),
            "sawn": done.is_sawn,
            "short": self.desk.say(f"renewal.short.{done.work}"),
            "row": self.row(story),
            "buds": done.buds_on_side,
            "bare": unbroken(self.desk.length(self.renewal.bare_mm(story))),
            "losses": list(losses),
        }


def _is_of_woken_bud(story: Story) -> bool:
    """Whether the cane laid last grew from a bud that sawing the old arm off woke."""
    return story[-2:] == (Work.OFF, Work.LAY)


_SCRIPT = "pages.renewal.script."
"""Sentences that the script fills in."""
