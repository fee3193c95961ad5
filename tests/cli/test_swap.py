"""``loopwright swap``."""

import json
from pathlib import Path
from typing import Any

import pytest

from tests.cli.conftest import Run

SHOP = "name;fibres;length (m);mass (g);price EUR\nTidal Aran;100 % wool;168,0;100;7,90\nReed;linen;300;100;5,00\n"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    path = tmp_path / "shop.csv"
    path.write_text(SHOP, encoding="utf-8")
    return path


def told(run: Run, *arguments: str | Path) -> dict[str, Any]:
    done = run("swap", *arguments, "--json")
    assert (done.code, done.err) == (0, "")
    said: dict[str, Any] = json.loads(done.out)
    return said


def test_a_person_reads_the_answer_the_table_and_the_caution(run: Run, winter: Path) -> None:
    done = run("swap", winter, "cardigan", "--held")
    assert (done.code, done.err) == (0, "")
    assert "Stone Paddock DK + Ropewalk Lace comes close to Long Headland Aran." in done.out
    assert "All at your swatch's 17.5 sts × 24 rows to 10 cm, stocking stitch" in done.out
    assert "Free of paddock-dk at home or on its way: Rust" in done.out
    assert "A prediction is no swatch" in done.out
    assert all(len(line) <= 100 for line in done.out.splitlines())


def test_a_catalogue_of_semicolons_is_ranked_too(run: Run, winter: Path, shop: Path) -> None:
    said = told(run, winter, "cardigan", "--catalogue", shop, "--top", "3")
    best = said["options"][0]
    assert (best["source"], best["yarns"], best["comparison"]["verdict"]) == ("catalogue", ["row-1"], "close")
    assert best["price"] == {"minor": 790 * best["put_ups"]["row-1"], "currency": "EUR"}
    assert len(said["options"]) == 3


def test_nothing_that_works_ends_with_one(run: Run, winter: Path) -> None:
    done = run("swap", winter, "shawl")
    assert (done.code, done.err) == (1, "")
    assert "Nothing here makes the same fabric" in done.out
    assert json.loads(run("swap", winter, "shawl", "--json").out)["answer"]["tone"] == "no"


def test_another_role_and_american_words(run: Run, winter: Path) -> None:
    done = run("swap", winter, "cardigan", "--role", "contrast", "--words", "american", "--measures", "imperial")
    assert "contrast" in done.out
    assert "stockinette" in done.out


def test_a_fibre_left_out(run: Run, winter: Path) -> None:
    said = told(run, winter, "pullover", "--held", "--without", "hemp", "--without", "mohair")
    fibres = {fibre for option in said["options"] for fibre in option["comparison"]["substitute"]["fibres"]}
    assert said["options"]
    assert not fibres & {"hemp", "mohair", "other"}


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["hat2"], "found \"the garment 'hat2'\"; wanted one of shawl, hat"),
        (["hat", "--role", "yoke"], "wanted one of main, contrast"),
        (["hat", "--without", "silc"], "--without: found \"the fibre 'silc'\""),
        (["hat", "--catalogue", "nowhere.csv"], 'nowhere.csv: found "no such file"'),
    ],
)
def test_input_at_fault(run: Run, winter: Path, arguments: list[str], says: str) -> None:
    done = run("swap", winter, *arguments)
    assert (done.code, done.out) == (2, "")
    assert says in done.err


def test_faults_of_the_catalogue_stand_on_their_lines(run: Run, winter: Path, shop: Path) -> None:
    shop.write_text(SHOP.replace("100 % wool", "90 % wool").replace("5,00", "five"), encoding="utf-8")
    done = run("swap", winter, "cardigan", "--catalogue", shop)
    assert done.code == 2
    lines = [line.removeprefix(str(shop)) for line in done.err.splitlines()]
    assert lines[0] == ':2: fibres: found "90 % wool"; wanted fibres that sum to 100 % (these sum to 90 %)'
    assert lines[1].startswith(':3: price EUR: found "five"; wanted an amount with its currency code')
