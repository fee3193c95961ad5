"""``loopwright gauge``."""

import json
from pathlib import Path

import pytest

from loopwright.files import read_season
from loopwright.season.swatch_report import swatch_report
from tests.cli.conftest import Run


@pytest.fixture
def doubtful(winter: Path) -> Path:
    """The winter with stitches and rows of a swatch exchanged."""
    text = winter.read_text(encoding="utf-8")
    assert 'after = "17.5 sts x 24 rows = 10 cm"' in text
    winter.write_text(text.replace("17.5 sts x 24 rows", "24 sts x 17.5 rows"), encoding="utf-8")
    return winter


def test_every_swatch_has_a_line(run: Run, winter: Path) -> None:
    done = run("gauge", winter)
    assert (done.code, done.err) == (0, "")
    for swatch in read_season(winter).swatches:
        assert f"\n{swatch.key} " in done.out


def test_one_swatch_is_told_in_full(run: Run, winter: Path) -> None:
    printed = " ".join(run("gauge", winter, "aran").out.split())
    for question in (
        "What is my tension?",
        "What does the wash do?",
        "Which needle next?",
        "And if I keep this fabric?",
    ):
        assert question in printed
    assert "17.5 ± 0.2 sts × 24.0 ± 0.3 rows to 10 cm, washed and dry" in printed


def test_what_is_asked_for_is_answered(run: Run, winter: Path) -> None:
    printed = " ".join(run("gauge", winter, "aran", "--length", "49 cm", "--repeat", "4n + 2").out.split())
    assert "Knit a length to 48.0 ± 0.8 cm" in printed
    assert "bust 106 cm takes 186 stitches" in printed


def test_json_is_the_report(run: Run, winter: Path) -> None:
    told = json.loads(run("gauge", winter, "lace", "--json").out)
    assert told == [swatch_report(read_season(winter), "lace").model_dump(mode="json")]
    assert len(json.loads(run("gauge", winter, "--json").out)) == 5


def test_what_is_hard_to_believe_ends_with_one(run: Run, doubtful: Path) -> None:
    done = run("gauge", doubtful)
    assert done.code == 1
    assert "aran: hard to believe: after washing" in " ".join(done.out.split())


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["arann"], 'found "arann"; wanted one of the swatches aran'),
        (["aran", "--repeat", "n + x"], "wanted a repeat such as 4n"),
        (["aran", "--length", "36"], "36"),
    ],
)
def test_what_cannot_be_read_ends_with_two(run: Run, winter: Path, arguments: list[str], message: str) -> None:
    done = run("gauge", winter, *arguments)
    assert (done.code, done.out) == (2, "")
    assert message in done.err


def test_a_season_without_swatches_says_so(run: Run, tmp_path: Path, winter: Path) -> None:
    text = winter.read_text(encoding="utf-8")
    head, _, rest = text.partition("[swatches.aran]")
    bare = "\n".join(
        line for line in f"{head}[cupboard{rest.partition('[cupboard')[2]}".splitlines() if "swatch =" not in line
    )
    path = tmp_path / "bare.toml"
    path.write_text(bare, encoding="utf-8")
    assert run("gauge", path).out == "There is no swatch yet.\n"
