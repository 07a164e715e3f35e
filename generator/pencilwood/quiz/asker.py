"""Words for questions: the trainer's own, filled and checked, and those that are worked out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from difflib import get_close_matches
from fractions import Fraction

from pencilwood.cases.case import Profile, Text
from pencilwood.cases.quiz import Said
from pencilwood.quiz.made import Option
from pencilwood.quiz.vines import slip
from pencilwood.rules import BANDS
from pencilwood.units import format_density, format_length
from pencilwood.vine.bands import arm_unit, told_limits
from pencilwood.vine.wood import Part
from pencilwood.words import fitting, say
from pencilwood.words.filling import fill, names_in, typed_number


class Asker:
    """Writes the questions of one quiz in one language."""

    def __init__(self, quiz: str, profile: Profile, language: str) -> None:
        self.quiz = quiz
        self.profile = profile
        self.language = language
        self._arm_unit = arm_unit(profile.units, language)
        self._limits = told_limits(BANDS, profile.limits, profile.units, language)

    def say(self, key: str, **facts: str | int) -> str:
        """A sentence of the catalogue under `asking.`."""
        return say(self.language, f"asking.{key}", **self._arm_unit, **facts)

    def say_of(self, own: str, key: str, **facts: str | int) -> str:
        """The sentence that vines with `own` words have for it, else the usual one."""
        return say(self.language, fitting(f"asking.{key}", own), **self._arm_unit, **facts)

    def count(self, key: str, number: int) -> str:
        """The same for a number of things."""
        return self.say(f"{key}.{'one' if number == 1 else 'many'}", n=number)

    def length(self, length_mm: int) -> str:
        """A length in the profile's units."""
        return format_length(length_mm, self.profile.units, self.language)

    def density(self, buds: Fraction | int) -> str:
        """Buds on the length of a density, for each metre or each foot as the profile goes."""
        return format_density(buds, self.profile.units, self.language)

    def own(self, text: Text, facts: Mapping[str, str] | None = None) -> str:
        """The trainer's own words with their placeholders filled.

        Raises QuestionError where a number is typed by hand or a placeholder is not known.
        """
        known = {**self._limits, **(facts or {})}
        for words in text.values():
            number = typed_number(words)
            if number is not None:
                raise slip("number-typed-by-hand", number=number)
            for name in names_in(words):
                if name not in known:
                    near = get_close_matches(name, known, n=1)
                    raise slip("unknown-placeholder", name=name, near=near[0] if near else "-")
        used = {tuple(sorted(names_in(words))) for words in text.values()}
        if len(used) > 1:
            raise slip("placeholders-differ")
        return fill(text[self.language], known)

    def option(self, said: Said, *, right: bool, facts: Mapping[str, str] | None = None) -> Option:
        """Something to choose, in the trainer's words."""
        return Option(self.own(said.say, facts), self.own(said.why, facts), right)

    def listed(self, items: Sequence[str]) -> str:
        """`a, b and c`."""
        if len(items) < 2:
            return "".join(items)
        return self.say("and", first=", ".join(items[:-1]), last=items[-1])

    def wood(self, part: Part) -> str:
        """What a part is called: `Cane L1a`."""
        if part.is_cane:
            return self.say("wood.cane", name=part.name)
        name, _, above = part.name.partition(" above ")
        return self.say("wood.old-above" if above else "wood.old", name=name, cane=above)

    def cane_facts(self, part: Part, own: str) -> str:
        """What one sees of a cane: `8 mm thick, sound, lowest bud 3 cm above the arm`."""
        height_mm = part.bud_height_mm(1)
        side = "above" if height_mm >= 0 else "below"
        return self.say(
            "cane-facts",
            thickness=self.length(part.piece.thickness_mm),
            condition=self.say(f"condition.{part.piece.condition}"),
            height=self.say_of(own, f"height.{side}", height=self.length(abs(height_mm))),
        )
