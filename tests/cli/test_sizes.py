"""``loopwright sizes``: a size block as a table, as TOML and as JSON."""

import io
import json
import sys
import tomllib
from pathlib import Path

import pytest

from loopwright.files import demo_text, read_season_text
from tests.cli.conftest import Run

BLOCK = """\
Sizes: XS (S, M)
Finished bust: 86 (94, 102) cm / 34 (37, 40) in
Length: 56 (–, 58) cm
Yarn: 900 (980, 1060) m
Tension: 22 sts and 30 rows = 10 cm
Shown in size M.
"""


@pytest.fixture
def block(tmp_path: Path) -> Path:
    path = tmp_path / "block.txt"
    path.write_text(BLOCK, encoding="utf-8")
    return path


def test_it_prints_the_table_and_what_is_left_out(run: Run, block: Path) -> None:
    done = run("sizes", block)
    assert done.code == 0
    rows = [line.split() for line in done.out.splitlines()]
    assert ["Finished", "bust", "86", "cm", "94", "cm", "102", "cm"] in rows
    assert ["34", "in", "37", "in", "40", "in"] in rows
    assert ["Finished", "length", "56", "cm", "–", "58", "cm"] in rows
    assert "Still wanted for a pattern: name, construction." in done.out
    assert done.err == 'line 6, column 1: "Shown in size M.": left out, not a row that is known here\n'


def test_it_reads_standard_input(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    for arguments in (("sizes",), ("sizes", "-")):
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(BLOCK.encode())))
        assert "86 cm" in run(*arguments).out


def test_every_fault_is_told_and_the_code_is_2(run: Run, block: Path) -> None:
    block.write_text(BLOCK.replace("94, 102", "102").replace("58", "5"), encoding="utf-8")
    done = run("sizes", block)
    assert done.code == 2
    assert [line.partition(": ")[0] for line in done.err.splitlines()] == [
        "line 2, column 16",
        "line 3, column 16",
        "line 6, column 1",
    ]
    assert "900 m" in done.out


def test_the_section_stands_in_a_season_file_once_the_rest_is_filled_in(run: Run, block: Path) -> None:
    done = run("sizes", block, "--toml", "--key", "gangway")
    assert done.out.startswith("# still wanted: name, construction\n[patterns.gangway]\n")
    section = done.out.replace(
        "[patterns.gangway]\n", '[patterns.gangway]\nname = "Gangway"\nconstruction = "raglan"\n'
    )
    season = read_season_text(f"{demo_text()}\n{section}", "winter.toml", "toml")
    assert season.pattern_by_key["gangway"].finished.bust_girth == (86, 94, 102)


def test_no_section_is_printed_of_a_block_at_fault(run: Run, block: Path) -> None:
    block.write_text(BLOCK.replace("94, 102", "102"), encoding="utf-8")
    done = run("sizes", block, "--toml")
    assert (done.code, done.out) == (2, "")


def test_json_holds_rows_fields_and_faults(run: Run, block: Path) -> None:
    said = json.loads(run("sizes", block, "--json").out)
    assert said["sizes"] == ["XS", "S", "M"]
    assert said["rows"][0] == {"of": "finished", "measure": "bust_girth", "cm": [86, 94, 102], "units": ["cm", "in"]}
    assert said["pattern"]["yarn"] == {"main": {"length": "900 (980, 1060) m"}}
    assert (said["missing"], said["faults"]) == (["name", "construction"], [])
    block.write_text("Sizes: S\nFinished bust 10 cm", encoding="utf-8")
    done = run("sizes", block, "--json")
    assert done.code == 2
    assert json.loads(done.out)["faults"][0]["line"] == 2


def test_toml_of_the_fields_alone_reads_back(run: Run, block: Path) -> None:
    fields = tomllib.loads(run("sizes", block, "--toml").out)["patterns"]["pattern"]
    assert fields["finished"]["length"] == "56 (-, 58) cm"


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", 'found "no text"'),
        (b"\xff\xfe\x00", "bytes that are not text"),
        (b"Bust 8 cm\n" * 200_000, "more than 1 MB"),
    ],
)
def test_what_is_no_text_is_told(run: Run, block: Path, content: bytes, said: str) -> None:
    block.write_bytes(content)
    done = run("sizes", block)
    assert done.code == 2
    assert said in done.err


def test_a_wrong_call_is_told(run: Run, block: Path) -> None:
    assert "no such file" in run("sizes", block.with_name("none.txt")).err
    assert "wanted one of them" in run("sizes", block, "--toml", "--json").err
    assert "wanted a key" in run("sizes", block, "--key", "Two Words").err
