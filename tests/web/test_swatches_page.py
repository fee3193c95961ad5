"""The page of swatches: shown, asked, kept, added, undone."""

import re

import pytest
from django.test import Client

from loopwright.season import Season
from loopwright.store import changes
from tests.web.asking import body, words


@pytest.fixture
def swatches(page: str) -> str:
    """The address of the page of swatches."""
    return f"{page}swatches/"


@pytest.fixture
def key(page: str) -> str:
    return page.split("/")[2]


COUNTS = "17.5 sts x 24 rows = 10 cm\r\n8.5 sts / 2 in\r\n\r\n12 rows = 5 cm"


def test_the_season_page_leads_to_it(browser: Client, page: str, swatches: str) -> None:
    assert f'href="{swatches}"' in body(browser.get(page))


def test_every_swatch_stands_with_its_garment(browser: Client, swatches: str, season: Season) -> None:
    html = body(browser.get(swatches))
    for swatch in season.swatches:
        assert f'id="{swatch.key}"' in html
    for garment in season.garments:
        assert garment.name in words(browser.get(swatches))


def test_each_id_stands_once(browser: Client, swatches: str) -> None:
    ids = re.findall(r'\sid="([^"]+)"', body(browser.get(swatches)))
    assert sorted(set(ids)) == sorted(ids)


def test_what_is_asked_for_is_answered(browser: Client, swatches: str) -> None:
    said = words(browser.get(swatches, {"length": "49 cm", "repeat": "4n + 2"}))
    assert "Knit a length to 48.0 ± 0.8 cm" in said
    assert "takes 186 stitches" in said


def test_what_cannot_be_read_is_told_and_the_page_stands(browser: Client, swatches: str) -> None:
    response = browser.get(swatches, {"length": "long", "repeat": "<b>"})
    assert response.status_code == 200
    assert "Stitch repeat: found" in words(response)
    assert "<b>" not in body(response)


def test_counts_are_kept_line_by_line(browser: Client, swatches: str, key: str) -> None:
    response = browser.post(f"{swatches}aran/keep/", {"after": COUNTS, "places": "3", "mass": "12 g"})
    assert (response.status_code, response["Location"]) == (302, f"{swatches}#aran")
    kept = changes.season_of(key).swatch_by_key["aran"]
    assert [count.text for count in kept.after] == ["17.5 sts x 24 rows = 10 cm", "8.5 sts / 2 in", "12 rows = 5 cm"]
    assert kept.mass_g == 12


def test_what_is_kept_stands_in_the_form_again(browser: Client, swatches: str) -> None:
    browser.post(f"{swatches}aran/keep/", {"after": COUNTS})
    assert "17.5 sts x 24 rows = 10 cm\n8.5 sts / 2 in\n12 rows = 5 cm</textarea>" in body(browser.get(swatches))


def test_it_can_be_undone(browser: Client, page: str, swatches: str, key: str) -> None:
    before = changes.season_of(key)
    browser.post(f"{swatches}aran/keep/", {"after": COUNTS})
    assert "Undo: changed the swatch aran" in words(browser.get(swatches))
    browser.post(f"{page}undo/", {"back": swatches})
    assert changes.season_of(key) == before


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ({"after": "22 sts x 0 rows = 10 cm"}, "Counts after washing: found"),
        ({"after": "22 sts = 10 cm\n2 sts = 10 cm"}, "from 3 to 150"),
        ({"mass": "twelve"}, "Mass, washed: found"),
        ({"places": "many"}, "Places, 1st count: found"),
        ({"before": "", "after": ""}, "a swatch without a gauge"),
    ],
)
def test_a_fault_keeps_nothing_and_the_form_holds_it(
    browser: Client, swatches: str, key: str, typed: dict[str, str], message: str
) -> None:
    before = changes.season_of(key)
    response = browser.post(f"{swatches}aran/keep/", typed)
    assert response.status_code == 422
    assert message in words(response)
    assert changes.season_of(key) == before
    assert all(value in body(response) for value in typed.values())


def test_a_swatch_is_added(browser: Client, swatches: str, page: str, key: str) -> None:
    fields = {
        "name": "Sock top",
        "yarn": "culvert-sock",
        "held_with": "",
        "fabric": "1x1 rib",
        "after": "36 sts = 10 cm",
    }
    response = browser.post(f"{page}add-swatch/", fields)
    assert response["Location"] == f"{swatches}#sock-top"
    added = changes.season_of(key).swatch_by_key["sock-top"]
    assert (added.yarns, added.fabric, added.gauge.stitches_per_10cm) == (("culvert-sock",), "1x1 rib", 36)
    assert "No garment is planned with it." in words(browser.get(swatches))


def test_two_strands_are_held_together(browser: Client, page: str, key: str) -> None:
    fields = {"name": "halo", "yarn": "paddock-dk", "held_with": "dusk-haze", "after": "18 sts = 10 cm"}
    browser.post(f"{page}add-swatch/", fields)
    assert changes.season_of(key).swatch_by_key["halo"].yarns == ("paddock-dk", "dusk-haze")


@pytest.mark.parametrize(
    ("fields", "message"),
    [
        ({"name": "", "yarn": "paddock-dk", "after": "22 sts = 10 cm"}, "a name for the swatch"),
        ({"name": "new", "yarn": "paddock-dk", "after": ""}, "a swatch without a gauge"),
        ({"name": "new", "yarn": "nowhere", "after": "22 sts = 10 cm"}, "the yarn 'nowhere'"),
    ],
)
def test_a_fault_adds_nothing(browser: Client, page: str, key: str, fields: dict[str, str], message: str) -> None:
    response = browser.post(f"{page}add-swatch/", fields)
    assert response.status_code == 422
    assert message in words(response)
    assert len(changes.season_of(key).swatches) == 5


def test_a_swatch_that_is_not_there_is_not_found(browser: Client, swatches: str) -> None:
    assert browser.post(f"{swatches}nowhere/keep/", {"after": "22 sts = 10 cm"}).status_code == 404
    assert browser.get("/season/nowhere/swatches/").status_code == 404
