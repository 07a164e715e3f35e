"""Pencilwood: from measured vines to a proved, self-scored pruning handbook."""

__version__ = "0.1.0"
