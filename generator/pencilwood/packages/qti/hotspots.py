"""Name the part: the pieces of the drawing as places that can be tapped."""

from __future__ import annotations

from xml.etree import ElementTree as Xml

from pencilwood.packages.qti.feedback import Saying
from pencilwood.packages.qti.items import RESPONSE, Asked
from pencilwood.packages.qti.markup import identifier, tag
from pencilwood.packages.qti.pictures import Drawn
from pencilwood.packages.qti.processing import Fits, Reply
from pencilwood.quiz.made import MadeQuestion, Tapping


def name_part(one: MadeQuestion, body: Tapping, saying: Saying, drawn: Drawn) -> Asked:
    """Tap one piece: any of the right ones will do, and each kind of wrong one has its why."""
    labels = {target.name: target.label for target in body.targets}
    interaction = hotspots(one.text, labels, drawn, highest=1)
    right = tuple(identifier(name) for name in body.right)
    kinds = dict.fromkeys(t.kind for t in body.targets if t.name not in body.right)
    replies = (
        Reply("right", True, saying.on_right_part(body), answers=right),
        *(
            Reply(
                f"wrong-{kind}",
                False,
                saying.on_wrong_part(one, body, kind),
                answers=_of_kind(body, kind),
            )
            for kind in kinds
        ),
        Reply("no-answer", False, saying.on_wrong_part(one, body, None), Fits.REST),
    )
    return Asked("single", right[:1], (interaction,), replies)


def hotspots(prompt: str, labels: dict[str, str], drawn: Drawn, *, highest: int) -> Xml.Element:
    """The drawing with its pieces to tap; `highest` 0 lets any number be tapped.

    Where pieces overlap, the standard lets the first one listed win: it is the nearest one.
    """
    with_frame = "trunk" in labels
    places = [
        _place(name, labels[name], coords)
        for name, points in drawn.outlines(with_frame=with_frame).items()
        if name in labels and (coords := drawn.coords(points)) is not None
    ]
    given = {
        "response-identifier": RESPONSE,
        "max-choices": str(highest),
        "min-choices": "0",
    }
    asked = tag("qti-prompt", None, prompt)
    return tag("qti-hotspot-interaction", given, asked, drawn.file.image(), *places)


def _place(name: str, label: str, coords: str) -> Xml.Element:
    given = {
        "identifier": identifier(name),
        "shape": "poly",
        "coords": coords,
        "hotspot-label": label,
    }
    return tag("qti-hotspot-choice", given)


def _of_kind(body: Tapping, kind: str) -> tuple[str, ...]:
    wrong = (t for t in body.targets if t.kind == kind and t.name not in body.right)
    return tuple(identifier(target.name) for target in wrong)
