"""What we ship of others is known, named with its licence, and free of copyleft that reaches us."""

import base64
import fnmatch
import importlib.util
import json
import re
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
from cyclonedx.schema import SchemaVersion
from cyclonedx.validation.json import JsonStrictValidator

import supply_list
from pencilwood.pages.parts_by_others import parts_by_others
from pencilwood.site.theme_files import is_of_use

# Licences that let anybody ship the work beside MIT code when its notice goes along. MPL-1.1 asks
# that changes to its own files are published; we ship those unchanged and say where they are from.
# OFL-1.1 asks that fonts stay under it and are not sold by themselves; neither of ours reserves its
# name, so that a font that was cut down may keep it.
SHIPPABLE = {"0BSD", "Apache-2.0", "CC-BY-4.0", "MIT", "MPL-1.1", "OFL-1.1", "W3C-20150513"}
# What every licence text must hold for the licence to be met: words of the licence itself.
TELLING_WORDS = {
    "0BSD": "with or without fee is hereby granted",
    "Apache-2.0": "TERMS AND CONDITIONS FOR USE, REPRODUCTION, AND DISTRIBUTION",
    "CC-BY-4.0": "https://creativecommons.org/licenses/by/4.0/",
    "MIT": "The above copyright notice and this permission notice",
    "MPL-1.1": "MOZILLA PUBLIC LICENSE",
    "OFL-1.1": "SIL OPEN FONT LICENSE Version 1.1",
    "W3C-20150513": "The full text of this NOTICE in a location viewable to users",
}


@pytest.fixture(scope="session")
def theme() -> Path:
    """Where the installed theme keeps what a site copies from it."""
    spec = importlib.util.find_spec("material")
    assert spec is not None
    assert spec.origin is not None
    return Path(spec.origin).parent / "templates"


def test_the_supply_list_is_up_to_date() -> None:
    stands = supply_list.LIST.read_text(encoding="utf-8")
    assert stands == supply_list.written(), "run `make supply-list` and read the difference"


def test_the_supply_list_is_cyclonedx() -> None:
    """CycloneDX 1.6 (ECMA-424), by the schema that its makers publish."""
    trouble = JsonStrictValidator(SchemaVersion.V1_6).validate_str(
        supply_list.LIST.read_text(encoding="utf-8")
    )
    assert trouble is None


def test_every_part_may_be_shipped_and_its_licence_goes_along(project: Path) -> None:
    for part in parts_by_others():
        assert part.licence in SHIPPABLE, part
        text = (project / "site_assets" / "licences" / part.text).read_text(encoding="utf-8")
        assert TELLING_WORDS[part.licence] in re.sub(r"\s+", " ", text), part


def test_no_licence_text_is_left_over(project: Path) -> None:
    texts = {path.name for path in (project / "site_assets" / "licences").glob("*.txt")}
    assert texts == {part.text for part in parts_by_others()}


def test_every_file_of_the_theme_in_the_site_is_named(built_site: Path, theme: Path) -> None:
    """What is in the site under a name that the theme's package has is the theme's."""
    named = [pattern for part in parts_by_others() for pattern in part.files]
    theirs = {path.relative_to(theme).as_posix() for path in (theme / "assets").rglob("*.*")}
    shipped = {path.relative_to(built_site).as_posix() for path in built_site.rglob("*.*")}
    unnamed = [name for name in sorted(theirs & shipped) if not _named(name, named)]
    fonts = {name for name in shipped if name.endswith(".woff2")}
    assert unnamed == []
    assert [name for name in fonts if not _named(name, named)] == []
    taken = theirs & shipped | fonts
    assert [pattern for pattern in named if not fnmatch.filter(taken, pattern)] == []


def test_every_font_of_papers_is_named(project: Path) -> None:
    fonts = {path.relative_to(project).as_posix() for path in project.rglob("worksheets/fonts/*")}
    named = [pattern for part in parts_by_others() for pattern in part.in_papers]
    assert fonts
    assert [name for name in fonts if not _named(name, named)] == []
    assert [pattern for pattern in named if not fnmatch.filter(fonts, pattern)] == []


def test_every_other_file_of_the_site_is_ours(built_site: Path, theme: Path) -> None:
    """Pages, what lies under our own name, and the few files that are made at the build."""
    made = r"(.*/)?(search/search_index\.(js|json)|manifest\.webmanifest|offline-worker\.js)"
    theirs = {path.relative_to(theme).as_posix() for path in (theme / "assets").rglob("*.*")}
    shipped = {path.relative_to(built_site).as_posix() for path in built_site.rglob("*.*")}
    strange = [
        name
        for name in sorted(shipped - theirs)
        if not (name.endswith(".html") or name.startswith("assets/pencilwood/"))
        and not re.fullmatch(made, name)
        and (built_site / name).is_file()
    ]
    assert strange == []


def test_every_library_in_the_themes_scripts_is_named(theme: Path) -> None:
    """The theme's source maps tell which npm packages its scripts and styles were made of."""
    found = set()
    for path in (theme / "assets").rglob("*.map"):
        for source in json.loads(path.read_text(encoding="utf-8"))["sources"]:
            if "node_modules/" in source:
                found.add(re.findall(r"node_modules/((?:@[^/]+/)?[^/]+)", source)[-1])
    assert found
    assert found == {name for part in parts_by_others() for name in part.bundled}


def test_every_set_of_icons_in_the_site_is_named(built_site: Path, theme: Path) -> None:
    """A sign in a page or a style is known by its outline, as the theme's own folder has it."""
    sets: dict[str, str] = {}
    for path in (theme / ".icons").rglob("*.svg"):
        for outline in re.findall(r' d="([^"]{25,})"', path.read_text(encoding="utf-8")):
            sets.setdefault(outline, path.relative_to(theme / ".icons").parts[0])
    pages = [built_site / "index.html", *(built_site / "assets" / "stylesheets").glob("*.css")]
    shipped = {
        sets[outline]
        for page in pages
        for outline in re.findall(r" d=[\"']([^\"']+)[\"']", page.read_text(encoding="utf-8"))
        if outline in sets
    }
    assert shipped == {part.icons for part in parts_by_others() if part.icons}


@pytest.mark.parametrize(
    ("path", "taken"),
    [
        # The Thai word breaker names no licence; no handbook speaks Thai.
        ("assets/javascripts/lunr/wordcut.js", False),
        ("assets/javascripts/lunr/tinyseg.js", False),  # Japanese
        ("assets/javascripts/lunr/min/lunr.th.min.js", False),
        ("assets/javascripts/lunr/min/lunr.es.min.js", True),  # the search in Spanish
        ("assets/javascripts/lunr/min/lunr.stemmer.support.min.js", True),  # all stems need it
        ("assets/javascripts/lunr/min/lunr.multi.min.js", True),  # two languages in one index
        ("assets/javascripts/bundle.a5f9d56c.min.js.map", False),  # for who mends the theme
        ("assets/images/favicon.png", False),  # the theme's own sign; ours is set
        ("assets/javascripts/bundle.a5f9d56c.min.js", True),
        ("assets/pencilwood/pencilwood.js", True),
    ],
)
def test_which_files_of_the_theme_a_site_takes(path: str, taken: bool) -> None:
    assert is_of_use(path) == taken


def test_the_sources_page_leads_to_each_licence(built_site: Path) -> None:
    for page in (built_site / "sources.html", built_site / "es" / "sources.html"):
        text = page.read_text(encoding="utf-8")
        for part in parts_by_others():
            lead = re.search(rf'href="([^"]*licences/{re.escape(part.text)})"', text)
            assert lead is not None, (page, part.name)
            assert (page.parent / lead[1]).is_file()
            assert part.source in text


@pytest.mark.slow
def test_the_wheel_holds_nothing_of_others_but_their_licences(
    project: Path, tmp_path: Path
) -> None:
    """Every file of the wheel is one of the checkout's; those of others are named in parts.json."""
    build = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path)]
    subprocess.run(build, cwd=project, capture_output=True, check=True)
    (wheel,) = tmp_path.glob("*.whl")
    tracked = subprocess.run(
        ["git", "ls-files", "-co", "--exclude-standard"],
        cwd=project,
        capture_output=True,
        text=True,
        check=True,
    ).stdout.splitlines()
    ours = {
        base64.b16encode((project / name).read_bytes())
        for name in tracked
        if (project / name).is_file()
    }
    with zipfile.ZipFile(wheel) as opened:
        inside = [name for name in opened.namelist() if ".dist-info/" not in name]
        strange = [name for name in inside if base64.b16encode(opened.read(name)) not in ours]
    assert inside
    assert strange == []


def _named(name: str, patterns: list[str]) -> bool:
    return any(fnmatch.fnmatch(name, pattern) for pattern in patterns)
