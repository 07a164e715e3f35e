"""The papers of one vine: the worksheet to cut with a pen, and its answer key."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TypedDict

from pencilwood.cases.case import Profile
from pencilwood.cases.credits import credit_words
from pencilwood.drawing.scene.tied_canes import laid_canes
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.proof import CaseProof
from pencilwood.proof.reached import answer_words
from pencilwood.proof.reasons import answer_with_reasons, plan_with_reasons
from pencilwood.score.told import message_text
from pencilwood.units import format_length
from pencilwood.vine.model import Piece, Position
from pencilwood.vine.passes import PASSES, DoneCut, Pass
from pencilwood.vine.wood import Parts, Shortening, Tie, uncut
from pencilwood.words import fitting, say
from pencilwood.words.filling import fill
from pencilwood.worksheets.measures_table import rows
from pencilwood.worksheets.print_drawing import print_vine
from pencilwood.worksheets.typeset import Paper

Words = dict[str, str]


class PassLines(TypedDict):
    """A pass by its name; each line is the cut, its tool and its reason."""

    title: str
    lines: list[list[str]]


def words_under(prefix: str, language: str, names: Iterable[str], **facts: str | int) -> Words:
    """Sentences of the catalogue by the last word of their key."""
    return {name: say(language, f"{prefix}.{name}", **facts) for name in names}


def worksheet(proof: CaseProof, profile: Profile, language: str) -> Paper:
    """The vine before pruning, its measures to fill in, and its wood in words."""
    title = say(language, "print.worksheet.title", title=proof.case.title[language])
    data = worksheet_data(proof, profile, language)
    return Paper(f"worksheet-{proof.case.slug}", "worksheet", language, title, data)


def worksheet_data(proof: CaseProof, profile: Profile, language: str) -> dict[str, object]:
    """What the worksheet's template shows."""
    case = proof.case
    names = ("vine", "measures", "measure", "before", "after", "asked", "wood", "reason")
    scale = {
        "scale": say(language, "print.worksheet.scale", times=THICKER),
        "thickness": say(language, "print.worksheet.thickness"),
    }
    how = say(language, fitting("print.worksheet.how", case.vine.own_words))
    return {
        "words": words_under("print.worksheet", language, names)
        | {"how": how}
        | words_under("print", language, ("name", "date"))
        | scale,
        "level": say(language, f"pages.level.{case.level}"),
        "heading": case.title[language],
        "story": fill(case.story[language], proof.facts[language]),
        "drawing": print_vine(
            proof.parts, None, language, profile.units, first_letters=proof.wood_named
        ).as_data(language),
        # The first measure before cutting is given: an example of how to fill the table.
        "measures": [row[:3] for row in rows(proof, profile, language)],
        "arm": [
            say(language, fitting("print.measure.arm", case.vine.own_words)),
            format_length(case.vine.line_length_mm, profile.units, language),
        ],
        "columns": [say(language, f"pages.wood.{name}") for name in _COLUMNS],
        "wood": list(_wood(proof.parts, profile, language)),
        "credits": credit_words(case, language),
    }


_COLUMNS = ("position", "wood", "age", "thickness", "length", "buds", "where", "looks")


def _wood(parts: Parts, profile: Profile, language: str) -> Iterator[list[str]]:
    for position in parts.positions:
        for number, piece in enumerate(position.pieces):
            at = format_length(position.at_mm, profile.units, language)
            where = f"{position.name}, {at}" if number == 0 else ""
            yield [where, *_piece(parts.vine.own_words, position, piece, profile, language)]


def _piece(
    own: str, position: Position, piece: Piece, profile: Profile, language: str
) -> Iterator[str]:
    def length(mm: int) -> str:
        return format_length(mm, profile.units, language)

    yield position.name + piece.letter
    years = "one" if piece.age_years == 1 else "many"
    yield say(language, f"pages.wood.years.{years}", n=piece.age_years)
    yield length(piece.thickness_mm)
    yield length(piece.length_mm)
    yield str(piece.buds) if piece.is_cane else ""
    if piece.grows_from is None:
        yield say(language, fitting("pages.wood.from-arm", own))
    else:
        below = position.name + piece.grows_from
        yield say(language, "pages.wood.from", piece=below, length=length(piece.at_mm))
    condition = say(language, f"pages.wood.condition.{piece.condition}")
    yield f"{condition}, {say(language, fitting(f'pages.wood.lean.{piece.lean}', own))}"


def answer_key(proof: CaseProof, profile: Profile, language: str) -> Paper:
    """What the trainer cut and why, the computed plan, and the measures of both."""
    case = proof.case
    title = say(language, "print.key.title", title=case.title[language])
    done = [one.done for one in case.answer]
    fine = [one for one in done if one.in_pass is not Pass.ROUGH]
    laid = laid_canes(proof.answer_left, done)
    names = ("drawing", "ghost", "answer", "plan", "answer-column", "plan-column")
    columns = ("cut", "tool", "why", "if-left")
    drawing = print_vine(
        proof.parts,
        proof.answer_left,
        language,
        profile.units,
        cut_marks=fine,
        laid=laid,
        first_letters=proof.wood_named,
    )
    data: dict[str, object] = {
        "words": words_under("print.key", language, (*names, *columns))
        | words_under("print.worksheet", language, ("measures", "measure", "before", "asked"))
        | _sentences(proof, language),
        "level": say(language, f"pages.level.{case.level}"),
        "heading": case.title[language],
        "drawing": drawing.as_data(language),
        "answer": list(_passes(proof, language, answer_with_reasons(proof, language))),
        "plan": list(plan_passes(proof, language)),
        "lost": list(_lost(proof, profile, language)),
        "far": fill(case.far_from_plan[language], proof.facts[language])
        if case.far_from_plan
        else "",
        "measures": rows(proof, profile, language),
        "credits": credit_words(case, language),
    }
    return Paper(f"key-{case.slug}", "key", language, title, data)


def _sentences(proof: CaseProof, language: str) -> Words:
    lost = "case.plan.lost" if proof.plan.lost else "case.plan.nothing-lost"
    return {
        "score": answer_words(proof, language),
        "lead": say(language, "pages.case.plan.lead"),
        "lost": say(language, f"pages.{lost}", points=proof.plan.lost),
    }


def plan_passes(proof: CaseProof, language: str) -> Iterator[PassLines]:
    """The best plan, pass by pass."""
    return _passes(proof, language, plan_with_reasons(proof, language))


def _passes(
    proof: CaseProof, language: str, cuts: Iterable[tuple[DoneCut, str]]
) -> Iterator[PassLines]:
    """The cuts of each pass; cuts that share reason, tool and length stand on one line."""
    listed, own = list(cuts), proof.parts.vine.own_words
    for in_pass in PASSES:
        lines: dict[tuple[str, str, int | str], list[str]] = {}
        for done, why in listed:
            if done.in_pass is in_pass:
                lines.setdefault((why, _tool(done, language), _how(done)), []).append(done.cut.part)
        if lines:
            yield {
                "title": say(language, fitting(f"pages.pass.{in_pass}", own)),
                "lines": [
                    [_cut(proof, names, how, language), tool, why]
                    for (why, tool, how), names in lines.items()
                ],
            }


def _tool(done: DoneCut, language: str) -> str:
    return "" if isinstance(done.cut, Tie) else say(language, f"pages.tool.{done.tool}")


def _how(done: DoneCut) -> int | str:
    """The buds that are left, the side that a cane is tied to, or nothing where all comes off."""
    if isinstance(done.cut, Tie):
        return str(done.cut.side)
    return done.cut.buds if isinstance(done.cut, Shortening) else ""


def _cut(proof: CaseProof, names: list[str], how: int | str, language: str) -> str:
    buds = how if isinstance(how, int) else 0
    canes = [part.name for part in proof.parts.parts if part.is_cane]
    long = [n for n in canes if buds and uncut(proof.parts).state(n) > buds]
    listed = ", ".join(label(name, language) for name in names)
    if len(names) > 3 and set(names) == set(long):
        listed = say(language, "print.key.all-canes")
    if not buds:
        key = f"print.key.tie.{how}" if how else "print.key.off"
        return say(language, key, parts=listed)
    return say(language, f"print.key.to.{'one' if buds == 1 else 'many'}", parts=listed, buds=buds)


def label(name: str, language: str) -> str:
    """A part's name in the reader's language: `L1m above a`."""
    wood, _, above = name.partition(" above ")
    return say(language, "print.key.above", wood=wood, cane=above) if above else name


def _lost(proof: CaseProof, profile: Profile, language: str) -> Iterator[str]:
    for charge in proof.plan.charges:
        if charge.points:
            where = " – ".join(label(name, language) for name in charge.where)
            told = message_text(charge, language, profile.units)
            yield f"{where}: {told} ({charge.points})" if where else f"{told} ({charge.points})"
