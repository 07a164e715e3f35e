"""A handbook outside this repository, with only an installed package; then with a newer one."""

import os
import re
import shutil
import subprocess
import sys
import sysconfig
import venv
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from pencilwood import __version__
from pencilwood.site.starter import starter_files
from starting import make_quick

Tree = dict[str, bytes]
_OF_A_WHEEL = (
    "generator", "content", "quizzes", "site_assets", "mkdocs.yml", "pyproject.toml", "README.md",
    "LICENSE",
)  # fmt: skip


def run(*command: str | Path, cwd: Path, env: Mapping[str, str] | None = None) -> str:
    done = subprocess.run(
        [str(word) for word in command],
        cwd=cwd,
        env={**os.environ, **(env or {})},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout + done.stderr


def build_wheel(source: Path, into: Path) -> Path:
    run(sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", into, cwd=source)
    (wheel,) = into.glob("*.whl")
    return wheel


def newer_source(project: Path, into: Path) -> Path:
    """This very project as it might be next winter: another version, one more trade word."""
    for name in _OF_A_WHEEL:
        if (project / name).is_dir():
            no_cache = shutil.ignore_patterns("__pycache__")
            shutil.copytree(project / name, into / name, ignore=no_cache)
        else:
            shutil.copy(project / name, into / name)
    init = into / "generator" / "pencilwood" / "__init__.py"
    init.write_text(init.read_text("utf-8").replace(__version__, "99.0.0"), "utf-8")
    glossary = into / "content" / "glossary.yml"
    words = glossary.read_text("utf-8")
    source = re.search(r"^  source: ([\w-]+)$", words, re.MULTILINE)
    assert source is not None
    added = f"""
next-winters-word:
  en: {{word: next winter's word, plural: words, meaning: It came with a newer package.}}
  es: {{word: palabra nueva, plural: palabras, meaning: Vino con un paquete más nuevo.}}
  source: {source[1]}
"""
    glossary.write_text(words.rstrip() + added, "utf-8")
    return into


class Place:
    """A virtual environment that has our wheel, and takes all else from the tests' own."""

    def __init__(self, folder: Path) -> None:
        venv.create(folder / "venv", with_pip=False)
        self.home = folder
        self.python = folder / "venv" / "bin" / "python"
        # Its .pth files are not read there, so the checkout is not found through it.
        self.env = {"PYTHONPATH": sysconfig.get_path("purelib"), "PENCILWOOD_CACHE": "off"}

    def install(self, wheel: Path) -> None:
        pip = (sys.executable, "-m", "pip", "--disable-pip-version-check", "--python", self.python)
        run(*pip, "install", "--quiet", "--no-index", "--no-deps", wheel, cwd=self.home)

    def pencilwood(self, *arguments: str) -> str:
        command = self.python.with_name("pencilwood")
        return run(command, *arguments, cwd=self.home, env=self.env)

    def where(self) -> str:
        told = "import pencilwood as p; print(p.__version__, p.__file__)"
        return run(self.python, "-c", told, cwd=self.home, env=self.env).strip()


@pytest.mark.slow
def test_start_build_and_upgrade_with_the_installed_package_alone(
    project: Path, tmp_path: Path, tree: Callable[[Path], Tree]
) -> None:
    outside = tmp_path / "outside"
    outside.mkdir()
    place = Place(outside)
    place.install(build_wheel(project, tmp_path / "first"))
    version, file = place.where().split(" ", 1)
    assert (version, Path(file).is_relative_to(outside)) == (__version__, True)

    place.pencilwood("start", "book", "--name", "High Bank", "--language", "en")
    book = outside / "book"
    from_checkout = starter_files("High Bank", ("en",))
    assert tree(book) == {name: text.encode() for name, text in from_checkout.items()}
    make_quick(book)
    before = tree(book)
    assert "Nothing to put right. Cases proved: 3; warnings: 0." in place.pencilwood(
        "check", "--root", "book"
    )
    place.pencilwood("build", "--root", "book", "--zip", "book.zip")
    page = (book / "site" / "words.html").read_text("utf-8")
    assert "High Bank pruning handbook" in page
    assert "next winter" not in page
    assert (outside / "book.zip").is_file()
    assert tree(book) == before

    newer = newer_source(project, tmp_path / "source")
    place.install(build_wheel(newer, tmp_path / "second"))
    assert place.where().startswith("99.0.0 ")
    place.pencilwood("build", "--root", "book")
    assert "next winter" in (book / "site" / "words.html").read_text("utf-8")
    assert tree(book) == before, "a newer package has changed the trainer's own files"
