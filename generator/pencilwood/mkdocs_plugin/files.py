"""Our files as MkDocs takes them: made when they are written, or finished by an earlier build."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, InclusionLevel
from mkdocs.structure.pages import Page

from pencilwood.site.case_pages import Waiting
from pencilwood.site.finished_pages import Makers


class _WaitingFile(File):
    """A file whose bytes are made when MkDocs writes it, and not held."""

    make: Waiting

    def copy_file(self, dirty: bool = False) -> None:
        """Write it."""
        _write(self, self.make())


class _FinishedFile(File):
    """A page in which MkDocs has nothing to do: for its links a page, else a file."""

    def is_documentation_page(self) -> bool:
        """Keep MkDocs from reading and laying it out."""
        return False

    def copy_file(self, dirty: bool = False) -> None:
        """It was written when it was found."""


def waiting_file(config: MkDocsConfig, path: str, make: Waiting) -> File:
    """A file at `path` of the site that `make` makes late."""
    file = _WaitingFile(path, src_dir=None, dest_dir=config.site_dir, use_directory_urls=False)
    file.make = make
    return file


def finished_file(
    config: MkDocsConfig, source: str, address: str, html: bytes | None, anchors: Iterable[str]
) -> File:
    """A page that stands finished at `address`, written now; None where it is there already.

    Chapters link to it by its `source`, and to the `anchors` in it.
    """
    file = _FinishedFile(
        source,
        src_dir=None,
        dest_dir=config.site_dir,
        use_directory_urls=False,
        dest_uri=address,
        inclusion=InclusionLevel.NOT_IN_NAV,
    )
    Page(None, file, config).present_anchor_ids = set(anchors)
    if html is not None:
        _write(file, html)
    return file


def makers_of(config: MkDocsConfig) -> Makers:
    """Who has a hand in a page beside us."""
    file = Path(config.config_file_path) if config.config_file_path else None
    settings = file.read_text(encoding="utf-8") if file else ""
    return Makers(
        config.theme.name,
        # With addresses of another sort a page would stand elsewhere than we say.
        bool(config.hooks or config.theme.custom_dir or config.use_directory_urls),
        config.plugins,
        config.markdown_extensions,
        settings,
    )


def _write(file: File, data: bytes) -> None:
    path = Path(file.abs_dest_path)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(data)
