"""What several test files share: the built site, Chromium, Node and their skips."""

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NoReturn

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, Page

from browser import CHROMIUM_ARGS, DESKTOP, PHONE, chromium_here, watched_page

PROJECT = Path(__file__).resolve().parent.parent

# How long one example takes says how busy the machine is, not whether the code is right.
settings.register_profile("any machine", deadline=None)
settings.load_profile("any machine")


def all_tools_required() -> bool:
    """Whether a missing tool is a failure (as in continuous integration) and not a skip."""
    return os.environ.get("CI") == "true" or os.environ.get("PENCILWOOD_REQUIRE_ALL") == "1"


def give_up(reason: str) -> NoReturn:
    """Skip the test that needs a missing tool, or fail it where every tool is required."""
    if all_tools_required():
        pytest.fail(f"{reason}; every tool is required here", pytrace=False)
    pytest.skip(reason)


def pytest_addoption(parser: pytest.Parser) -> None:
    """Refresh the golden files: `pytest --refresh-golden`, then read the difference."""
    parser.addoption("--refresh-golden", action="store_true", help="write golden files anew")


@pytest.fixture
def refresh_golden(request: pytest.FixtureRequest) -> bool:
    """Whether golden files are written anew instead of compared."""
    return bool(request.config.getoption("--refresh-golden"))


def pytest_configure(config: pytest.Config) -> None:
    """All tests that build share what is kept, from one run to the next; see `pencilwood.kept`."""
    os.environ.setdefault("PENCILWOOD_CACHE", str(PROJECT / ".pytest_cache" / "pencilwood"))


@pytest.fixture(scope="session")
def project() -> Path:
    return PROJECT


@pytest.fixture(scope="session")
def node() -> str:
    """The path of Node.js 20 or newer."""
    found = shutil.which("node")
    if found is None:
        give_up("Node.js is not installed")
    version = subprocess.run([found, "--version"], capture_output=True, text=True, check=True)
    if int(version.stdout.strip().lstrip("v").split(".")[0]) < 20:
        give_up(f"Node.js 20 or newer is needed; this is {version.stdout.strip()}")
    return found


@pytest.fixture(scope="session")
def npm(node: str) -> str:
    """The path of npm, with the pinned browser tools installed."""
    found = shutil.which("npm")
    if found is None:
        give_up("npm is not installed")
    if not (PROJECT / "node_modules" / ".package-lock.json").is_file():
        give_up("the browser tools are not installed (npm ci)")
    return found


@pytest.fixture(scope="session")
def chromium_path() -> str:
    found = chromium_here()
    if found is None:
        give_up("Chromium is not installed")
    return found


@pytest.fixture(scope="session")
def browser_type_launch_args(chromium_path: str) -> dict[str, Any]:
    """Drive the machine's own Chromium; pytest-playwright asks for this by name."""
    return {"executable_path": chromium_path, "args": CHROMIUM_ARGS}


@pytest.fixture
def phone_page(browser: Browser) -> Iterator[Page]:
    """A page as a worker sees it: narrow, touched, not clicked."""
    yield from watched_page(browser, viewport=PHONE, has_touch=True, is_mobile=True)


@pytest.fixture
def desktop_page(browser: Browser) -> Iterator[Page]:
    """A page as a trainer or an educator sees it."""
    yield from watched_page(browser, viewport=DESKTOP)


@pytest.fixture(scope="session")
def built_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo handbook, built once for all tests as a trainer builds it."""
    site = tmp_path_factory.mktemp("handbook") / "site"
    # Not just any script on the PATH: the test must build with this very checkout.
    command = [str(Path(sys.executable).with_name("pencilwood")), "build", "--site", str(site)]
    done = subprocess.run(command, cwd=PROJECT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    assert (site / "index.html").is_file(), done.stdout
    return site
