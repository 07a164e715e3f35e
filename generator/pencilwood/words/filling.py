"""Placeholders in a trainer's own words: `{buds_kept}` is filled, a typed number is a slip."""

from __future__ import annotations

import re
from collections.abc import Mapping

PLACEHOLDER = re.compile(r"\{([^{}]*)\}")

# A number inside a name of wood (L3, R1a) is a name; any other number is a number.
_TYPED_NUMBER = re.compile(r"(?<![\w.])\d+(?:[.,]\d+)?")


def fill(text: str, facts: Mapping[str, str]) -> str:
    """The text with its placeholders filled; one that is not known stays as it is written."""
    return PLACEHOLDER.sub(lambda match: facts.get(match[1].strip(), match[0]), text)


def names_in(text: str) -> list[str]:
    """Names of all placeholders, in order."""
    return [name.strip() for name in PLACEHOLDER.findall(text)]


def typed_number(text: str) -> str | None:
    """The first number that stands in the text itself."""
    found = _TYPED_NUMBER.search(PLACEHOLDER.sub("", text))
    return found[0] if found else None
