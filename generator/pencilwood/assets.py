"""Where the files are found that stand beside the engine in a source checkout.

The hand-made assets (styles, icons, the browser script) live in ``site_assets/`` and the demo
handbook in ``content/``, ``quizzes/`` and ``mkdocs.yml`` at the top of a checkout, where people
who change them look for them. An installed package carries its own copy inside the package; the
wheel takes it from there when it is built, so nothing is kept twice.
"""

from pathlib import Path

FOLDER = "site_assets"
HANDBOOK = "handbook"
"""Where an installed package keeps its copy of the demo handbook."""
_CONTENT = "content"


def asset_root(package: Path = Path(__file__).parent) -> Path:
    """Return the folder of the hand-made assets for the package at `package`.

    The package's own copy comes first; without one, `package` is taken to be
    ``generator/pencilwood`` in a source checkout.
    """
    candidates = (package / FOLDER, package.parent.parent / FOLDER)
    return _first(candidates, "the site assets are missing")


def handbook_root(package: Path = Path(__file__).parent) -> Path:
    """Return the folder of the demo handbook, found in the same way.

    Its rule examples, trade words, sources, figures and safety notes serve every handbook, and a
    new handbook starts with some of its vines and chapters.
    """
    candidates = tuple(root / _CONTENT for root in (package / HANDBOOK, package.parent.parent))
    return _first(candidates, "the package's own handbook is missing").parent


def _first(candidates: tuple[Path, ...], trouble: str) -> Path:
    for folder in candidates:
        if folder.is_dir():
            return folder
    looked = " or ".join(str(folder) for folder in candidates)
    raise FileNotFoundError(f"{trouble}; expected them in {looked}")
