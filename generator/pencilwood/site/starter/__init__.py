"""A new handbook: what is in it, and how it comes into its folder whole or not at all."""

from pencilwood.site.starter.folder import (
    CannotStartError,
    check_startable,
    put_in_place,
)
from pencilwood.site.starter.selection import NotWrittenError, starter_files

__all__ = [
    "CannotStartError",
    "NotWrittenError",
    "check_startable",
    "put_in_place",
    "starter_files",
]
