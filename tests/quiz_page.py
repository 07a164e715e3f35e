"""A page with one small quiz that has every kind of question, and how tests work on it."""

from pathlib import Path
from typing import Any

from exercise_page import ExercisePage
from pencilwood.assets import asset_root
from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.pages.style_sheet import DARK, EXERCISE, QUIZ
from pencilwood.score.sheet import dump
from pencilwood.words import catalogue

# Nothing inline may run or style, as on a site with a strict policy.
POLICY = "default-src 'none'; script-src file:; style-src file:"

TEXTS: dict[str, dict[str, str]] = {
    "en": {
        "title": "Before the first day",
        "intro": "What you must know before you cut.",
        "count": "How many counted buds does cane L6a have?",
        "why-right": "Count the clear buds, from the first one above the base.",
        "why-basal": "The bud at the very base is not counted.",
        "why-tip": "The bud at the tip counts too.",
        "part": "Tap a one-year-old cane.",
        "why-cane": "Smooth light bark and buds along it: wood of last summer.",
        "why-old": "This wood is older: rough bark, no buds of its own.",
        "order": "Put the three passes in order.",
        "rough": "Rough pass: shorten the long canes",
        "thin": "Thinning-out pass: take whole pieces away",
        "fine": "Fine pass: cut each cane that stays to a short spur",
        "why-rough": "First you must see the vine.",
        "why-thin": "Then what doesn't belong goes.",
        "why-fine": "Last come the careful cuts.",
        "safe": "Your ladder stands on a stone and rocks. What do you do?",
        "stop": "Stop and set it on firm ground",
        "go": "Go on, but hold on to the wire with one hand",
        "help": "Ask somebody to push against it while you cut",
        "why-stop": "A ladder that rocks falls.",
        "why-go": "The wire doesn't hold you.",
        "why-help": "A helper can't hold a ladder that stands badly.",
        "prune": "Prune this vine in three passes.",
        "cane": "Cane {name}",
        "old": "Old wood {name}",
        "chapter": "Counting buds",
        "rule": "Too many buds",
    },
    "es": {
        "title": "Antes del primer día",
        "intro": "Lo que debe saber antes de cortar.",
        "count": "¿Cuántas yemas se cuentan en el sarmiento L6a?",
        "why-right": "Cuente las yemas bien separadas, desde la primera arriba de la base.",
        "why-basal": "La yema de la mera base no se cuenta.",
        "why-tip": "La yema de la punta también se cuenta.",
        "part": "Toque un sarmiento de un año.",
        "why-cane": "Corteza lisa y clara, con yemas: madera del verano pasado.",
        "why-old": "Esta madera es más vieja: corteza áspera, sin yemas propias.",
        "order": "Ponga las tres pasadas en orden.",
        "rough": "Desbaste: acortar los sarmientos largos",
        "thin": "Aclareo: quitar piezas enteras",
        "fine": "Poda fina: cortar cada sarmiento que queda a un pulgar corto",
        "why-rough": "Primero hay que ver la cepa.",
        "why-thin": "Después se quita lo que sobra.",
        "why-fine": "Al final van los cortes cuidadosos.",
        "safe": "Su escalera está sobre una piedra y se mueve. ¿Qué hace?",
        "stop": "Parar y ponerla en suelo firme",
        "go": "Seguir, agarrándose del alambre con una mano",
        "help": "Pedir a alguien que la empuje mientras corta",
        "why-stop": "Una escalera que se mueve se cae.",
        "why-go": "El alambre no le sostiene.",
        "why-help": "Nadie puede sostener una escalera mal puesta.",
        "prune": "Pode esta cepa en tres pasadas.",
        "cane": "Sarmiento {name}",
        "old": "Madera vieja {name}",
        "chapter": "Contar yemas",
        "rule": "Demasiadas yemas",
    },
}


class QuizPage:
    """The page's parts, and what answers it."""

    slug = "before-the-first-day"

    def __init__(self, language: str = "en", *, version: str = "0f3a5c9d1e2b") -> None:
        self.language, self.version = language, version
        self.texts = TEXTS[language]
        self.exercise = ExercisePage("tidy", language)

    def data(self) -> dict[str, Any]:
        """What the page gives the browser."""
        questions = [self._count(), self._part(), self._order(), self._safe(), self._prune()]
        return {
            "format": 1,
            "quiz": self.slug,
            "version": self.version,
            "language": self.language,
            "title": self.texts["title"],
            "intro": self.texts["intro"],
            "minutes": 6,
            "tries": 2,
            "needed": 3,
            "scored": ["how-many", "a-cane", "passes", "a-vine"],
            "mustKnow": ["ladder"],
            "questions": questions,
            "links": {
                "rules": {"too-many-buds": self._link("rule", "rules/too-many-buds.html")},
                "chapters": {"counting-buds": self._link("chapter", "counting-buds.html")},
            },
            "strings": _strings(self.language, "quiz."),
        }

    def _link(self, text: str, href: str) -> dict[str, str]:
        return {"title": self.texts[text], "href": href}

    def _question(self, slug: str, kind: str, about: str, **more: object) -> dict[str, object]:
        common: dict[str, object] = {"rules": [], "chapter": None, "drawing": None}
        own = {"id": slug, "kind": kind, "about": about, "text": self.texts[about]}
        return {**own, "mustKnow": slug == "ladder", **common, **more}

    def _count(self) -> dict[str, object]:
        (buds,) = (part.piece.buds for part in self.exercise.parts.parts if part.name == "L6a")
        choices = [(buds + 1, "why-basal"), (buds, "why-right"), (buds - 1, "why-tip")]
        return self._question(
            "how-many",
            "choice",
            "count",
            rules=["too-many-buds"],
            chapter="counting-buds",
            drawing={"drawing": "tidy", "at": "L6", "box": [-900, -1780, 320, 960]},
            choices=[
                {"text": str(number), "why": self.texts[why], "right": number == buds}
                for number, why in choices
            ],
        )

    def _part(self) -> dict[str, object]:
        parts = self.exercise.parts.parts
        kinds = {part.name: "cane" if part.piece.buds else "old" for part in parts}
        targets = [
            {"name": name, "label": self.texts[kind].format(name=name), "kind": kind}
            for name, kind in kinds.items()
        ]
        return self._question(
            "a-cane",
            "part",
            "part",
            drawing={"drawing": "tidy", "at": None, "box": None},
            targets=targets,
            right=[name for name, kind in kinds.items() if kind == "cane"],
            why=self.texts["why-cane"],
            whys={"old": self.texts["why-old"]},
        )

    def _order(self) -> dict[str, object]:
        items = [
            {"text": self.texts[name], "why": self.texts[f"why-{name}"]}
            for name in ("fine", "rough", "thin")
        ]
        return self._question("passes", "order", "order", items=items, order=[1, 2, 0])

    def _safe(self) -> dict[str, object]:
        choices = [
            {"text": self.texts[name], "why": self.texts[f"why-{name}"], "right": name == "stop"}
            for name in ("go", "help", "stop")
        ]
        return self._question("ladder", "choice", "safe", choices=choices)

    def _prune(self) -> dict[str, object]:
        return self._question("a-vine", "prune", "prune", case="tidy", rules=["too-many-buds"])

    def write(self, folder: Path, *, dark: bool = False) -> str:
        """Write the page and give its file address."""
        svg = draw_vine(
            WoodShown(self.exercise.parts),
            Paper("q-tidy", self.language, title="A vine", description="A vine before pruning."),
        )
        exercise = self.exercise.block()
        inside = f"""<div data-pencilwood-quiz="{self.slug}">
<p class="pw-fallback">This quiz needs a script.</p>
<template data-pencilwood-drawing="tidy">{svg}</template>{exercise}
{_script("pw-quiz-data", self.data())}</div>"""
        return write_page(folder / f"quiz-{self.language}.html", self.language, inside, dark=dark)


def write_crew_page(folder: Path, language: str, *, dark: bool = False) -> str:
    """A page with the trainer's crew list."""
    topics = {code: [texts["chapter"]] for code, texts in TEXTS.items()}
    quiz = QuizPage(language)
    known = {"quiz": quiz.slug, "title": quiz.texts["title"], "version": quiz.version}
    data = {
        "language": language,
        "languages": ["en", "es"],
        "quizzes": [{**known, "topics": topics}],
        "strings": _strings(language, "quiz."),
    }
    inside = f"<div data-pencilwood-crew>{_script('pw-crew-data', data)}</div>"
    return write_page(folder / f"crew-{language}.html", language, inside, dark=dark)


def write_page(path: Path, language: str, inside: str, *, dark: bool) -> str:
    """Write a page of the handbook around `inside` and give its file address."""
    assets = asset_root()
    styles = "".join(
        f'<link rel="stylesheet" href="{(assets / name).as_uri()}">'
        for name in ("css/tokens.css", DARK, *EXERCISE, *QUIZ)
    )
    scheme = ' data-md-color-scheme="slate"' if dark else ""
    html = f"""<!doctype html>
<html lang="{language}"><head><meta charset="utf-8"><title>Larkfell</title>
<meta http-equiv="Content-Security-Policy" content="{POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">{styles}</head>
<body{scheme}><main><h1>Larkfell</h1>{inside}</main>
<script src="{(assets / "pencilwood-quiz.js").as_uri()}"></script></body></html>"""
    path.write_text(html, encoding="utf-8")
    return path.as_uri()


def _script(name: str, data: object) -> str:
    body = dump(data).replace("<", "\\u003c")
    return f'<script type="application/json" class="{name}">{body}</script>'


def _strings(language: str, start: str) -> dict[str, str]:
    return {key: text for key, text in catalogue(language).items() if key.startswith(start)}
