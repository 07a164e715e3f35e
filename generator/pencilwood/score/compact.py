"""The scoring sheet in few bytes, for handbooks that carry hundreds of practice vines.

`site_assets/js/compact_sheet.mjs` makes the sheet of `score.sheet.as_json` of it again, to the
last number. What follows from something else is left out: the names of wood from their position,
what falls with a piece and what stands above it from what grows where.

    {"case", "version", "passMark", "planLost", "armLength", "ends": as in the sheet,
     "messages": [[rule, name, must], ...],
     "shapes": [[message, fact name, ...], ...],
     "atoms": [[shape, points, fact, ...], ...],
     "lists": [[atom, ...], ...],                        the sheet's charges
     "positions": [[name, x, y], ...],
     "pieces": [[rest of the name, position, buds or 0, grows, alive, wound, thickness,
                 charges by state: list, or [list without, list with living wood above]], ...],
     "steps": [crowded, blank, buds, wounds],
     "cutting": [[[shorten, remove] by pass], backwards, [[thickness, shears, loppers, saw], ...],
                 [close, right, long], stub length, rough buds]}
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any


def compact(body: Mapping[str, Any]) -> dict[str, object]:
    """A sheet as `score.sheet.as_json` gives it, in few bytes."""
    shapes: dict[tuple[object, ...], int] = {}
    atoms: dict[tuple[object, ...], int] = {}
    lists = [[_atom(charge, shapes, atoms) for charge in charges] for charges in body["charges"]]
    names = [position["name"] for position in body["positions"]]
    return {
        **{key: body[key] for key in ("case", "version", "passMark", "planLost", "armLength")},
        "ends": body["ends"],
        "messages": [[one["rule"], one["name"], int(one["must"])] for one in body["messages"]],
        "shapes": [list(shape) for shape in shapes],
        "atoms": [list(atom) for atom in atoms],
        "lists": lists,
        "positions": [[one["name"], one["x"], one["y"]] for one in body["positions"]],
        "pieces": [_piece(piece, names) for piece in body["pieces"]],
        "steps": [body[name] for name in ("crowded", "blank", "buds", "wounds")],
        "cutting": _cutting(body["cutting"]),
    }


def _atom(
    charge: Sequence[Any],
    shapes: dict[tuple[object, ...], int],
    atoms: dict[tuple[object, ...], int],
) -> int:
    message, points, facts = charge
    shape = shapes.setdefault((message, *facts), len(shapes))
    return atoms.setdefault((shape, points, *facts.values()), len(atoms))


def _piece(piece: Mapping[str, Any], names: Sequence[str]) -> list[object]:
    buds = piece["states"] - 1 if piece["kind"] == "cane" else 0
    return [
        piece["name"].removeprefix(names[piece["position"]]),
        *(piece["position"], buds, piece["grows"], piece["alive"], piece["wound"]),
        piece["thickness"],
        [without if without == above else [without, above] for without, above in piece["charges"]],
    ]


def _cutting(cutting: Mapping[str, Any]) -> list[object]:
    return [
        [
            [cutting["pass"][name]["shorten"], cutting["pass"][name]["remove"]]
            for name in cutting["passes"]
        ],
        cutting["backwards"],
        [
            [int(mm), *(row[tool] for tool in cutting["tools"])]
            for mm, row in cutting["tool"].items()
        ],
        [cutting["stub"][name] for name in cutting["stubs"]],
        cutting["stubLength"],
        cutting["roughBuds"],
    ]
