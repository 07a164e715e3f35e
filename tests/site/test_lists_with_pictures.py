"""Pictures in the lists of quizzes, safety notes and vines: worked out of what each holds."""

from dataclasses import replace
from fractions import Fraction
from types import SimpleNamespace
from typing import cast

import pytest

from pencilwood.cases.chapter_head import Audience
from pencilwood.cases.safety import SafetyNote
from pencilwood.drawing.signs import draw_sign, has_sign
from pencilwood.pages.desk import Desk
from pencilwood.pages.doors import teachers_page
from pencilwood.pages.handbook import Chapter, Handbook
from pencilwood.pages.quiz_pages import quizzes_page
from pencilwood.pages.quiz_pictures import quiz_pictures
from pencilwood.pages.safety_page import safety_page
from pencilwood.places import Place
from pencilwood.quiz.made import Picture, Pruning
from pencilwood.quiz.quiz_proof import QuizProof
from pencilwood.site.handbook import open_handbook
from small_handbook import make_small
from svg_reading import read


@pytest.fixture(scope="module")
def handbook(tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    root = make_small(tmp_path_factory.mktemp("lists"), "tidy-vine", "one-arm-vine")
    opened = open_handbook(root, "en")
    assert opened.handbook is not None, opened.findings
    return opened.handbook


# ---------------------------------------------------------------- quizzes


def question(about: str, vine: str | None = None, *, pruned: str | None = None) -> SimpleNamespace:
    return SimpleNamespace(
        about=about,
        picture=None if vine is None else Picture(vine),
        body=None if pruned is None else Pruning(pruned, guess=Fraction(1, 10), cuts=3),
    )


def quiz(slug: str, *questions: SimpleNamespace) -> QuizProof:
    words = {"en": f"Words of {slug}", "es": f"Palabras de {slug}"}
    told = SimpleNamespace(slug=slug, title=words, intro=words, questions=questions)
    made = SimpleNamespace(questions={"en": questions, "es": questions})
    return cast(QuizProof, SimpleNamespace(quiz=told, made=made, minutes=5))


def shown(handbook: Handbook, *quizzes: QuizProof) -> dict[str, str]:
    desk = Desk(replace(handbook, quizzes=quizzes), "quizzes", "en")
    return {slug: desk.complete(str(picture)) for slug, picture in quiz_pictures(desk).items()}


def test_a_quiz_shows_the_first_vine_that_it_asks_about(handbook: Handbook) -> None:
    own = quiz("a", question("choose"), question("part", "one-arm-vine"), question("cane", "x"))
    assert "vines/one-arm-vine.svg" in shown(handbook, own)["a"]


def test_a_vine_to_prune_counts_too(handbook: Handbook) -> None:
    own = quiz("a", question("safe"), question("prune", pruned="climbing-spurs"))
    assert "vines/climbing-spurs.svg" in shown(handbook, own)["a"]


def test_two_quizzes_show_unlike_vines_where_they_can(handbook: Handbook) -> None:
    first = quiz("a", question("part", "tidy-vine"))
    second = quiz("b", question("part", "tidy-vine"), question("part", "one-arm-vine"))
    third = quiz("c", question("part", "tidy-vine"))
    found = shown(handbook, first, second, third)
    assert [one.split("vines/")[1].split(".")[0] for one in found.values()] == [
        "tidy-vine", "one-arm-vine", "tidy-vine",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("about", "sign"),
    [("safe", "eyes"), ("sum", "list"), ("choose", "pencil"), ("order", "pencil")],
)
def test_a_quiz_without_a_vine_has_a_sign(handbook: Handbook, about: str, sign: str) -> None:
    own = quiz("a", question(about), question(about), question("count"))
    assert shown(handbook, own)["a"] == draw_sign(sign)


@pytest.mark.parametrize("language", ["en", "es"])
def test_the_list_of_quizzes_has_one_link_in_each_row(handbook: Handbook, language: str) -> None:
    own = replace(handbook, quizzes=(quiz("a", question("part", "tidy-vine")),))
    page = quizzes_page(own, 3, language)
    rows = page.body.split('<li class="pw-row">')[1:]
    assert len(rows) == 3, "the quiz, practice and the crew list"
    assert all(row.count("<a ") == 1 for row in rows)


# ---------------------------------------------------------------- safety


def sections(handbook: Handbook, language: str = "en") -> dict[str, str]:
    """Each note's part of the page by its name."""
    page = safety_page(handbook, language)
    html = Desk(handbook, "safety", language).complete(page.body)
    for mark, fragment in page.fragments.items():
        html = html.replace(mark, fragment)
    found = html.split('<section class="pw-note')[1:]
    return {one.split('id="')[1].split('"')[0]: one for one in found}


def called(name: str, text: str, language: str = "en", audience: Audience = "worker") -> Chapter:
    place = Place(f"content/chapters/{language}/{name}.md")
    made = Chapter(name, language, f"Title of {name}", text, place)
    return replace(made, audience=audience)


def test_every_note_of_ours_has_a_sign_of_its_own(handbook: Handbook) -> None:
    drawn = [draw_sign(note.name) for note in handbook.notes if has_sign(note.name)]
    assert len(drawn) == len(handbook.notes)
    assert len(set(drawn)) == len(drawn)
    for one in drawn:
        root = read(one)
        assert root.get("aria-hidden") == "true", "the words say what it means"
        assert len(one) < 1_000
    for name, html in sections(handbook).items():
        assert html.count("<svg") == 1, name


def test_a_note_that_nobody_drew_a_sign_for_has_none_and_no_gap(handbook: Handbook) -> None:
    own: SafetyNote = replace(handbook.notes[0], name="our-own-dog")
    html = sections(replace(handbook, notes=(own,)))["our-own-dog"]
    assert "<svg" not in html
    assert "pw-note-sign" not in html
    assert own.title["en"] in html


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_note_leads_to_the_chapters_that_show_it(handbook: Handbook, language: str) -> None:
    other = "es" if language == "en" else "en"
    chapters = (
        called("once", 'One.\n\n{{ safety("saw") }}\n', language),
        called("most", '{{ safety("saw") }}\n\n{{ safety(note="cold") }}\n', language),
        called("lead", '{{ safety("saw") }} {{ safety("eyes") }}\n', language, "trainer"),
        called("words", 'About safety("saw"), and {{ term("saw") }}.\n', language),
        called("foreign", '{{ safety("saw") }}\n', other),
    )
    html = sections(replace(handbook, chapters=chapters), language)
    # Crews' chapters first, of these the one that says more of safety.
    links = [one.split('"')[0] for one in html["saw"].split('<a href="')[1:]]
    assert links == ["most.html", "once.html", "lead.html"]
    assert 'href="most.html"' in html["cold"]
    assert "pw-note-chapters" not in html["loppers"]


# ---------------------------------------------------------------- teachers


@pytest.mark.parametrize("language", ["en", "es"])
def test_teachers_see_each_vine_with_its_short_name(handbook: Handbook, language: str) -> None:
    page = teachers_page(handbook, language)
    rows = page.body.split('<li class="pw-row">')[1:]
    assert len(rows) == len(handbook.cases)
    for proof in handbook.cases:
        (row,) = (one for one in rows if f"<code>{proof.case.slug}</code>" in one)
        assert f"vines/{proof.case.slug}.svg" in row
        assert 'alt=""' in row
        assert row.count("<a ") == 1
