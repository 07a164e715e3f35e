"""How vines of each form are drawn. A new form is one line in the list below."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.drawing.forms.cordon import CORDON
from pencilwood.drawing.forms.looks import FormLooks
from pencilwood.vine.forms.cordon import CORDONS

LOOKS_OF: Mapping[str, FormLooks] = {
    **{form.name: CORDON for form in CORDONS},
}
"""By the name of a form."""
