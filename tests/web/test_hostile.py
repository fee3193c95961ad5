"""Text from a file is text, wherever it is shown."""

import pytest
from django.test import Client

from tests.documents.pages import read_page
from tests.pictures.drawings import HOSTILE
from tests.web.asking import body, load, words

AS_READ = " ".join(HOSTILE.split())
QUOTED = f"'''{HOSTILE}'''"
PIECES = {
    "season": ('name = "Winter at Wethers Reach"', f"name = {QUOTED}"),
    "note": ('name = "Winter at Wethers Reach"', f"name = 'Winter'\nnote = {QUOTED}"),
    "garment": ('name = "Cardigan for herself"', f"name = {QUOTED}"),
    "yarn": ('name = "Long Headland Aran"', f"name = {QUOTED}"),
    "colour": ('"Tarn"', QUOTED),
    "lot": ('dye_lot = "416"', f"dye_lot = {QUOTED}"),
    "shop": ('name = "Garnkontor Ebbmark"', f"name = {QUOTED}"),
}


def with_piece(text: str, piece: str) -> str:
    old, new = PIECES[piece]
    assert old in text
    return text.replace(old, new)


def assert_harmless(html: str) -> None:
    assert "<script>" not in html
    assert read_page(html).faults == []


@pytest.mark.parametrize("piece", PIECES)
def test_every_page_shows_it_as_text(browser: Client, text: str, piece: str) -> None:
    page = load(browser, with_piece(text, piece))
    seen = [browser.get(address) for address in ("/", page, f"{page}garment/cardigan/", f"{page}report/")]
    for response in seen:
        assert_harmless(body(response))
    assert any(AS_READ in words(response) for response in seen)


def test_what_was_done_is_told_as_text(browser: Client, text: str) -> None:
    page = load(browser, with_piece(text, "garment"))
    browser.post(f"{page}garment/cardigan/keep/", {"changes.body_longer": "8 cm"})
    response = browser.get(page)
    assert f"Undo: changed {AS_READ}" in words(response)
    assert_harmless(body(response))


def test_what_is_put_away_is_listed_as_text(browser: Client, text: str) -> None:
    page = load(browser, with_piece(text, "season"))
    response = browser.post(f"{page}put-away/", follow=True)
    assert AS_READ in words(response)
    assert_harmless(body(response))


def test_a_fault_repeats_it_as_text(browser: Client) -> None:
    response = browser.post("/load/", {"text": f"{HOSTILE} = 1 </textarea><script>"})
    assert response.status_code == 422
    assert_harmless(body(response))


def test_what_is_tried_is_repeated_as_text(browser: Client, page: str) -> None:
    response = browser.get(f"{page}garment/cardigan/", {"changes.body_longer": HOSTILE, "size": HOSTILE})
    assert_harmless(body(response))


def test_an_address_is_repeated_as_text(browser: Client) -> None:
    assert_harmless(body(browser.get("/season/winter/file/<script>/")))
    assert_harmless(body(browser.get("/<script>/")))
