"""The forms a vine can be trained to, one module each. A new form is one line in the list below."""

from __future__ import annotations

from pencilwood.vine.forms.cane import CANE_PRUNED
from pencilwood.vine.forms.cordon import CORDONS
from pencilwood.vine.forms.head import HEAD_TRAINED
from pencilwood.vine.forms.high_cordon import HIGH_CORDONS
from pencilwood.vine.model import ROUND_WORDS, Form

FORMS: tuple[Form, ...] = (
    *CORDONS,
    *CANE_PRUNED,
    *HIGH_CORDONS,
    HEAD_TRAINED,
)
FORM_NAMES = tuple(dict.fromkeys(form.name for form in FORMS))
"""Their names in a file; some go by one name and differ by their arms."""
OWN_WORDS = tuple(dict.fromkeys((ROUND_WORDS, *(form.words for form in FORMS if form.words))))
"""What the texts of some forms are filed under where they differ from the usual ones."""
