"""Getting ready: the data folder, the key and the database."""

import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from loopwright.web.setup import CannotStart, prepare
from tests.store.database import data_folder

FIRST_START = """
import sys
from loopwright.web.setup import prepare
prepare(sys.argv[1])
from django.conf import settings
from loopwright.store.changes import season_keys
print(len(settings.SECRET_KEY), season_keys())
"""


def start(*arguments: str, code: str = FIRST_START) -> "subprocess.Popen[str]":
    """Start a process that gets ready on a file of its own, whatever database these tests run on."""
    surroundings = {name: value for name, value in os.environ.items() if name != "DATABASE_URL"}
    command = [sys.executable, "-c", code, *arguments]
    return subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=surroundings)


def test_a_second_call_has_nothing_to_do() -> None:
    assert prepare() == prepare(data_folder()) == data_folder()


def test_one_process_works_on_one_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LOOPWRIGHT_DATA", str(data_folder()))  # is put back afterwards
    with pytest.raises(CannotStart, match="already works on another data folder"):
        prepare(tmp_path)


def test_the_key_is_made_once_and_for_the_owner_alone() -> None:
    path = data_folder() / "secret-key"
    before = path.read_text("ascii")
    prepare()
    assert path.read_text("ascii") == before
    assert len(before) == 64
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_first_starts_at_once_agree(tmp_path: Path) -> None:
    """Four processes make the same folder, key and tables; none stumbles over another."""
    running = [start(str(tmp_path / "data")) for _ in range(4)]
    ended = [(*process.communicate(timeout=60), process.returncode) for process in running]
    assert ended == [("64 ()\n", "", 0)] * 4
    assert not list((tmp_path / "data").glob(".*"))  # no draft of a key is left


def test_a_folder_that_is_a_file_is_named(tmp_path: Path) -> None:
    (tmp_path / "data").write_text("a file")
    process = start(str(tmp_path / "data"))
    _, said = process.communicate(timeout=60)
    assert "CannotStart" in said
    assert "cannot be used as the data folder: file exists" in said


def test_a_file_that_is_no_database_is_named_and_left_alone(tmp_path: Path) -> None:
    path = tmp_path / "loopwright.sqlite3"
    path.write_bytes(b"a letter to Wen, " * 100)
    process = start(str(tmp_path))
    _, said = process.communicate(timeout=60)
    assert f"{path}: the database cannot be used: file is not a database" in said
    assert path.read_bytes() == b"a letter to Wen, " * 100


def test_settings_of_another_project_are_not_taken(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("DJANGO_SETTINGS_MODULE", "somebody.elses.settings")
    process = start(str(tmp_path))
    assert process.communicate(timeout=60) == ("64 ()\n", "")
