"""A table of charge lists, each entered once and known by its number."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import replace

from pencilwood.score.judge import Charge

Key = tuple[tuple[str, str, int, bool, tuple[tuple[str, int], ...]], ...]


def key_of(charges: Iterable[Charge], leave_out: Collection[str]) -> Key:
    """What two lists of charges have in common that are one to the ledger."""
    return tuple(
        (
            charge.rule,
            charge.message,
            charge.points,
            charge.must,
            tuple(fact for fact in charge.facts.items() if fact[0] not in leave_out),
        )
        for charge in charges
    )


class Ledger:
    """Charge lists by number; number 0 is the empty list."""

    def __init__(self) -> None:
        self._numbers: dict[Key, int] = {(): 0}
        self._lists: list[tuple[Charge, ...]] = [()]

    def enter(self, charges: Iterable[Charge], leave_out: Collection[str] = ()) -> int:
        """The number of this list of charges, entering it if it is new; places are dropped."""
        listed = tuple(charges)
        if not listed:
            return 0
        key = key_of(listed, leave_out)
        number = self._numbers.setdefault(key, len(self._lists))
        if number == len(self._lists):
            self._lists.append(
                tuple(
                    replace(charge, where=(), facts=dict(row[4]))
                    for charge, row in zip(listed, key, strict=True)
                )
            )
        return number

    def __getitem__(self, number: int) -> tuple[Charge, ...]:
        return self._lists[number]

    def __len__(self) -> int:
        return len(self._lists)

    def messages(self) -> list[dict[str, object]]:
        """Each message once, in the order first met."""
        return [
            {"rule": rule, "name": message, "must": must} for rule, message, must in self._seen()
        ]

    def lists(self) -> list[list[tuple[int, int, dict[str, int]]]]:
        """The lists as rows of (message number, points, facts)."""
        seen = self._seen()
        return [
            [
                (seen[charge.rule, charge.message, charge.must], charge.points, dict(charge.facts))
                for charge in charges
            ]
            for charges in self._lists
        ]

    def _seen(self) -> dict[tuple[str, str, bool], int]:
        seen: dict[tuple[str, str, bool], int] = {}
        for charges in self._lists:
            for charge in charges:
                seen.setdefault((charge.rule, charge.message, charge.must), len(seen))
        return seen
