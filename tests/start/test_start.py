"""What `pencilwood start` makes, and where it refuses to make anything."""

import re
import shlex
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from pencilwood.cases.profile_file import UNNAMED
from pencilwood.cli import _parser, main
from pencilwood.site.handbook import open_handbook
from pencilwood.site.starter import selection
from pencilwood.site.starter.selection import CHAPTERS

Tree = dict[str, bytes]


@pytest.mark.parametrize(
    ("asked", "languages", "readme"),
    [
        ("en", ("en",), "# Your pruning handbook"),
        ("es", ("es",), "# Su manual de poda"),
        ("both", ("en", "es"), "# Your pruning handbook"),
        ("all", ("en", "es"), "# Your pruning handbook"),
        ("es,en", ("es", "en"), "# Su manual de poda"),
    ],
)
def test_a_new_handbook_is_proved_without_a_change(
    tmp_path: Path, asked: str, languages: tuple[str, ...], readme: str
) -> None:
    root = tmp_path / "pruning"
    assert main(["start", str(root), "--language", asked]) == 0
    opened = open_handbook(root)
    assert [finding.render() for finding in opened.findings] == []
    book = opened.handbook
    assert book is not None
    assert book.profile.languages == languages
    assert book.profile.vineyard == UNNAMED[languages[0]]
    assert (len(book.cases), len(book.quizzes), len(book.blocks)) == (3, 1, 1)
    assert {chapter.language for chapter in book.chapters} == set(languages)
    assert (root / "README.md").read_text("utf-8").startswith(readme)
    second = {"en": "README-en.md", "es": "LEAME.md"}
    there = [language for language, name in second.items() if (root / name).exists()]
    assert there == list(languages[1:])


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        pytest.param("en,xx", "xx", id="no language of ours"),
        pytest.param("en,", "", id="a comma too many"),
        pytest.param("en,\x1b[31mes", "<U+001B>[31mes", id="what a terminal would obey"),
        pytest.param("es,\u202een", "<U+202E>en", id="what turns the line around"),
    ],
)
def test_a_language_that_it_does_not_speak_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], asked: str, told: str
) -> None:
    with pytest.raises(SystemExit):
        main(["start", str(tmp_path / "new"), "--language", asked])
    is_none = {"en": "is no language of Pencilwood", "es": "no es un idioma de Pencilwood"}
    said = capsys.readouterr().err
    assert f'"{told}" {is_none[asked[:2]]}' in said
    assert " en, es, all" in said
    assert not (tmp_path / "new").exists()


def test_trainers_own_few_files_and_none_of_the_demo_vineyard(
    started: Path, tree: Callable[[Path], Tree]
) -> None:
    files = tree(started)
    assert {name for name in files if name.startswith(("content/rules", "content/safety"))} == set()
    assert {name for name in files if name.endswith(("glossary.yml", "sources.yml"))} == set()
    for name, data in files.items():
        text = data.decode()
        assert "Larkfell" not in text, name
        assert "yaml-language-server" not in text, f"{name} names a schema that is not there"
    pages = [path.read_text("utf-8") for path in (started / "site").rglob("*.html")]
    assert pages
    assert not any("Larkfell" in page for page in pages)
    assert not any("&lt;/head" in page for page in pages), "a mark of HTML shows as text"
    assert not any("invented vineyard" in page or "viñedo inventado" in page for page in pages)


def test_links_in_chapters_lead_to_what_there_is(started: Path) -> None:
    """A list keeps the vines that came along, and no text leads to a chapter that did not."""
    chapters = started / "content" / "chapters" / "en"
    spacing = (chapters / "spacing-by-hand.md").read_text("utf-8")
    assert "Practice" not in spacing, "none of its vines came along"
    assert '- Practice: {{ vine("weak-vine") }}\n' in (chapters / "counting-buds.md").read_text()
    names = {path.stem for path in chapters.glob("*.md")}
    texts = [path.read_text("utf-8") for path in chapters.glob("*.md")]
    led_to = {name for text in texts for name in re.findall(r'chapter\("([^"]+)"', text)}
    assert "tools" in led_to
    assert led_to <= names


@pytest.mark.parametrize(
    "name", ["High Bank", 'Cerro "El Alto": #3', "O'Hara & Söhne", "[Viña] {uno}", "yes", "1.50"]
)
def test_any_name_is_kept_as_it_is_given(tmp_path: Path, name: str) -> None:
    assert main(["start", str(tmp_path / "new"), "--name", f"  {name} "]) == 0
    book = open_handbook(tmp_path / "new").handbook
    assert book is not None
    assert book.profile.vineyard == name


def test_a_handbook_without_a_name_asks_for_one(started: Path) -> None:
    pages = {
        one: (started / "site" / one).read_text("utf-8") for one in ("index.html", "es/index.html")
    }
    assert "This handbook has no name yet." in pages["index.html"]
    assert "Este manual todavía no tiene nombre." in pages["es/index.html"]
    assert "pw-unnamed" not in (started / "site" / "vines.html").read_text("utf-8")


@pytest.mark.parametrize("name", ["", "   ", "x" * 81, "two\nlines", "bell\a"])
def test_a_name_that_cannot_be_one_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    assert main(["start", str(tmp_path / "new"), "--name", name, "--language", "es"]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.startswith("pencilwood: el nombre de un viñedo tiene de 1 a 80 caracteres")
    assert list(tmp_path.iterdir()) == []


def a_letter(folder: Path) -> None:
    folder.mkdir()
    (folder / "letter.txt").write_text("Dear crew", "utf-8")


def a_hidden_file(folder: Path) -> None:
    folder.mkdir()
    (folder / ".keep").touch()


def a_handbook(folder: Path) -> None:
    assert main(["start", str(folder), "--name", "Mine"]) == 0


def half_a_handbook(folder: Path) -> None:
    (folder / "content").mkdir(parents=True)
    (folder / "content" / "profile.yml").write_text("vineyard: Mine\n", "utf-8")


def a_file(folder: Path) -> None:
    folder.write_text("not a folder", "utf-8")


@pytest.mark.parametrize(
    ("there", "says", "dice"),
    [
        (a_letter, "is not empty", "no está vacía"),
        (a_hidden_file, "is not empty", "no está vacía"),
        (a_handbook, "holds a handbook already", "ya hay un manual"),
        (half_a_handbook, "holds a handbook already", "ya hay un manual"),
        (a_file, "is a file", "es un archivo"),
    ],
)
def test_what_is_there_stays_as_it_is(
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    tree: Callable[[Path], Tree],
    there: Callable[[Path], None],
    says: str,
    dice: str,
) -> None:
    there(tmp_path / "new")
    capsys.readouterr()
    before = tree(tmp_path)
    assert main(["start", str(tmp_path / "new")]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    english, spanish = told.err.splitlines()
    assert says in english
    assert dice in spanish
    assert tree(tmp_path) == before


def test_an_empty_folder_is_filled(tmp_path: Path) -> None:
    (tmp_path / "new").mkdir()
    assert main(["start", str(tmp_path / "new")]) == 0
    assert (tmp_path / "new" / "content" / "profile.yml").is_file()
    assert [path.name for path in tmp_path.iterdir()] == ["new"]


def test_nobody_is_left_standing_in_a_folder_that_is_gone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["start", "."]) == 2
    assert "go to the folder above" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("trouble", [KeyboardInterrupt, OSError(28, "No space left on device")])
@pytest.mark.parametrize("at", ["first file", "twentieth file", "name"])
def test_an_interrupted_start_leaves_nothing(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    at: str,
    trouble: type[BaseException] | OSError,
) -> None:
    written = 0
    write = Path.write_text

    def stop(*arguments: object, **named: object) -> int:
        raise trouble

    def count(path: Path, text: str, **named: str) -> int:
        nonlocal written
        written += 1
        stops_at = {"first file": 1, "twentieth file": 20}
        return stop() if written == stops_at.get(at) else write(path, text, **named)

    monkeypatch.setattr(Path, "write_text", count)
    if at == "name":
        monkeypatch.setattr(Path, "rename", stop)
    status = main(["start", str(tmp_path / "new")])
    assert status == (130 if trouble is KeyboardInterrupt else 2)
    assert "Traceback" not in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(("readme", "asked"), [("README.md", "en"), ("README.md", "es")])
def test_every_command_of_the_readme_can_be_typed(tmp_path: Path, readme: str, asked: str) -> None:
    assert main(["start", str(tmp_path / "new"), "--language", asked]) == 0
    text = (tmp_path / "new" / readme).read_text("utf-8")
    commands = re.findall(r"(?:^    |`)(pencilwood [a-z][^#`\n]*)", text, re.MULTILINE)
    assert len(commands) >= 5
    for command in commands:
        _parser().parse_args(shlex.split(command)[1:])
    for name in re.findall(r"^\| `([^`]+)`", text, re.MULTILINE):
        assert (tmp_path / "new" / name).exists(), name


@pytest.mark.parametrize(
    ("gone", "missing"),
    [
        ("content/chapters/es", "content/chapters/es/a-day-in-the-row.md"),
        ("content/chapters/es/tools.md", "content/chapters/es/tools.md"),
    ],
)
def test_a_language_without_its_chapters_is_told_by_name(
    project: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    gone: str,
    missing: str,
) -> None:
    demo = tmp_path / "demo"
    for name in ("content", "quizzes"):
        shutil.copytree(project / name, demo / name)
    shutil.copy(project / "mkdocs.yml", demo)
    path = demo / gone
    number = len([one for one in path.iterdir() if one.stem in CHAPTERS]) if path.is_dir() else 1
    path.rename(tmp_path / "gone")
    monkeypatch.setattr(selection, "handbook_root", lambda: demo)
    assert main(["start", str(tmp_path / "new"), "--language", "es,en"]) == 2
    spanish, english = capsys.readouterr().err.splitlines()
    assert f'no handbook can start in "es" yet, because {missing} is not written' in english
    assert f"(archivos que faltan: {number})" in spanish
    assert not (tmp_path / "new").exists()
    assert main(["start", str(tmp_path / "new"), "--language", "en"]) == 0


@pytest.mark.parametrize(
    ("folder", "dice"),
    [
        ("a file/new", "a file: aquí hay un archivo donde hace falta una carpeta"),
        ("x" * 300, ": ningún archivo puede tener un nombre tan largo"),
    ],
)
def test_a_place_that_cannot_be_is_told_in_the_language(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], folder: str, dice: str
) -> None:
    (tmp_path / "a file").write_text("Dear crew", "utf-8")
    assert main(["start", str(tmp_path / folder), "--language", "es"]) == 2
    told = capsys.readouterr().err
    assert told.count("\n") == 1
    assert dice in told
    assert [path.name for path in tmp_path.iterdir()] == ["a file"]


def test_a_path_may_have_spaces_and_letters_of_any_language(tmp_path: Path) -> None:
    folder = tmp_path / "el viñedo de Ñandú" / "葡萄 manual"
    assert main(["start", str(folder), "--language", "es"]) == 0
    assert open_handbook(folder).handbook is not None
