"""A season of twice the garments asks the database no more often."""

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from tests.web.asking import load


def doubled(text: str) -> str:
    """The season with every garment a second time, under another name."""
    garments = text.partition("[garments.shawl]")[2].partition("# --- Shops")[0]
    again = (
        ("[garments.shawl]" + garments)
        .replace("[garments.", "[garments.second-")
        .replace('name = "', 'name = "Second ')
    )
    return text.replace("# --- Shops", again + "\n# --- Shops", 1)


def queries(browser: Client, address: str) -> int:
    """How many queries the page takes, at least one."""
    with CaptureQueriesContext(connection) as asked:
        assert browser.get(address).status_code == 200
    assert len(asked) > 0
    return len(asked)


@pytest.mark.parametrize("below", ["", "garment/cardigan/", "report/", "file/json/", "cupboard/", "yarns/"])
def test_a_page_of_a_season_takes_as_many_for_ten_garments(browser: Client, page: str, text: str, below: str) -> None:
    before = queries(browser, f"{page}{below}")
    assert load(browser, doubled(text)) == page
    assert queries(browser, f"{page}{below}") == before


def test_the_first_page_takes_as_many_for_two_seasons(browser: Client, page: str, text: str) -> None:
    assert page
    before = queries(browser, "/")
    load(browser, text.replace("Winter at Wethers Reach", "Another winter"))
    assert queries(browser, "/") == before
