"""The part of the scoring sheet that tells how cuts were made."""

from __future__ import annotations

from collections.abc import Iterable

from pencilwood.rules.shapes import CaneTied, CutInPass, StubLeft, ToolUse
from pencilwood.score.judge import Charge, charges_of
from pencilwood.score.ledger import Ledger
from pencilwood.vine.bands import Limits
from pencilwood.vine.model import Form, Pass, Side
from pencilwood.vine.passes import Stub, Tool
from pencilwood.vine.wood import Parts


def cutting_tables(parts: Parts, limits: Limits, ledger: Ledger) -> dict[str, object]:
    """Charges by pass and kind of cut, by tool and thickness, and by the stub that is left.

    The thickness is the looked-up amount of the tool rows, so messages get it back there.
    """
    most_buds = max((part.most for part in parts.parts if part.is_cane), default=1)
    thicknesses = sorted({part.piece.thickness_mm for part in parts.parts})

    def enter(charges: Iterable[Charge]) -> int:
        return ledger.enter(charges, leave_out=("thickness_mm",))

    def order(in_pass: str, buds: int | None, backwards: bool = False) -> int:
        facts = CutInPass(Pass(in_pass), buds, backwards, Pass.ROUGH in form.passes)
        return enter(charges_of(form, "order", facts, limits))

    form = parts.vine.form
    names = [str(one) for one in form.passes]
    return {
        "passes": names,
        "tools": [str(tool) for tool in Tool],
        "stubs": [str(stub) for stub in Stub],
        "pass": {
            name: {
                "shorten": [order(name, buds) for buds in range(1, most_buds + 1)],
                "remove": order(name, None),
            }
            for name in names
        },
        "backwards": order(names[0], None, backwards=True),
        "tool": {
            str(thickness): {
                str(tool): enter(charges_of(form, "tool", ToolUse(thickness, tool), limits))
                for tool in Tool
            }
            for thickness in thicknesses
        },
        "stub": {
            str(stub): enter(charges_of(form, "stub", StubLeft(stub), limits)) for stub in Stub
        },
        "stubLength": limits["stub above the bud"],
        "roughBuds": [
            limits["buds after the rough pass at least"],
            limits["buds after the rough pass at most"],
        ],
        **(_tying(form, limits, ledger) if form.tied else {}),
    }


def _tying(form: Form, limits: Limits, ledger: Ledger) -> dict[str, object]:
    """Charges for a cane that is not tied, and by side and canes that were tied there before."""

    def tied(side: Side | None, others: int = 0) -> int:
        facts = CaneTied(side, side in form.sides, others)
        return ledger.enter(charges_of(form, "tie", facts, limits))

    return {
        "tie": {
            "tally": form.tied,
            "untied": tied(None),
            "sides": {
                str(side): [tied(side, n) for n in (0, 1)] for side in (Side.LEFT, Side.RIGHT)
            },
        }
    }
