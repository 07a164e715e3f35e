"""The last thing done to a page: what its head needs, whichever site generator made it."""

from __future__ import annotations

import hashlib
import re
from functools import cache

from markupsafe import Markup

from pencilwood.assets import asset_root
from pencilwood.pages.policy import OWN_TEXT, with_policy
from pencilwood.pages.style_sheet import STYLE_SHEET, style_sheet
from pencilwood.pages.unbroken import keep_units_together

OUR_FILES = "assets/pencilwood"
"""Folder of the site that holds everything of ours that is not a page."""
MANIFEST = "manifest.webmanifest"
"""What a phone reads before it puts the handbook among its apps; one in each language's folder."""
BAR_COLOUR = "#fbf6ea"
"""Of the bar around the handbook once it is installed: the paper of its light pages."""
_HASH_LENGTH = 16
# By its fixed words first: a page holds a quarter of a megabyte of drawing and few addresses.
_OURS = re.compile(rf'{OUR_FILES}/([^"?#]+\.(?:js|css))"')
_BEFORE_OURS = re.compile(r'\b(?:src|href)="(?:\.\./|\./)*$')
_FAR_ENOUGH_BACK = 80
_WAITING = re.compile(r'<script (src="[^"]+")></script>')
_EXERCISES = re.compile(
    rf'<script src="[^"]*{OUR_FILES}/pencilwood(?:-quiz)?\.js[^"]*" defer></script>\n?'
)
_EARLY = re.compile(r"<script(?: data-early>|>__md_scope=).*?</script>\n?", re.DOTALL)
"""What must run before the page is painted, of ours and of the theme."""
_OF_TABS = re.compile(r'<script>var target=[^<]*"__tabbed_"[^<]*</script>\n?')
"""Of the theme, for tabs, which no page of ours has."""
_SEARCH = re.compile(
    rf'<script src="([^"]*(?:{OUR_FILES}/iframe-worker|assets/javascripts/bundle)\.[^"]+)"'
    "(?: defer)?></script>"
)
_CHARSET = re.compile(r"<meta charset=[^>]*>")
_HEAD_END = Markup("</head>")
_HEAD = Markup(
    '<meta name="theme-color" content="{colour}">\n'
    '<link rel="apple-touch-icon" href="{up}/{assets}/icons/icon-192.png">\n'
    '<script src="{up}/{assets}/offline.js" data-root="{up}" data-manifest="{manifest}" defer>'
    "</script>\n"
)
_HEAD_OF_LIVE = Markup('<script src="{up}/{assets}/offline.js" defer></script>\n')
"""The same script, which then keeps nothing."""


def finish(html: str, up: str, folder: str, *, live: bool = False, frames: bool = False) -> str:
    """A page ready to be published; nothing may be changed in it afterwards.

    `up` leads from the page to the site's root, `folder` from there to the pages of its language.
    A `live` page is shown while it is written: it is not kept on a device. One with `frames` may
    open another page of ours in itself.
    """
    head = (_HEAD_OF_LIVE if live else _HEAD).format(
        colour=BAR_COLOUR, up=up, assets=OUR_FILES, manifest=f"{up}/{folder}{MANIFEST}"
    )
    html = html.replace(_HEAD_END, head + _HEAD_END, 1)
    if not live:
        # Our own script asks for it (site_assets/js/late_search.mjs).
        html = _SEARCH.sub(r'<script src="\1" type="text/later"></script>', with_versions(html))
    html = keep_units_together(_unhindered(html))
    return with_policy(html, live=live, frames=frames)


def _unhindered(html: str) -> str:
    """The page with no script that it must wait for while it is read.

    Scripts run in their order once all is there, and the exercise's waits for no other. It is asked
    for at once: a browser that meets a policy in a page does not look ahead for what comes further
    down. A script in the page itself, however short, would wait for all styles above it, and the
    rest of the page for the script: so those stand first.
    """
    html = _OF_TABS.sub("", _WAITING.sub(r"<script \1 defer></script>", html))
    # Never a script out of a trainer's own text, which the policy must find where it stands.
    head, own, rest = html.partition(OWN_TEXT[0])
    first = [*_EARLY.findall(head), *dict.fromkeys(_EXERCISES.findall(html))]
    early = "".join(f"\n{one.strip()}" for one in first)
    html = _EXERCISES.sub("", f"{_EARLY.sub('', head)}{own}{rest}")
    return _CHARSET.sub(lambda found: found[0] + early, html, count=1)


def with_versions(html: str) -> str:
    """The page with the hash of each script and style of ours behind its address.

    So no browser, and nothing between it and the web host, gives an old script to a new page.
    """
    return _OURS.sub(_versioned, html)


def _versioned(found: re.Match[str]) -> str:
    start = found.start()
    before = found.string[max(0, start - _FAR_ENOUGH_BACK) : start]
    version = _version(found[1]) if _BEFORE_OURS.search(before) else None
    return found[0] if version is None else f'{OUR_FILES}/{found[1]}?v={version}"'


@cache
def _version(name: str) -> str | None:
    """The beginning of the hash of one of our own files; None for a file made in a build."""
    if name == STYLE_SHEET:
        return content_hash(style_sheet())
    path = asset_root() / name
    return content_hash(path.read_bytes()) if path.is_file() else None


@cache
def our_versions() -> str:
    """Changes with every script and style of ours, whose hashes stand in pages."""
    root = asset_root()
    names = (path.relative_to(root).as_posix() for path in sorted(root.rglob("*.*s")))
    return content_hash(repr([(name, _version(name)) for name in names]).encode())


def content_hash(data: bytes) -> str:
    """Sixteen hexadecimal digits of a SHA-256, by which the browser part knows a file."""
    return hashlib.sha256(data).hexdigest()[:_HASH_LENGTH]
