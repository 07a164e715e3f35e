"""Files that no trainer writes on purpose, and what is said of each."""

from __future__ import annotations

import os
import shutil
import socket
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from case_files import sample

GOOD = sample()
CASE = "content/cases/tidy-vine.yml"
CHAPTERS = "content/chapters/en"
SHEET = "row 7.csv"
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


def outside(path: Path) -> None:
    """A link to a file that is none of the handbook's."""
    secret = path.parents[3] / "secret.txt"
    secret.write_text("# A secret\n", "utf-8")
    path.symlink_to(secret)


def alike(path: Path) -> None:
    for name in ("TOOLS.md", path.name):
        path.with_name(name).write_text("no title", "utf-8")


# fmt: off
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
    Row("a device without end", CASE, link("/dev/zero"),
        "1:1: this file cannot be opened; expected a plain file that you may read (unreadable-file)"),
    Row("a link to itself", CASE, link("tidy-vine.yml"),
        "1:1: this file cannot be opened; expected a plain file that you may read (unreadable-file)"),
    Row("a link to nothing", CASE, link("nowhere.yml"),
        "1:1: there is no such file (missing-file)"),
    Row("a sheet with a mark never closed", SHEET, b'position,at\nL1,"5 cm\n',
        "2:4: a quotation mark opens here and is never closed; expected the same mark again at the end of the text (open-quote)",
        "2:4: aquí se abren comillas que no se cierran; se esperaban las mismas comillas al final del texto (open-quote)"),
    Row("a sheet too large for any vine", SHEET, sparse(300_000),
        "1:1: this file is too large; expected at most 200 kB (file-too-large)"),
    Row("a sheet without headings", SHEET, b"a,b\n1,2\n",
        "1:1: no line of headings is found; expected a line that begins with \"position\": position, at (cm), wood, letter, from, up (cm), age (years), length (cm), thickness (mm), buds, internode (cm), condition, lean (csv-no-headings)"),
    Row("a spreadsheet's own format", SHEET, b"PK\x03\x04\x14\x00\x06\x00\x08\x00",
        "1:3: a character stands here that cannot be seen; expected only visible text: delete it and type the line again; found U+0003 (unseen-character)"),
    Row("a chapter that links to a file of the machine", f"{CHAPTERS}/tools.md", outside,
        "1:1: this is a link to a file outside the chapters' folder; expected the file itself, copied to this place (leads-outside)",
        "1:1: esto es un enlace a un archivo fuera de la carpeta de los capítulos; se esperaba el archivo mismo, copiado a este lugar (leads-outside)"),
    Row("a picture that links to a file of the machine", f"{CHAPTERS}/key.png", outside,
        "1:1: this is a link to a file outside the chapters' folder; expected the file itself, copied to this place (leads-outside)",
        "1:1: esto es un enlace a un archivo fuera de la carpeta de los capítulos; se esperaba el archivo mismo, copiado a este lugar (leads-outside)"),
    Row("a chapter that links to nothing", f"{CHAPTERS}/tools.md", link("nowhere.md"),
        "1:1: this is a link that leads to no file; expected the file itself, copied to this place (leads-nowhere)",
        "1:1: esto es un enlace que no lleva a ningún archivo; se esperaba el archivo mismo, copiado a este lugar (leads-nowhere)"),
    Row("a folder that links to the folder above, round and round", f"{CHAPTERS}/round", link(".."),
        "1:1: this is a link to another folder; expected a folder of its own, with the files copied into it (linked-folder)",
        "1:1: esto es un enlace a otra carpeta; se esperaba una carpeta propia, con los archivos copiados en ella (linked-folder)"),
    Row("a chapter that is a pipe", f"{CHAPTERS}/tools.md", pipe,
        "1:1: this file cannot be opened; expected a plain file that you may read (unreadable-file)"),
    Row("a picture that is a pipe", f"{CHAPTERS}/shears.png", pipe,
        "1:1: this file cannot be opened; expected a plain file that you may read (unreadable-file)"),
    Row("a chapter longer than a booklet", f"{CHAPTERS}/tools.md", sparse(100_001),
        "1:1: this file is too large; expected at most 100 kB (file-too-large)"),
    Row("a picture larger than any phone should load", f"{CHAPTERS}/shears.png", sparse(20_000_001),
        "1:1: this file is too large; expected at most 20000 kB (file-too-large)",
        "1:1: este archivo es demasiado grande; se esperaban como máximo 20000 kB (file-too-large)"),
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
