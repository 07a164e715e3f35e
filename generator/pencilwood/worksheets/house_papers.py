"""Papers of the whole handbook: pocket card, poster, sheet to measure on, booklet, QR poster."""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence

from pencilwood.cases.case import AnswerCut, Profile
from pencilwood.cases.credits import credit_words
from pencilwood.cases.field_columns import COLUMNS, CONDITION_WORDS, FRAME, LEAN_WORDS, SHEET_FORMS
from pencilwood.drawing.scene.tied_canes import laid_canes
from pencilwood.proof import CaseProof
from pencilwood.rules import BANDS, RULES
from pencilwood.rules.shapes import headings
from pencilwood.units import UnitSystem, format_length
from pencilwood.vine.bands import told_limits
from pencilwood.vine.model import Condition, Lean, Piece
from pencilwood.vine.passes import Pass, after_each_pass
from pencilwood.vine.wood import uncut
from pencilwood.words import fitting, say
from pencilwood.worksheets.case_papers import Words, words_under, worksheet_data
from pencilwood.worksheets.print_drawing import HAND_MM, HAND_WORDS
from pencilwood.worksheets.print_passes import OnePass, print_passes
from pencilwood.worksheets.typeset import Paper

_CARD = ("hand", "pencil", "low", "buds", "clean")
_CARD_WORDS = ("heading", "alt", "passes", "tools", "safe", "gauge", "status")
_GAUGE: Mapping[UnitSystem, tuple[float, str, int, int]] = {
    "metric": (8.0, "8 mm", 10, 5),
    "us": (25.4 * 5 / 16, "5/16 in", 16, 4),
}
"""How thick the pencil is and says it is, parts of the bar, and at which of them a line is long."""
_TYPED_MM: Mapping[UnitSystem, int] = {"metric": 900, "us": 838}
"""A height as one would type it: 90 cm, 33 in."""
_SHEET_ROWS = 39
"""Lines to write on: two pages, enough for a vine with about thirteen places."""


class NoAddressError(Exception):
    """The profile names no site address."""


class NoQrMakerError(Exception):
    """Segno, which is an optional part, is not installed."""


def _limits(profile: Profile, language: str) -> Mapping[str, str]:
    return told_limits(BANDS, profile.limits, profile.units, language)


def _face(profile: Profile, language: str) -> dict[str, object]:
    """One language's face of the pocket card."""
    limits = _limits(profile, language)
    passes = [
        say(language, f"print.card.pass.{name}", **limits) for name in ("rough", "thinning", "fine")
    ]
    pencil_mm, pencil, parts, long_every = _GAUGE[profile.units]
    true = {"hand": HAND_WORDS[profile.units], "pencil": pencil}
    return {
        "language": language,
        "gauge": [HAND_MM[profile.units], pencil_mm, parts, long_every],
        "words": words_under("print.card", language, _CARD_WORDS, **true),
        "rules": [
            [
                say(language, f"print.card.{name}"),
                say(language, f"print.card.{name}.say", **limits),
            ]
            for name in _CARD
        ],
        "passes": passes,
        "tools": say(language, "print.card.tools.say", **limits),
    }


def pocket_card(profile: Profile, language: str) -> Paper:
    """The rules with the hand and the pencil, in every language of the handbook."""
    in_order = sorted(profile.languages, key=lambda one: one != language)
    faces = [_face(profile, one) for one in in_order]
    return Paper("card", "card", language, say(language, "print.card.title"), {"faces": faces})


def wall_poster(proof: CaseProof, profile: Profile, language: str) -> Paper:
    """The three passes on one vine, what each takes away dotted."""
    limits = _limits(profile, language)
    left, passes, own = uncut(proof.parts), {}, proof.parts.vine.own_words
    cuts = [one.done for one in proof.case.answer]
    for in_pass, after in after_each_pass(proof.parts, cuts).items():
        laid = laid_canes(after, cuts) if in_pass is Pass.TIE else ()
        own_cuts = tuple(done for done in cuts if done.in_pass is in_pass)
        passes[in_pass] = OnePass(left, after, laid, own_cuts)
        left = after
    pictures = print_passes(list(passes.values()), language, profile.units)
    panels = [
        {
            "heading": say(language, fitting(f"print.poster.{in_pass}", own)),
            "say": say(language, fitting(f"print.poster.{in_pass}.say", own), **limits),
            "views": views,
        }
        for in_pass, views in zip(passes, pictures, strict=True)
    ]
    data: dict[str, object] = {
        "panels": panels,
        "words": words_under("print.poster", language, ("dotted", "safe")),
        "credits": credit_words(proof.case, language),
    }
    return Paper(
        f"poster-{proof.case.slug}", "poster", language, say(language, "print.poster.title"), data
    )


def plainest(proofs: Sequence[CaseProof]) -> CaseProof:
    """Of the easiest vines, sound ones first, that with most to choose in the thinning-out pass."""
    easiest = [proof for proof in proofs if proof.case.level == proofs[0].case.level]
    plain = [proof for proof in easiest if all(_is_plain(part.piece) for part in proof.parts.parts)]
    return max(
        plain or easiest, key=lambda proof: sum(_thins_out(one) for one in proof.case.answer)
    )


def _is_plain(piece: Piece) -> bool:
    return piece.condition is Condition.SOUND and piece.lean is not Lean.DOWN


def _thins_out(one: AnswerCut) -> bool:
    """Whether a cut chooses between canes, on a spur of last year."""
    return one.done.in_pass is Pass.THINNING_OUT and " above " in one.done.cut.part


def measuring_sheet(profile: Profile, language: str) -> Paper:
    """A blank sheet whose lines are those of the CSV file that becomes a case."""

    def listed(names: Sequence[str]) -> str:
        return ", ".join(say(language, f"field.word.{name}") for name in names)

    conditions = listed(CONDITION_WORDS)
    leans = listed(LEAN_WORDS)
    explained = (
        say(language, "print.sheet.position-words"),
        say(language, "print.sheet.wood-words"),
        say(language, "print.sheet.from-words"),
        say(language, "print.sheet.condition-words", words=conditions),
        say(language, "print.sheet.lean-words", words=leans),
    )
    height = format_length(_TYPED_MM[profile.units], profile.units, language)
    frame = {"forms": listed(SHEET_FORMS), "example": height}
    data: dict[str, object] = {
        "words": words_under("print.sheet", language, ("how", "frame", "wood"))
        | words_under("print.sheet", language, ("frame-words",), **frame)
        | words_under("print", language, ("name", "date", "vineyard")),
        "frame": [say(language, f"field.frame.{name}") for name in FRAME],
        "columns": [column.heading(profile.units, language) for column in COLUMNS],
        "rows": _SHEET_ROWS,
        "explained": explained,
    }
    return Paper("measuring-sheet", "measuring", language, say(language, "print.sheet.title"), data)


def course_booklet(proofs: Sequence[CaseProof], profile: Profile, language: str) -> Paper:
    """The card, every vine and every rule, to be bound."""
    title = say(language, "print.booklet.title", vineyard=profile.vineyard)
    names = ("contents", "card", "vines", "rules", "invented")
    data: dict[str, object] = {
        "words": words_under("print.booklet", language, names),
        "face": _face(profile, language),
        "vines": [worksheet_data(proof, profile, language) for proof in proofs],
        "rules": [
            {
                "title": rule.title[language],
                "sections": [
                    [heading, " ".join(rule.page[language][heading].split())]
                    for heading in headings(language)
                ],
            }
            for rule in RULES
        ],
    }
    return Paper("booklet", "booklet", language, title, data)


def qr_poster(profile: Profile, language: str) -> Paper:
    """The site's address to scan; raises NoAddressError or NoQrMakerError."""
    address = profile.site_address
    if not address:
        raise NoAddressError
    words: Words = words_under("print.qr", language, ("say",))
    data = {
        "words": words | {"alt": say(language, "print.qr.alt", address=address)},
        "vineyard": profile.vineyard,
        "address": address,
        "code": qr_code(address),
    }
    return Paper("qr", "qr", language, say(language, "print.qr.title"), data)


def qr_code(address: str) -> str:
    """A QR code as SVG text, legible even when a quarter of it is scratched off."""
    try:
        import segno
    except ImportError:
        raise NoQrMakerError from None
    out = io.BytesIO()
    segno.make(address, micro=False, error="q", boost_error=False).save(
        out, kind="svg", border=4, xmldecl=False, dark="#000", light="#fff"
    )
    return out.getvalue().decode("utf-8")
