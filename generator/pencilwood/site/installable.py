"""What lets a phone put the handbook among its apps: a manifest in each language.

After the W3C's Web Application Manifest, https://www.w3.org/TR/appmanifest/.
"""

from __future__ import annotations

import json
from collections.abc import Mapping

from pencilwood.cases.case import Profile
from pencilwood.pages.finished import BAR_COLOUR, MANIFEST, OUR_FILES
from pencilwood.pages.page import Addresses
from pencilwood.words import say

PAPER = "#fbf6ea"
"""Of the screen while the handbook opens; its icons stand on the same."""
ICONS = (("icon-192", 192, "any"), ("icon-512", 512, "any"), ("icon-maskable-512", 512, "maskable"))


def manifests(profile: Profile) -> Mapping[str, bytes]:
    """The manifest of each language by its path in the site."""
    addresses = Addresses(profile.languages)
    return {
        f"{addresses.folder(language)}{MANIFEST}": _manifest(
            profile, addresses.folder(language), language
        )
        for language in profile.languages
    }


def _manifest(profile: Profile, folder: str, language: str) -> bytes:
    up = "../" * folder.count("/")
    icons_folder = f"{up}{OUR_FILES}/icons"
    icons = [
        {
            "src": f"{icons_folder}/{name}.png",
            "sizes": f"{size}x{size}",
            "type": "image/png",
            "purpose": use,
        }
        for name, size, use in ICONS
    ]
    drawn = {"src": f"{icons_folder}/favicon.svg", "sizes": "any", "type": "image/svg+xml"}
    told = {
        "name": say(language, "pages.site-name", vineyard=profile.vineyard),
        "short_name": say(language, "pages.app-name"),
        "description": say(language, "pages.home.lead"),
        "lang": language,
        "dir": "ltr",
        "start_url": "index.html",
        # Of all languages, so that changing the language does not lead out of the app.
        "scope": up or "./",
        "display": "standalone",
        "theme_color": BAR_COLOUR,
        "background_color": PAPER,
        "icons": [*icons, drawn],
    }
    return f"{json.dumps(told, ensure_ascii=False, indent=1)}\n".encode()
