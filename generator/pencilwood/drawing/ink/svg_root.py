"""The outermost element of a drawing, which every drawing of ours opens with."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.drawing.ink.shapes import Attributes

_FONT = "Georgia, 'Times New Roman', 'DejaVu Serif', serif"


def svg_root(
    name: str,
    prefix: str,
    language: str,
    view_box: str,
    css_class: str,
    data: Mapping[str, str] | None = None,
) -> Attributes:
    """Attributes of the element `svg`; its title and description have ids of the same prefix."""
    return {
        "xmlns": "http://www.w3.org/2000/svg",
        "class": css_class,
        "id": f"{prefix}-{name}",
        **{f"data-{key}": value for key, value in (data or {}).items()},
        "viewBox": view_box,
        "role": "img",
        # The description describes; as part of the name it would be read out every time.
        "aria-labelledby": f"{prefix}-title",
        "aria-describedby": f"{prefix}-desc",
        "lang": language,
        "font-family": _FONT,
        "stroke-linecap": "round",
        "stroke-linejoin": "round",
    }
