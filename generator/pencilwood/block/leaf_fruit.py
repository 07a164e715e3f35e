"""How many leaves a shoot has room for, and how much fruit its leaves can ripen."""

from __future__ import annotations

from fractions import Fraction

from pencilwood.block.answer import Answer, Figure, Sentence
from pencilwood.block.errors import BlockError
from pencilwood.block.numbers import Range
from pencilwood.vine.measures import leaves_that_fit


def mean_internode(shoot_mm: Range, nodes: Range) -> Range:
    """Length of a shoot divided by its nodes."""
    return shoot_mm / nodes


def room_for_leaves(
    *,
    trimming_mm: Range,
    arm_height_mm: Range,
    climb_mm: Range,
    shoot_mm: Range,
    nodes: Range,
) -> Answer:
    """Leaves that a shoot can carry before summer trimming cuts it.

    leaves = (trimming height - height of the arm - climb of the bud) / internode, rounded down;
    internode = length of a measured shoot / nodes on it.

    Limits: main leaves only. Shoots that lean take more room than they are high.
    Errors: BlockError "arm-above-trimming" when the bud stands above the trimming height.
    Source: our own measure, defined with the vine; 12 to 15 leaves to harvest (Wines & Vines,
    November 2011, read) or 14 to 20 (Lodi Winegrape Commission, read) are wanted.
    """
    internode = mean_internode(shoot_mm, nodes)
    feet = arm_height_mm + climb_mm
    if trimming_mm.likely <= feet.likely:
        raise BlockError("arm-above-trimming").about("trimming_mm")
    room = trimming_mm - feet
    leaves = Range(
        Fraction(leaves_that_fit(room.low, internode.high)),
        Fraction(leaves_that_fit(room.likely, internode.likely)),
        Fraction(leaves_that_fit(room.high, internode.low)),
    )
    facts = {
        "trimming": ("short", trimming_mm),
        "arm": ("short", arm_height_mm),
        "climb": ("short", climb_mm),
        "room": ("short", room),
        "shoot": ("short", shoot_mm),
        "nodes": ("nodes", nodes),
        "internode": ("short", internode),
        "leaves": ("leaves", leaves),
    }
    steps = tuple(Sentence(name, facts) for name in ("internode", "leaf-room", "leaves"))
    figures = (Figure("leaves", "leaves", leaves), Figure("internode", "short", internode))
    return Answer("leaves", figures, steps)


def leaf_for_fruit(leaf_mm2: Range, fruit_g: Range) -> Range:
    """Leaf area for each weight of fruit."""
    return leaf_mm2 / fruit_g


def leaf_on_canopy(shoots_per_mm: Range, leaf_of_shoot_mm2: Range) -> Range:
    """Leaf area on a length of canopy."""
    return shoots_per_mm * leaf_of_shoot_mm2


def fruit_of_leaves(
    *,
    leaves_per_shoot: Range,
    leaf_mm2: Range,
    leaf_mm2_per_g: Range,
    shoots_per_mm: Range | None = None,
    fruit_g: Range | None = None,
) -> Answer:
    """Fruit that the leaves of a shoot can ripen.

    fruit = leaves x area of a leaf / leaf area that a weight of fruit needs.

    Limits: 0.8 to 1.2 m2 for each kg is for single canopies, 0.5 to 0.8 for divided ones; spur
    pruned vines were measured at 1.4 to 1.65. Published figures span 0.5 to 2.6, so this is a
    guide. Main leaves only, unless the area of a leaf counts its laterals.
    Source: Kliewer and Dokoozlian, AJEV (abstract read).
    """
    leaf = leaves_per_shoot * leaf_mm2
    ripens = leaf / leaf_mm2_per_g
    facts = {
        "leaves": ("number", leaves_per_shoot),
        "size": ("leaf-size", leaf_mm2),
        "leaf": ("leaf-area", leaf),
        "need": ("leaf-on-weight", leaf_mm2_per_g),
        "ripens": ("small-weight", ripens),
    }
    figures = [Figure("ripens", "small-weight", ripens), Figure("leaf-area", "leaf-area", leaf)]
    steps = [Sentence("leaf-area", facts), Sentence("ripens", facts)]
    if shoots_per_mm is not None:
        canopy = leaf_on_canopy(shoots_per_mm, leaf)
        figures.append(Figure("leaf-on-length", "leaf-on-length", canopy))
        parts = {"shoots": ("on-length", shoots_per_mm), "canopy": ("leaf-on-length", canopy)}
        steps.append(Sentence("leaf-on-length", {**facts, **parts}))
    if fruit_g is not None:
        ratio = leaf_for_fruit(leaf, fruit_g)
        figures.append(Figure("leaf-to-fruit", "leaf-on-weight", ratio))
        beside = {"fruit": ("small-weight", fruit_g), "ratio": ("leaf-on-weight", ratio)}
        steps.append(Sentence("leaf-to-fruit", {**facts, **beside}))
    return Answer("leaf-fruit", tuple(figures), tuple(steps))
