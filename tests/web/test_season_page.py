"""The page of a season, its report and its file."""

import tomllib

import pytest
from django.test import Client

from loopwright.files import read_season_text, write_season_text
from loopwright.season import Season, plan, with_garment
from tests.documents.pages import read_page
from tests.web.asking import body, load, words

CARDIGAN = "garment/cardigan/"


def test_it_answers_as_the_plan_does(browser: Client, page: str, season: Season) -> None:
    said = words(browser.get(page)).splitlines()
    for answer in plan(season).answers:
        assert answer.question in said
        assert answer.sentence in said
        assert set(answer.reasons) <= set(said)


def test_every_garment_has_a_way_to_its_bench(browser: Client, page: str, season: Season) -> None:
    links = set(read_page(body(browser.get(page))).values("href"))
    assert {f"{page}garment/{garment.key}/" for garment in season.garments} <= links


def test_garments_stand_in_the_order_of_making(browser: Client, page: str, season: Season) -> None:
    html = body(browser.get(page))
    places = [html.index(f"{page}garment/{garment.key}/") for garment in plan(season).garments]
    assert places == sorted(places)


def test_it_is_well_built(browser: Client, page: str) -> None:
    assert read_page(body(browser.get(page))).faults == []


def test_the_report_is_the_seasons(browser: Client, page: str, season: Season) -> None:
    response = browser.get(f"{page}report/")
    assert plan(season).garment("cardigan").answer("yarn").sentence in words(response)
    assert read_page(body(response)).faults == []


# --- Its file -----------------------------------------------------------------------------------------------


def test_the_file_comes_back_byte_for_byte(browser: Client, page: str, text: str) -> None:
    response = browser.get(f"{page}file/toml/")
    assert response.content == text.encode()
    assert response["Content-Type"] == "application/toml; charset=utf-8"
    assert response["Content-Disposition"] == 'attachment; filename="winter-at-wethers-reach.toml"'


def test_a_form_that_ends_lines_in_its_own_way_changes_nothing(browser: Client, text: str) -> None:
    # A browser sends CR LF for every line of a text field. Source: HTML Living Standard, 4.10.22.4.
    page = load(browser, text.replace("\n", "\r\n"))
    assert browser.get(f"{page}file/toml/").content == text.encode()


def test_a_json_file_comes_back_byte_for_byte(browser: Client, season: Season) -> None:
    content = write_season_text(season, "json")
    page = load(browser, content)
    assert browser.get(f"{page}file/json/").content == content.encode()


@pytest.mark.parametrize("ending", ["toml", "json"])
def test_the_other_format_holds_the_same_season(browser: Client, page: str, season: Season, ending: str) -> None:
    text = body(browser.get(f"{page}file/{ending}/"))
    assert read_season_text(text, f"winter.{ending}", "json" if ending == "json" else "toml") == season


def test_after_a_kept_change_the_file_holds_the_changed_season(browser: Client, page: str, season: Season) -> None:
    browser.post(f"{page}{CARDIGAN}keep/", {"changes.body_longer": "8 cm"})
    text = body(browser.get(f"{page}file/toml/"))
    changed = with_garment(season, "cardigan", {"changes.body_longer": "8 cm"})
    assert read_season_text(text, "winter.toml", "toml") == changed != season


def test_after_undo_the_file_is_the_loaded_one_again(browser: Client, page: str, text: str) -> None:
    browser.post(f"{page}{CARDIGAN}keep/", {"changes.body_longer": "8 cm"})
    browser.post(f"{page}undo/")
    assert body(browser.get(f"{page}file/toml/")) == text


def test_another_ending_is_not_there(browser: Client, page: str) -> None:
    assert browser.get(f"{page}file/xlsx/").status_code == 404


# --- Undo and redo ------------------------------------------------------------------------------------------


def test_nothing_is_offered_where_nothing_was_changed(browser: Client, page: str) -> None:
    assert "Undo" not in words(browser.get(page))


def test_a_change_is_offered_back_in_its_words(browser: Client, page: str) -> None:
    browser.post(f"{page}{CARDIGAN}keep/", {"changes.body_longer": "8 cm"})
    assert "Undo: changed Cardigan for herself" in words(browser.get(page))


def test_what_was_undone_can_be_done_again(browser: Client, page: str) -> None:
    browser.post(f"{page}{CARDIGAN}keep/", {"changes.body_longer": "8 cm"})
    undone = browser.post(f"{page}undo/", follow=True)
    assert "Do again: changed Cardigan for herself" in words(undone)
    browser.post(f"{page}redo/")
    kept = tomllib.loads(body(browser.get(f"{page}file/toml/")))
    assert kept["garments"]["cardigan"]["changes"]["body_longer"] == "8 cm"


@pytest.mark.parametrize("step", ["undo", "redo"])
def test_a_second_press_does_no_harm(browser: Client, page: str, text: str, step: str) -> None:
    for _ in range(2):
        assert browser.post(f"{page}{step}/").status_code == 302
    assert body(browser.get(f"{page}file/toml/")) == text


def test_undo_goes_back_to_where_she_was(browser: Client, page: str) -> None:
    bench = f"{page}{CARDIGAN}"
    browser.post(f"{bench}keep/", {"changes.body_longer": "8 cm"})
    assert browser.post(f"{page}undo/", {"back": bench})["Location"] == bench


def test_a_season_loaded_over_another_can_be_undone(browser: Client, page: str, text: str, season: Season) -> None:
    load(browser, text.replace("hours_a_week = 8", "hours_a_week = 3"))
    assert "3 hours a week" in words(browser.get(page))
    browser.post(f"{page}undo/")
    assert f"{season.hours_a_week:g} hours a week" in words(browser.get(page))
