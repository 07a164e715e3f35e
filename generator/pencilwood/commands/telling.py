"""What every command says in the same way, and the exit statuses."""

from __future__ import annotations

import sys
from collections.abc import Sequence

from pencilwood.findings import Finding, shown

FINE, FOUND, WRONG_USE = 0, 1, 2


def print_findings(findings: Sequence[Finding], language: str) -> None:
    """A line for each finding, whose words are in this language."""
    for finding in findings:
        print(finding.render(language))


def refuse(told: str) -> int:
    """Say why nothing was done; the exit status."""
    # What was typed may hold signs that a terminal obeys.
    print(f"pencilwood: {shown(told)}", file=sys.stderr)
    return WRONG_USE
