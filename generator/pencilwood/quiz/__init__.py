"""Quizzes: from the trainer's questions to what the browser shows, everything computed.

`compile_quiz(made, language)` gives one JSON object for a quiz that `make_quiz` has made.
The browser holds no rule and no answer of its own; it shows these texts and compares numbers.

    {"format": 1,
     "quiz": "first-week",         the quiz's slug
     "version": "0f3a...",         12 hex digits; the same in all languages; new when a text changes
     "language": "en",
     "title": "...", "intro": "...",
     "minutes": 14,                about how long it takes, worked out from the texts
     "tries": 2,                   how often it may be tried before the trainer steps in
     "needed": 12,                 right answers needed among the scored questions
     "scored": ["q-slug", ...],    ids of the questions that make up the score
     "mustKnow": ["q-slug", ...],  ids of the questions that must all be right, apart from the score
     "questions": [Question, ...]} in the order in which they are asked

Every question is in just one of `scored` and `mustKnow`. Passed means: at least `needed` of
`scored` right, and all of `mustKnow` right.

Question, what all kinds have:

    {"id": "which-bud-counts",     unique in the quiz; made of letters, digits and hyphens
     "kind": "choice",             the widget: choice | part | order | prune
     "about": "count",             what the trainer wrote: choose | cane | part | count | order |
                                   safe | sum | prune (for a heading such as "Count")
     "text": "...",                what is asked, plain text
     "mustKnow": false,
     "rules": ["too-many-buds"],   names of the rules it is about, may be empty
     "chapter": "counting-buds",   slug of the chapter to look at again, or null
     "drawing": Drawing | null}

Drawing: which drawing stands above the question. The page carries each one once, in
`<template data-pencilwood-drawing="tidy-vine-answer">`, an inline `svg.pw-vine` (parts are
`[data-part]`, frame pieces `[data-frame]`: trunk, head, left arm, right arm).

    {"drawing": "tidy-vine-answer",  the template's name
     "at": "L3" | null,              position to show close up; null shows the whole vine
     "box": [x, y, width, height] | null}   viewBox of the close-up, in the drawing's units (mm)

kind "choice" (one radio group), already in the order to be shown:

    "choices": [{"text": "...", "why": "...", "right": true}, ...]     3 to 5, one is right

kind "part" (tap the drawing, or pick from the list):

    "targets": [{"name": "L1a",    `data-part` or `data-frame` of the drawing
                 "label": "Cane L1a", for the list
                 "kind": "cane"}, ...]
    "right": ["L1a", "L3b"],       any of these is right
    "why": "...",                  said when right
    "whys": {"cane": "...", ...}   said when wrong, by the kind of what was tapped

kind "order" (up and down buttons), already shuffled:

    "items": [{"text": "...", "why": "..."}, ...]   `why` tells why it stands where it belongs
    "order": [2, 0, 1, 3]          indices of `items` in the right order

kind "prune" (the exercise of that case stands on the page, and tells `pencilwood:scored`):

    "case": "tidy-vine"            right when `passed` of the event is true

The page adds, beside the questions:

    "links": {"rules": {"too-many-buds": {"title": "...", "href": "..."}},
              "chapters": {"counting-buds": {"title": "...", "href": "..."}}}

and puts the whole in `<script type="application/json" class="pw-quiz-data">` inside
`<div data-pencilwood-quiz="first-week">`, after its `<template>`s and its exercises. Strings of
the widgets are under `strings` (all keys that begin with `quiz.`, from words/quiz.*.json).

Practice vines. They are classic scripts, because a page opened from a folder may not fetch:
`assets/pencilwood/practice/<level>-<nnn>.js` calls

    pencilwoodPractice({...})      (a function that the bundle defines on `self` beforehand)

with {"format": 1, "name": "easy-007", "level": "easy", "teaches": [rule, ...], "sheet": compact
sheet, "vine": what is drawn, "plan": {"states": [...], "cuts": [[piece, buds | null, pass
number, charges number], ...]}}. `site_assets/js/practice_vine.mjs` turns it into the `Sheet`, the
page's words and the `svg` that `Exercise` reads: `unpack(data, words) -> {sheet, page, svg}`.
The practice page carries, in `script.pw-practice-data`, the list to choose from:

    {"format": 1, "version": "...", "language": "en", "units": "metric",
     "folder": "../assets/pencilwood/practice/",
     "vines": [{"name": "easy-007", "level": "easy", "teaches": ["spur-too-long", ...]}, ...],
     "rules": {rule: {"title", "messages", "why", "href"}},   as in an exercise's words
     "strings": {...}}                                        `exercise.*`, `quiz.*` and `wood.*`
"""
