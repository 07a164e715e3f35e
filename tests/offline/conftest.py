"""A part of the demo's site, as it is and as it is after an update, on a web host."""

import re
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext

from pencilwood.pages.finished import content_hash
from pencilwood.site.offline import OFFLINE_WORKER, offline_worker
from web_host import WebHost, web_host

PAGES = ("index", "vines", "rules", "cases/tidy-vine", "quizzes/before-the-first-day")
SCRIPTS = ("pencilwood.js", "pencilwood-quiz.js")


def finish_build(site: Path, build: int) -> None:
    """Let the scripts and every page tell their build, and write the worker anew."""
    versions = {}
    for name in SCRIPTS:
        script = site / "assets" / "pencilwood" / name
        script.write_text(f"{script.read_text('utf-8')};window.scriptBuild={build};", "utf-8")
        versions[name] = content_hash(script.read_bytes())
    for path in site.rglob("*.html"):
        html = path.read_text("utf-8")
        for name, version in versions.items():
            html = re.sub(rf"/{re.escape(name)}\?v=\w+", f"/{name}?v={version}", html)
        html = re.sub(r' data-build="\d"', "", html)
        path.write_text(html.replace("<body", f'<body data-build="{build}"', 1), "utf-8")
    (site / OFFLINE_WORKER).write_text(offline_worker(site), "utf-8")


@pytest.fixture(scope="session")
def first_build(built_site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    site = tmp_path_factory.mktemp("first") / "site"
    shutil.copytree(
        built_site / "assets", site / "assets", ignore=shutil.ignore_patterns("practice")
    )
    shutil.copytree(built_site / "search", site / "search")
    for folder in ("", "es/"):
        names = [f"{folder}{name}.html" for name in (*PAGES, "offline")]
        for name in (*names, f"{folder}manifest.webmanifest"):
            (site / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(built_site / name, site / name)
    finish_build(site, 1)
    return site


@pytest.fixture(scope="session")
def second_build(first_build: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Every page has changed with the script; one page is gone."""
    site = tmp_path_factory.mktemp("second") / "site"
    shutil.copytree(first_build, site)
    for folder in ("", "es/"):
        (site / f"{folder}cases/tidy-vine.html").unlink()
    finish_build(site, 2)
    return site


@pytest.fixture(params=["/crew/larkfell/"], ids=["folder"])
def host(first_build: Path, request: pytest.FixtureRequest) -> Iterator[WebHost]:
    with web_host(first_build, request.param) as one:
        yield one


@pytest.fixture
def phone(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True)
    yield context
    context.close()


@pytest.fixture(scope="session")
def version_of() -> Callable[[Path], str]:
    """The version that the worker of a site carries."""

    def read(site: Path) -> str:
        found = re.search(r'"version":"(\w+)"', (site / OFFLINE_WORKER).read_text("utf-8"))
        assert found is not None
        return found[1]

    return read
