"""``loopwright chart``."""

import io
import json
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from PIL import Image

from loopwright.chart import read_chart_csv, read_chart_svg
from tests.cli.conftest import Run

GAUGE = "22 sts x 30 rows = 10 cm"
CSV = "chart,1\nworked,in the round\nrole,main,#dccdae\nrole,contrast,#23424f\nrow,1,main,main,contrast\n"


@pytest.fixture
def table(tmp_path: Path) -> Path:
    path = tmp_path / "chart.csv"
    path.write_text(CSV, encoding="utf-8")
    return path


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    pixels = np.zeros((40, 60, 3), dtype=np.uint8)
    pixels[:, 30:] = 255
    path = tmp_path / "photo.png"
    Image.fromarray(pixels).save(path)
    return path


def test_a_season_s_only_chart_is_told(run: Run, winter: Path) -> None:
    done = run("chart", winter)
    assert (done.code, done.err) == (0, "")
    for words in ("Tide line", "Which floats are too long?", "catch it at stitch 12", "Row 6, contrast-1"):
        assert words in done.out


def test_json_has_every_figure(run: Run, winter: Path) -> None:
    found = json.loads(run("chart", winter, "tide-line", "--fit", "144", "--json").out)
    assert (found["stitches"], found["rows"], found["worked"]) == (12, 12, "in the round")
    assert [one["catch_at_stitch"] for one in found["long_floats"]] == [[12], [1], [6], [6]]
    assert (found["fit"]["exact"], found["fit"]["whole_repeats"]) == (True, 12)
    assert len(found["fit"]["columns"]) == 144


def test_yarn_and_limit_are_taken_as_stated(run: Run, table: Path) -> None:
    done = run("chart", table, "--gauge", GAUGE, "--yarn", "50 g = 115 m", "--limit", "1", "--json")
    found = json.loads(done.out)
    main = found["roles"][0]
    assert main["mass_g"] == pytest.approx(main["metres"] * 50 / 115, abs=1e-3)
    assert (found["float_limit"], len(found["long_floats"])) == (1, 1)


def test_it_is_fitted_and_written_in_every_form(run: Run, table: Path, tmp_path: Path) -> None:
    svg, png, csv = (tmp_path / f"wide.{ending}" for ending in ("svg", "png", "csv"))
    done = run("chart", table, "--fit", "7", "--svg", svg, "--png", png, "--csv", csv)
    assert done.code == 0
    assert "2.33 repeats" in done.out
    chart = read_chart_csv(csv.read_text(encoding="utf-8"))
    assert chart.cells.tolist() == [[0, 0, 0, 1, 0, 0, 1]]
    assert read_chart_svg(svg.read_text(encoding="utf-8")) == chart
    assert ElementTree.fromstring(svg.read_text(encoding="utf-8")).tag.endswith("svg")
    with Image.open(png) as picture:
        assert picture.size == (7, 1)
    assert run("chart", svg).code == run("chart", png).code == 0
    assert "a file that is there already" in run("chart", table, "--csv", csv).err


def test_check_ends_with_one_when_a_float_is_too_long(run: Run, winter: Path, table: Path) -> None:
    assert run("chart", winter, "--check").code == 1
    assert run("chart", table, "--check").code == 0


def test_a_picture_becomes_a_chart(run: Run, photo: Path, tmp_path: Path) -> None:
    csv = tmp_path / "made.csv"
    palette = "paper=#ffffff,ink=#000000"
    done = run("chart", "--picture", photo, "--palette", palette, "--stitches", "60", "--gauge", GAUGE, "--csv", csv)
    assert done.code == 0
    assert "60 stitches by 55 rows" in done.out
    assert "ΔE00 0.0 on average" in done.out
    chart = read_chart_csv(csv.read_text(encoding="utf-8"))
    assert [role.name for role in chart.roles] == ["paper", "ink"]
    assert chart.cells[0].tolist() == [1] * 30 + [0] * 30


def test_without_a_palette_colours_are_found(run: Run, photo: Path) -> None:
    found = json.loads(run("chart", "--picture", photo, "--colours", "2", "--json").out)
    assert {role["shade"] for role in found["roles"]} == {"#000000", "#ffffff"}


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((), "neither a file nor a picture"),
        (("nowhere.csv",), "no such file"),
        (("chart.gif",), "wanted a name that ends in"),
        (("chart.csv", "key"), "a key only with a season file"),
        (("chart.csv", "--gauge", "tight"), "--gauge"),
        (("chart.csv", "--limit", "0"), "--limit: found"),
        (("chart.csv", "--fit", "0"), "--fit: found"),
        (("chart.csv", "--fit", "9", "--edge", "1"), "flat only"),
        (("--picture", "photo.png", "--palette", "red"), "--palette: found"),
    ],
)
def test_what_cannot_be_done_is_told(
    run: Run, table: Path, photo: Path, monkeypatch: pytest.MonkeyPatch, arguments: tuple[str, ...], message: str
) -> None:
    monkeypatch.chdir(table.parent)
    done = run("chart", *arguments)
    assert done.code == 2
    assert message in done.err


def test_a_fault_in_a_file_names_row_and_stitch(run: Run, table: Path) -> None:
    table.write_text(CSV.replace("main,main,contrast\n", "main,rust,contrast\n"), encoding="utf-8")
    done = run("chart", table)
    assert done.code == 2
    assert "chart.csv: row 1, stitch 2 (line 5): found" in done.err


def test_a_season_without_that_chart(run: Run, winter: Path) -> None:
    assert "a chart of this season (tide-line)" in run("chart", winter, "tent").err


def test_a_photo_that_is_none(run: Run, tmp_path: Path) -> None:
    broken = tmp_path / "broken.png"
    broken.write_bytes(io.BytesIO(b"\x89PNG but no more").getvalue())
    assert "broken.png: found" in run("chart", "--picture", broken).err


def test_it_is_drawn_on_its_garment(run: Run, winter: Path, tmp_path: Path) -> None:
    """What is laid changes the body of the pullover and leaves its sleeves, since they are not named."""
    laid, plain, svg = (tmp_path / name for name in ("laid.png", "plain.png", "laid.svg"))
    done = run("chart", winter, "--on-garment", laid)
    assert (done.code, done.err) == (0, "")
    for said in (
        "How does it lie on Striped pullover for Tam?",
        "On the body: 6 rows Oat",
        "judge the yarn in daylight",
    ):
        assert said in done.out
    assert run("picture", winter, "pullover", "--out", plain).code == 0
    with Image.open(laid) as one, Image.open(plain) as other:
        assert one.size == other.size
        changed = (np.asarray(one.convert("RGB")) != np.asarray(other.convert("RGB"))).any(axis=2)
    columns = np.flatnonzero(changed.any(axis=0)) / changed.shape[1]
    assert 0.25 < columns.min() < columns.max() < 0.75
    assert run("chart", winter, "--on-garment", svg).code == 0
    assert ElementTree.fromstring(svg.read_text(encoding="utf-8")).tag.endswith("svg")


def test_it_is_laid_on_the_part_that_is_named(run: Run, winter: Path, tmp_path: Path) -> None:
    done = run("chart", winter, "--on-garment", tmp_path / "yoke.png", "--place", "yoke", "--json")
    found = json.loads(done.out)["on_garment"]
    assert (found["garment"], found["place"]) == ("pullover", "yoke")
    assert found["colours"] == "6 main, 1 chart tide-line, main"
    assert found["says"][0] == "On the yoke: 6 rows Oat, then the chart Tide line, then Oat."


def test_words_of_its_garment_that_hold_more_are_drawn_as_they_stand(run: Run, winter: Path, tmp_path: Path) -> None:
    said = winter.read_text("utf-8").replace(
        "5 main, 4 contrast-1, 3 contrast-2", "2 contrast-1, chart tide-line, main"
    )
    winter.write_text(said, encoding="utf-8")
    done = run("chart", winter, "--on-garment", tmp_path / "kept.png")
    assert (done.code, done.err) == (0, "")
    assert "hold more than can be chosen here" in " ".join(done.out.split())
    assert (tmp_path / "kept.png").exists()


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("chart.csv", "--on-garment", "new.png"), '--on-garment: found "a chart that is in no season"'),
        (("winter.toml", "--on-garment", "new.gif"), "a name that ends in .png or .svg"),
        (("winter.toml", "--on-garment", "new.png", "--place", "pocket"), '--place: found "pocket"'),
        (("winter.toml", "--place", "body"), "wanted --on-garment with a file beside it"),
    ],
)
def test_what_cannot_be_drawn_on_a_garment_is_told(
    run: Run, table: Path, winter: Path, monkeypatch: pytest.MonkeyPatch, arguments: tuple[str, ...], message: str
) -> None:
    monkeypatch.chdir(table.parent)
    done = run("chart", *(str(winter) if one == "winter.toml" else one for one in arguments))
    assert done.code == 2
    assert message in " ".join(done.err.split())
    assert not (table.parent / "new.png").exists()


def test_a_chart_of_another_garment_s_roles_is_not_drawn_on_it(run: Run, winter: Path, tmp_path: Path) -> None:
    winter.write_text(winter.read_text("utf-8").replace('garment = "pullover"', 'garment = "hat"'), encoding="utf-8")
    done = run("chart", winter, "--on-garment", tmp_path / "new.png")
    assert done.code == 2
    assert "has no yarn for contrast-1, contrast-2" in " ".join(done.err.split())
