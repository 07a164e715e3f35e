"""Reads `mkdocs.yml`: how the site looks, and which plugins make it; nothing that could do harm.

The site generator would take far more. It clears the folder that it writes into, reads whatever
folder it is told to, and runs code that it is pointed at, so only what a handbook needs is taken.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from pencilwood.cases.fields import Key, ListOf, Row, Schema, Table, found, one_value
from pencilwood.cases.kinds import Choice, Text
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.yaml_nodes import ListNode, LostNode, MapNode, Node, TextNode, read_nodes
from pencilwood.findings import Finding
from pencilwood.places import Place
from pencilwood.words import LANGUAGES

CHAPTERS = "content/chapters"
PLUGINS = ("search", "pencilwood", "offline")
"""Pages and their addresses rest on all three; others would change pages whose bytes are sealed."""
EXTENSIONS = (
    "admonition", "tables", "toc", "attr_list", "abbr", "def_list", "fenced_code", "footnotes",
    "sane_lists",
)  # fmt: skip
"""What comes with the Markdown reader and brings in no other file."""
OURS = ("content", "quizzes", "generator", "site_assets", "tests", "node_modules")
"""Folders that hold sources; a site is never written into them."""
_YES_NO = {"true": True, "false": False}


@dataclass(frozen=True)
class Settings:
    """What was read of settings in which nothing is wrong."""

    places: Mapping[str, Place]
    """Where each setting stands."""
    values: Mapping[str, Place]
    """Where each single value stands, however deep."""


@dataclass(frozen=True)
class Anything:
    """Lines that only the site generator understands; it says itself what is wrong with them."""

    def read(self, node: Node, key: str, report: Report) -> MapNode | None:
        """The lines."""
        if isinstance(node, MapNode):
            return node
        if not isinstance(node, LostNode):
            report.add(node.place, "not-settings", key=key, found=found(node, report))
        return None

    def schema(self) -> Schema:
        """An object."""
        return {"type": "object"}


@dataclass(frozen=True)
class SiteFolder:
    """A folder that may be cleared and written anew: in the handbook, and none of its sources."""

    def read(self, node: Node, key: str, report: Report) -> str | None:
        """Its path from the handbook's folder."""
        text = one_value(node, key, report)
        if text is None:
            return None
        parts = PurePosixPath(text).parts
        odd = not text.isprintable() or set(text) & set('\\:*?"<>|$%')
        leaves = text.startswith(("/", "~")) or ".." in parts or not parts
        hidden = any(part.startswith(".") for part in parts)
        if odd or leaves or hidden or parts[0].casefold() in OURS:
            report.add(node.place, "not-a-site-folder", key=key, found=quoted(text))
            return None
        return text

    def schema(self) -> Schema:
        """Text."""
        return {"type": "string", "examples": ["site"]}


@dataclass(frozen=True)
class Part:
    """One of the parts that a handbook's site is made with, by its name."""

    known: tuple[str, ...]
    with_settings: tuple[str, ...]
    """Those that may have settings of their own."""
    misfit: str
    """The finding for another name."""

    def read(self, node: Node, key: str, report: Report) -> str | None:
        """The name."""
        name, options = node, None
        if isinstance(node, MapNode) and len(node.pairs) == 1:
            name, options = node.pairs[0]
        text = one_value(name, key, report)
        if text is None or not report.check_known(text, name.place, self.known, self.misfit):
            return None
        if options is not None and text not in self.with_settings:
            report.add(options.place, "takes-no-settings", name=quoted(text))
        elif options is not None:
            Anything().read(options, text, report)
        return text

    def schema(self) -> Schema:
        """Text, or an object with one name."""
        return {"type": ["string", "object"]}


def _yes(only: str = "") -> Choice[bool]:
    return Choice({only: _YES_NO[only]} if only else _YES_NO)


_TOGGLE = Table(
    "The switch between the schemes.",
    (
        Key("icon", Text(), "Icon of the switch."),
        Key("name", Text(), "Its words; pages say it in their own language."),
    ),
)
_PALETTE = Table(
    "One scheme of colours.",
    (
        Key("media", Text(), "When it is taken by itself.", False),
        Key("scheme", Choice({"default": "default", "slate": "slate"}), "Bright or dark."),
        Key("primary", Text(), "Main colour.", False),
        Key("accent", Text(), "Second colour.", False),
        Key("toggle", _TOGGLE, "The switch to the other scheme."),
    ),
)
_THEME = Table(
    "How pages look.",
    (
        Key("name", Choice({"material": "material"}), "The theme that our pages rest on."),
        Key("font", _yes("false"), "No font from elsewhere: pages ask for their own files only."),
        Key("language", Choice({one: one for one in LANGUAGES}), "Overridden on each page.", False),
        Key("icon", Anything(), "Icons of the theme.", False),
        Key("logo", Text(), "A picture of the site.", False),
        Key("favicon", Text(), "The icon of the browser's tab.", False),
        Key("features", ListOf(Text(), 0), "What the theme does.", False),
        Key("palette", ListOf(_PALETTE, 1, 2), "Schemes of colours.", False),
    ),
)


_PLUGIN = Part(PLUGINS, ("search",), "no-such-plugin")
_EXTENSION = Part(EXTENSIONS, EXTENSIONS, "no-such-extension")

SETTINGS = Table(
    "How the site of a handbook is made.",
    (
        Key("site_name", Text(), "Overridden on each page."),
        Key("docs_dir", Choice({CHAPTERS: CHAPTERS}), "Where the chapters stand."),
        Key("site_dir", SiteFolder(), "Where the site goes.", False),
        Key("site_url", Text("https?://[^\\s\"'<>]+", "not-an-address"), "Its address.", False),
        Key("site_description", Text(), "What it is about.", False),
        Key("site_author", Text(), "Who made it.", False),
        Key("strict", _yes(), "Whether a link that leads nowhere stops the build."),
        Key("theme", _THEME, "How pages look."),
        Key("plugins", ListOf(_PLUGIN), "What makes the site."),
        Key("extra", Anything(), "What the theme reads.", False),
        Key("markdown_extensions", ListOf(_EXTENSION, 0), "How chapters are read.", False),
        Key("validation", Anything(), "How links are looked at.", False),
        Key("dev_addr", Text(), "Where the preview is served.", False),
    ),
)


def read_settings(
    path: Path, file: str, *, language: str = "en"
) -> tuple[Settings | None, list[Finding]]:
    """The settings of a file in which nothing is wrong, and every slip in it."""
    report = Report(language)
    root = read_nodes(path, report, file)
    row = None if root is None else SETTINGS.read(root, "", report)
    if root is None or row is None:
        return None, report.findings()
    _check_plugins(row, report)
    whole = row.sound and not report.errors
    settings = Settings(row.places, dict(reversed(list(_values(root)))))
    return settings if whole else None, report.findings()


def _check_plugins(row: Row, report: Report) -> None:
    given = row.values.get("plugins")
    # A name that is misspelt is not missing as well.
    if not isinstance(given, tuple) or not row.sound:
        return
    names = [placed.value for placed in given]
    for needed in PLUGINS:
        times = names.count(needed)
        if times != 1:
            name = "plugin-missing" if times == 0 else "plugin-twice"
            report.add(row.places["plugins"], name, needed=quoted(needed))


def _values(node: Node) -> Iterator[tuple[str, Place]]:
    """Every single value and its place."""
    if isinstance(node, TextNode):
        yield node.text, node.place
    elif isinstance(node, ListNode):
        for item in node.items:
            yield from _values(item)
    elif isinstance(node, MapNode):
        for _, value in node.pairs:
            yield from _values(value)
