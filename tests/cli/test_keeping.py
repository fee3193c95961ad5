"""``load``, ``save``, ``seasons``, ``undo``, ``redo`` and ``schema``."""

import json
import stat
from pathlib import Path

import pytest

from loopwright.files import demo_text, read_season, read_season_text, season_schema
from loopwright.store import changes
from tests.cli.conftest import Run

KEY = "winter-at-wethers-reach"

pytestmark = pytest.mark.usefixtures("empty_store")


def test_a_season_is_kept_from_its_file(run: Run, winter: Path) -> None:
    done = run("load", winter)
    assert (done.code, done.out, done.err) == (0, f"Kept as {KEY}.\n", "")
    assert changes.season_of(KEY) == read_season(winter)


def test_a_season_can_be_kept_under_another_key(run: Run, winter: Path) -> None:
    assert run("load", winter, "--as", "mine").out == "Kept as mine.\n"
    assert run("load", winter, "--as", "Not A Key").code == 2
    assert changes.season_keys() == ("mine",)


def test_loading_a_changed_file_can_be_undone(run: Run, winter: Path) -> None:
    run("load", winter)
    winter.write_text(demo_text().replace("hours_a_week = 8\n", "hours_a_week = 9\n"), encoding="utf-8")
    run("load", winter)
    assert changes.season_of(KEY).hours_a_week == 9
    assert run("undo", KEY).out == "Undone: loaded winter.toml\n"
    assert changes.season_of(KEY).hours_a_week == 8
    assert run("redo", KEY).out == "Done again: loaded winter.toml\n"
    assert changes.season_of(KEY).hours_a_week == 9


def test_a_file_with_faults_is_not_kept(run: Run, winter: Path) -> None:
    winter.write_text(demo_text().replace('currency = "NZD"', 'currency = "nzd"'), encoding="utf-8")
    assert run("load", winter).code == 2
    assert changes.season_keys() == ()


@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_what_was_loaded_is_saved_to_the_byte(run: Run, winter: Path, tmp_path: Path, line_end: str) -> None:
    content = demo_text().replace("\n", line_end).encode("utf-8")
    winter.write_bytes(content)
    run("load", winter)
    run("save", KEY, tmp_path / "again.toml")
    assert (tmp_path / "again.toml").read_bytes() == content
    assert run("save", KEY).out.encode("utf-8") == content


def test_a_season_is_saved_as_json_too(run: Run, winter: Path, tmp_path: Path) -> None:
    run("load", winter)
    run("save", KEY, tmp_path / "winter.json")
    assert read_season(tmp_path / "winter.json") == read_season(winter)
    printed = run("save", KEY, "--format", "json").out
    assert read_season_text(printed, name="printed", format="json") == read_season(winter)


def test_a_file_that_is_there_is_replaced_only_when_asked(run: Run, winter: Path, tmp_path: Path) -> None:
    run("load", winter)
    path = tmp_path / "kept.toml"
    path.write_text("my notes")
    path.chmod(0o600)
    assert "a file that is there already" in run("save", KEY, path).err
    assert path.read_text() == "my notes"
    assert run("save", KEY, path, "--replace").code == 0
    assert path.read_text(encoding="utf-8") == demo_text()
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


@pytest.mark.parametrize("arguments", [["winter.json", "--format", "toml"], ["winter.txt"]])
def test_the_suffix_and_the_format_agree(run: Run, winter: Path, tmp_path: Path, arguments: list[str]) -> None:
    run("load", winter)
    name, *options = arguments
    done = run("save", KEY, tmp_path / name, *options)
    assert done.code == 2
    assert "wanted a name that ends in .toml" in done.err
    assert not (tmp_path / name).exists()


def test_a_season_that_is_not_there_is_named_with_its_neighbours(run: Run, winter: Path) -> None:
    run("load", winter, "--as", "winter")
    done = run("save", "wintre")
    assert (done.code, done.out) == (2, "")
    assert done.err == "no season 'wintre'; there are winter (did you mean 'winter'?)\n"


def test_seasons_are_listed(run: Run, winter: Path) -> None:
    assert run("seasons").out == "No season is kept yet. Begin with: loopwright demo --write winter.toml\n"
    run("load", winter)
    head, _, line, *_ = run("seasons").out.splitlines()
    assert head.split("  ")[0] == "key"
    assert line.split("  ")[0] == KEY
    assert all(part in line for part in ("Winter at Wethers Reach", "2027-03-01", "5"))


def test_seasons_are_listed_for_machines(run: Run, winter: Path) -> None:
    run("load", winter)
    kept = {"key": KEY, "name": "Winter at Wethers Reach", "today": "2027-03-01", "garments": 5}
    assert json.loads(run("seasons", "--json").out) == [kept]


def test_nothing_to_undo_is_a_no_and_no_fault(run: Run, winter: Path) -> None:
    run("load", winter)
    done = run("undo", KEY)
    assert (done.code, done.out, done.err) == (1, "", f"{KEY}: there is no change to undo\n")
    assert run("redo", KEY).code == 1
    assert run("undo", "nowhere").code == 2


def test_a_data_folder_that_cannot_be_is_told(run: Run, tmp_path: Path) -> None:
    done = run("seasons", "--data", tmp_path)
    assert (done.code, done.out) == (2, "")
    assert "already works on another data folder" in done.err


def test_the_schema_is_printed(run: Run) -> None:
    assert json.loads(run("schema").out) == season_schema()
