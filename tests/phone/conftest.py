"""The handbook on a web host, as a phone comes to it."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from web_host import WebHost, web_host


@pytest.fixture(scope="module")
def host(built_site: Path) -> Iterator[WebHost]:
    """One for all tests of a file; a test that takes it away asks for one of its own."""
    with web_host(built_site) as one:
        yield one
