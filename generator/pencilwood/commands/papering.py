"""What `pencilwood build --papers` does beside building."""

from __future__ import annotations

from pathlib import Path

from pencilwood.cases.case import Profile
from pencilwood.site.handbook import own_profile
from pencilwood.words import say
from pencilwood.worksheets.typeset import HAND_SIZES, PaperSize, can_make_papers, usual_size


def refusal(root: Path, language: str) -> str:
    """Why no papers can be made on this machine, in the user's words; empty when they can."""
    profile = _profile(root)
    with_qr = profile is not None and bool(profile.site_address)
    return "" if can_make_papers(with_qr=with_qr) else say(language, "print.no-typst")


def size(root: Path, asked: str | bool) -> PaperSize:
    """The size that was asked for; else the one that goes with the handbook's units."""
    named = next((one for one in HAND_SIZES if one == asked), None)
    profile = _profile(root)
    return named or usual_size("metric" if profile is None else profile.units)


def _profile(root: Path) -> Profile | None:
    """The profile; None where something is wrong in it, which the build will say."""
    return own_profile(root, "en")[0]
