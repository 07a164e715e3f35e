"""What the theme puts around our pages: their titles, menus, styles and words.

One build makes all languages: before each page is rendered, what the theme reads from the
configuration (language, menu, name, language switch) is set for the language of that page.
"""

from __future__ import annotations

from collections.abc import Iterable

from markupsafe import Markup
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as MkDocsPage
from mkdocs.structure.toc import AnchorLink, TableOfContents

from pencilwood.cases.case import Profile
from pencilwood.pages.chapters.anchors import own_ids
from pencilwood.pages.desk import ASSETS
from pencilwood.pages.page import Addresses, Page
from pencilwood.pages.style_sheet import STYLE_SHEET
from pencilwood.site.theme_files import put_before_theme
from pencilwood.words import say


def dress(config: MkDocsConfig, profile: Profile) -> None:
    """Set what the theme reads once: our templates and styles, and nothing from elsewhere."""
    # Also where the settings say so in quotes: no font comes from elsewhere.
    config.theme["font"] = False
    put_before_theme(config.theme.dirs, config.theme.custom_dir)
    config.extra_css = [f"{ASSETS}/{STYLE_SHEET}"]
    # Instead of the one that the offline plugin would fetch from a foreign address.
    config.extra["polyfills"] = [f"{ASSETS}/iframe-worker.js"]
    config.site_url = config.site_url or profile.site_address
    if not config.site_url:
        # Neither works without an address; the site map would also carry the day's date.
        config.theme.static_templates -= {"404.html", "sitemap.xml"}


def speak(config: MkDocsConfig, profile: Profile, language: str) -> None:
    """Set what the theme reads anew for each page."""
    config.theme["language"] = language
    config.site_name = Markup.escape(say(language, "pages.site-name", vineyard=profile.vineyard))
    footer = "footer-invented" if profile.invented else "footer"
    config.copyright = Markup.escape(say(language, f"pages.{footer}", vineyard=profile.vineyard))
    for scheme in config.theme.get("palette") or ():
        other = "light" if scheme["scheme"] == "slate" else "dark"
        scheme["toggle"]["name"] = say(language, f"pages.theme.to-{other}")


def menu_of(listed: Iterable[MkDocsPage]) -> Navigation:
    """The menu of one language; a page's neighbours speak its own language."""
    pages = list(listed)
    for before, page, after in zip([None, *pages], pages, [*pages[1:], None], strict=False):
        page.parent = None
        page.previous_page, page.next_page = before, after
    menu = Navigation(pages, pages)
    menu.homepage = pages[0]
    return menu


def head(page: MkDocsPage, ours: Page) -> None:
    """Give a page of MkDocs the titles, the headings and the places of ours."""
    # The theme puts these into its pages just as they are.
    page.title = Markup.escape(ours.menu_title or ours.title)
    page.meta["title"] = Markup.escape(ours.title)
    page.meta["description"] = Markup.escape(ours.description)
    if items := page.toc.items:
        inside = items[0].children
        inside[:] = [*_links(ours, opens=True), *inside, *_links(ours, opens=False)]
    page.toc = TableOfContents(items)
    # MkDocs knows places in the trainer's own words only.
    page.present_anchor_ids = {*(page.present_anchor_ids or ()), *own_ids(ours)}


def _links(ours: Page, *, opens: bool) -> list[AnchorLink]:
    return [
        AnchorLink(Markup.escape(heading.title), heading.anchor, 2)
        for heading in ours.headings
        if heading.opens == opens
    ]


def other_languages(addresses: Addresses, path: str) -> list[dict[str, str]]:
    """The page at `path` in every language; nothing where there is but one."""
    if len(addresses.languages) < 2:
        return []
    return [
        {
            "name": say(language, f"pages.language.{language}"),
            "link": addresses.of(path, language),
            "lang": language,
        }
        for language in addresses.languages
    ]
