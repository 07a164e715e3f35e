"""Pages for a room on a disk, and one of them in a browser."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browser import watched_page
from pencilwood.proof import CaseProof
from room_page import CANES, CASE, ROOM, open_room, proof_of, write_assets, write_pages


@pytest.fixture(scope="session")
def proof() -> CaseProof:
    return proof_of(CASE)


@pytest.fixture(scope="session")
def folder(proof: CaseProof, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The pages of two cases in both languages with what they ask for, on a disk."""
    site = tmp_path_factory.mktemp("project")
    for one in (proof, proof_of(CANES)):
        write_pages(site, one)
    write_assets(site)
    return site


@pytest.fixture
def room(browser: Browser, folder: Path) -> Iterator[Page]:
    for page in watched_page(browser, viewport=ROOM):
        open_room(page, (folder / "project" / f"{CASE}.html").as_uri())
        yield page
