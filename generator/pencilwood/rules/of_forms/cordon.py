"""What cordons on a vertical-shoot trellis go by: the rules this handbook began with."""

from __future__ import annotations

from pencilwood.rules import wood_below_arm
from pencilwood.rules.arm_rules import ARM_RULES
from pencilwood.rules.shapes import RulesOfForm, rules_from
from pencilwood.vine.forms.cordon import CORDONS

CORDON = RulesOfForm(
    forms=CORDONS,
    rules=rules_from(*ARM_RULES, wood_below_arm),
)
