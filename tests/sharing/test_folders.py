"""Cases from others, put into the handbook as a folder."""

import os
import shutil
from pathlib import Path

import pytest

from pencilwood.site.case_files import case_slugs
from pencilwood.site.handbook import open_handbook, read_one_case
from pencilwood.site.single import measures_of, open_case
from small_handbook import CASES, CREW, SHARED, add_to, change, check, make_small, said

SAMPLE = Path(__file__).parent / "samples" / "hollowmere"
SLUG = "hollowmere-valley-vine"
FILE = f"{SHARED.as_posix()}/hollowmere/valley-vine.yml"


@pytest.fixture
def handbook(tmp_path: Path) -> Path:
    """A handbook with one case of its own and a folder that came from Hollowmere."""
    root = make_small(tmp_path / "handbook", "tidy-vine")
    shutil.copytree(SAMPLE, root / SHARED / "hollowmere")
    return root


@pytest.fixture
def vine(handbook: Path) -> Path:
    return handbook / FILE


def test_a_folder_that_is_dropped_in_is_read_and_proved(handbook: Path) -> None:
    opened = open_handbook(handbook)
    assert said(opened) == []
    assert {proof.case.slug for proof in opened.proofs} == {"tidy-vine", SLUG}
    assert case_slugs(handbook) == ("tidy-vine", SLUG)
    shared = next(proof for proof in opened.proofs if proof.case.slug == SLUG)
    assert shared.case.shared_in == "hollowmere"
    assert set(shared.case.author.values()) == {"The crew of Hollowmere"}
    assert set(shared.case.origin.values()) == {"Hollowmere, rows by the stream"}
    assert shared.luck.tries > 0
    assert shared.lessons


def test_commands_know_it_by_its_name_here(handbook: Path) -> None:
    assert measures_of(open_case(handbook, SLUG, "en"))["case"] == SLUG
    _, case, findings = read_one_case(handbook, SLUG)
    assert findings == ()
    assert case is not None
    assert case.place.file == FILE


def test_it_is_proved_under_this_handbooks_profile(handbook: Path) -> None:
    """What the sender's vineyard allows may be a fault in this one."""
    profile = handbook / "content" / "profile.yml"
    change(profile, "buds per metre at least: 12", "buds per metre at least: 15")
    told = [line for line in check(handbook) if line.startswith(f"{FILE}:")]
    assert any("(no-reason-given)" in line for line in told), told


def test_a_slip_is_told_with_its_own_place(vine: Path, handbook: Path) -> None:
    change(vine, "trunk thickness: 61 mm", "trunk thickness: 61")
    line = vine.read_text("utf-8").splitlines().index("  trunk thickness: 61") + 1
    told = check(handbook)
    assert len(told) == 1
    assert told[0].startswith(f"{FILE}:{line}:20: ")
    assert told[0].endswith("(no-unit)")


def test_a_failed_proof_is_told_with_its_own_place(vine: Path, handbook: Path) -> None:
    change(vine, "teaches: [", "teaches: [head-wood, ")
    told = check(handbook)
    assert [line.rpartition("(")[2] for line in told] == ["teaches-nothing)"]
    assert told[0].startswith(f"{FILE}:5:")


@pytest.mark.parametrize("key", ["author", "licence", "origin"])
def test_it_has_to_say_whose_it_is(key: str, vine: Path, handbook: Path) -> None:
    rows = vine.read_text("utf-8").splitlines(keepends=True)
    vine.write_text("".join(row for row in rows if not row.startswith(f"{key}:")), "utf-8")
    expected = "expected author, licence and origin: ask whoever sent it"
    assert check(handbook) == [
        f'{FILE}:2:1: a case that came from others does not say "{key}"; '
        f"{expected} (shared-without-credits)"
    ]


def test_the_handbooks_own_cases_need_not_say_it(handbook: Path) -> None:
    change(handbook / CASES / "tidy-vine.yml", f"{CREW}\n", "")
    assert check(handbook) == []


def test_markup_is_told_and_the_case_still_works(vine: Path, handbook: Path) -> None:
    change(vine, "es: Una cepa del valle", "es: '<script>alert(1)</script>Una cepa'")
    opened = open_handbook(handbook)
    line = "warning: HTML stands in words that came from others; they are shown without it"
    assert len(opened.findings) == 1
    assert said(opened)[0].startswith(f"{FILE}:3:41: {line}")
    assert opened.handbook is not None
    assert opened.handbook.case_by_slug[SLUG].case.title["es"] == "Una cepa"


@pytest.mark.parametrize(
    "text",
    ["{{ draw('tidy-vine') }}", "{{ 7*7 }}", "{{ config }}", "{buds_kept.__class__}", "{0}", "{}"],
)
def test_no_call_but_the_numbers_of_the_vine(text: str, vine: Path, handbook: Path) -> None:
    change(vine, "Work pass by pass, and look twice before you cut.", text)
    told = check(handbook)
    assert any("(unknown-placeholder)" in line for line in told), told
    assert all(line.startswith(f"{FILE}:") for line in told)


@pytest.mark.parametrize("key", ["include", "file", "import", "drawing", "template"])
def test_no_key_reads_another_file(key: str, vine: Path, handbook: Path) -> None:
    add_to(vine, f"{key}: ../../profile.yml\n")
    told = check(handbook)
    assert [line.rpartition("(")[2] for line in told] == ["unknown-key)"]


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("!!python/object/apply:os.system ['true']", "tag"),
        ("&x Hollowmere", "anchor"),
        ("!include ../../profile.yml", "tag"),
    ],
)
def test_nothing_in_the_file_is_run_or_fetched(
    text: str, name: str, vine: Path, handbook: Path
) -> None:
    change(vine, "origin: Hollowmere, rows by the stream", f"origin: {text}")
    assert any(line.endswith(f"({name})") for line in check(handbook))


def test_two_folders_may_use_the_same_names(handbook: Path) -> None:
    shutil.copytree(handbook / SHARED / "hollowmere", handbook / SHARED / "eastbank")
    shutil.copy(handbook / FILE, handbook / CASES / "valley-vine.yml")
    assert check(handbook) == []
    assert case_slugs(handbook) == ("tidy-vine", "valley-vine", "eastbank-valley-vine", SLUG)


def test_a_name_that_is_taken_all_the_same_is_told(handbook: Path) -> None:
    own = handbook / CASES / f"{SLUG}.yml"
    shutil.copy(handbook / FILE, own)
    change(own, "case: valley-vine", f"case: {SLUG}")
    assert check(handbook) == [
        f"{FILE}:1:1: another case is called {SLUG} in this handbook; expected another name for "
        f"the file or its folder; found {CASES.as_posix()}/{SLUG}.yml (case-name-taken)"
    ]


@pytest.mark.parametrize("name", ["Hollowmere", "hollow mere", "a_b", "x" * 41, "böse", "-a"])
def test_a_folder_needs_a_short_name(name: str, handbook: Path) -> None:
    (handbook / SHARED / "hollowmere").rename(handbook / SHARED / name)
    told = check(handbook)
    assert [line.rpartition("(")[2] for line in told] == ["shared-folder-name)"]
    assert told[0].startswith(f"{SHARED.as_posix()}/{name}:1:1: ")


def test_signs_that_a_terminal_obeys_are_not_repeated(handbook: Path) -> None:
    (handbook / SHARED / "hollowmere").rename(handbook / SHARED / "a\x1b[31mb")
    assert "\x1b" not in "".join(check(handbook))


def test_no_link_is_followed(handbook: Path, tmp_path: Path) -> None:
    away = tmp_path / "away"
    shutil.copytree(SAMPLE, away)
    shared = handbook / SHARED
    (shared / "hollowmere" / "linked-vine.yml").symlink_to(away / "valley-vine.yml")
    (shared / "hollowmere" / "photos").symlink_to(away)
    (shared / "linked").symlink_to(away)
    (shared / "hollowmere" / "gone").symlink_to(tmp_path / "nowhere")
    told = check(handbook)
    assert [line.rpartition("(")[2] for line in told] == ["shared-link)"] * 4
    assert case_slugs(handbook) == ("tidy-vine", SLUG)


def test_the_folder_of_all_may_not_be_a_link(handbook: Path, tmp_path: Path) -> None:
    (handbook / SHARED).rename(tmp_path / "away")
    (handbook / SHARED).symlink_to(tmp_path / "away")
    assert [line.rpartition("(")[2] for line in check(handbook)] == ["shared-link)"]
    assert case_slugs(handbook) == ("tidy-vine",)


def test_a_photo_cannot_be_fetched_from_elsewhere(vine: Path, handbook: Path) -> None:
    add_to(vine, "photo: {file: ../../cases/x.jpg, alt: {en: A vine, es: Una cepa}}\n")
    assert [line.rpartition("(")[2] for line in check(handbook)] == ["not-a-photo-path)"]


def test_what_is_not_read_is_told(handbook: Path) -> None:
    shared = handbook / SHARED
    shutil.copy(handbook / FILE, shared / "loose.yml")
    (shared / "hollowmere" / "more").mkdir()
    shutil.copy(handbook / FILE, shared / "hollowmere" / "more" / "deep.yml")
    shutil.copy(handbook / FILE, shared / "hollowmere" / "other.yaml")
    for number in range(7):
        (shared / "hollowmere" / f"run{number}.py").write_text("raise SystemExit", "utf-8")
    (shared / "hollowmere" / ".hidden").write_text("x", "utf-8")
    (shared / "hollowmere" / "LICENCE").write_text("CC BY 4.0", "utf-8")
    (shared / "empty").mkdir()
    place = SHARED.as_posix()
    names = "run0.py, run1.py, run2.py, run3.py, run4.py, ..."
    told = check(handbook)
    assert [line.split(": ")[0] + " " + line.rpartition("(")[2] for line in told] == [
        f"{place}/empty:1:1 shared-no-case)",
        f"{place}/hollowmere:1:1 shared-not-read)",
        f"{place}/hollowmere/more/deep.yml:1:1 shared-case-place)",
        f"{place}/hollowmere/other.yaml:1:1 shared-case-place)",
        f"{place}/loose.yml:1:1 shared-case-place)",
    ]
    assert "warning: some files here were left alone; " in told[1]
    assert f"found 7: {names} (shared-not-read)" in told[1]


def test_a_file_in_the_place_of_the_folder(handbook: Path) -> None:
    shutil.rmtree(handbook / SHARED)
    (handbook / SHARED).write_text("x", "utf-8")
    assert [line.rpartition("(")[2] for line in check(handbook)] == ["shared-not-a-folder)"]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes")
def test_a_pipe_is_not_waited_on(handbook: Path) -> None:
    os.mkfifo(handbook / SHARED / "hollowmere" / "pipe.yml")
    assert any(line.endswith("(unreadable-file)") for line in check(handbook))


def test_a_handbook_of_shared_cases_only(handbook: Path) -> None:
    (handbook / CASES / "tidy-vine.yml").unlink()
    assert check(handbook) == []


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_finding_is_worded(language: str, handbook: Path) -> None:
    (handbook / SHARED / "Bad Name").mkdir()
    (handbook / SHARED / "empty").mkdir()
    (handbook / SHARED / "loose.yml").write_text("x", "utf-8")
    (handbook / SHARED / "what.exe").write_text("x", "utf-8")
    (handbook / SHARED / "link").symlink_to(handbook)
    told = check(handbook, language)
    assert len(told) == 5
    assert all(line.count(";") >= 1 for line in told)
