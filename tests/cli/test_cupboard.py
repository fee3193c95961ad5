"""``loopwright cupboard``: what is there, out as a table, and a table in."""

import json
from pathlib import Path

import pytest

from loopwright.files import read_season
from loopwright.files.cupboard_table import read_table
from tests.cli.conftest import Run

SHOP = "name;shade;skeins;price\nStone Paddock DK;Fog;2;9\nStone Paddock DK;Rust;1;9\n"
SAID = ("--column", "shade=colour", "--column", "Price=nothing")


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    path = tmp_path / "shop.csv"
    path.write_text(SHOP, encoding="utf-8")
    return path


def test_it_says_what_is_there_and_what_for(run: Run, winter: Path) -> None:
    done = run("cupboard", winter)
    assert done.code == 0
    assert "Cardigan for" in done.out
    assert "13 lots; ± one standard deviation." in done.out


def test_a_search_that_finds_nothing_is_a_no(run: Run, winter: Path) -> None:
    assert "2 of 13 lots" in run("cupboard", winter, "--search", "PADDOCK oat").out
    done = run("cupboard", winter, "--search", "gold")
    assert (done.code, done.out) == (1, "No lot has all of these words.\n")


def test_json_has_every_figure(run: Run, winter: Path) -> None:
    lots = json.loads(run("cupboard", winter, "--search", "damson", "--json").out)
    assert [lot["lot"]["key"] for lot in lots] == ["ropewalk-damson"]
    assert lots[0]["reserved_m"] + lots[0]["free_m"] == pytest.approx(lots[0]["length_m"]["mean"])


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
def test_a_table_goes_out_and_is_there_already(run: Run, winter: Path, tmp_path: Path, ending: str) -> None:
    table = tmp_path / f"mine.{ending}"
    assert run("cupboard", winter, "--export", table).out == f"Written: {table}, 13 lots\n"
    assert len(read_table(table.read_bytes(), "x").rows) == 13
    done = run("cupboard", winter, "--import", table)
    assert done.out.startswith("New lots: 0; new yarns: 0; there already: 13.")
    assert run("cupboard", winter, "--export", table).code == 2
    assert run("cupboard", winter, "--export", table, "--replace").code == 0
    assert run("cupboard", winter, "--export", tmp_path / "mine.pdf").code == 2


def test_columns_that_are_not_clear_are_named(run: Run, winter: Path, shop: Path) -> None:
    done = run("cupboard", winter, "--import", shop)
    assert done.code == 2
    assert "shop.csv:1: found the column “shade”" in done.err
    assert '"price=nothing" to leave it aside' in done.err


def test_nothing_is_written_unless_it_is_said(run: Run, winter: Path, shop: Path, tmp_path: Path) -> None:
    before = winter.read_bytes()
    done = run("cupboard", winter, "--import", shop, *SAID)
    assert "line 2: Stone Paddock DK, Fog: new" in done.out
    assert "Nothing is written without --write SEASON." in done.out
    new = tmp_path / "new.toml"
    assert run("cupboard", winter, "--import", shop, *SAID, "--write", new).code == 0
    there = read_season(new)
    assert [lot.colour for lot in there.cupboard[13:]] == ["Fog", "Rust"]  # of Rust no dye lot is said: another lot
    assert there.cupboard[:13] == read_season(winter).cupboard
    assert winter.read_bytes() == before


@pytest.mark.parametrize(("there", "lots", "put_ups"), [("leave", 13, 2), ("update", 13, 5), ("add", 14, 2)])
def test_lots_that_are_there_are_left_updated_or_added(
    run: Run, winter: Path, tmp_path: Path, there: str, lots: int, put_ups: int
) -> None:
    table, new = tmp_path / "mine.csv", tmp_path / "new.toml"
    table.write_text("yarn,colour,dye lot,balls\nStone Paddock DK,Rust,A3,5\n", encoding="utf-8")
    done = run("cupboard", winter, "--import", table, "--there", there, "--write", new)
    assert "whole balls here 2, in the table 5" in done.out
    cupboard = read_season(new).cupboard
    assert (len(cupboard), next(lot for lot in cupboard if lot.key == "paddock-rust").put_ups) == (lots, put_ups)


def test_a_fault_writes_nothing(run: Run, winter: Path, tmp_path: Path) -> None:
    table, new = tmp_path / "mine.csv", tmp_path / "new.toml"
    table.write_text("yarn,colour,balls\nStone Paddock DK,Fog,two\nStone Paddock DK,Fog,\n", encoding="utf-8")
    done = run("cupboard", winter, "--import", table, "--write", new)
    assert done.code == 2
    assert [line.partition(": ")[0] for line in done.err.splitlines()] == ["mine.csv:2", "mine.csv:3"]
    assert not new.exists()


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (("--write", "new.toml"), "wanted it together with --import"),
        (("--import", "nope.csv"), 'found "no such file or directory"'),
    ],
)
def test_what_cannot_be_done_is_said(run: Run, winter: Path, options: tuple[str, ...], says: str) -> None:
    done = run("cupboard", winter, *options)
    assert done.code == 2
    assert says in done.err


def test_a_column_that_is_not_there_or_means_nothing_known(run: Run, winter: Path, shop: Path) -> None:
    assert "wanted a heading of the table" in run("cupboard", winter, "--import", shop, "--column", "hue=colour").err
    assert "wanted after = what it means" in run("cupboard", winter, "--import", shop, "--column", "price=cost").err
