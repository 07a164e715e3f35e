"""A page with one pruning exercise, made from a sample vine, and how tests work on it."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from playwright.sync_api import Locator, Page

from pencilwood.assets import asset_root
from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.pages.style_sheet import DARK, EXERCISE
from pencilwood.plan import Plan, plan_for
from pencilwood.rules import RULES, bands_of
from pencilwood.score.judge import target_for
from pencilwood.score.sheet import Sheet, as_json, compile_sheet, dump
from pencilwood.vine.bands import default_limits
from pencilwood.vine.passes import DoneCut, after_each_pass
from pencilwood.vine.wood import Shortening, Tie, divide, uncut
from pencilwood.words import catalogue
from vines import SAMPLES

PASS_MARK = 80
# Nothing inline may run or style, as on a site with a strict policy.
POLICY = "default-src 'none'; script-src file:; style-src file:"


class ExercisePage:
    """The page's parts, and the plan that its vine is judged by."""

    def __init__(self, sample: str, language: str) -> None:
        self.sample, self.language = sample, language
        self.vine = SAMPLES[sample]()
        self.parts = divide(self.vine)
        limits = default_limits(bands_of(self.vine.form))
        self.sheet: Sheet = compile_sheet(self.parts, limits, target_for(self.vine, limits))
        self.plan: Plan = plan_for(self.sheet)

    @property
    def plan_cuts(self) -> tuple[DoneCut, ...]:
        """The plan's cuts in order."""
        return tuple(cut.done for cut in self.plan.cuts)

    def write(self, folder: Path, *, dark: bool = False) -> str:
        """Write the page and give its file address."""
        path = folder / f"{self.sample}-{self.language}.html"
        path.write_text(self._html(dark), encoding="utf-8")
        return path.as_uri()

    def _html(self, dark: bool) -> str:
        assets = asset_root()
        styles = "".join(
            f'<link rel="stylesheet" href="{(assets / name).as_uri()}">'
            for name in ("css/tokens.css", DARK, *EXERCISE)
        )
        scheme = ' data-md-color-scheme="slate"' if dark else ""
        return f"""<!doctype html>
<html lang="{self.language}"><head><meta charset="utf-8"><title>A vine</title>
<meta http-equiv="Content-Security-Policy" content="{POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">{styles}</head>
<body{scheme}><main><h1>Larkfell</h1><h2>A vine</h2>
{self.block()}</main>
<script src="{(assets / "pencilwood.js").as_uri()}"></script></body></html>"""

    def block(self) -> str:
        """The exercise as it stands on a page."""
        return f"""<div class="pw-exercise" data-pencilwood-exercise="{self.sample}">
{self._drawing()}
<script type="application/json" class="pw-sheet">{_in_script(self.sheet_json())}</script>
<script type="application/json" class="pw-words">{_in_script(self.words())}</script>
<p class="pw-fallback">This exercise needs a script.</p></div>"""

    def _drawing(self) -> str:
        tied = self.vine.form.tied
        paper = Paper(
            self.sample,
            self.language,
            title="A vine",
            description="A vine before pruning.",
            data={"wire": str(self.vine.trellis.fruiting_wire_mm)} if tied else {},
        )
        return draw_vine(WoodShown(self.parts, cutpoints=True), paper)

    def sheet_json(self) -> Any:
        """The scoring sheet as the page carries it."""
        return as_json(self.sheet, self.sample, self.plan.lost, PASS_MARK)

    def words(self) -> dict[str, Any]:
        """Everything the page says."""
        language = self.language
        by_pass = after_each_pass(self.parts, self.plan_cuts)
        states = {"before": uncut(self.parts).states}
        states |= {str(one): left.states for one, left in by_pass.items()}
        return {
            "language": language,
            "units": "metric",
            "strings": self._strings(),
            "rules": {
                rule.name: {
                    "title": rule.title[language],
                    "messages": {name: text[language] for name, text in rule.messages.items()},
                    "why": list(rule.page[language].values())[1],
                    "href": f"rules/{rule.name}.html",
                }
                for rule in RULES
            },
            "pieces": {part.name: {"label": part.name, "facts": ""} for part in self.parts.parts},
            "answer": {"cuts": list(self._cuts()), "states": states},
            "plan": {"cuts": list(self._cuts()), "states": self.plan.left.states},
        }

    def _strings(self) -> dict[str, str]:
        said = {k: v for k, v in catalogue(self.language).items() if k.startswith("exercise.")}
        own = f".{self.vine.own_words}"
        special = {k.removesuffix(own): v for k, v in said.items() if k.endswith(own)}
        return said | special if self.vine.own_words else said

    def _cuts(self) -> Iterator[dict[str, object]]:
        for done in self.plan_cuts:
            buds = done.cut.buds if isinstance(done.cut, Shortening) else None
            tied = {"tied": str(done.cut.side)} if isinstance(done.cut, Tie) else {}
            in_pass = str(done.in_pass)
            yield {"part": done.cut.part, "buds": buds, "pass": in_pass, "why": "<why>", **tied}


def _in_script(body: Any) -> str:
    return dump(body).replace("<", "\\u003c")


def settle(page: Page) -> None:
    """Wait for what an exercise does once a cut is on the glass: lists, measures, what it keeps."""
    page.evaluate("new Promise((done) => requestAnimationFrame(() => setTimeout(done, 50)))")


def stored(page: Page, key: str) -> Any:
    """What the exercise keeps on the device under a key."""
    settle(page)
    return json.loads(page.evaluate("key => localStorage.getItem('pencilwood:' + key)", key))


def choose(page: Page, tool: str = "shears", stub: str = "right") -> None:
    """Choose tool and place of the cut beforehand, in the strip by the buttons."""
    for name, value in (("tool", tool), ("stub", stub)):
        page.locator(f".pw-how-open[data-how={name}]:visible").click()
        page.locator(f".pw-how-question button[data-value={value}]:visible").click()


def pick(page: Page, piece: str, position: str = "") -> Locator:
    """Choose a piece of wood in the list, at another position if one is named: its buttons."""
    if position:
        page.locator(".pw-nav select:visible").select_option(label=position)
    elif page.locator(".pw-see-near:visible").count():
        page.locator(".pw-see-near:visible").click()
    page.locator(f'.pw-pieces:visible [data-piece="{piece}"]').click()
    return page.locator(f'.pw-piece[data-piece="{piece}"]:visible')


def press(page: Page, name: str) -> None:
    """Press the first button with this name."""
    page.get_by_role("button", name=name, exact=True).first.click()


def said(page: Page) -> str:
    """What was announced last."""
    return page.locator(".pw-said").inner_text()


def cuts_kept(page: Page) -> list[tuple[str, int | None]]:
    """Cuts of the tidy vine that are kept on the device."""
    history = stored(page, "work:tidy")["work"]["history"]
    steps = history["steps"][: history["done"]]
    return [(cut["part"], cut["buds"]) for step in steps for cut in step["cuts"]]
