"""How vines of each form are drawn. A new form is one line in the list below."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.drawing.forms.cane import CANE
from pencilwood.drawing.forms.cordon import CORDON
from pencilwood.drawing.forms.head import HEAD
from pencilwood.drawing.forms.high_cordon import HIGH_CORDON
from pencilwood.drawing.forms.looks import FormLooks
from pencilwood.vine.forms.cane import CANE_PRUNED
from pencilwood.vine.forms.cordon import CORDONS
from pencilwood.vine.forms.head import HEAD_TRAINED
from pencilwood.vine.forms.high_cordon import HIGH_CORDONS

LOOKS_OF: Mapping[str, FormLooks] = {
    **{form.name: CORDON for form in CORDONS},
    **{form.name: CANE for form in CANE_PRUNED},
    **{form.name: HIGH_CORDON for form in HIGH_CORDONS},
    HEAD_TRAINED.name: HEAD,
}
"""By the name of a form."""
