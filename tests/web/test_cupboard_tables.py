"""The cupboard as a table on its pages: given out, asked about, shown, and only then kept."""

import html
import re
from typing import Any

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from loopwright.files.cupboard_table import read_table
from loopwright.season import Season
from loopwright.store import changes
from tests.web.asking import body
from tests.web.asking import words as lines_of


def words(response: Any) -> str:
    """The page's text on one line."""
    return " ".join(lines_of(response).split())


KEY = "winter-at-wethers-reach"
SHOP = """Name;Shade;Skeins;Yardage per skein;Weight per skein;Material;Price
Fen;Moss;3;246 yd;3,5 oz;70% merino 30% silk;12,50
Stone Paddock DK;Oat;2;;;;9
"""


@pytest.fixture
def address(page: str) -> str:
    return f"{page}cupboard/take-in/"


def upload(browser: Client, address: str, text: str | bytes, name: str = "shop.csv") -> Any:
    content = text.encode() if isinstance(text, str) else text
    return browser.post(address, {"file": SimpleUploadedFile(name, content)})


def form_of(response: Any) -> dict[str, str]:
    """What the first form that carries the table holds."""
    page = body(response)
    fields = dict(re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)">', page))
    chosen = re.findall(r'<select name="([^"]+)">.*?<option value="([^"]*)" selected>', page, re.DOTALL)
    return {name: html.unescape(value) for name, value in (*fields.items(), *chosen) if name != "csrfmiddlewaretoken"}


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
def test_what_is_given_out_is_all_here_already(
    browser: Client, page: str, address: str, season: Season, ending: str
) -> None:
    saved = browser.get(f"{page}cupboard/table/{ending}/")
    assert f'filename="{KEY}-cupboard.{ending}"' in saved["Content-Disposition"]
    assert len(read_table(saved.content, "x").rows) == 13
    seen = upload(browser, address, saved.content, f"mine.{ending}")
    assert "No new lot, 13 that are here already." in words(seen)
    kept = browser.post(address, form_of(seen) | {"keep": "yes"})
    assert kept.status_code == 302
    assert changes.season_of(KEY) == season
    assert changes.history(KEY).undo is None


def test_a_column_that_is_not_understood_is_asked(browser: Client, address: str, season: Season) -> None:
    asked = upload(browser, address, SHOP)
    text = words(asked)
    assert "What do its columns mean?" in text
    assert body(asked).count('class="unclear"') == 2
    assert "Moss · Oat" in text
    again = browser.post(address, form_of(asked))
    assert body(again).count('class="unclear"') == 2
    seen = browser.post(address, form_of(asked) | {"column-1": "colour", "column-6": "leave aside"})
    assert "2 new lots, one new yarn." in words(seen).replace("1 new yarn", "one new yarn")
    assert changes.season_of(KEY) == season
    assert "Look at the columns" in words(seen)
    kept = browser.post(address, form_of(seen) | {"keep": "yes"})
    assert kept["Location"].endswith("/cupboard/")
    there = changes.season_of(KEY)
    assert [lot.key for lot in there.cupboard[-2:]] == ["fen-moss", "stone-paddock-dk-oat"]
    assert there.yarn_by_key["fen"].fibres[1].fibre == "silk"
    assert changes.undo(KEY) == "took in shop.csv"
    assert changes.season_of(KEY) == season
    changes.redo(KEY)
    assert changes.season_of(KEY) == there


def test_faults_are_shown_and_nothing_can_be_kept(browser: Client, address: str, season: Season) -> None:
    text = (
        "yarn,colour,balls,fibres\nStone Paddock DK,Fog,,\nStone Paddock DK,Fog,two,\nStone Paddock DK,Fog,1,80 wool\n"
    )
    seen = upload(browser, address, text)
    said = words(seen)
    assert "3 things must be put right in the file first." in said
    assert "shop.csv:2: found no whole balls and no mass" in said
    assert 'shop.csv:3: column “balls”: found "two"' in said
    assert "shop.csv:4: column “fibres”" in said
    assert 'name="keep"' not in body(seen)
    assert browser.post(address, form_of(seen) | {"keep": "yes"}).status_code == 200
    assert changes.season_of(KEY) == season


@pytest.mark.parametrize(("choice", "lots", "put_ups"), [("leave", 13, 2), ("update", 13, 1), ("add", 14, 2)])
def test_what_is_here_with_another_amount_is_her_choice(
    browser: Client, address: str, choice: str, lots: int, put_ups: int
) -> None:
    seen = upload(browser, address, "yarn,colour,dye lot,balls\nStone Paddock DK,Rust,A3,1\n")
    assert "whole balls: here 2, in the file 1" in words(seen)
    browser.post(address, form_of(seen) | {"choice": choice, "keep": "yes"})
    there = changes.season_of(KEY).cupboard
    assert (len(there), next(lot for lot in there if lot.key == "paddock-rust").put_ups) == (lots, put_ups)


def test_a_file_that_holds_no_table_is_said(browser: Client, address: str) -> None:
    response = upload(browser, address, b"PK\x03\x04 broken", "mine.xlsx")
    assert response.status_code == 422
    assert "mine.xlsx: found a file that is no workbook" in words(response)
    assert browser.post(address, {}).status_code == 422


@pytest.mark.parametrize(
    "grid", ["{}", "[", '{"name":"x","line":1,"headings":["yarn"],"rows":[{"line":2,"cells":[]}]}']
)
def test_a_table_that_was_changed_on_its_way_is_refused(browser: Client, address: str, grid: str) -> None:
    response = browser.post(address, {"grid": grid})
    assert response.status_code == 422
    assert "wanted the file once more" in words(response)


def test_a_name_is_shown_and_never_run(browser: Client, address: str) -> None:
    seen = upload(browser, address, "yarn,<script>alert(1)</script>\nx,<b>y</b>\n", "<i>.csv")
    assert "<script>alert" not in body(seen)
    assert "<b>y" not in body(seen)
