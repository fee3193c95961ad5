"""``loopwright draft``."""

import json
import re
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


def test_json_has_notes_and_reasons_in_cm(run: Run, winter: Path) -> None:
    (cardigan,) = json.loads(run("draft", winter, "cardigan", "--json", "--measures", "imperial").out)
    assert any(re.search(r"The cap is [\d.]+ cm high", note) for note in cardigan["draft"]["notes"])
    assert all(isinstance(measure["reason"], str) for measure in cardigan["draft"]["measures"])


def test_notes_are_told_in_inches_to_those_who_read_them(run: Run, winter: Path) -> None:
    said = " ".join(run("draft", winter, "cardigan", "--measures", "imperial").out.split())
    assert re.search(r"The cap is \d+[¼½¾]? in high", said)
    assert not re.search(r"\d cm\b", said)


def test_why_a_size_is_not_drafted_is_told_in_inches_too(run: Run, winter: Path) -> None:
    """A hem of 70 cm is about 27½ in."""
    text = winter.read_text(encoding="utf-8")
    wish = 'pattern = "slipway"\ndraft = { hem = { depth = "70 cm" } }'
    winter.write_text(text.replace('pattern = "slipway"', wish), encoding="utf-8")
    done = run("draft", winter, "cardigan", "--sizes", "--measures", "imperial")
    assert done.code == 1
    assert re.search(r"is not drafted: .* a hem edge of 27[½¾]? in", " ".join(done.out.split()))
    assert not re.search(r"\d cm\b", done.out)
    found = json.loads(run("draft", winter, "cardigan", "--sizes", "--json").out)["not_drafted"]
    assert all(re.search(r"a hem edge of [67]\d\S* cm", fault) for fault in found.values())


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
