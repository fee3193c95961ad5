"""``loopwright draft``."""

import json
from pathlib import Path
from xml.etree import ElementTree

from tests.cli.conftest import Run


def test_every_piece_is_told(run: Run, winter: Path) -> None:
    done = run("draft", winter, "cardigan")
    assert (done.code, done.err) == (0, "")
    for word in ("What do I knit?", "hem:", "sleeve", "make 2", "armhole depth"):
        assert word in done.out


def test_json_has_every_row(run: Run, winter: Path) -> None:
    (cardigan,) = json.loads(run("draft", winter, "cardigan", "--json").out)
    pieces = cardigan["draft"]["pieces"]
    rows = sum(sum(section["stitches"]) * piece["made"] for piece in pieces for section in piece["sections"])
    assert rows == cardigan["draft"]["stitches"]


def test_every_size_in_a_table(run: Run, winter: Path) -> None:
    found = json.loads(run("draft", winter, "cardigan", "--sizes", "--json").out)
    assert found["sizes"] == ["XS", "S", "M", "L", "XL"]
    assert all(len(row["by_size"]) == 5 for row in found["counts"])
    assert "stitches in all" in run("draft", winter, "cardigan", "--sizes").out


def test_sizes_of_bodies_carry_their_caution(run: Run, winter: Path) -> None:
    assert "partly from memory" in run("draft", winter, "cardigan", "--bodies", "women").out


def test_the_schematic_is_written_once(run: Run, winter: Path, tmp_path: Path) -> None:
    drawing = tmp_path / "cardigan.svg"
    assert run("draft", winter, "cardigan", "--schematic", drawing).code == 0
    assert ElementTree.fromstring(drawing.read_text(encoding="utf-8")).tag.endswith("svg")
    again = run("draft", winter, "cardigan", "--schematic", drawing)
    assert again.code == 2
    assert "a file that is there already" in again.err


def test_a_schematic_is_of_one_garment(run: Run, winter: Path, tmp_path: Path) -> None:
    done = run("draft", winter, "--schematic", tmp_path / "all.svg")
    assert done.code == 2
    assert "the key of one garment" in done.err


def test_sizes_need_a_garment(run: Run, winter: Path) -> None:
    assert run("draft", winter, "--sizes").code == 2


def test_a_garment_that_is_not_there(run: Run, winter: Path) -> None:
    done = run("draft", winter, "tent")
    assert done.code == 2
    assert "tent" in done.err


def test_what_cannot_be_drafted_ends_with_one(run: Run, winter: Path, tmp_path: Path) -> None:
    text = winter.read_text(encoding="utf-8")
    deep = text.replace('pattern = "slipway"', 'pattern = "slipway"\ndraft = { hem = { depth = "70 cm" } }')
    file = tmp_path / "deep.toml"
    file.write_text(deep, encoding="utf-8")
    done = run("draft", file, "cardigan")
    assert done.code == 1
    assert "Not drafted" in done.out
