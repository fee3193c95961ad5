"""The command line is run in this process, on the database of the tests, with nothing said by the environment."""

import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from loopwright.cli import main
from loopwright.files import demo_text
from tests.store.database import data_folder, empty_store

__all__ = ["Done", "Run", "empty_store"]

data_folder()


@dataclass(frozen=True)
class Done:
    """How a command ended, and what it printed."""

    code: int
    out: str
    err: str


Run = Callable[..., Done]


@pytest.fixture(autouse=True)
def nothing_said(monkeypatch: pytest.MonkeyPatch) -> None:
    """No variable of the person who runs the tests reaches a command."""
    for name in os.environ:
        if name.startswith("LOOPWRIGHT_") or name in {"NO_COLOR", "FORCE_COLOR", "COLUMNS", "TERM"}:
            monkeypatch.delenv(name)
    monkeypatch.setenv("LOOPWRIGHT_DATA", str(data_folder()))


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Run:
    """Runs ``loopwright`` with these arguments."""

    def run(*arguments: str | Path) -> Done:
        with pytest.raises(SystemExit) as ended:
            main([str(argument) for argument in arguments])
        printed = capsys.readouterr()
        code = ended.value.code
        assert isinstance(code, int)
        return Done(code, printed.out, printed.err)

    return run


@pytest.fixture
def winter(tmp_path: Path) -> Path:
    """A season file."""
    path = tmp_path / "winter.toml"
    path.write_text(demo_text(), encoding="utf-8")
    return path
