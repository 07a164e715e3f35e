"""Papers as somebody gets them who runs `pencilwood print`."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader
from pypdf.generic import StreamObject

from pencilwood.cases.case import Case, Profile
from pencilwood.cases.field_columns import COLUMNS
from pencilwood.proof import prove_case
from pencilwood.site.handbook import read_one_case
from pencilwood.words import LANGUAGES, say
from pencilwood.worksheets.case_papers import answer_key, worksheet, worksheet_data
from pencilwood.worksheets.house_papers import course_booklet, wall_poster
from pencilwood.worksheets.typeset import typeset
from workshop import PROJECT, Workshop

A4, LETTER = (595, 842), (612, 792)
VINES = ("tidy-vine", "one-arm-vine")
"""The cases of the small folder."""


def read(path: Path) -> PdfReader:
    return PdfReader(path)


def text_of(path: Path) -> str:
    return " ".join(" ".join(page.extract_text().split()) for page in read(path).pages)


def size_of(path: Path) -> tuple[int, int]:
    box = read(path).pages[0].mediabox
    return round(box.width), round(box.height)


@pytest.fixture(scope="module")
def tidy() -> tuple[Case, Profile]:
    profile, case, findings = read_one_case(PROJECT, "tidy-vine")
    assert profile is not None, findings
    assert case is not None, findings
    return case, profile


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(("paper", "size"), [("a4", A4), ("letter", LETTER)])
def test_worksheet_and_key_have_two_pages_of_the_size_asked_for(
    workshop: Workshop, language: str, paper: str, size: tuple[int, int]
) -> None:
    ran = workshop.run("print", "--case", "tidy-vine", "--paper", paper, "--language", language)
    assert ran.status == 0, ran.err
    for kind in ("worksheet", "key"):
        path = workshop.root / "print" / f"{kind}-tidy-vine-{language}-{paper}.pdf"
        assert len(read(path).pages) == 2
        assert size_of(path) == size


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_worksheet_asks_and_does_not_tell(workshop: Workshop, language: str) -> None:
    workshop.run("print", "--case", "tidy-vine", "--language", language)
    folder = workshop.root / "print"
    asked = text_of(folder / f"worksheet-tidy-vine-{language}-a4.pdf")
    told = text_of(folder / f"key-tidy-vine-{language}-a4.pdf")
    answer = say(language, "print.key.answer")
    assert say(language, "print.worksheet.after") in asked
    assert answer in told
    assert answer not in asked
    assert "L1m" in asked
    assert "22" in told.split(answer)[0]


def test_the_worksheet_of_a_head_trained_vine_leans_outward_and_to_no_tip() -> None:
    profile, case, findings = read_one_case(PROJECT, "the-middle-stays-open")
    assert profile is not None, findings
    assert case is not None, findings
    data = worksheet_data(prove_case(case, profile), profile, "en")
    assert data["arm"] == ["Once around the head", "140 cm"]
    wood = str(data["wood"])
    assert "on its short arm" in wood
    assert "leans inward, over the middle" in wood
    assert "leans to the" not in wood


@pytest.mark.parametrize("language", LANGUAGES)
def test_papers_of_a_cane_vine_tell_of_tying(language: str, tmp_path: Path) -> None:
    profile, case, findings = read_one_case(PROJECT, "two-new-canes")
    assert profile is not None, findings
    assert case is not None, findings
    proof, made = prove_case(case, profile), {}
    for make in (worksheet, answer_key, wall_poster):
        paper = make(proof, profile, language)
        path = tmp_path / f"{make.__name__}.pdf"
        path.write_bytes(typeset(paper, "a4", profile.vineyard))
        made[make.__name__] = path
    assert len(read(made["worksheet"]).pages) == 2
    key = text_of(made["answer_key"])
    assert say(language, "print.key.tie.left", parts="L1b") in key
    assert say(language, "pages.case.plan.to-wire") in key
    assert say(language, "print.key.off", parts="L1b") not in key
    assert say(language, "print.poster.tie") in text_of(made["wall_poster"])
    rough = say(language, "print.poster.rough").split()[1]
    assert rough not in text_of(made["wall_poster"]) + text_of(made["worksheet"])


def test_a_key_names_the_cuts_the_reasons_and_the_plan(workshop: Workshop) -> None:
    workshop.run("print", "--what", "key", "--case", "tidy-vine")
    told = text_of(workshop.root / "print" / "key-tidy-vine-en-a4.pdf")
    assert "L1m above a" in told
    assert "One spur at each place is enough." in told
    assert "Leave 2 at most" in told


def test_all_papers_at_once(workshop: Workshop) -> None:
    ran = workshop.run("print", "-o", str(workshop.root / "out"))
    assert ran.status == 0, ran.err
    made = {path.name.partition("-en-")[0] for path in (workshop.root / "out").iterdir()}
    vines = {f"{kind}-{vine}" for kind in ("worksheet", "key") for vine in VINES}
    assert made == vines | {"booklet", "card", "measuring-sheet", "poster-tidy-vine"}


def test_nothing_is_printed_of_a_handbook_with_an_error(workshop: Workshop) -> None:
    case = workshop.root / "content" / "cases" / "tidy-vine.yml"
    case.write_text(case.read_text("utf-8").replace("lean: in", "lean: inward", 1), "utf-8")
    ran = workshop.run("print", "-o", str(workshop.root / "out"))
    assert ran.status == 1
    assert "inward" in ran.out + ran.err
    assert not (workshop.root / "out").exists()


def test_the_card_speaks_every_language(workshop: Workshop) -> None:
    ran = workshop.run("print", "--what", "card")
    assert ran.status == 0, ran.err
    path = workshop.root / "print" / "card-en-a4.pdf"
    text = text_of(path)
    assert len(read(path).pages) == 1
    assert "The hand and the pencil" in text
    assert "La mano y el lápiz" in text
    assert "never closer than 8 cm" in text


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("language", LANGUAGES)
def test_the_poster_fills_one_page(workshop: Workshop, language: str, paper: str) -> None:
    ran = workshop.run(
        "print", "--what", "poster", "--case", "tidy-vine", "--paper", paper,
        "--language", language,
    )  # fmt: skip
    assert ran.status == 0, ran.err
    path = workshop.root / "print" / f"poster-tidy-vine-{language}-{paper}.pdf"
    assert len(read(path).pages) == 1
    text = text_of(path)
    for name in ("rough", "thinning-out", "fine"):
        assert say(language, f"print.poster.{name}") in text
    assert say(language, "print.poster.dotted") in text


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("language", LANGUAGES)
def test_the_measuring_sheet_has_the_columns_of_the_csv_file(
    workshop: Workshop, language: str, paper: str
) -> None:
    ran = workshop.run(
        "print", "--what", "measuring-sheet", "--paper", paper, "--language", language
    )
    assert ran.status == 0, ran.err
    path = workshop.root / "print" / f"measuring-sheet-{language}-{paper}.pdf"
    assert len(read(path).pages) == 2
    text = text_of(path)
    for column in COLUMNS:
        assert column.heading("metric", language) in text


def test_the_booklet_holds_card_vines_and_rules(tidy: tuple[Case, Profile]) -> None:
    case, profile = tidy
    booklet = course_booklet([prove_case(case, profile)], profile, "es")
    assert typeset(booklet, "letter") == typeset(booklet, "letter")
    text = str(booklet.data)
    assert "Hueco en el brazo" in text
    assert "Una cepa ordenada" in text


def test_the_qr_poster_needs_an_address(workshop: Workshop) -> None:
    ran = workshop.run("print", "--what", "qr")
    assert ran.status == 2
    assert "site address: https://example.org/pruning/" in ran.err
    assert not (workshop.root / "print").exists()


def test_the_qr_poster_shows_the_address(workshop: Workshop) -> None:
    workshop.set_address("https://example.org/vines/")
    ran = workshop.run("print", "--what", "qr")
    assert ran.status == 0, ran.err
    assert "https://example.org/vines/" in text_of(workshop.root / "print" / "qr-en-a4.pdf")


def test_papers_are_tagged_titled_and_carry_their_fonts(workshop: Workshop) -> None:
    workshop.run("print", "--case", "one-arm-vine", "--language", "es")
    reader = read(workshop.root / "print" / "worksheet-one-arm-vine-es-a4.pdf")
    catalogue = reader.root_object
    assert catalogue["/MarkInfo"]["/Marked"]  # type: ignore[index]
    assert str(catalogue["/Lang"]) == "es"
    assert reader.metadata is not None
    assert str(reader.metadata.title).startswith("Hoja de trabajo")
    xmp = catalogue["/Metadata"].get_object()
    assert isinstance(xmp, StreamObject)
    assert b"pdfuaid" in xmp.get_data()
    assert not _fonts_left_out(reader)


def _fonts_left_out(reader: PdfReader) -> list[str]:
    embedded: set[str] = set()
    missing: list[str] = []
    for page in reader.pages:
        fonts = page["/Resources"]["/Font"]  # type: ignore[index]
        for font in fonts.values():
            inner = font.get_object()
            for below in inner.get("/DescendantFonts", [inner]):
                descriptor = below.get_object().get("/FontDescriptor")
                files = {"/FontFile", "/FontFile2", "/FontFile3"}
                if descriptor is None or not files & set(descriptor.get_object()):
                    missing.append(str(inner.get("/BaseFont")))
                embedded.add(str(inner.get("/BaseFont")))
    assert embedded
    return missing


def test_drawings_stay_lines(workshop: Workshop) -> None:
    workshop.run("print", "--case", "tidy-vine")
    for page in read(workshop.root / "print" / "worksheet-tidy-vine-en-a4.pdf").pages:
        assert list(page.images) == []


def test_the_same_handbook_gives_the_same_bytes(workshop: Workshop) -> None:
    made = []
    for folder in ("one", "two"):
        workshop.run("print", "--case", "tidy-vine", "-o", str(workshop.root / folder))
        paths = sorted((workshop.root / folder).iterdir())
        made.append([(path.name, path.read_bytes()) for path in paths])
    assert len(made[0]) == 2
    assert made[0] == made[1]


NASTY = '#panic("ran") $x$ *bold* `raw` <tag> @ref \\ // #read("house.typ") [ ] { }'


def test_words_are_never_taken_for_commands(tidy: tuple[Case, Profile], tmp_path: Path) -> None:
    case, profile = tidy
    nasty = dict.fromkeys(profile.languages, NASTY)
    proof = replace(prove_case(case, profile), case=replace(case, title=nasty, story=nasty))
    for paper in (worksheet(proof, profile, "en"), answer_key(proof, profile, "en")):
        path = tmp_path / f"{paper.template}.pdf"
        path.write_bytes(typeset(paper, "a4", NASTY))
        assert '#panic("ran") $x$ *bold* `raw` <tag> @ref' in text_of(path)


def test_without_typst_one_sentence_says_what_to_install(
    workshop: Workshop, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "typst", None)
    ran = workshop.run("print", "--what", "card")
    assert ran.status == 2
    assert ran.err.count("\n") == 1
    assert "pencilwood[print]" in ran.err


def test_a_case_goes_only_with_papers_of_a_case(workshop: Workshop) -> None:
    ran = workshop.run("print", "--what", "card", "--case", "tidy-vine")
    assert ran.status == 2
    assert "--case" in ran.err


def test_a_misspelt_case_is_answered_with_the_right_one(workshop: Workshop) -> None:
    ran = workshop.run("print", "--case", "tidy-wine")
    assert ran.status == 2
    assert 'did you mean "tidy-vine"?' in ran.err
