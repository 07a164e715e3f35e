"""What is found wrong in a handbook as a whole."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from pencilwood.findings import has_errors
from pencilwood.site.handbook import open_handbook


def lines(root: Path, language: str = "en") -> list[str]:
    return [finding.render() for finding in open_handbook(root, language).findings]


def test_sample_is_sound(sample: Path) -> None:
    opened = open_handbook(sample)
    assert opened.findings == ()
    assert opened.handbook is not None
    assert opened.handbook.cases[0].case.slug == "tidy-vine"


def no_profile(root: Path) -> None:
    (root / "content" / "profile.yml").unlink()


def no_case(root: Path) -> None:
    shutil.rmtree(root / "content" / "cases")
    shutil.rmtree(root / "quizzes")


def misspelt_rule_folder(root: Path) -> None:
    (root / "content" / "rules" / "old-stubs").mkdir()


def untranslated_chapter(root: Path) -> None:
    (root / "content" / "chapters" / "es" / "warm-up.md").unlink()


def chapter_in_our_place(root: Path) -> None:
    for language in ("en", "es"):
        (root / "content" / "chapters" / language / "rules.md").write_text("# Mine\n", "utf-8")


def chapter_without_title(root: Path) -> None:
    (root / "content" / "chapters" / "en" / "warm-up.md").write_text("Hello\n", "utf-8")


def latin_chapter(root: Path) -> None:
    (root / "content" / "chapters" / "es" / "warm-up.md").write_bytes(b"# Ma\xf1ana\n")


def unknown_language(root: Path) -> None:
    (root / "content" / "chapters" / "fr").mkdir()


def quiz_of_nothing(root: Path) -> None:
    quiz = root / "quizzes" / "small.yml"
    quiz.write_text(quiz.read_text("utf-8").replace("prune: tidy-vine", "prune: tidy-vin"), "utf-8")


def change(root: Path, file: str, old: str, new: str) -> None:
    path = root / "content" / file
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), "utf-8")


def other_reader(root: Path) -> None:
    change(root, "chapters/es/spurs.md", "for: worker", "for: trainer")


def other_place(root: Path) -> None:
    change(root, "chapters/es/spurs.md", "order: 10", "order: 20")


def other_headings(root: Path) -> None:
    change(root, "chapters/es/spurs.md", "## Mire", "### Mire")


def wrong_call(root: Path) -> None:
    change(root, "chapters/es/spurs.md", 'figure("hand-width")', 'figure("hand-wid")')


def figure_without_source(root: Path) -> None:
    change(root, "figures.yml", "hand-width: {value: 10 cm, source: a-study}", "x: {value: 3}")


def figure_of_unknown_source(root: Path) -> None:
    change(root, "figures.yml", "value: 10 cm, source: a-study", "value: 10 cm, source: a-stud")


CHAPTERS = "content/chapters"


@pytest.mark.parametrize(
    ("spoil", "line"),
    [
        (
            no_case,
            "content/cases:1:1: there is no case yet; "
            "expected files such as content/cases/tidy-vine.yml (no-case)",
        ),
        (
            misspelt_rule_folder,
            "content/rules/old-stubs:1:1: there is no rule of this name; "
            'did you mean "old-stub"?; found "old-stubs" (unknown-rule-folder)',
        ),
        (
            untranslated_chapter,
            f"{CHAPTERS}/en/warm-up.md:1:1: this chapter is missing in es; "
            f"expected {CHAPTERS}/es/warm-up.md (chapter-untranslated)",
        ),
        (
            chapter_in_our_place,
            f"{CHAPTERS}/en/rules.md:1:1: a page of the handbook has this name already; "
            "expected another file name (chapter-name-taken)",
        ),
        (
            chapter_without_title,
            f"{CHAPTERS}/en/warm-up.md:1:1: this chapter has no title; "
            'expected its first line to be "# " and the title (chapter-without-title)',
        ),
        (
            latin_chapter,
            f"{CHAPTERS}/es/warm-up.md:1:5: this file is not saved as UTF-8 text; expected "
            "UTF-8: save it again from your editor with that encoding (not-utf-8)",
        ),
        (
            other_reader,
            f"{CHAPTERS}/es/spurs.md:3:1: this chapter is for another reader in es; "
            f'expected the same "for" as in {CHAPTERS}/en/spurs.md (differs-for)',
        ),
        (
            other_place,
            f"{CHAPTERS}/es/spurs.md:4:1: this chapter has another place in es; "
            f'expected the same "order" as in {CHAPTERS}/en/spurs.md (differs-order)',
        ),
        (
            other_headings,
            f"{CHAPTERS}/es/spurs.md:1:1: this chapter has other headings in es; expected as "
            f"many, of the same levels, as in {CHAPTERS}/en/spurs.md (differs-headings)",
        ),
        (
            wrong_call,
            f"{CHAPTERS}/es/spurs.md:6:68: there is no figure of this name in figures.yml; "
            'did you mean "hand-width"?; found "hand-wid" (unknown-figure)',
        ),
        (
            figure_without_source,
            'content/figures.yml:1:4: "source" is missing (missing-key)',
        ),
        (
            figure_of_unknown_source,
            "content/figures.yml:1:28: there is no source of this name in sources.yml; "
            'did you mean "a-study"?; found "a-stud" (unknown-source)',
        ),
        (
            unknown_language,
            f"{CHAPTERS}/fr:1:1: chapters stand in a folder named after no language of the "
            "profile; expected one of: en, es (unknown-language-folder)",
        ),
    ],
)
def test_each_trouble_has_its_line(sample: Path, spoil: Callable[[Path], None], line: str) -> None:
    spoil(sample)
    assert line in lines(sample)
    assert open_handbook(sample).handbook is None


def test_missing_profile_is_the_only_thing_told(sample: Path) -> None:
    no_profile(sample)
    (only,) = lines(sample)
    assert only.endswith("expected content/profile.yml in it (no-content)")


def test_case_that_a_quiz_names_wrongly_is_told(sample: Path) -> None:
    quiz_of_nothing(sample)
    (only,) = lines(sample)
    assert only.startswith("quizzes/small.yml:4:14:")
    assert 'did you mean "tidy-vine"?' in only


def test_all_troubles_of_all_files_are_told_together(sample: Path) -> None:
    misspelt_rule_folder(sample)
    untranslated_chapter(sample)
    quiz_of_nothing(sample)
    assert len(lines(sample)) == 3
    assert has_errors(open_handbook(sample).findings)


def test_findings_speak_spanish(sample: Path) -> None:
    untranslated_chapter(sample)
    (only,) = lines(sample, "es")
    assert "este capítulo falta en es" in only


def test_a_source_that_nothing_rests_on_is_a_warning(sample: Path) -> None:
    sources = sample / "content" / "sources.yml"
    more = "idle: {title: Nobody's, kind: published, read: not read}\n"
    sources.write_text(sources.read_text("utf-8") + more, "utf-8")
    opened = open_handbook(sample)
    (only,) = opened.findings
    assert only.render() == (
        "content/sources.yml:8:7: warning: nothing in the handbook rests on this source; expected "
        "a figure, a word or a cite(...) that names it, or no such source; "
        'found "idle" (unused-source)'
    )
    # Said before it in the language of its words.
    assert ": aviso: " in only.render("es")
    assert opened.handbook is not None


def test_two_chapters_in_one_place_are_told(sample: Path) -> None:
    for language in ("en", "es"):
        change(sample, f"chapters/{language}/targets.md", "for: trainer", "for: worker")
    found = [one.name for one in open_handbook(sample).findings]
    assert "same-order" in found


def test_how_hard_the_chapters_are_is_told(sample: Path) -> None:
    readings = open_handbook(sample).readings
    told = {(one.chapter, one.language): one for one in readings}
    assert set(told) == {
        (name, language) for name in ("spurs", "targets") for language in ("en", "es")
    }
    assert told["spurs", "es"].band in ("muy fácil", "bastante fácil")
    assert told["spurs", "en"].band == ""


def test_a_case_that_cannot_be_read_is_told_once(sample: Path) -> None:
    change(sample, "cases/tidy-vine.yml", "level: easy", "level: simple")
    (sample / "quizzes" / "small.yml").unlink()
    found = [one.name for one in open_handbook(sample).findings]
    assert found == ["not-a-choice"]
