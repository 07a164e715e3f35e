"""A case says whose it is: in its file, on its page, on paper."""

import io
import json
import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader

from case_files import lines, read, sample
from pencilwood.assets import handbook_root
from pencilwood.cases.case import Case, Profile
from pencilwood.cases.case_writer import write_case
from pencilwood.cases.credits import credit_words
from pencilwood.proof import prove_case
from pencilwood.site.case_files import case_slugs
from pencilwood.site.handbook import read_one_case
from pencilwood.words import LANGUAGES
from pencilwood.worksheets.case_papers import answer_key, worksheet
from pencilwood.worksheets.house_papers import course_booklet, wall_poster
from pencilwood.worksheets.typeset import PAPER_SIZES, Paper, typeset
from small_handbook import SHARED, make_small

SAMPLE = Path(__file__).parent / "samples" / "hollowmere"
TOLD = {
    "en": "Measured and written by Ana. Licence: CC BY 4.0. Origin: Hollowmere.",
    "es": "Medida y escrita por Ana. Licencia: CC BY 4.0. Origen: Hollowmere.",
}


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> tuple[Case, Profile]:
    root = make_small(tmp_path_factory.mktemp("credits") / "handbook")
    shutil.copytree(SAMPLE, root / SHARED / "hollowmere")
    profile, case, findings = read_one_case(root, "hollowmere-valley-vine")
    assert findings == ()
    assert case is not None
    assert profile is not None
    return case, profile


@pytest.mark.parametrize("language", LANGUAGES)
def test_only_what_is_given_is_said(language: str, shared: tuple[Case, Profile]) -> None:
    bare = replace(shared[0], author={}, licence={}, origin={}, shared_in="")
    ana = dict.fromkeys(LANGUAGES, "Ana")
    assert credit_words(bare, language) == ""
    licence, origin = (dict.fromkeys(LANGUAGES, words) for words in ("CC BY 4.0", "Hollowmere"))
    own = replace(bare, author=ana, licence=licence, origin=origin)
    assert credit_words(own, language) == TOLD[language]
    for one in (
        replace(bare, author=ana),
        replace(bare, licence=ana),
        replace(bare, origin=ana),
    ):
        told = credit_words(one, language)
        assert told.count(".") == 1
        assert "Ana" in told
    assert credit_words(replace(own, shared_in="x"), language).startswith(TOLD[language] + " ")


@pytest.mark.parametrize("key", ["author", "licence", "origin"])
def test_one_text_serves_all_readers(key: str, tmp_path: Path) -> None:
    text = "\n".join(row for row in sample().splitlines() if not row.startswith(f"{key}:"))
    case, findings = read(f"{text}\n{key}: Row 7, «El Valle» & sons\n", tmp_path)
    assert lines(findings) == []
    assert getattr(case, key) == dict.fromkeys(LANGUAGES, "Row 7, «El Valle» & sons")


EACH_CREDIT = '{en: "the crew: all", es: la cuadrilla}'


@pytest.mark.parametrize("key", ["author", "licence", "origin"])
def test_each_reader_may_have_their_own_words(key: str, tmp_path: Path) -> None:
    text = "\n".join(row for row in sample().splitlines() if not row.startswith(f"{key}:"))
    case, findings = read(f"{text}\n{key}: {EACH_CREDIT}\n", tmp_path)
    assert lines(findings) == []
    assert case is not None
    assert "the crew: all." in credit_words(case, "en")
    assert "la cuadrilla." in credit_words(case, "es")
    again, findings = read(write_case(case, "es"), tmp_path)
    assert lines(findings) == []
    assert getattr(again, key) == getattr(case, key)


@pytest.mark.parametrize(
    ("typed", "names"),
    [
        pytest.param("x" * 201, ["text-too-long"], id="a name longer than any"),
        pytest.param("[Ana, Luis]", ["not-one-value"], id="several are not told apart"),
        pytest.param("{en: the crew}", ["missing-language"], id="one reader gets no words"),
        pytest.param(
            "{en: the crew, es: la cuadrilla, eo: la teamo}",
            ["unknown-language"],
            id="a language that no handbook has",
        ),
        pytest.param(
            "{en: the crew, es: [la, cuadrilla]}", ["not-one-value"], id="words are one value"
        ),
    ],
)
def test_slips_in_them(typed: str, names: list[str], tmp_path: Path) -> None:
    text = "\n".join(row for row in sample().splitlines() if not row.startswith("author:"))
    _, findings = read(f"{text}\nauthor: {typed}\n", tmp_path)
    assert [finding.name for finding in findings] == names


def test_each_case_of_the_demo_names_its_crew_in_the_readers_language() -> None:
    for slug in case_slugs(handbook_root()):
        _, case, _ = read_one_case(handbook_root(), slug)
        assert case is not None
        assert "la cuadrilla de" in credit_words(case, "es"), slug
        assert "training crew" in credit_words(case, "en"), slug
        assert "crew" not in credit_words(case, "es"), slug


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("file", ["photos/row-7.jpg", "cepa número 3.JPEG", "no.png"])
def test_what_is_written_out_reads_the_same(language: str, file: str, tmp_path: Path) -> None:
    alt = {"en": 'A vine: "two arms"', "es": "Una cepa: «dos brazos»"}
    photo = json.dumps({"file": file, "alt": alt}, ensure_ascii=False)
    case, findings = read(f"{sample()}origin: 'El Valle: row 7'\nphoto: {photo}\n", tmp_path)
    assert lines(findings) == []
    assert case is not None
    again, findings = read(write_case(case, language), tmp_path)
    assert lines(findings) == []
    assert again is not None
    assert (again.author, again.licence, again.origin) == (case.author, case.licence, case.origin)
    assert again.origin == dict.fromkeys(LANGUAGES, "El Valle: row 7")
    assert again.photo is not None
    assert (again.photo.file, again.photo.alt) == (file, alt)
    assert write_case(again, language) == write_case(case, language)


def test_a_case_without_them_shows_where_they_go(tmp_path: Path) -> None:
    bare = "\n".join(sample().splitlines()[:-2]) + "\n"
    case, _ = read(bare, tmp_path)
    assert case is not None
    written = write_case(case, "en").splitlines()
    assert written[-3:] == ["# author:", "# licence: CC BY 4.0", "# origin:"]
    assert not [row for row in written if row.startswith("photo")]


def text_of(paper: Paper, size: str) -> tuple[str, int]:
    pages = PdfReader(io.BytesIO(typeset(paper, "a4" if size == "a4" else "letter"))).pages
    return " ".join(" ".join(page.extract_text().split()) for page in pages), len(pages)


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("size", PAPER_SIZES)
def test_papers_say_it_and_grow_no_longer(
    size: str, language: str, shared: tuple[Case, Profile]
) -> None:
    case, profile = shared
    told = credit_words(case, language)
    bare = replace(case, author={}, licence={}, origin={}, shared_in="")
    with_credits, without = prove_case(case, profile), prove_case(bare, profile)
    for make in (worksheet, answer_key, wall_poster):
        text, pages = text_of(make(with_credits, profile, language), size)
        assert told in text, make.__name__
        assert pages == text_of(make(without, profile, language), size)[1], make.__name__
    assert told in text_of(course_booklet([with_credits], profile, language), size)[0]
