"""What the tests of measuring sheets share."""

from pathlib import Path

import pytest

from workshop import Workshop, make_workshop


@pytest.fixture
def workshop(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> Workshop:
    root = make_workshop(tmp_path / "handbook", "tidy-vine")
    return Workshop(root, capsys, monkeypatch)
