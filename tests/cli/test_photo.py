"""``loopwright photo``."""

import json
from pathlib import Path

import pytest
from PIL import Image

from loopwright.colour import delta_e_ciede2000, lab_from_srgb, read_hex
from tests.cli.conftest import Run
from tests.colour.photo.scenes import draw
from tests.files.pictures import SVG

YARNS = ["#a4502f", "#c9982e", "#2f6f73"]


@pytest.fixture(scope="module")
def skein(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A photo of a skein of three colours, 400 × 300, with white paper about 13 % and 16 %."""
    path = tmp_path_factory.mktemp("photos") / "skein.png"
    Image.fromarray(draw(YARNS, cuts=(0.5, 0.76, 1.0)).pixels).save(path)
    return path


def test_a_person_reads_colours_shares_doubt_and_caution(run: Run, skein: Path) -> None:
    done = run("photo", skein, "--white", "13%,16%")
    assert (done.code, done.err) == (0, "")
    for said in ("about 50 %", "about 30 %", "about 20 %", "Balanced by the paper", "No photo proves", "in daylight"):
        assert said in done.out
    assert all(len(line) <= 100 for line in done.out.splitlines())


def test_json_has_the_colours_within_the_bound_of_the_scene(run: Run, skein: Path) -> None:
    """7 ΔE00, as for the same scene in the tests of the room that computes it."""
    told = json.loads(run("photo", skein, "--white", "52,48", "--json").out)
    found = lab_from_srgb([read_hex(one["srgb"]) for one in told["colours"]])
    truth = lab_from_srgb([read_hex(one) for one in YARNS])
    assert delta_e_ciede2000(found, truth).max() < 7
    assert [one["share"] for one in told["colours"]] == [0.5, 0.3, 0.2]
    assert told["yarn"]["found_by"] == "the largest textured part"
    assert len(told["cautions"]) == 5


def test_without_paper_it_says_how_far_off_it_may_be(run: Run, skein: Path) -> None:
    told = json.loads(run("photo", skein, "--json").out)
    assert told["white_paper"] is None
    assert min(one["doubt_delta_e_2000"] for one in told["colours"]) >= 10
    assert "No white paper was pointed out" in run("photo", skein).out


def test_fewer_colours_and_a_tap_on_the_yarn(run: Run, skein: Path) -> None:
    told = json.loads(run("photo", skein, "--yarn", "200,150", "--most", "2", "--json").out)
    assert (len(told["colours"]), told["yarn"]["found_by"]) == (2, "the part that was tapped")
    assert len(json.loads(run("photo", skein, "--exactly", "5", "--json").out)["colours"]) == 5


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--white", "here"], "--white: found"),
        (["--white", "900,10"], "400 × 300 pixels"),
        (["--white", "55%,55%"], "paper"),
        (["--yarn", "1"], "--yarn: found"),
        (["--most", "7"], "1 to 6"),
    ],
)
def test_what_cannot_be_done_is_told(run: Run, skein: Path, arguments: list[str], says: str) -> None:
    done = run("photo", skein, *arguments)
    assert (done.code, done.out) == (2, "")
    assert says in done.err


def test_a_file_that_is_no_photo(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "skein.jpg"
    path.write_bytes(SVG)
    for file in (path, tmp_path / "none.png"):
        done = run("photo", file)
        assert (done.code, done.out) == (2, "")
        assert "wanted a photo as JPEG, PNG or WebP" in done.err
