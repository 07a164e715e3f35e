"""Every package that we install is pinned to a version and to the hashes of its files."""

import re
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement

HASH = re.compile(r"--hash=sha256:[0-9a-f]{64}")
ASKED = ("site", "test", "fallback", "mutants", "node", "pins")


def pinned(project: Path, name: str) -> dict[str, tuple[Requirement, int]]:
    """The requirements of a file of pins and how many hashes each has, by the usual name."""
    text = (project / "generator" / "requirements" / f"{name}.txt").read_text("utf-8")
    found = {}
    for line in text.replace("\\\n", " ").splitlines():
        if line and not line.lstrip().startswith(("#", "--only-binary")):
            wanted = Requirement(line.split("--hash", 1)[0])
            found[usual(wanted.name)] = (wanted, len(HASH.findall(line)))
    return found


def asked(project: Path, name: str) -> list[Requirement]:
    """What a file asks for by name, with what the files that it reads ask for."""
    lines = (project / "generator" / "requirements" / f"{name}.in").read_text("utf-8").splitlines()
    words = [line.split(" #", 1)[0].strip() for line in lines]
    read = [word.removeprefix("-r ").removesuffix(".in") for word in words if word[:3] == "-r "]
    own = [Requirement(word) for word in words if word and word[0] not in "#-"]
    return own + [each for other in read for each in asked(project, other)]


def usual(name: str) -> str:
    """A package's name as PyPI compares names (PEP 503)."""
    return re.sub(r"[-_.]+", "-", name).lower()


@pytest.mark.parametrize("name", ASKED)
def test_every_requirement_has_one_version_and_hashes(project: Path, name: str) -> None:
    pins = pinned(project, name)
    assert pins
    assert [str(pin) for pin, _ in pins.values() if not str(pin.specifier).startswith("==")] == []
    assert [str(pin) for pin, hashes in pins.values() if not hashes] == []


def test_no_file_of_pins_is_forgotten(project: Path) -> None:
    folder = project / "generator" / "requirements"
    assert {path.stem for path in folder.iterdir()} == set(ASKED)


@pytest.mark.parametrize("name", ASKED)
def test_pins_are_wheels_only(project: Path, name: str) -> None:
    """A pin that is built from its source would run code of its own while it is installed."""
    text = (project / "generator" / "requirements" / f"{name}.txt").read_text("utf-8")
    assert "\n--only-binary :all:\n" in text


@pytest.mark.parametrize("name", ASKED)
def test_pins_cover_what_is_asked_for(project: Path, name: str) -> None:
    pins = pinned(project, name)
    wanted = asked(project, name)
    if name in ("site", "test", "fallback", "mutants"):
        package = tomllib.loads((project / "pyproject.toml").read_text("utf-8"))["project"]
        needs = [*package["dependencies"], *package["optional-dependencies"]["print"]]
        wanted += [Requirement(need) for need in needs]
    missing = [
        str(need)
        for need in wanted
        if usual(need.name) not in pins
        or not need.specifier.contains(str(pins[usual(need.name)][0].specifier)[2:])
    ]
    assert not missing, "run `make pins`"


def test_tests_run_with_the_very_versions_of_the_site(project: Path) -> None:
    site, test = pinned(project, "site"), pinned(project, "test")
    assert {
        name: str(pin) for name, (pin, _) in site.items() if test.get(name, ("",))[0] != pin
    } == {}
