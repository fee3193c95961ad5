"""The page of patterns: what the season holds, and a size block pasted, shown back, kept and undone."""

import tomllib
from typing import Any

import pytest
from django.test import Client

from loopwright.season import Season
from tests.documents.pages import read_page
from tests.pictures.drawings import HOSTILE
from tests.web.asking import HOST, body, load, words

BLOCK = """\
Sizes: XS (S, M, L)
To fit bust: 80 (88, 96, 104) cm
Finished bust: 86 (94, 102, 110) cm / 34 (37, 40, 43 1/4) in
Length: 56 (57, –, 59) cm
Yarn: 9 (10, 11, 12) balls of 50 g / 120 m
Tension: 22 sts and 30 rows = 10 cm
Shown in size M.
"""
NEW = {"name": "Gangway", "construction": "raglan", "fabric": "stocking stitch", "gauge": "22 sts x 30 rows = 10 cm"}


@pytest.fixture
def patterns(page: str) -> str:
    """The address of the page of patterns."""
    return f"{page}patterns/"


def kept(browser: Client, page: str) -> dict[str, Any]:
    """The patterns in the file of the season."""
    file = tomllib.loads(body(browser.get(f"{page}file/toml/")))
    table: dict[str, Any] = file["patterns"]
    return table


def paste(browser: Client, patterns: str, text: str, **fields: str) -> Any:
    return browser.post(f"{patterns}read/", {"text": text.replace("\n", "\r\n"), **fields})


# --- What is there ------------------------------------------------------------------------------------------


def test_every_pattern_stands_with_its_sizes(browser: Client, patterns: str, season: Season) -> None:
    said = words(browser.get(patterns)).splitlines()
    for pattern in season.patterns:
        assert pattern.name in said
        assert set(pattern.sizes) <= set(said)
    assert {"90 cm", "690 m", "6 balls", "17 sts × 23 rows to 10 cm"} <= set(said)


def test_it_is_read_in_the_readers_measures_and_words(browser: Client, patterns: str) -> None:
    browser.cookies.load({"measures": "imperial", "words": "american"})
    said = words(browser.get(patterns)).splitlines()
    assert {"35½ in", "755 yd", "Gauge", "stockinette"} <= set(said)


def test_the_season_leads_there_and_it_leads_to_the_garments(browser: Client, page: str, patterns: str) -> None:
    assert patterns in read_page(body(browser.get(page))).values("href")
    assert f"{page}garment/cardigan/" in read_page(body(browser.get(patterns))).values("href")


@pytest.mark.parametrize(
    "pasted", ["", BLOCK, BLOCK.replace("94", "9"), "nothing of the kind", HOSTILE, f"Bust {HOSTILE} 3"]
)
def test_it_is_well_built(browser: Client, patterns: str, pasted: str) -> None:
    html = body(paste(browser, patterns, pasted))
    assert "<script>" not in html
    seen = read_page(html)
    assert seen.faults == []
    assert seen.count("style") == 0
    assert not any(name == "style" for _, attributes in seen.elements for name in attributes)


# --- Pasted -------------------------------------------------------------------------------------------------


def test_a_block_is_shown_back_with_the_unit_in_every_cell(
    browser: Client, patterns: str, page: str, text: str
) -> None:
    response = paste(browser, patterns, BLOCK)
    assert response.status_code == 200
    said = words(response).splitlines()
    assert {"86 cm", "34 in", "43 1/4 in", "59 cm", "–", "12 balls", "50 g / 120 m"} <= set(said)
    assert "A new pattern still needs: a name, how it is built." in said
    assert body(browser.get(f"{page}file/toml/")) == text


def test_what_is_left_out_is_told(browser: Client, patterns: str) -> None:
    assert "“Shown in size M.” left out, not a row that is known here" in words(paste(browser, patterns, BLOCK))


def test_a_fault_stands_beside_its_line_with_the_text_marked(browser: Client, patterns: str) -> None:
    response = paste(browser, patterns, BLOCK.replace("43 1/4", "53 1/4"))
    assert response.status_code == 422
    html = body(response)
    assert '<li value="3">' in html
    assert "<mark>53 1/4</mark>" in html
    assert "Found 110 cm and 53 1/4 in for L, which is 135.3 cm; wanted the same in both units." in words(response)
    assert "Keep it there" not in words(response)


def test_the_text_comes_back_as_it_was(browser: Client, patterns: str) -> None:
    html = body(paste(browser, patterns, f"\n{BLOCK}"))
    field = html.partition('<textarea name="text"')[2].partition(">")[2].partition("</textarea>")[0]
    assert field == f"\n\n{BLOCK}"  # a browser drops the first line end


def test_nothing_pasted_is_told(browser: Client, patterns: str) -> None:
    response = paste(browser, patterns, "  \n")
    assert response.status_code == 422
    assert "found no text" in words(response)


def test_a_whole_book_is_refused(browser: Client, patterns: str) -> None:
    response = paste(browser, patterns, "Bust 86 cm\n" * 4000)
    assert response.status_code == 422
    assert "found 44000 characters; wanted a pattern's size block, at most 20000" in words(response)


def test_a_live_answer_is_a_part_of_the_page(browser: Client, patterns: str) -> None:
    response = browser.post(f"{patterns}read/", {"text": "Bust 10 (12) cm"}, headers={"hx-request": "true"})
    assert response.status_code == 200
    assert "<html" not in body(response)
    assert "are these inches?" in words(response)


# --- Kept ---------------------------------------------------------------------------------------------------


def test_a_new_pattern_is_kept_and_can_be_undone(browser: Client, page: str, patterns: str, text: str) -> None:
    response = browser.post(f"{patterns}keep/", {"text": BLOCK, **NEW, "wearer": "woman"})
    assert response["Location"] == f"{patterns}#gangway"
    pattern = kept(browser, page)["gangway"]
    assert pattern["finished"] == {"bust_girth": "86 (94, 102, 110) cm", "length": "56 (57, -, 59) cm"}
    assert pattern["yarn"] == {"main": {"balls": "9 (10, 11, 12)"}}
    assert pattern["to_fit"] == {"bust_girth": "80 (88, 96, 104) cm"}
    assert "Undo: added the pattern Gangway" in words(browser.get(patterns))
    browser.post(f"{page}undo/", {"back": patterns})
    assert body(browser.get(f"{page}file/toml/")) == text


def test_into_a_pattern_with_the_same_sizes_other_rows_stay(browser: Client, page: str, patterns: str) -> None:
    before = kept(browser, page)["slipway"]
    block = "Sizes: XS (S, M, L, XL)\nActual bust: 91 (99, 107, 115, 123) cm"
    browser.post(f"{patterns}keep/", {"text": block, "into": "slipway"})
    after = kept(browser, page)["slipway"]
    assert after["finished"].pop("bust_girth") == "91 (99, 107, 115, 123) cm"
    assert before["finished"].pop("bust_girth") == "90 (98, 106, 114, 122) cm"
    assert after == before


def test_into_a_pattern_with_other_sizes_the_old_rows_go(browser: Client, page: str, patterns: str) -> None:
    browser.post(f"{patterns}keep/", {"text": f"{BLOCK}CC: 1 (1, 1, 2) balls", "into": "slipway"})
    after = kept(browser, page)["slipway"]
    assert after["sizes"] == "XS (S, M, L)"
    assert set(after["finished"]) == {"bust_girth", "length"}
    assert (after["name"], after["construction"]) == ("Slipway", "set-in sleeve")


def test_a_yarn_that_a_garment_needs_does_not_go_unseen(browser: Client, page: str, patterns: str, text: str) -> None:
    response = browser.post(f"{patterns}keep/", {"text": BLOCK, "into": "slipway"})
    assert response.status_code == 422
    assert "contrast" in words(response)
    assert body(browser.get(f"{page}file/toml/")) == text


def test_a_size_that_a_garment_needs_does_not_go_unseen(browser: Client, page: str, patterns: str, text: str) -> None:
    response = browser.post(f"{patterns}keep/", {"text": "Sizes: S\nWidth 140 cm\nYarn 800 m", "into": "low-water"})
    assert response.status_code == 422
    assert "large" in words(response)
    assert body(browser.get(f"{page}file/toml/")) == text


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"name": ""}, "Name: found "),
        ({"construction": "knotted"}, "Built as: found "),
        ({"gauge": "22"}, "Tension: found "),
    ],
)
def test_a_field_at_fault_is_named_and_nothing_is_written(
    browser: Client, page: str, patterns: str, text: str, fields: dict[str, str], said: str
) -> None:
    response = browser.post(f"{patterns}keep/", {"text": BLOCK, **NEW, **fields})
    assert response.status_code == 422
    assert said in words(response)
    assert body(browser.get(f"{page}file/toml/")) == text


def test_a_block_at_fault_is_never_kept(browser: Client, page: str, patterns: str, text: str) -> None:
    response = browser.post(f"{patterns}keep/", {"text": BLOCK.replace("94", "9"), **NEW})
    assert response.status_code == 422
    assert body(browser.get(f"{page}file/toml/")) == text


def test_what_the_block_lacks_can_be_typed(browser: Client, page: str, patterns: str) -> None:
    block = "Actual bust 86 (94) cm\nYarn: 9 (10) balls"
    asked = body(paste(browser, patterns, block))
    assert all(f'name="{name}"' in asked for name in ("sizes", "ball_length", "ball_mass"))
    fields = {**NEW, "sizes": "S (M)", "ball_length": "120 m", "ball_mass": "50 g"}
    browser.post(f"{patterns}keep/", {"text": block, **fields})
    assert kept(browser, page)["gangway"]["sizes"] == "S (M)"


# --- What is not there, and not allowed ---------------------------------------------------------------------


@pytest.mark.parametrize("below", ["patterns/read/", "patterns/keep/"])
def test_another_season_or_way_of_asking_is_refused(browser: Client, page: str, below: str) -> None:
    assert browser.get(f"{page}{below}").status_code == 405
    assert browser.post(f"/season/summer/{below}", {"text": BLOCK}).status_code == 404
    strict = Client(enforce_csrf_checks=True, headers={"host": HOST})
    assert strict.post(f"{page}{below}", {"text": BLOCK, **NEW}).status_code == 403


def test_a_pattern_that_is_not_there_is_told(browser: Client, patterns: str) -> None:
    assert browser.post(f"{patterns}keep/", {"text": BLOCK, "into": "jetty"}).status_code == 404
    assert browser.get("/season/summer/patterns/").status_code == 404


def test_names_from_the_file_are_text(browser: Client, text: str) -> None:
    page = load(browser, text.replace('name = "Slipway"', f"name = '''{HOSTILE}'''"))
    html = body(browser.get(f"{page}patterns/"))
    assert "<script>" not in html
    assert read_page(html).faults == []
