"""Cordons on a vertical-shoot trellis: one or two arms along the wire, shoots trained upward."""

from __future__ import annotations

from pencilwood.vine.model import Form, Side

TWO_ARM_CORDON = Form("two-arm cordon", (Side.LEFT, Side.RIGHT))
ONE_ARM_RIGHT = Form("one-arm cordon", (Side.RIGHT,))
ONE_ARM_LEFT = Form("one-arm cordon", (Side.LEFT,))
CORDONS = (TWO_ARM_CORDON, ONE_ARM_RIGHT, ONE_ARM_LEFT)
