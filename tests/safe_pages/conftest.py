"""A handbook in which every text is hostile, and the site made of it."""

import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from pencilwood import kept
from pencilwood.pages.handbook import Handbook
from pencilwood.site.publish import publish
from photo_files import encoded, vine_photo
from planting import SHORT, PlantedFile, plant
from small_handbook import add_to

# Those of other forms ask what a cane stays as, and show vines that are tied.
QUIZZES = ("before-the-first-day", "crew-leader", "cane-pruned", "head-trained", "high-cordons")
CASES = (
    "tidy-vine",
    "one-arm-vine",
    "spindly-and-diseased",
    "weak-vine",
    "hard-renovation",
    "strong-vine",
    # Three winters, and an arm made new.
    "four-spurs",
    "a-worn-out-arm",
    # Of other forms, and asked for by their quizzes.
    "two-new-canes",
    "the-head-has-climbed",
    "one-new-cane",
    "around-the-head",
    "a-side-without-spurs",
    "the-middle-stays-open",
    "hanging-spurs",
    "far-hanging-spurs",
    "upright-canes",
)
HEAD = "---\ntitle: '{title}'\nfor: worker\norder: {order}\n---\nA vine and a pair of shears.\n"


@dataclass(frozen=True)
class Planted:
    """The hostile handbook."""

    root: Path
    files: dict[str, PlantedFile]
    handbook: Handbook


RARE = """\
photo:
  file: photos/vine.jpg
  alt: {en: A vine in winter, es: Una cepa en invierno}
"""


EMPLOYER = (
    "glove cut level",
    "break every",
    "first aider",
    "emergency number",
    "assembly point",
    "spray contact",
)


def add_rare_fields(cases: Path) -> None:
    """What no vine of the demo has."""
    (cases / "photos").mkdir()
    (cases / "photos" / "vine.jpg").write_bytes(encoded(vine_photo(), "JPEG"))
    add_to(cases / "tidy-vine.yml", RARE)
    # In each language, where the demo has one text for all.
    vine = cases / "one-arm-vine.yml"
    licence = "licence: CC BY 4.0\n"
    text = vine.read_text("utf-8")
    assert licence in text
    each = "licence: {en: CC BY 4.0, es: CC BY 4.0}\norigin: {en: Larkfell, es: Larkfell}\n"
    vine.write_text(text.replace(licence, each), "utf-8")


def copy_demo(project: Path, root: Path) -> None:
    """The demo with few vines, and every chapter reduced to a hostile title."""
    shutil.copytree(project / "content", root / "content")
    (root / "quizzes").mkdir()
    for quiz in QUIZZES:
        shutil.copy(project / "quizzes" / f"{quiz}.yml", root / "quizzes")
    for case in (root / "content" / "cases").glob("*.yml"):
        if case.stem not in CASES:
            case.unlink()
    for language in ("en", "es"):
        folder = root / "content" / "chapters" / language
        for order, chapter in enumerate(sorted(folder.rglob("*.md"))):
            title = SHORT.replace("'", "''")
            chapter.write_text(HEAD.format(title=title, order=order), "utf-8")
    add_rare_fields(root / "content" / "cases")
    profile = root / "content" / "profile.yml"
    few = profile.read_text("utf-8").replace("practice vines: 200", "practice vines: 2")
    told = "".join(f"  {name}: {{en: somebody, es: alguien}}\n" for name in EMPLOYER)
    profile.write_text(f"{few}\nemployer:\n{told}", "utf-8")
    shutil.copy(project / "mkdocs.yml", root)


@pytest.fixture(scope="session")
def planted(project: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Planted]:
    root = tmp_path_factory.mktemp("hostile") / "handbook"
    before = kept.folder()
    copy_demo(project, root)
    files, opened = plant(root)
    assert opened.handbook is not None
    yield Planted(root, files, opened.handbook)
    kept.keep_in_folder(before)


@pytest.fixture(scope="session")
def hostile_site(planted: Planted) -> Path:
    site = planted.root / "site"
    published = publish(planted.root, site)
    assert published.succeeded, published.told[-3000:]
    return site
