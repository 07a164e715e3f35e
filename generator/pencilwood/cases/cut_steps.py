"""Makes the cuts of a file one after another, as hands would, and notes those that cannot be."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from pencilwood.cases.fields import Key, OneOrMore, Placed, Row
from pencilwood.cases.kinds import Choice, Counted, Text
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.vine_file import VineRead
from pencilwood.places import Place
from pencilwood.vine.model import Side
from pencilwood.vine.passes import DoneCut, Pass, Stub, Tool
from pencilwood.vine.wood import CutError, Shortening, ThinningOut, Tie, WoodLeft, uncut

ALL_CANES = "all canes"

CUT = Key(
    "cut",
    OneOrMore(Text(), 200),
    'What is cut: L1a, or [L1a, "L1m above a"], or all canes.',
)
TO = Key(
    "to",
    Counted("bud", "buds", 1, 60, "2 buds"),
    "Buds that stay, such as 2 buds. Left out: it is taken off where it grows.",
    False,
)
TOOL = Key(
    "tool",
    Choice({tool.value: tool for tool in Tool}),
    "Left out: the tool that the thickness calls for.",
    False,
)
STUB = Key(
    "stub",
    Choice({stub.value: stub for stub in Stub}),
    "How much wood is left beyond the last bud; right when left out.",
    False,
)

TIE_CANE = Key("cane", Text(), "The fruiting cane, such as L1a.")
TIE_TO = Key(
    "to",
    Choice({side.value: side for side in (Side.LEFT, Side.RIGHT)}),
    "The side of the vine, as you stand before it: left or right.",
)

ToolFor = Callable[[int], Tool]
"""The tool for wood of a thickness in millimetres."""


@dataclass(frozen=True)
class Step:
    """One cut that could be made."""

    done: DoneCut
    place: Place
    tool_given: bool


class Cutting:
    """A vine under the shears. Each cut that is made changes what the next one finds."""

    def __init__(self, vine: VineRead, tool_for: ToolFor, report: Report) -> None:
        self._vine = vine
        self._tool_for = tool_for
        self._report = report
        self._left: WoodLeft | None = None if vine.parts is None else uncut(vine.parts)
        self._cut_at: dict[str, Place] = {}
        """Where the file takes each part off that is gone."""
        self._tied_at: dict[str, Place] = {}

    def make(self, row: Row, in_pass: Pass) -> tuple[Step, ...]:
        """The cuts of one `cut:` row that can be made; a finding for each other one."""
        self._check_row(row)
        return tuple(
            step
            for name in row.get(CUT) or ()
            for part in self._parts(name, row)
            for step in self._one(part, name.place, row, in_pass)
        )

    def _check_row(self, row: Row) -> None:
        if row.has(STUB) and not row.has(TO):
            self._report.add(row.place_of(STUB), "stub-without-buds")

    def _parts(self, name: Placed[str], row: Row) -> tuple[str, ...]:
        """What a name stands for; `all canes` are those with more buds than are to stay."""
        if name.value != ALL_CANES:
            good = self._vine.check_name(name.value, name.place, self._report, (ALL_CANES,))
            return (name.value,) if good else ()
        if not row.has(TO):
            self._report.add(name.place, "all-canes-to-what")
        buds = row.get(TO)
        if self._left is None or buds is None:
            return ()
        found = tuple(
            part.name
            for part, state in zip(self._left.parts.parts, self._left.states, strict=True)
            if part.is_cane and state > buds
        )
        if not found:
            self._report.add(name.place, "no-cane-so-long", buds=buds)
        return found

    def _one(self, part: str, place: Place, row: Row, in_pass: Pass) -> Iterator[Step]:
        if self._left is None or (row.has(TO) and row.get(TO) is None):
            return
        buds = row.get(TO)
        cut = ThinningOut(part) if buds is None else Shortening(part, buds)
        before = self._left
        try:
            self._left = before.cut(cut)
        except CutError as error:
            self._note(error, place, row)
            return
        for number, name in enumerate(self._vine.names):
            if before.states[number] and not self._left.states[number]:
                self._cut_at[name] = place
        piece = before.parts.parts[before.parts.index[part]].piece
        tool = row.get(TOOL) or self._tool_for(piece.thickness_mm)
        done = DoneCut(cut, in_pass, tool, row.get(STUB) or Stub.RIGHT)
        yield Step(done, place, row.get(TOOL) is not None)

    def tie(self, row: Row) -> tuple[Step, ...]:
        """A cane of the vine as it is now, tied along the wire; else a finding."""
        name, side = row.get(TIE_CANE), row.get(TIE_TO)
        place = row.place_of(TIE_CANE)
        if name is None or not self._vine.check_name(name, place, self._report):
            return ()
        if self._left is None or side is None:
            return ()
        if name in self._tied_at:
            line = self._tied_at[name].line
            self._report.add(place, "tied-twice", piece=quoted(name), line=line)
            return ()
        self._tied_at[name] = place
        try:
            self._left.cut(Tie(name, side))
        except CutError as error:
            gone = error.problem == "already-gone"
            problem = "tied-and-gone" if gone else error.problem
            self._report.add(place, problem, piece=quoted(name), buds=0, left=0)
            return ()
        return (Step(DoneCut(Tie(name, side), Pass.TIE), place, False),)

    def _note(self, error: CutError, place: Place, row: Row) -> None:
        """Say why a cut cannot be made."""
        name, at = quoted(error.part), place
        if error.problem == "already-gone":
            line = self._cut_at[error.part].line
            self._report.add(at, "already-gone", piece=name, line=line)
            return
        buds = row.get(TO) or 0
        left = error.facts.get("left", 0)
        self._report.add(at, error.problem, piece=name, buds=buds, left=left)
