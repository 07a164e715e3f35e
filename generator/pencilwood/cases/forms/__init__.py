"""How vines of each form are read and written. A new form is one line in the list below."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.cases.forms.cane import CANE
from pencilwood.cases.forms.cordon import CORDON
from pencilwood.cases.forms.head import HEAD_READING
from pencilwood.cases.forms.high_cordon import HIGH_CORDON
from pencilwood.cases.forms.reading import FormReading

READINGS: tuple[FormReading, ...] = (
    CORDON,
    CANE,
    HIGH_CORDON,
    HEAD_READING,
)
READING_OF: Mapping[str, FormReading] = {name: one for one in READINGS for name in one.names}
"""By the name of a form."""
