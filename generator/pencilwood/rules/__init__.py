"""Every rule, and which of them a vine goes by. A new form is one line in the list below."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.rules.of_forms.cane import CANE
from pencilwood.rules.of_forms.cordon import CORDON
from pencilwood.rules.of_forms.head import HEAD
from pencilwood.rules.of_forms.high_cordon import HIGH_CORDON
from pencilwood.rules.shapes import Rule, RulesOfForm
from pencilwood.vine.bands import Band
from pencilwood.vine.forms import FORMS
from pencilwood.vine.model import Form

_OF_FORMS: tuple[RulesOfForm, ...] = (
    CORDON,
    CANE,
    HIGH_CORDON,
    HEAD,
)

_BY_FORM: Mapping[Form, RulesOfForm] = {form: one for one in _OF_FORMS for form in one.forms}
RULE_BY_NAME: Mapping[str, Rule] = dict(
    sorted((rule.name, rule) for one in _OF_FORMS for rule in one.rules)
)
RULES: tuple[Rule, ...] = tuple(RULE_BY_NAME.values())
"""Every rule of any form, by name."""
BANDS: tuple[Band, ...] = tuple(band for rule in RULES for band in rule.bands)
"""Every figure a profile may set for all vines, in the order of the rules."""
FORM_BANDS: Mapping[str, tuple[Band, ...]] = {form.name: _BY_FORM[form].bands for form in FORMS}
"""By the name of a form: figures that are its own, or differ there from those for all vines."""


def bands_of(form: Form) -> tuple[Band, ...]:
    """Every figure that vines of this form go by: its own, then those for all vines."""
    own = FORM_BANDS[form.name]
    names = {band.name for band in own}
    return (*own, *(band for band in BANDS if band.name not in names))


def rules_of(form: Form) -> tuple[Rule, ...]:
    """The rules that a vine of this form goes by, by name."""
    return _BY_FORM[form].rules
