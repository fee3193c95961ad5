"""Yarns: fibres, put-up, grist; added, changed, taken out, with the way back."""

import html
import re
from typing import Any

import pytest
from django.test import Client

from loopwright.season import Season
from loopwright.store import changes
from tests.web.asking import body
from tests.web.asking import words as lines_of


def words(response: Any) -> str:
    """The page's text on one line."""
    return " ".join(lines_of(response).split())


KEY = "winter-at-wethers-reach"
NEW = {
    "name": "Fen",
    "fibres": "70 % merino, 30 % silk",
    "length": "246 yd",
    "mass": "3 1/2 oz",
    "needle": "4 mm",
    "plies": "3",
    "note": "",
}


@pytest.fixture
def yarns(page: str) -> str:
    return f"{page}yarns/"


def test_every_yarn_is_there_with_its_grist(browser: Client, yarns: str, season: Season) -> None:
    text = words(browser.get(yarns))
    assert all(yarn.name in text for yarn in season.yarns)
    assert "80 % merino, 20 % longwool" in text
    assert "Grist 435 tex To 100 g 230 m" in text  # 50 g / 115 m: tex is g/km, by definition (ASTM D861)
    assert "six lots · for Hat from the remnant tin, Striped pullover for Tam" in text


def test_a_reader_of_ounces_reads_yards_to_the_ounce(browser: Client, yarns: str) -> None:
    browser.cookies["measures"] = "imperial"
    assert "To the ounce 71 yd" in words(browser.get(f"{yarns}paddock-dk/"))  # 115 / 50 × 28.3495 / 0.9144 = 71.3


def test_a_search_finds_yarns(browser: Client, yarns: str, season: Season) -> None:
    part = browser.get(yarns, {"search": "MOHAIR"}, headers={"hx-request": "true"})
    assert f"1 of {len(season.yarns)} yarns." in words(part)
    assert "<html" not in body(part)


def test_a_yarn_is_added_changed_taken_out_and_all_of_it_undone(
    browser: Client, page: str, yarns: str, season: Season
) -> None:
    assert browser.post(f"{page}add-yarn/", NEW)["Location"] == f"{yarns}#fen"
    fen = changes.season_of(KEY).yarn_by_key["fen"]
    assert fen.length_m == pytest.approx(224.9424)
    assert (fen.plies, fen.needle_mm) == (3, 4)
    browser.post(f"{yarns}fen/", NEW | {"fibres": "100 % wool", "needle": ""})
    changed = changes.season_of(KEY).yarn_by_key["fen"]
    assert ([one.fibre for one in changed.fibres], changed.needle_mm) == (["wool"], None)
    browser.post(f"{yarns}fen/take-out/")
    assert changes.season_of(KEY) == season
    for says in ("took out the yarn Fen", "changed the yarn Fen", "added the yarn Fen"):
        assert changes.undo(KEY) == says
    assert changes.season_of(KEY) == season
    changes.redo(KEY)
    assert changes.season_of(KEY).yarn_by_key["fen"] == fen


def test_a_form_sent_back_as_it_was_changes_nothing(browser: Client, yarns: str, season: Season) -> None:
    for yarn in season.yarns:
        page = body(browser.get(f"{yarns}{yarn.key}/"))
        fields = dict(re.findall(r'<input name="([^"]+)" value="([^"]*)"', page))
        browser.post(f"{yarns}{yarn.key}/", {name: html.unescape(value) for name, value in fields.items()})
    assert changes.season_of(KEY) == season
    assert changes.history(KEY).undo is None


@pytest.mark.parametrize(
    ("changed", "says"),
    [
        ({"fibres": "70 merino 20 silk"}, "Fibres: found"),
        ({"fibres": "70 merino 20 silk"}, "these sum to 90 %"),
        ({"fibres": "100 % wol"}, "did you mean wool?"),
        ({"length": "246"}, "Length of a ball: found"),
        ({"mass": ""}, "Mass of a ball: found"),
        ({"plies": "many"}, "Plies: found"),
        ({"name": ""}, "Name on the band: found"),
    ],
)
def test_a_fault_keeps_nothing_and_the_form_holds_it(
    browser: Client, page: str, season: Season, changed: dict[str, str], says: str
) -> None:
    response = browser.post(f"{page}add-yarn/", NEW | {"note": "held on to"} | changed)
    assert response.status_code == 422
    assert says in words(response)
    assert 'value="held on to"' in body(response)
    assert changes.season_of(KEY) == season


def test_a_yarn_that_is_needed_is_not_taken_out(browser: Client, yarns: str, season: Season) -> None:
    response = browser.post(f"{yarns}paddock-dk/take-out/")
    assert response.status_code == 422
    assert "the yarn 'paddock-dk', which is not there" in words(response)
    assert changes.season_of(KEY) == season


def test_what_is_not_there_is_missing(browser: Client, yarns: str) -> None:
    assert browser.get(f"{yarns}nope/").status_code == 404
    assert browser.post(f"{yarns}nope/take-out/").status_code == 404
