"""What high cordons go by: the shared rules of spurs, but wood must hang or point outward.

Spurs per arm are not counted: the 8 to 15 that were read (NC State Extension, fig. 14-33) come
without the length of the arm. Spacing and buds per metre say the same of arms of any length.
"""

from __future__ import annotations

from pencilwood.rules import upright_wood
from pencilwood.rules.arm_rules import ARM_RULES
from pencilwood.rules.shapes import RulesOfForm, rules_from
from pencilwood.units import PER_METRE
from pencilwood.vine.bands import Band
from pencilwood.vine.forms.high_cordon import HIGH_CORDONS

_SPACING = {
    "en": "2-bud spurs 3 to 8 in apart (NC State Extension, fig. 14-33, high cordon)",
    "es": "pulgares de 2 yemas cada 3 a 8 pulgadas (NC State Extension, fig. 14-33, cordón alto)",
}
_SHOOTS = {
    "en": "3 to 5 shoots per foot, 10 to 16 per metre, upright shoots and high cordons alike "
    "(J. Fiola, Univ. Maryland Extension, 2021)",
    "es": "de 3 a 5 brotes por pie, de 10 a 16 por metro, igual con brotes que suben y en cordones "
    "altos (J. Fiola, Univ. Maryland Extension, 2021)",
}
_RANGE = (10 * PER_METRE, 16 * PER_METRE)
BANDS = (
    Band("spur spacing at least", "length", 80, 76, 203, "published", _SPACING, in_inches=True),
    Band("blank at most", "length", 200, 76, 203, "published", _SPACING, in_inches=True),
    Band("buds per metre at least", "density", 10 * PER_METRE, *_RANGE, "published", _SHOOTS),
    Band("buds per metre at most", "density", 16 * PER_METRE, *_RANGE, "published", _SHOOTS),
)

HIGH_CORDON = RulesOfForm(
    forms=HIGH_CORDONS,
    rules=rules_from(*ARM_RULES, upright_wood),
    bands=BANDS,
)
