"""``loopwright picture``."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from PIL import Image

from tests.cli.conftest import Run

HARBOUR, BRICK = "harbour: main=#4f7583, contrast=#d8c7a3", "brick: main=#a2502f"


def test_the_front_is_drawn_in_the_colours_of_its_yarns(run: Run, winter: Path, tmp_path: Path) -> None:
    file = tmp_path / "cardigan.png"
    untold = winter.read_text("utf-8").replace('colours.edges = "contrast"', "")
    winter.write_text(untold, encoding="utf-8")
    done = run("picture", winter, "cardigan", "--out", file)
    assert (done.code, done.err) == (0, "")
    assert "main: #4f7583" in done.out
    assert "ribs and bands are drawn in contrast" in done.out
    with Image.open(file) as picture:
        assert (picture.mode, max(picture.size)) == ("P", 1200)
        assert [79, 117, 131] in np.asarray(picture.getpalette()).reshape(-1, 3).tolist()  # the middle shade, #4f7583


def test_other_colours_back_and_fabric(run: Run, winter: Path, tmp_path: Path) -> None:
    front, back, fabric = (tmp_path / f"{name}.png" for name in ("front", "back", "fabric"))
    for file, *more in ((front,), (back, "--back"), (fabric, "--fabric")):
        done = run("picture", winter, "cardigan", "--colour", "main=#a2502f", "--size", "300", "--out", file, *more)
        assert (done.code, done.err) == (0, "")
    contents = {file.read_bytes() for file in (front, back, fabric)}
    assert len(contents) == 3


def test_a_drawing_in_lines(run: Run, winter: Path, tmp_path: Path) -> None:
    file = tmp_path / "hat.svg"
    assert run("picture", winter, "hat", "--out", file).code == 0
    text = file.read_text(encoding="utf-8")
    assert ElementTree.fromstring(text).tag.endswith("svg")
    assert "#c39a32" in text


def test_colourways_as_a_card_and_as_a_page(run: Run, winter: Path, tmp_path: Path) -> None:
    for name in ("ways.png", "ways.html"):
        done = run(
            "picture", winter, "cardigan", "--colourway", HARBOUR, "--colourway", BRICK, "--out", tmp_path / name
        )
        assert (done.code, done.err) == (0, "")
    with Image.open(tmp_path / "ways.png") as card:
        assert card.mode == "RGB"
    page = (tmp_path / "ways.html").read_text(encoding="utf-8")
    assert "harbour" in page
    assert "brick" in page


def test_a_role_that_a_colourway_leaves_out_keeps_its_yarns_colour(run: Run, winter: Path, tmp_path: Path) -> None:
    done = run("picture", winter, "cardigan", "--colourway", BRICK, "--out", tmp_path / "brick.png")
    assert "main: #a2502f" in done.out
    assert "contrast: #d8c7a3" in done.out


def test_edges_may_be_drawn_in_the_main_colour(run: Run, winter: Path, tmp_path: Path) -> None:
    done = run("picture", winter, "cardigan", "--edges", "main", "--size", "300", "--out", tmp_path / "plain.png")
    assert "ribs and bands are drawn in main" in done.out


def test_it_is_not_written_over_another_file(run: Run, winter: Path, tmp_path: Path) -> None:
    file = tmp_path / "cardigan.png"
    file.write_text("kept", encoding="utf-8")
    done = run("picture", winter, "cardigan", "--out", file)
    assert (done.code, file.read_text(encoding="utf-8")) == (2, "kept")


@pytest.mark.parametrize(
    ("garment", "name", "more", "says"),
    [
        ("tent", "a.png", [], "the garment 'tent'"),
        ("cardigan", "a.gif", [], ".png, .svg or .html"),
        ("cardigan", "a.png", ["--colour", "main"], "put it in quotes"),
        ("cardigan", "a.png", ["--colour", "lining=#203040"], "the role 'lining'"),
        ("cardigan", "a.png", ["--edges", "lining"], "the role 'lining'"),
        ("cardigan", "a.png", ["--colourway", "main=#203040"], "a name and its colours"),
        ("cardigan", "a.html", [], "no colourway"),
        ("cardigan", "a.svg", ["--fabric"], "a name that ends in .png"),
        ("cardigan", "a.svg", ["--colourway", HARBOUR, "--colourway", BRICK], "a name that ends in .png"),
        ("cardigan", "a.png", ["--fabric", "--colourway", HARBOUR, "--colourway", BRICK], "one colourway at a time"),
    ],
)
def test_bad_input_ends_with_two(
    run: Run, winter: Path, tmp_path: Path, garment: str, name: str, more: list[str], says: str
) -> None:
    done = run("picture", winter, garment, "--out", tmp_path / name, *more)
    assert (done.code, done.out) == (2, "")
    assert says in done.err
    assert not (tmp_path / name).exists()
