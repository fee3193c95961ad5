"""``loopwright need``."""

import json
from pathlib import Path

import pytest

from loopwright.files import read_season
from loopwright.season import plan
from tests.cli.conftest import Run


def words(text: str) -> str:
    return " ".join(text.split())


def test_every_garment_is_told(run: Run, winter: Path) -> None:
    """Yarn is short in the winter, so it ends with one."""
    done = run("need", winter)
    assert (done.code, done.err) == (1, "")
    for garment in read_season(winter).garments:
        assert garment.name in done.out


def test_one_garment_is_told_with_its_sections_tails_and_working(run: Run, winter: Path) -> None:
    done = run("need", winter, "slipover")
    said = words(done.out)
    assert done.code == 0
    assert "body, hem" in said
    assert "a long tail of" in said
    assert "working for main, Old Jetty DK" in said
    assert "yarn in a stitch of" in said


def test_short_yarn_ends_with_one(run: Run, winter: Path) -> None:
    assert run("need", winter, "cardigan").code == 1


def test_json_has_sections_and_roles(run: Run, winter: Path) -> None:
    (told,) = json.loads(run("need", winter, "pullover", "--json").out)
    planned = plan(read_season(winter)).garment("pullover")
    assert len(told["sections"]) == len(planned.sections)
    assert told["sections"][0]["length_m"] == pytest.approx(planned.sections[0].length_m)
    assert [role["role"] for role in told["roles"]] == ["main", "contrast-1", "contrast-2"]
    assert told["tails"]


def test_a_remnant_that_does_not_finish(run: Run, winter: Path) -> None:
    done = run("need", winter, "cardigan", "--remnant", "38 g", "--from", "sleeve")
    assert done.code == 1
    assert "one sleeve of 2 takes" in done.out
    assert "rows from here 95 % sure" in done.out


def test_a_remnant_and_another_colour(run: Run, winter: Path) -> None:
    done = run("need", winter, "cardigan", "--remnant", "38 g", "--from", "sleeve", "--then", "80 g", "--json")
    told = json.loads(done.out)
    first, last = told["change_after"]
    assert done.code == 0
    assert 0 <= first <= last == told["rows_sure"]


def test_more_rows_done_leave_more_for_the_rest(run: Run, winter: Path) -> None:
    asked = ("need", winter, "slipover", "--remnant", "60 g", "--from", "body", "--json")
    now, later = (json.loads(run(*asked, "--row", row).out) for row in ("0", "40"))
    assert later["need_m"]["mean"] < now["need_m"]["mean"]
    assert later["done"] == 40


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["jacket"], "found \"the garment 'jacket'\"; wanted one of"),
        (["cardigan", "--remnant", "38 g"], "--from with a section"),
        (["cardigan", "--remnant", "38 g", "--from", "hood"], "found \"the section 'hood'\""),
        (["cardigan", "--remnant", "38", "--from", "sleeve"], "--remnant: found"),
        (["cardigan", "--remnant", "38 g", "--from", "sleeve", "--row", "900"], 'found "900 rows done"'),
        (["cardigan", "--remnant", "38 g", "--from", "sleeve", "--role", "fringe"], "found \"the role 'fringe'\""),
    ],
)
def test_what_cannot_be_asked_ends_with_two(run: Run, winter: Path, arguments: list[str], message: str) -> None:
    done = run("need", winter, *arguments)
    assert (done.code, done.out) == (2, "")
    assert message in done.err
