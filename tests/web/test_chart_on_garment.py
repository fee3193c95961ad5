"""The section of a chart's page that lays it on its garment: shown, chosen, refused, kept, taken off, undone."""

from __future__ import annotations

import re
from html import unescape
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest
from django.test import Client

from loopwright.store import changes
from tests.web.asking import body, words


@pytest.fixture
def bench(page: str) -> str:
    return f"{page}charts/tide-line/"


@pytest.fixture
def key(page: str) -> str:
    return page.split("/")[2]


def colours_of(key: str) -> dict[str, str]:
    found: dict[str, str] = (
        changes.season_of(key).garment_by_key["pullover"].colours.model_dump(mode="json", exclude_none=True)
    )
    return found


def part(browser: Client, bench: str, **asked: str) -> Any:
    """The section alone, as the page asks for it while she chooses."""
    return browser.get(f"{bench}on-garment/", asked, headers={"HX-Request": "true"})


def addresses(response: Any) -> list[str]:
    return [unescape(one) for one in re.findall(r'<img src="([^"]+/picture/[^"]+)"', body(response))]


def asked_of_picture(response: Any) -> dict[str, str]:
    """What the front picture is asked to show."""
    return {name: values[0] for name, values in parse_qs(urlsplit(addresses(response)[0]).query).items()}


def lay(browser: Client, bench: str, **typed: str) -> Any:
    return browser.post(f"{bench}lay/", {"place": "body", "before": "3", "times": "2", **typed})


def test_it_begins_where_it_usually_goes(browser: Client, bench: str, key: str) -> None:
    response = browser.get(bench)
    assert "On the body: 6 rows Oat, then the chart Tide line, then Oat. Not kept yet." in words(response)
    asked = asked_of_picture(response)
    assert asked["colours.body"] == "6 main, 1 chart tide-line, main"
    assert asked["of"] == changes.season_of(key).chart_by_key["tide-line"].fingerprint
    assert "144 or 156 would be even" in words(response)
    assert "A screen shows only a likeness" in words(response)


def test_its_pictures_can_be_had_and_show_the_chart(browser: Client, bench: str) -> None:
    front, back = addresses(browser.get(bench))
    drawn = browser.get(front)
    assert (drawn.status_code, drawn["Content-Type"]) == (200, "image/png")
    assert browser.get(back).status_code == 200
    assert drawn.content != browser.get(f"{front.partition('?')[0]}?px=1000").content


def test_what_is_chosen_is_shown(browser: Client, bench: str) -> None:
    response = part(browser, bench, place="sleeves", before="3", times="2", shown="sleeves")
    assert asked_of_picture(response)["colours.sleeves"] == "3 main, 2 chart tide-line, main"
    assert "Tide line on the left sleeve and the right sleeve, rounds 4 to 27" in words(response)
    assert "<html" not in body(response)
    assert "hx-swap-oob" not in body(response)
    to_end = part(browser, bench, place="body", before="0", times="2", to_end="yes")
    assert asked_of_picture(to_end)["colours.body"] == "chart tide-line"


def test_without_script_the_whole_page_shows_it(browser: Client, bench: str) -> None:
    asked = {"place": "sleeves", "before": "3", "times": "2", "shown": "sleeves"}
    response = browser.get(bench, asked)
    assert asked_of_picture(response)["colours.sleeves"] == "3 main, 2 chart tide-line, main"
    assert '<option value="sleeves" selected>' in body(response)
    alone = browser.get(f"{bench}on-garment/", asked)
    assert alone["Location"] == f"{bench}?place=sleeves&before=3&times=2&shown=sleeves#on-garment"


def test_another_part_takes_the_numbers_over_where_they_fit(browser: Client, bench: str) -> None:
    """The cuffs have 15 rows, the chart 12, so three are left before it; the sleeves have 69."""
    fits = part(browser, bench, place="sleeves", before="40", times="2", shown="body")
    assert asked_of_picture(fits)["colours.sleeves"] == "40 main, 2 chart tide-line, main"
    other = part(browser, bench, place="cuff", before="40", times="2", shown="body")
    assert asked_of_picture(other)["colours.cuff"] == "3 main, 1 chart tide-line, main"
    assert 'id="laying-numbers" hx-swap-oob="true"' in body(other)
    assert '<input name="before" value="3"' in body(other)


def test_a_part_that_has_the_chart_begins_as_it_is_kept(browser: Client, bench: str) -> None:
    lay(browser, bench, place="sleeves", before="5", times="4")
    response = part(browser, bench, place="sleeves", before="40", times="2", shown="body")
    assert asked_of_picture(response)["colours.sleeves"] == "5 main, 4 chart tide-line, main"
    assert "It is kept so." in words(response)


BAD = [
    ({"place": "pocket"}, 'Where: found "pocket"; wanted one of body, sleeves, yoke, hem, cuff, neckband'),
    ({"place": ""}, "Where: found nothing"),
    ({"place": "band"}, 'Where: found "band"'),
    ({"before": "200"}, 'Rows before it: found "200"; wanted 0 to 59, since the body has 60 rows'),
    ({"before": "-1"}, 'Rows before it: found "-1"; wanted a whole number'),
    ({"before": "a few"}, 'Rows before it: found "a few"; wanted a whole number'),
    ({"before": "9" * 5000}, "Rows before it: found"),
    ({"times": "0"}, 'How often: found "0"; wanted 1 to 9999, or on to the end'),
    ({"times": ""}, "How often: found nothing; wanted a whole number"),
    ({"times": "<b>"}, "How often: found"),
]


@pytest.mark.parametrize(("typed", "fault"), BAD)
def test_what_cannot_be_is_said_and_nothing_is_lost(
    browser: Client, bench: str, key: str, typed: dict[str, str], fault: str
) -> None:
    before = colours_of(key)
    kept = lay(browser, bench, **typed)
    asked = part(
        browser, bench, **{"place": "body", "before": "3", "times": "2", "shown": typed.get("place", "body")} | typed
    )
    assert (kept.status_code, asked.status_code) == (422, 200)
    for response in (kept, asked):
        assert fault in words(response)
        for name, text in typed.items():
            if name != "place":
                assert f'name="{name}" value="{text.replace("<b>", "&lt;b&gt;")}"' in body(response)
        assert "colours." not in addresses(response)[0]
    assert colours_of(key) == before


def test_it_is_kept_said_so_and_undone(browser: Client, page: str, bench: str, key: str) -> None:
    before = colours_of(key)
    response = lay(browser, bench)
    assert response["Location"] == f"{bench}?place=body#on-garment"
    assert colours_of(key) == before | {"body": "3 main, 2 chart tide-line, main"}
    shown = browser.get(response["Location"])
    assert "3 rows Oat, then the chart Tide line, 2 times, then Oat. It is kept so." in words(shown)
    assert f'href="{page}garment/pullover/"' in body(shown)
    assert "Where do the colours go?" in words(browser.get(f"{page}garment/pullover/"))
    assert "Undo: laid Tide line on the body" in words(shown)
    browser.post(f"{page}undo/", {"back": bench})
    assert colours_of(key) == before


def test_it_is_taken_off_and_undone(browser: Client, page: str, bench: str, key: str) -> None:
    lay(browser, bench)
    lay(browser, bench, place="sleeves")
    assert "Take it off the sleeves" in words(browser.get(bench))
    assert browser.post(f"{bench}take-off/", {"place": "body"})["Location"] == f"{bench}#on-garment"
    assert set(colours_of(key)) == {"everywhere", "sleeves"}
    assert "Undo: took Tide line off the body" in words(browser.get(bench))
    browser.post(f"{page}undo/", {"back": bench})
    assert set(colours_of(key)) == {"everywhere", "sleeves", "body"}


@pytest.mark.parametrize("place", ["yoke", "everywhere", "", "pocket"])
def test_it_is_taken_off_only_where_it_lies(browser: Client, bench: str, key: str, place: str) -> None:
    lay(browser, bench)
    before = colours_of(key)
    response = browser.post(f"{bench}take-off/", {"place": place})
    assert response.status_code == 422
    assert "wanted a part that the chart lies on" in words(response)
    assert colours_of(key) == before


def test_words_that_hold_more_are_told_and_left_alone(browser: Client, bench: str, key: str) -> None:
    said = "2 contrast-1, chart tide-line, main"
    changes.change_entry(key, "garments", "pullover", "wrote colours", {"colours.body": said})
    response = browser.get(bench)
    assert "The words for the body hold more than can be chosen here, and stay as they are" in words(response)
    assert "colours." not in addresses(response)[0]
    assert '<option value="" selected>as it is kept</option>' in body(response)
    assert '<option value="body"' not in body(response)
    assert lay(browser, bench).status_code == 422
    assert colours_of(key)["body"] == "2 contrast-1, 1 chart tide-line, main"
    asked = part(browser, bench, place="sleeves", before="3", times="1", shown="")
    assert asked_of_picture(asked)["colours.sleeves"] == "3 main, 1 chart tide-line, main"


@pytest.mark.parametrize(
    ("garment", "said"),
    [
        ("", "It is for no garment yet: choose one, and it can be laid on it."),
        ("hat", "has no yarn for contrast-1, contrast-2, which the chart has: give it one, or draw"),
    ],
)
def test_where_it_cannot_be_laid_the_page_says_why(
    browser: Client, page: str, bench: str, key: str, garment: str, said: str
) -> None:
    changes.change_entry(key, "charts", "tide-line", "gave it a garment", {"garment": garment or None})
    response = browser.get(bench)
    assert said in words(response)
    assert 'id="laying"' not in body(response)
    assert 'hx-trigger="chart-kept from:body" hx-select="#on-garment"' in body(response)
    assert (f'href="{page}garment/hat/"' in body(response)) == bool(garment)
    refused = lay(browser, bench)
    assert refused.status_code == 422
    assert "wanted a chart that can be laid on its garment" in words(refused)


def test_what_is_drawn_makes_another_picture(browser: Client, bench: str, key: str) -> None:
    before = addresses(part(browser, bench))
    changes.change_entry(key, "charts", "tide-line", "drew it", {"rows": ["mmr"]})
    after = addresses(part(browser, bench))
    assert set(before).isdisjoint(after)


def test_a_chart_that_lies_on_a_garment_is_not_taken_away(browser: Client, bench: str, key: str) -> None:
    lay(browser, bench)
    response = browser.post(f"{bench}take-away/")
    assert response.status_code == 422
    assert "Striped pullover for Tam has it on the body: take it off there first." in words(response)
    browser.post(f"{bench}take-off/", {"place": "body"})
    assert browser.post(f"{bench}take-away/").status_code == 302


def test_a_chart_that_is_not_there(browser: Client, page: str) -> None:
    place = f"{page}charts/tent/"
    assert browser.get(f"{place}on-garment/").status_code == 404
    assert browser.post(f"{place}lay/").status_code == browser.post(f"{place}take-off/").status_code == 404
    assert browser.get(f"{page}charts/tide-line/lay/").status_code == 405


def test_every_name_on_the_page_stands_once(browser: Client, bench: str) -> None:
    lay(browser, bench)
    ids = re.findall(r'\sid="([^"]+)"', body(browser.get(bench)))
    assert sorted(set(ids)) == sorted(ids)


def test_another_s_form_is_not_taken(page: str, bench: str, key: str) -> None:
    stranger = Client(enforce_csrf_checks=True, headers={"host": "localhost"})
    assert lay(stranger, bench).status_code == 403
    token = re.search(r'name="csrfmiddlewaretoken" value="([^"]+)">Keep it there', body(stranger.get(bench)))
    assert token is not None
    assert lay(stranger, bench, csrfmiddlewaretoken=token[1]).status_code == 302
