"""Where the hand-made assets (styles, icons, the browser script) are found.

They live in ``site_assets/`` at the top of a source checkout, where people who change
them look for them. An installed package carries its own copy inside the package.
"""

from pathlib import Path

FOLDER = "site_assets"


def asset_root(package: Path = Path(__file__).parent) -> Path:
    """Return the folder of the hand-made assets for the package at `package`.

    The package's own copy comes first; without one, `package` is taken to be
    ``generator/pencilwood`` in a source checkout.
    """
    candidates = (package / FOLDER, package.parent.parent / FOLDER)
    for folder in candidates:
        if folder.is_dir():
            return folder
    looked = " or ".join(str(folder) for folder in candidates)
    raise FileNotFoundError(f"the site assets are missing; expected them in {looked}")
