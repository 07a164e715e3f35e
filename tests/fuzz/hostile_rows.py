"""Files that no trainer writes on purpose, and what is said of each."""

from __future__ import annotations

import os
import shutil
import socket
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from case_files import sample
from photo_files import claiming, encoded, vine_photo

GOOD = sample()
PNG = encoded(vine_photo(), "PNG")
CASE = "content/cases/tidy-vine.yml"
CHAPTERS = "content/chapters/en"
SHEET = "row 7.csv"
HERE = str(Path(__file__).parent)
"""A folder, and with this file in it, that is in no handbook."""
HEAD = "---\ntitle: Tools\nfor: worker\norder: 1\n---\n"
Spoil = Callable[[Path], None]


@dataclass(frozen=True)
class Row:
    """A file, why somebody may come to have it, and what is said of it."""

    reason: str
    file: str
    made: bytes | Spoil
    said: str
    """Without the name of the file."""
    said_es: str = ""


def typed(old: str, new: str) -> bytes:
    """The good case with one thing typed otherwise."""
    assert GOOD.count(old) == 1, old
    return GOOD.replace(old, new).encode("utf-8", errors="surrogatepass")


def bomb() -> bytes:
    """Nine lines, each nine times the one above: a tree of millions once it is written out."""
    rows = ["a0: &a0 [x]"]
    rows += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 10)]
    return "\n".join(rows).encode()


def sparse(size: int) -> Spoil:
    """A file of that many bytes that takes no room on the disk."""

    def make(path: Path) -> None:
        with path.open("wb") as file:
            file.truncate(size)

    return make


def pipe(path: Path) -> None:
    os.mkfifo(path)


def listening(path: Path) -> None:
    # A socket's name must be short, so it is made elsewhere and moved.
    with socket.socket(socket.AF_UNIX) as one:
        short = Path("/tmp") / f"pw-{os.getpid()}"  # noqa: S108 - moved at once
        one.bind(str(short))
    shutil.move(short, path)


def link(target: str) -> Spoil:
    """A link to another place."""
    return lambda path: path.symlink_to(target)


def folder(path: Path) -> None:
    path.mkdir()


def round_and_round(path: Path) -> None:
    path.symlink_to("other.yml")
    path.with_name("other.yml").symlink_to(path.name)


def beside_the_handbook(path: Path) -> None:
    path.symlink_to("../../../tidy-vine.yml")
    (path.parents[3] / "tidy-vine.yml").write_text(GOOD, "utf-8")


def to_hidden(path: Path) -> None:
    path.symlink_to("../../.git/config")
    (path.parents[2] / ".git").mkdir()
    (path.parents[2] / ".git" / "config").write_text(GOOD, "utf-8")


def within_then_out(path: Path) -> None:
    vines = path.parents[2] / "vines"
    vines.mkdir()
    (vines / path.name).symlink_to(__file__)
    path.parent.rmdir()
    path.parent.symlink_to("../vines")


def alike(path: Path) -> None:
    for name in ("TOOLS.md", path.name):
        path.with_name(name).write_text("no title", "utf-8")


# fmt: off
OUTSIDE = "1:1: this is a link out of the handbook's folder, or into something hidden in it; nothing behind it was read; expected the file or folder itself, copied to this place (leads-outside)"
OUTSIDE_ES = "1:1: esto es un enlace que sale de la carpeta del manual, o que lleva a algo oculto en ella; no se leyó nada de lo que hay detrás; se esperaba el archivo o la carpeta misma, copiados a este lugar (leads-outside)"
NOWHERE = "1:1: this is a link that leads to no file; expected the file or folder itself, copied to this place (leads-nowhere)"
NOWHERE_ES = "1:1: esto es un enlace que no lleva a ningún archivo; se esperaba el archivo o la carpeta misma, copiados a este lugar (leads-nowhere)"
NO_FOLDER = "1:1: this is not a folder; expected a folder of this name, or nothing (not-a-folder)"
NO_FOLDER_ES = "1:1: esto no es una carpeta; se esperaba una carpeta con este nombre, o nada (not-a-folder)"
LEFT_OUT = "1:1: warning: this file stands beside the chapters and is not published; expected pictures (.jpg, .png, .webp), drawings (.svg) and papers (.pdf, .txt, .csv); save a HEIC photo as JPEG first (beside-left-out)"
MORE = "this drawing holds more than lines and letters; expected no script, no photograph, no link and nothing about who made it: save it as plain SVG, or as PNG;"
HIDING = (
    ("a photograph in it", "><image xlink:href='data:image/jpeg;base64,/9j/'/>", 6, "<image"),
    ("a photograph in its styles", "><style>a{fill:url(data:image/png;base64,x)}</style>", 20, "url("),
    ("a script that runs by itself", " onload = 'alert(1)'>", 6, "onload ="),
    ("a whole page in it", "><foreignObject/>", 6, "<foreignObject"),
    ("who made it", "><metadata>Hidden Person</metadata>", 6, "<metadata"),
    ("where on its maker's disk it was saved", " x:export-filename='/home/hidden/a.png'>", 8, "export-filename"),
    ("a link that runs", "><a href='javascript:alert(1)'/>", 9, "href='"),
    ("a file from elsewhere", "><style>@import 'https://example.org/a.css'</style>", 13, "@import"),
    ("a name that stands for something else", "><!ENTITY a 'b'>", 6, "<!ENTITY"),
)
ROWS = (
    Row("an alias bomb: a few lines that are millions once written out", CASE, bomb(),
        "2:10: *a0 repeats something from elsewhere; expected it to be written out here (alias)",
        "2:10: *a0 repite algo de otro lugar; se esperaba que se escriba aquí por completo (alias)"),
    Row("a file that holds itself", CASE, b"case: &a [*a]\n",
        "1:11: *a repeats something from elsewhere; expected it to be written out here (alias)",
        "1:11: *a repite algo de otro lugar; se esperaba que se escriba aquí por completo (alias)"),
    Row("a merge key that brings unseen values", CASE, typed("level: easy", "<<: {level: easy}"),
        "4:1: \"<<\" takes lines over from elsewhere; expected them to be written out here (merge-key)"),
    Row("a tag that would run a program in another reader", CASE, typed("level: easy", 'level: !!python/object/apply:os.system ["id"]'),
        "4:8: a mark that begins with ! stands here; expected no such mark: put text that begins with ! in quotes (tag)",
        "4:8: aquí hay una marca que empieza con !; no se esperaba esa marca: ponga entre comillas un texto que empieza con ! (tag)"),
    Row("nested deeper than anybody means", CASE, b"[" * 100_000,
        "1:14: lines are nested too deep here; expected a few levels, as in the samples (too-deep)"),
    Row("more names than a handbook needs", CASE, b"".join(b"k%d: a\n" % n for n in range(60_000)),
        "20000:9: this file holds more names and values than any handbook needs; expected at most 40000 (too-many-parts)",
        "20000:9: este archivo tiene más nombres y valores de los que necesita cualquier manual; se esperaban como máximo 40000 (too-many-parts)"),
    Row("a number of ten thousand digits", CASE, typed("cordon height: 90 cm", f"cordon height: {'9' * 10_000} cm"),
        "12:18: \"cordon height\" is not a length; expected a number with its unit, such as 90 cm; found \"999999999999999999999999999999999999999999999999999999999...\" (not-a-length)",
        "12:18: \"cordon height\" no es una longitud; se esperaba un número con su unidad, como 90 cm; se encontró \"999999999999999999999999999999999999999999999999999999999...\" (not-a-length)"),
    Row("no number at all", CASE, typed("cordon height: 90 cm", "cordon height: .nan cm"),
        "12:18: \"cordon height\" is not a length; expected a number with its unit, such as 90 cm; found \".nan cm\" (not-a-length)"),
    Row("infinity", CASE, typed("cordon height: 90 cm", "cordon height: .inf"),
        "12:18: \"cordon height\" is not a length; expected a number with its unit, such as 90 cm; found \".inf\" (not-a-length)"),
    Row("less than nothing", CASE, typed("cordon height: 90 cm", "cordon height: -90 cm"),
        "12:18: \"cordon height\" is not a length; expected a number with its unit, such as 90 cm; found \"-90 cm\" (not-a-length)"),
    Row("divided by nothing", CASE, typed("cordon height: 90 cm", "cordon height: 1/0 in"),
        "12:18: \"cordon height\" is not a length; expected a number with its unit, such as 90 cm; found \"1/0 in\" (not-a-length)"),
    Row("a case that leaves its folder by its name", CASE, typed("case: tidy-vine", "case: ../../etc/passwd"),
        "2:7: \"case\" must be a short name; expected small letters, digits and hyphens, such as tidy-vine; found \"../../etc/passwd\" (not-a-slug)"),
    Row("a null character", CASE, typed("level: easy", "level: ea\0sy"),
        "4:10: a character stands here that cannot be seen; expected only visible text: delete it and type the line again; found U+0000 (unseen-character)",
        "4:10: aquí hay un carácter que no se ve; se esperaba solo texto visible: bórrelo y escriba la línea de nuevo; se encontró U+0000 (unseen-character)"),
    Row("half a character", CASE, typed("level: easy", "level: ea\ud800sy"),
        "4:10: this file is not saved as UTF-8 text; expected UTF-8: save it again from your editor with that encoding (not-utf-8)"),
    Row("a space without width, which makes two names look alike", CASE, typed("level: easy", "level\u200b: easy"),
        "4:6: a character stands here that cannot be seen; expected only visible text: delete it and type the line again; found U+200B (unseen-character)",
        "4:6: aquí hay un carácter que no se ve; se esperaba solo texto visible: bórrelo y escriba la línea de nuevo; se encontró U+200B (unseen-character)"),
    Row("a mark that turns the writing round", CASE, typed("level: easy", "level: \u202eysae"),
        "4:8: a character stands here that cannot be seen; expected only visible text: delete it and type the line again; found U+202E (unseen-character)"),
    Row("a joiner of letters, which may be meant in a text but is no part of a name", CASE, typed("level: easy", "lev\u200del: easy"),
        "4:1: \"lev<U+200D>el\" is not known here; did you mean \"level\"? (unknown-key)"),
    Row("a terminal's command", CASE, typed("level: easy", "level: \x1b[31measy"),
        "4:8: a character stands here that cannot be seen; expected only visible text: delete it and type the line again; found U+001B (unseen-character)"),
    Row("saved in two bytes a letter", CASE, GOOD.encode("utf-16"),
        "1:1: this file is not saved as UTF-8 text; expected UTF-8: save it again from your editor with that encoding (not-utf-8)"),
    Row("saved in an old Western encoding", CASE, "case: tidy-vine\nauthor: Iñaki\n".encode("latin-1"),
        "2:10: this file is not saved as UTF-8 text; expected UTF-8: save it again from your editor with that encoding (not-utf-8)",
        "2:10: este archivo no está guardado como texto UTF-8; se esperaba UTF-8: guárdelo de nuevo desde su editor con esa codificación (not-utf-8)"),
    Row("two marks of byte order", CASE, "\ufeff\ufeff".encode() + GOOD.encode(),
        "1:1: a character stands here that cannot be seen; expected only visible text: delete it and type the line again; found U+FEFF (unseen-character)"),
    Row("a hundred million bytes", CASE, sparse(100_000_000),
        "1:1: this file is too large; expected at most 1000 kB (file-too-large)",
        "1:1: este archivo es demasiado grande; se esperaban como máximo 1000 kB (file-too-large)"),
    Row("an empty file", CASE, b"",
        "1:1: this file is empty (empty-file)"),
    Row("a folder in the place of a file", CASE, folder,
        "1:1: this is a folder; expected a file (is-a-folder)"),
    Row("a pipe, which would be waited on for ever", CASE, pipe,
        "1:1: this file cannot be opened; expected a plain file that you may read (unreadable-file)",
        "1:1: este archivo no se puede abrir; se esperaba un archivo corriente que usted pueda leer (unreadable-file)"),
    Row("a socket", CASE, listening,
        "1:1: this file cannot be opened; expected a plain file that you may read (unreadable-file)"),
    Row("a device without end", CASE, link("/dev/zero"), OUTSIDE),
    Row("a link to itself", CASE, link("tidy-vine.yml"), NOWHERE),
    Row("a link to nothing", CASE, link("nowhere.yml"), NOWHERE),
    Row("two links round and round", CASE, round_and_round, NOWHERE),
    Row("a case that links to a file of the machine", CASE, link(__file__), OUTSIDE, OUTSIDE_ES),
    Row("a case that links to a file beside the handbook", CASE, beside_the_handbook, OUTSIDE),
    Row("a case that links to something hidden in the handbook, such as a password of git's", CASE, to_hidden, OUTSIDE),
    Row("a folder of photographs that is a link out", "content/cases/photos", link(HERE), OUTSIDE),
    Row("a photograph that is a link out", "content/cases/photos/vine.jpg", link(__file__), OUTSIDE),
    Row("the folder of all cases a link out", "content/cases", link(HERE), OUTSIDE, OUTSIDE_ES),
    Row("the folder of everything a link out", "content", link(HERE), OUTSIDE),
    Row("the profile a link out", "content/profile.yml", link(__file__), OUTSIDE, OUTSIDE_ES),
    Row("the blocks a link out", "content/blocks.yml", link(__file__), OUTSIDE),
    Row("the safety notes a link out", "content/safety/notes.yml", link(__file__), OUTSIDE),
    Row("a rule's vine a link out", "content/rules/too-many-buds/bad.yml", link(__file__), OUTSIDE),
    Row("the folder of the quizzes a link out", "quizzes", link(HERE), OUTSIDE, OUTSIDE_ES),
    Row("a quiz that is a link out", "quizzes/first-week.yml", link(__file__), OUTSIDE),
    Row("the chapters of a language a link out", "content/chapters/en", link(HERE), OUTSIDE),
    Row("a link out behind a link within", CASE, within_then_out, OUTSIDE),
    Row("a file in the place of the quizzes' folder", "quizzes", b"quiz: a\n", NO_FOLDER, NO_FOLDER_ES),
    Row("a file in the place of the cases' folder", "content/cases", b"case: a\n", NO_FOLDER),
    Row("a file in the place of the chapters' folder", "content/chapters", b"# A\n", NO_FOLDER),
    Row("a sheet with a mark never closed", SHEET, b'position,at\nL1,"5 cm\n',
        "2:4: a quotation mark opens here and is never closed; expected the same mark again at the end of the text (open-quote)",
        "2:4: aquí se abren comillas que no se cierran; se esperaban las mismas comillas al final del texto (open-quote)"),
    Row("a sheet too large for any vine", SHEET, sparse(300_000),
        "1:1: this file is too large; expected at most 200 kB (file-too-large)"),
    Row("a sheet without headings", SHEET, b"a,b\n1,2\n",
        "1:1: no line of headings is found; expected a line that begins with \"position\": position, at (cm), wood, letter, from, up (cm), age (years), length (cm), thickness (mm), buds, internode (cm), condition, lean (csv-no-headings)"),
    Row("a spreadsheet's own format", SHEET, b"PK\x03\x04\x14\x00\x06\x00\x08\x00",
        "1:3: a character stands here that cannot be seen; expected only visible text: delete it and type the line again; found U+0003 (unseen-character)"),
    Row("a chapter that links to a file of the machine", f"{CHAPTERS}/tools.md", link(__file__), OUTSIDE, OUTSIDE_ES),
    Row("a picture that links to a file of the machine", f"{CHAPTERS}/key.png", link(__file__), OUTSIDE),
    Row("a folder of pictures that is a link out", f"{CHAPTERS}/pictures", link(HERE), OUTSIDE),
    Row("a chapter that links to nothing", f"{CHAPTERS}/tools.md", link("nowhere.md"), NOWHERE, NOWHERE_ES),
    Row("a folder that links to the folder above, round and round", f"{CHAPTERS}/round", link(".."),
        "1:1: this is a link to another folder; expected a folder of its own, with the files copied into it (linked-folder)",
        "1:1: esto es un enlace a otra carpeta; se esperaba una carpeta propia, con los archivos copiados en ella (linked-folder)"),
    Row("a chapter that is a pipe", f"{CHAPTERS}/tools.md", pipe,
        "1:1: this file cannot be opened; expected a plain file that you may read (unreadable-file)"),
    Row("a picture that is a pipe", f"{CHAPTERS}/shears.png", pipe,
        f"1:1: the photograph cannot be opened; expected a plain file that you may read; found {CHAPTERS}/shears.png (photo-unreadable)"),
    Row("a paper that is a pipe", f"{CHAPTERS}/shears.pdf", pipe,
        "1:1: this file cannot be opened; expected a plain file that you may read (unreadable-file)"),
    Row("a chapter longer than a booklet", f"{CHAPTERS}/tools.md", sparse(100_001),
        "1:1: this file is too large; expected at most 100 kB (file-too-large)"),
    Row("a picture larger than any camera's", f"{CHAPTERS}/shears.png", sparse(40_000_001),
        f"1:1: the photograph's file is too large; expected at most 40 MB; found {CHAPTERS}/shears.png (photo-too-large)"),
    Row("a paper larger than any phone should load", f"{CHAPTERS}/shears.pdf", sparse(20_000_001),
        "1:1: this file is too large; expected at most 20000 kB (file-too-large)",
        "1:1: este archivo es demasiado grande; se esperaban como máximo 20000 kB (file-too-large)"),
    Row("a picture that is only named so", f"{CHAPTERS}/shears.jpg", b"a letter to the trainer\n",
        f"1:1: this file is no JPEG, PNG or WebP picture, whatever its name ends with; expected one of these three; save a HEIC photo as JPEG first; found {CHAPTERS}/shears.jpg (photo-not-a-picture)",
        f"1:1: este archivo no es una imagen JPEG, PNG ni WebP, termine como termine su nombre; se esperaba una de estas tres; guarde antes como JPEG una foto HEIC; se encontró {CHAPTERS}/shears.jpg (photo-not-a-picture)"),
    Row("a picture copied only in part", f"{CHAPTERS}/shears.png", PNG[: len(PNG) // 2],
        f"1:1: the photograph's file is damaged or was copied only in part; expected a whole picture: copy it again; found {CHAPTERS}/shears.png (photo-damaged)"),
    Row("a picture of a few bytes that claims a mountain of pixels", f"{CHAPTERS}/shears.png", claiming(60_000, 60_000),
        f"1:1: the photograph has too many pixels; expected at most 64 million; found {CHAPTERS}/shears.png (photo-too-many-pixels)"),
    Row("a file of a kind that a camera may have written into and we cannot clean", f"{CHAPTERS}/shears.heic", b"ftypheic", LEFT_OUT,
        "1:1: warning: este archivo está junto a los capítulos y no se publica; se esperaban imágenes (.jpg, .png, .webp), dibujos (.svg) y documentos (.pdf, .txt, .csv); guarde antes como JPEG una foto HEIC (beside-left-out)"),
    Row("a film, in which phones write the place", f"{CHAPTERS}/shears.mp4", b"ftypmp42", LEFT_OUT),
    Row("a whole page with scripts of its own", f"{CHAPTERS}/shears.html", b"<script>alert(1)</script>", LEFT_OUT),
    Row("a drawing that runs a script", f"{CHAPTERS}/shears.svg", b'<svg xmlns="http://www.w3.org/2000/svg">\n <script>alert(1)</script></svg>',
        '2:2: this drawing holds more than lines and letters; expected no script, no photograph, no link and nothing about who made it: save it as plain SVG, or as PNG; found "<script" (more-than-a-drawing)',
        '2:2: este dibujo tiene más que líneas y letras; no se esperaba ningún programa, fotografía, enlace ni dato de quien lo hizo: guárdelo como SVG simple, o como PNG; se encontró "<script" (more-than-a-drawing)'),
    *(Row(f"a drawing with {what}", f"{CHAPTERS}/shears.svg", f"<svg{inside}</svg>".encode(), f"1:{column}: {MORE} found \"{found}\" (more-than-a-drawing)")
      for what, inside, column, found in HIDING),
    Row("a chapter in an old encoding", f"{CHAPTERS}/tools.md", b"# Tools\n\nI\xf1aki\n",
        "3:2: this file is not saved as UTF-8 text; expected UTF-8: save it again from your editor with that encoding (not-utf-8)"),
    Row("a chapter with a null character", f"{CHAPTERS}/tools.md", b"# Tools\n\na\0b\n",
        "3:2: a character stands here that cannot be seen; expected only visible text: delete it and type the line again; found U+0000 (unseen-character)",
        "3:2: aquí hay un carácter que no se ve; se esperaba solo texto visible: bórrelo y escriba la línea de nuevo; se encontró U+0000 (unseen-character)"),
    Row("a name with a new line and a terminal's command in it", f"{CHAPTERS}/to\nols\x1b[31m.md", b"# A title\n",
        "1:1: this file's name holds a character that not every system can store or link to; expected letters, digits, hyphens and a dot (odd-file-name)"),
    Row("a name of bytes that are no letters", f"{CHAPTERS}/to\udcffols.md", b"# A title\n",
        "1:1: this file's name holds a character that not every system can store or link to; expected letters, digits, hyphens and a dot (odd-file-name)"),
    Row("a chapter in the place of a page of ours", f"{CHAPTERS}/index.md", b"# Mine\n",
        "1:1: a page of the handbook has this name already; expected another file name (chapter-name-taken)"),
    Row("a name that an address would cut short", f"{CHAPTERS}/which one?.md", b"# Which\n",
        "1:1: this file's name holds a character that not every system can store or link to; expected letters, digits, hyphens and a dot (odd-file-name)",
        "1:1: el nombre de este archivo tiene un carácter que no todos los sistemas pueden guardar o enlazar; se esperaban letras, cifras, guiones y un punto (odd-file-name)"),
    Row("two names that are one on other systems", f"{CHAPTERS}/tools.md", alike,
        "1:1: but for large and small letters this file is named as TOOLS.md, and many systems keep only one of them; expected another name (names-alike)",
        "1:1: salvo por las mayúsculas, este archivo se llama como TOOLS.md, y muchos sistemas guardan solo uno de los dos; se esperaba otro nombre (names-alike)"),
    Row("a case named in large letters", "content/cases/Tidy-Vine.yml", GOOD.encode(),
        "2:1: the short name differs from the name of the file; expected \"Tidy-Vine\"; found \"tidy-vine\" (not-the-file-name)"),
    Row("a source that runs a script", "content/sources.yml", b"a: {title: A, kind: published, read: read, url: 'javascript:alert(1)'}\n",
        "1:49: \"url\" is not a web address; expected it to begin with https:// or http://; found \"javascript:alert(1)\" (not-an-address)"),
    Row("a figure that leads out of its file by its name", "content/figures.yml", b"../a: {value: 1}\n",
        "1:1: \"../a\" must be a short name; expected small letters, digits and hyphens, such as tidy-vine; found \"../a\" (not-a-slug)"),
)
# fmt: on
