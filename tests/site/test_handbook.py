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


def no_good_vine(root: Path) -> None:
    (root / "content" / "rules" / "old-stub" / "good.yml").unlink()


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
            no_good_vine,
            "content/rules/old-stub/good.yml:1:1: the rule old-stub has no good vine; "
            "expected this file (missing-example)",
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
            f"{CHAPTERS}/es/warm-up.md:1:1: this chapter is not saved as UTF-8 text; expected "
            "UTF-8: save it again from your editor with that encoding (not-utf-8)",
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
