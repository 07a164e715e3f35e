"""A handbook with one vine and one quiz of every kind of question, and its packages."""

import shutil
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from pencilwood.packages.package import Package
from pencilwood.pages.handbook import Handbook
from pencilwood.site.exporting import choose
from pencilwood.site.handbook import open_handbook
from pencilwood.site.scorm import scorm_packages

PROJECT = Path(__file__).parent.parent
VINE, QUIZ = "tidy-vine", "small"
QUESTIONS = """\
quiz: small
title: {en: Small quiz, es: Examen breve}
intro: {en: Of every kind., es: De toda clase.}
tries: 2
questions:
  - count: buds-of-a-cane
    vine: tidy-vine
    at: R3a
    what: buds of a cane
    rules: [too-many-buds]
  - part: find-an-arm
    vine: tidy-vine
    find: arm
    chapter: reading-wood
  - order: passes
    ask: {en: Put them in order., es: Póngalas en orden.}
    steps:
      - say: {en: Look around, es: Mirar alrededor}
        why: {en: Safety comes first., es: La seguridad va primero.}
      - say: {en: Rough pass, es: Desbaste}
        why: {en: You must see the vine., es: Hay que ver la cepa.}
      - say: {en: Thinning-out pass, es: Aclareo}
        why: {en: What does not belong goes., es: Se quita lo que sobra.}
      - say: {en: Fine pass, es: Poda fina}
        why: {en: Careful cuts come last., es: Los cortes finos van al final.}
  - safe or stop: no-glasses
    ask: {en: You prune without glasses., es: Usted poda sin lentes de seguridad.}
    right: put it right
    why:
      go on: {en: A cane tip hits the eye., es: La punta da en el ojo.}
      put it right: {en: Put them on., es: Póngaselas.}
      stop and tell: {en: You need nobody., es: No necesita a nadie.}
    must know: true
  - prune: tidy-vine
passes needed: 3
"""


def write_sample(root: Path) -> Path:
    """The demo handbook, with this vine and this quiz alone."""
    shutil.copytree(PROJECT / "content", root / "content")
    for path in (root / "content" / "cases").rglob("*.yml"):
        if path.stem != VINE:
            path.unlink()
    for path in (root / "content" / "chapters").rglob("*.md"):
        if path.stem not in ("home", "reading-wood"):
            path.unlink()
    for language, title in (("en", "Reading wood"), ("es", "Leer la madera")):
        chapter = f"---\ntitle: {title}\nfor: worker\norder: 10\n---\nWood.\n"
        file = root / "content" / "chapters" / language / "reading-wood.md"
        file.write_text(chapter, encoding="utf-8")
    (root / "quizzes").mkdir()
    (root / "quizzes" / f"{QUIZ}.yml").write_text(QUESTIONS, encoding="utf-8")
    return root


@cache
def sample() -> Handbook:
    """The sample, read and proved once."""
    with TemporaryDirectory() as folder:
        opened = open_handbook(write_sample(Path(folder) / "handbook"))
    assert opened.handbook is not None, [one.render() for one in opened.findings]
    return opened.handbook


@cache
def packed(name: str, language: str = "en") -> Package:
    """The package of the vine or of the quiz."""
    (package,) = scorm_packages(sample(), choose(sample(), [name], language), language)
    return package
