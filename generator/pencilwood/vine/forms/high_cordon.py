"""High cordons: one or two arms on a single high wire, whose shoots hang down."""

from __future__ import annotations

from pencilwood.vine.model import Form, Growth, Side

HIGH_TWO_ARMS = Form("high cordon", (Side.LEFT, Side.RIGHT), growth=Growth.DOWN)
HIGH_ARM_RIGHT = Form("high cordon", (Side.RIGHT,), growth=Growth.DOWN)
HIGH_ARM_LEFT = Form("high cordon", (Side.LEFT,), growth=Growth.DOWN)
HIGH_CORDONS = (HIGH_TWO_ARMS, HIGH_ARM_RIGHT, HIGH_ARM_LEFT)
