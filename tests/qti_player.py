"""Plays QTI items in a browser with an independent player, and marks them with our own script.

The player is @citolab/qti-components (GPL-3.0): a tool of these tests that is never shipped.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import PurePosixPath
from typing import Any

from playwright.sync_api import Page, Route

from qti_demo import PROJECT, Packed

HOST = "http://127.0.0.1/"
PLAYER = PROJECT / "node_modules" / "@citolab" / "qti-components" / "cdn" / "index.global.js"
MARKING = PROJECT / "site_assets" / "js" / "quiz" / "marking.mjs"
_PAGE = '<!doctype html><meta charset="utf-8"><script src="/player.js"></script><body></body>'
_TYPES = {".svg": "image/svg+xml", ".xml": "application/xml"}
_SCRIPT = """async () => {
  const { isRight } = await import("/marking.mjs");
  const turn = () => new Promise((resolve) => setTimeout(resolve, 0));
  const one = (tag) => document.querySelector(tag);
  window.play = async (url) => {
    const box = document.createElement("item-container");
    box.setAttribute("item-url", url);
    const around = document.createElement("qti-item");
    around.append(box);
    document.body.replaceChildren(around);
    for (;;) {
      const item = box.shadowRoot?.querySelector("qti-assessment-item");
      if (item) {
        await item.updateComplete;
        await turn();
        await Promise.all([...item.querySelectorAll("img")].map((image) => image.decode()));
        await turn();
        window.item = item;
        return item.getAttribute("identifier");
      }
      await turn();
    }
  };
  window.marked = async () => {
    item.processResponse();
    await turn();
    const values = Object.fromEntries(item.variables.map((one) => [one.identifier, one.value]));
    const open = [...item.querySelectorAll("qti-modal-feedback")].filter(
      (one) => one.shadowRoot.querySelector("dialog").open,
    );
    return {
      response: values.RESPONSE,
      score: Number(values.SCORE),
      shown: open.map((one) => one.textContent.replace(/\\s+/g, " ").trim()),
    };
  };
  window.answered = async (responses) => {
    const all = [];
    for (const response of responses) {
      item.updateResponseVariable("RESPONSE", response);
      all.push(await marked());
    }
    return all;
  };
  window.ours = (question, answers) =>
    answers.map((answer) => isRight(question, answer ?? undefined));
}"""


@dataclass(frozen=True)
class Marked:
    """What the player made of an answer."""

    response: Any
    score: float
    shown: tuple[str, ...]
    """The text of each feedback on the screen."""


class Player:
    """One browser page in which items are played one after the other."""

    def __init__(self, page: Page, packages: Sequence[Packed]) -> None:
        self.page = page
        self.files = {
            f"{one.made.quiz.slug}-{one.language}/{name}": content
            for one in packages
            for name, content in one.files.items()
        }
        page.route("**/*", self._serve)
        page.goto(HOST)
        page.evaluate(_SCRIPT)

    def play(self, one: Packed, path: str) -> str:
        """Show an item; gives its identifier as the player knows it."""
        url = f"/{one.made.quiz.slug}-{one.language}/{path}"
        return str(self.page.evaluate("url => play(url)", url))

    def answer(self, responses: Sequence[Any]) -> list[Marked]:
        """Give these responses one after the other."""
        return [_marked(one) for one in self.page.evaluate("all => answered(all)", responses)]

    def mark(self) -> Marked:
        """Hand in what was clicked."""
        return _marked(self.page.evaluate("() => marked()"))

    def close_feedback(self) -> None:
        """Away with the dialog, which lies over the item."""
        self.page.evaluate(
            "() => item.querySelectorAll('qti-modal-feedback')"
            ".forEach((one) => one.closeFeedback())"
        )

    def ours(self, question: object, answers: Sequence[Any]) -> list[bool]:
        """What the handbook's own script makes of answers to a question; None is no answer."""
        return list(self.page.evaluate("([one, all]) => ours(one, all)", [question, answers]))

    def _serve(self, route: Route) -> None:
        path = route.request.url.removeprefix(HOST)
        if path == "":
            route.fulfill(body=_PAGE, content_type="text/html")
        elif path == "player.js":
            route.fulfill(path=PLAYER, content_type="text/javascript")
        elif path == "marking.mjs":
            route.fulfill(path=MARKING, content_type="text/javascript")
        elif path in self.files:
            kind = _TYPES[PurePosixPath(path).suffix]
            route.fulfill(body=self.files[path], content_type=kind)
        else:
            route.abort()


def _marked(found: dict[str, Any]) -> Marked:
    return Marked(found["response"], float(found["score"]), tuple(found["shown"]))
