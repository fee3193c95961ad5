"""Drafting a garment of one's own, its bench, and a garment over a range of sizes."""

from __future__ import annotations

import pytest
from django.test import Client

from loopwright.store import changes
from tests.web.asking import body, try_out, words

OWN = {
    "name": "Jetty raglan",
    "construction": "raglan",
    "for": "ina",
    "fit": "",
    "swatch": "aran",
    "yarn": "headland-aran",
    "colour": "Tarn",
}


@pytest.fixture
def key(page: str) -> str:
    return page.split("/")[2]


def test_the_season_page_leads_to_it(browser: Client, page: str) -> None:
    assert f'href="{page}draft/"' in body(browser.get(page))


def test_the_form_offers_what_the_season_has(browser: Client, page: str) -> None:
    said = words(browser.get(f"{page}draft/"))
    for word in ("Ina", "Joss", "raglan", "crescent shawl", "Long Headland Aran"):
        assert word in said


def test_it_is_drafted_and_its_bench_opens(browser: Client, page: str, key: str) -> None:
    response = browser.post(f"{page}draft/add/", OWN)
    assert (response.status_code, response["Location"]) == (302, f"{page}garment/jetty-raglan/")
    kept = changes.season_of(key).garment_by_key["jetty-raglan"]
    assert kept.pattern is None
    said = words(browser.get(response["Location"]))
    assert "What do I knit?" in said
    assert "stitches in all" in said


def test_it_can_be_undone(browser: Client, page: str, key: str) -> None:
    browser.post(f"{page}draft/add/", OWN)
    browser.post(f"{page}undo/")
    assert "jetty-raglan" not in changes.season_of(key).garment_by_key


def test_a_scarf_takes_its_measures_from_the_form(browser: Client, page: str) -> None:
    scarf = {**OWN, "name": "Jetty scarf", "construction": "rectangle", "for": "", "width": "30 cm", "length": "160 cm"}
    response = browser.post(f"{page}draft/add/", scarf)
    assert "stitches in all" in words(browser.get(response["Location"]))


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"name": ""}, "What you call it"),
        ({"colour": ""}, "Colour"),
        ({"construction": "tent"}, "What it is"),
        ({"length": "long"}, "Length"),
    ],
)
def test_a_fault_is_named_under_its_label_and_nothing_is_kept(
    browser: Client, page: str, key: str, changed: dict[str, str], said: str
) -> None:
    response = browser.post(f"{page}draft/add/", {**OWN, **changed})
    assert response.status_code == 422
    assert said in words(response)
    assert 'value="Jetty raglan"' in body(response) or changed.get("name") == ""
    assert "jetty-raglan" not in changes.season_of(key).garment_by_key


def test_the_bench_shows_every_section_and_a_drawing(browser: Client, page: str) -> None:
    response = browser.get(f"{page}garment/cardigan/")
    said = words(response)
    for word in ("Every section, with its counts and shaping", "How the measures come out", "armhole depth"):
        assert word in said
    assert body(response).count("<svg") > 2


def test_what_is_tried_changes_the_draft(browser: Client, page: str) -> None:
    address = f"{page}garment/cardigan/"
    said = words(try_out(browser, address, draft__sleeves="short"))
    assert "What it changes" in said
    assert "stitches" in said


def test_another_neck_is_tried_and_kept(browser: Client, page: str, key: str) -> None:
    address = f"{page}garment/cardigan/"
    assert "V" in words(try_out(browser, address, draft__neckline="V"))
    assert browser.post(f"{address}keep/", {"draft.neckline": "V"}).status_code == 302
    draft = changes.season_of(key).garment_by_key["cardigan"].draft
    assert draft is not None
    assert draft.neckline == "V"


def test_what_cannot_be_knitted_is_said(browser: Client, page: str) -> None:
    said = words(try_out(browser, f"{page}garment/cardigan/", **{"draft__measures__neck_width": "80 cm"}))
    assert "Not drafted" in said
    assert "neck width" in said


def test_every_size_has_a_column(browser: Client, page: str) -> None:
    said = words(browser.get(f"{page}garment/cardigan/sizes/"))
    for size in ("XS", "S", "M", "L", "XL"):
        assert size in said
    assert "stitches in all" in said


def test_a_table_of_bodies_carries_its_caution(browser: Client, page: str) -> None:
    said = words(browser.get(f"{page}garment/cardigan/sizes/", {"bodies": "children"}))
    assert "partly from memory" in said
    assert "16" in said


def test_a_garment_that_is_not_there(browser: Client, page: str) -> None:
    assert browser.get(f"{page}garment/tent/sizes/").status_code == 404
