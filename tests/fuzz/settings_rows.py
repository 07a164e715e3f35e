"""Settings in `mkdocs.yml` that no trainer writes on purpose, and the one line said of each."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

PROJECT = Path(__file__).resolve().parent.parent.parent
GOOD = (PROJECT / "mkdocs.yml").read_text("utf-8")


@dataclass(frozen=True)
class Setting:
    """What is typed, why somebody may come to type it, and what is said of it."""

    reason: str
    old: str
    new: str
    said: str
    """Behind `mkdocs.yml:<line of what was typed>:`."""
    said_es: str = ""

    @property
    def text(self) -> str:
        """The whole file."""
        if not self.old:
            return self.new
        assert GOOD.count(self.old) == 1, self.old
        return GOOD.replace(self.old, self.new)


SITE, DOCS, NAME = "site_dir: site", "docs_dir: content/chapters", "site_name: Pencilwood"
THEME, FONT, STRICT = "  name: material\n", "  font: false", "strict: true"
PLUGIN, OFFLINE, EXTRA = "  - pencilwood\n", "  - offline\n", "extra:\n  generator: false"
ALL = GOOD[GOOD.index("plugins:") : GOOD.index("extra:")]
TOC = "  - toc:\n      permalink: false"
CLEARED = (
    '"site_dir" is no folder that a site may be written into; whatever stands in such a folder is '
    "cleared away; expected a folder of its own in the handbook's folder, such as site; name one "
    "elsewhere with pencilwood build --site; found "
)
CLEARED_ES = (
    '"site_dir" no es una carpeta en la que se pueda escribir un sitio; lo que hay en esa carpeta '
    "se borra; se esperaba una carpeta propia dentro de la del manual, como site; una en otro "
    "lugar se nombra con pencilwood build --site; se encontró "
)
UNLIKE = "expected the mkdocs.yml of a new handbook: compare it with this one; it says "
BROKE = f"the site generator broke off, most likely because of something in this file; {UNLIKE}"
BROKE_ES = (
    "el generador del sitio se detuvo, probablemente por algo de este archivo; se esperaba el "
    "mkdocs.yml de un manual nuevo: compárelo con este; dice "
)
REFUSED = (
    "the site generator does not take this setting; expected it as in the mkdocs.yml of a new "
    "handbook; it says "
)
REFUSED_ES = (
    "el generador del sitio no acepta este ajuste; se esperaba como en el mkdocs.yml de un manual "
    "nuevo; dice "
)


def line_of(text: str) -> int:
    """The line of the good file on which this stands."""
    return GOOD[: GOOD.index(text)].count("\n") + 1


def at(text: str, column: int, more: int = 0) -> str:
    """A place in the good file."""
    return f"{line_of(text) + more}:{column}: "


LAST = GOOD.count("\n") + 1
HARMFUL = (
    "/", "/etc", "../", "..", "../../other", ".", "./", "content", "content/cases", "Content",
    "quizzes", "quizzes/site", "site/../quizzes", "site/../..", ".git", ".pencilwood-cache",
    "site/.hidden", "~", "~/site", "$HOME/site", "C:\\\\site", "\\\\\\\\host\\\\site", "site\\\\..", "//host/site",
    "generator", "site_assets", "si*te", "site?", "tests", "node_modules",
)  # fmt: skip
# fmt: off
ROWS = (
    Setting("an empty file", "", "", "1:1: this file is empty (empty-file)"),
    Setting("words only", "", "our handbook\n", '1:1: this file does not consist of names and values; expected lines that begin with site_name, docs_dir, site_dir, site_url, site_description, site_author, strict, theme, plugins, extra, markdown_extensions, validation, dev_addr; found "our handbook" (not-lines-at-all)'),
    Setting("a list in the place of settings", "", "- a\n", "1:1: this file does not consist of names and values; expected lines that begin with site_name, docs_dir, site_dir, site_url, site_description, site_author, strict, theme, plugins, extra, markdown_extensions, validation, dev_addr; found several parts (not-lines-at-all)"),
    Setting("a mark never closed", "", 'site_name: "a\n', "1:12: a quotation mark opens here and is never closed; expected the same mark again at the end of the text (open-quote)"),
    Setting("two colons on a line", NAME, "site_name: Pencil: wood", at(NAME, 18) + "a colon with a space after it does not fit here; expected one name and value a line, as far in as its neighbours; put text with a colon in quotes (colon-out-of-place)"),
    Setting("a setting given twice", NAME, f"{NAME}\n{NAME}", at(NAME, 1, 1) + f'"site_name" is given twice; expected it once; the first stands on line {line_of(NAME)} (given-twice)'),
    Setting("a program run by another reader", EXTRA, 'extra:\n  generator: !!python/object/apply:os.system ["id"]', at(EXTRA, 14, 1) + "a mark that begins with ! stands here; expected no such mark: put text that begins with ! in quotes (tag)"),
    Setting("a value of the machine's", NAME, "site_name: !ENV HOME", at(NAME, 12) + "a mark that begins with ! stands here; expected no such mark: put text that begins with ! in quotes (tag)"),
    Setting("an anchor", NAME, "site_name: &a b", at(NAME, 12) + "&a marks something for repeating; expected no such mark: put text that begins with & in quotes (anchor)"),
    *(Setting(f"a site in {path}", SITE, f'site_dir: "{path}"', at(SITE, 11) + CLEARED + '"' + path.replace("\\\\", "\\") + '" (not-a-site-folder)', at(SITE, 11) + CLEARED_ES + '"' + path.replace("\\\\", "\\") + '" (not-a-site-folder)') for path in HARMFUL),
    Setting("a site in several folders", SITE, "site_dir: [site]", at(SITE, 11) + '"site_dir" must be one value; expected it on the same line, after the colon; found several parts (not-one-value)'),
    Setting("a site in no folder", SITE, "site_dir:", at(SITE, 10) + 'nothing is given for "site_dir" (nothing-given)'),
    *(Setting(f"chapters in {path}", DOCS, f"docs_dir: {path}", at(DOCS, 11) + f'"docs_dir" cannot be "{path}"; expected one of content/chapters (not-a-choice)') for path in ("/", "..", "content", "quizzes", "site", "7", "../chapters")),
    Setting("chapters nowhere", f"{DOCS}\n", "", at(NAME, 1) + '"docs_dir" is missing (missing-key)', at(NAME, 1) + 'falta "docs_dir" (missing-key)'),
    Setting("no theme", GOOD[GOOD.index("theme:") : GOOD.index("plugins:")], "", at(NAME, 1) + '"theme" is missing (missing-key)'),
    Setting("another theme", THEME, "  name: readthedocs\n", at(THEME, 9) + '"name" cannot be "readthedocs"; expected one of material (not-a-choice)'),
    Setting("a theme without a name", THEME, "", at(FONT, 3, -1) + '"name" is missing (missing-key)'),
    Setting("a theme's pages from elsewhere", THEME, f"{THEME}  custom_dir: /etc\n", at(THEME, 3, 1) + '"custom_dir" is not known here; expected one of name, font, language, icon, logo, favicon, features, palette (unknown-key)'),
    Setting("a font from elsewhere", FONT, "  font: {text: Some Font}", at(FONT, 9) + '"font" must be one value; expected it on the same line, after the colon; found lines of names and values (not-one-value)'),
    Setting("the theme's own font, which comes from elsewhere", FONT, "  font: true", at(FONT, 9) + '"font" cannot be "true"; expected one of false (not-a-choice)'),
    Setting("no plugin of ours, so that a plain site would take the place of the last good one", PLUGIN, "", at("plugins:", 1) + 'a plugin that the pages rest on is missing; expected "pencilwood" in this list (plugin-missing)', at("plugins:", 1) + 'falta un complemento del que dependen las páginas; se esperaba "pencilwood" en esta lista (plugin-missing)'),
    Setting("a plugin misspelt", PLUGIN, "  - pencilwod\n", at(PLUGIN, 5) + 'this is no plugin that a handbook\'s site is made with; did you mean "pencilwood"?; found "pencilwod" (no-such-plugin)', at(PLUGIN, 5) + 'este no es un complemento con el que se hace el sitio de un manual; ¿quiso decir "pencilwood"?; se encontró "pencilwod" (no-such-plugin)'),
    Setting("a plugin that changes pages", OFFLINE, f"{OFFLINE}  - minify\n", at(OFFLINE, 5, 1) + 'this is no plugin that a handbook\'s site is made with; expected one of search, pencilwood, offline; found "minify" (no-such-plugin)'),
    Setting("a plugin twice", OFFLINE, OFFLINE * 2, at("plugins:", 1) + 'a plugin stands here more than once; expected "offline" once (plugin-twice)'),
    Setting("a plugin switched off", OFFLINE, "  - offline: {enabled: false}\n", at(OFFLINE, 14) + '"offline" takes no settings here; expected its name alone (takes-no-settings)'),
    Setting("plugins without dashes", ALL, "plugins: pencilwood\n\n", at("plugins:", 10) + '"plugins" must name its parts one by one; expected each part behind a dash, or in [square brackets]; found "pencilwood" (not-several)'),
    Setting("code to run", EXTRA, f"hooks: [harm.py]\n{EXTRA}", at(EXTRA, 1) + '"hooks" is not known here; expected one of site_name, docs_dir, site_dir, site_url, site_description, site_author, strict, theme, plugins, extra, markdown_extensions, validation, dev_addr (unknown-key)'),
    Setting("settings from another file", EXTRA, f"INHERIT: ../other.yml\n{EXTRA}", at(EXTRA, 1) + '"INHERIT" is not known here; expected one of site_name, docs_dir, site_dir, site_url, site_description, site_author, strict, theme, plugins, extra, markdown_extensions, validation, dev_addr (unknown-key)'),
    Setting("an extension that brings in any file of the machine", TOC, "  - pymdownx.snippets: {base_path: /etc}", at(TOC, 5) + 'this is no extension by which chapters are read; expected one of admonition, tables, toc, attr_list, abbr, def_list, fenced_code, footnotes, sane_lists; found "pymdownx.snippets" (no-such-extension)', at(TOC, 5) + 'esta no es una extensión con la que se leen los capítulos; se esperaba uno de admonition, tables, toc, attr_list, abbr, def_list, fenced_code, footnotes, sane_lists; se encontró "pymdownx.snippets" (no-such-extension)'),
    Setting("neither yes nor no", STRICT, "strict: maybe", at(STRICT, 9) + '"strict" cannot be "maybe"; expected one of true, false (not-a-choice)'),
    Setting("not said whether links are looked at", f"{STRICT}\n", "", at(NAME, 1) + '"strict" is missing (missing-key)'),
    Setting("several things in the place of lines", EXTRA, "extra: [a]", at(EXTRA, 8) + '"extra" is not a block of settings; expected lines such as name: value below it; found several parts (not-settings)', at(EXTRA, 8) + '"extra" no es un bloque de ajustes; se esperaban debajo líneas como nombre: valor; se encontró varias partes (not-settings)'),
    Setting("an address that is none", EXTRA, f'site_url: "javascript:alert(1)"\n{EXTRA}', at(EXTRA, 11) + '"site_url" is not a web address; expected it to begin with https:// or http://; found "javascript:alert(1)" (not-an-address)'),
)
# What we cannot know better than the site generator, which is asked, and answers in our words.
SLOW_ROWS = (
    Setting("a number for a name", NAME, "site_name: 2026", at(NAME, 1) + REFUSED + '"site_name: Expected type: text but received: a number" (settings-refused)', at(NAME, 1) + REFUSED_ES + '"site_name: Expected type: texto but received: un número" (settings-refused)'),
    Setting("yes in quotes", STRICT, 'strict: "true"', at(STRICT, 1) + REFUSED + '"strict: Expected type: true or false but received: text" (settings-refused)'),
    Setting("a setting of the search's that it does not know", "      lang: [en, es]", "      lang: 7", at("plugins:", 1) + REFUSED + "\"plugins: Plugin 'material/search' option 'lang': Expected a list of language codes.\" (settings-refused)"),
    Setting("a day that no year has", EXTRA, "extra:\n  generator: 2026-99-99", "1:1: " + BROKE + '"ValueError: month must be in 1..12" (settings-broke-off)', "1:1: " + BROKE_ES + '"ValueError: month must be in 1..12" (settings-broke-off)'),
)
# fmt: on
