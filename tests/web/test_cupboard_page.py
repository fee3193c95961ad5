"""The cupboard: what is there, found while one types, weighed, changed, taken out and put back."""

from typing import Any

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from loopwright.season import Season
from loopwright.store import changes
from loopwright.yarn import Lot
from tests.web.asking import body
from tests.web.asking import words as lines_of


def words(response: Any) -> str:
    """The page's text on one line."""
    return " ".join(lines_of(response).split())


KEY = "winter-at-wethers-reach"
DAMSON = "lot/ropewalk-damson/"


@pytest.fixture
def cupboard(page: str) -> str:
    return f"{page}cupboard/"


def lot(key: str) -> Lot:
    return next(one for one in changes.season_of(KEY).cupboard if one.key == key)


def test_every_lot_is_there_with_what_it_is_for(browser: Client, cupboard: str, season: Season) -> None:
    text = words(browser.get(cupboard))
    assert all(one.colour in text for one in season.cupboard)
    assert "13 lots of 7 yarns" in text
    assert "dye lot 416" in text
    assert "for Cardigan for herself, nothing free" in text
    assert "328 ± 13 m 39.0 ± 1.3 g · 1 ball + 14 g opened" in text


def test_the_season_leads_to_it(browser: Client, page: str) -> None:
    html = body(browser.get(page))
    assert f'href="{page}cupboard/"' in html
    assert f'href="{page}yarns/"' in html


@pytest.mark.parametrize(
    ("search", "found"),
    [("damson", 1), ("PADDOCK oat", 2), ("hat box", 2), ("nylon", 1), ("breath yellower", 1), ("c1", 1)],
)
def test_a_search_finds(browser: Client, cupboard: str, search: str, found: int) -> None:
    whole = browser.get(cupboard, {"search": search})
    assert f"{found} of 13 lots." in words(whole)
    part = browser.get(cupboard, {"search": search}, headers={"hx-request": "true"})
    assert body(part).count('class="lot"') == found
    assert "<html" not in body(part)
    assert "HX-Request" in part["Vary"]


def test_a_search_that_finds_nothing_says_so(browser: Client, cupboard: str) -> None:
    response = browser.get(cupboard, {"search": "<b>nothing</b>\0"})
    assert response.status_code == 200
    assert "No lot has all of these words." in words(response)
    assert "<b>nothing" not in body(response)


def test_many_lots_are_turned_page_by_page(browser: Client, cupboard: str) -> None:
    rows = {
        f"fog-{number:02}": {"yarn": "paddock-dk", "colour": f"Fog {number:02}", "put_ups": 1} for number in range(60)
    }
    changes.change_entries(KEY, "more", added={"cupboard": rows})
    first, second = (browser.get(cupboard, {"search": "fog", "page": number}) for number in (1, 2))
    assert body(first).count('class="lot"') == 36
    assert body(second).count('class="lot"') == 24
    assert f'href="{cupboard}?search=fog&amp;page=2"' in body(first)
    assert browser.get(cupboard, {"page": "x"}).status_code == 200
    assert browser.get(cupboard, {"page": "9" * 30}).status_code == 200


def test_a_lot_says_how_much_and_what_for(browser: Client, cupboard: str) -> None:
    text = words(browser.get(f"{cupboard}{DAMSON}"))
    assert "969 ± 30 m: 149.0 ± 3.2 g, 1 ball + 49 g opened." in text
    assert "for Shawl for Wen; about" in text
    assert "Used already, of this yarn and colour" in text
    assert "1 × 650 m + 49 g × 650 m / 100 g" in text


def test_weighing_gives_metres_at_once_and_keeps_nothing(browser: Client, cupboard: str) -> None:
    asked = {"mass": "40 g", "less": "10 g", "what": "opened"}
    part = browser.get(f"{cupboard}{DAMSON}metres/", asked, headers={"hx-request": "true"})
    assert words(part).strip() == "30 g is 195.0 ± 8.7 m, with the whole balls 845 ± 26 m."
    whole = browser.get(f"{cupboard}{DAMSON}metres/", asked | {"what": "all"})
    assert "30 g is 195.0 ± 8.7 m." in words(whole)
    assert 'value="40 g"' in body(whole)
    assert lot("ropewalk-damson").mass_g == 49


@pytest.mark.parametrize(("mass", "says"), [("", "On the scale"), ("heavy", "On the scale: found"), ("1 g", "weighs")])
def test_what_the_scale_cannot_say_is_told(browser: Client, cupboard: str, mass: str, says: str) -> None:
    asked = {"mass": mass, "less": "1 g"}
    assert says in words(browser.get(f"{cupboard}{DAMSON}metres/", asked, headers={"hx-request": "true"}))
    response = browser.post(f"{cupboard}{DAMSON}weigh/", asked)
    assert response.status_code == 422
    assert says in words(response)


def test_a_weighing_is_kept_and_undone_in_both_directions(browser: Client, cupboard: str, season: Season) -> None:
    browser.post(f"{cupboard}{DAMSON}weigh/", {"mass": "1 1/2 oz", "what": "opened"})
    assert lot("ropewalk-damson").mass_g == pytest.approx(1.5 * 28.349523125)
    assert lot("ropewalk-damson").put_ups == 1
    browser.post(f"{cupboard}{DAMSON}weigh/", {"mass": "140 g", "what": "all"})
    assert (lot("ropewalk-damson").put_ups, lot("ropewalk-damson").mass_g) == (0, 140)
    changes.undo(KEY)
    changes.undo(KEY)
    assert changes.season_of(KEY) == season
    changes.redo(KEY)
    assert lot("ropewalk-damson").put_ups == 1


def test_a_lot_is_added_changed_and_taken_out(browser: Client, cupboard: str, season: Season) -> None:
    new = {"yarn": "culvert-sock", "colour": "Rust", "put_ups": "2", "weighed": "", "note": "sale", "shade": ""}
    added = browser.post(f"{cupboard}add/", new)
    assert added["Location"].endswith("cupboard/lot/culvert-sock-rust/")
    assert lot("culvert-sock-rust").put_ups == 2
    change = new | {"put_ups": "1", "weighed": "12 g", "dye_lot": "Q", "note": ""}
    browser.post(f"{added['Location']}change/", change)
    changed = lot("culvert-sock-rust")
    assert (changed.put_ups, changed.mass_g, changed.dye_lot, changed.note) == (1, 12, "Q", "")
    browser.post(f"{added['Location']}take-out/")
    assert changes.season_of(KEY) == season
    for says in ("took out Rust", "changed the lot Rust", "added Culvert Sock, Rust"):
        assert changes.undo(KEY) == says
    assert changes.season_of(KEY) == season
    changes.redo(KEY)
    assert lot("culvert-sock-rust").put_ups == 2


@pytest.mark.parametrize(
    ("changed", "says"),
    [
        (
            {"put_ups": "", "weighed": ""},
            "found a lot without balls and without a mass; wanted whole balls, a mass, or both",
        ),
        ({"weighed": "12"}, "Opened, weighed: found"),
        ({"put_ups": "2.5"}, "Whole balls: found"),
        ({"shade": "red"}, "Screen colour: found"),
        ({"yarn": "nope"}, "Yarn: found"),
    ],
)
def test_a_fault_keeps_nothing_and_the_form_holds_it(
    browser: Client, cupboard: str, season: Season, changed: dict[str, str], says: str
) -> None:
    fields = {"yarn": "paddock-dk", "colour": "Rust", "put_ups": "2", "note": "held on to"} | changed
    for address in (f"{cupboard}lot/paddock-rust/change/", f"{cupboard}add/"):
        response = browser.post(address, fields)
        assert response.status_code == 422
        assert says in words(response)
        assert 'value="held on to"' in body(response)
    assert changes.season_of(KEY) == season


def test_a_lot_that_a_garment_names_is_not_taken_out(browser: Client, cupboard: str) -> None:
    changes.change_garment(KEY, "hat", "named", **{"yarns.main.lots": ["paddock-gorse"]})
    response = browser.post(f"{cupboard}lot/paddock-gorse/take-out/")
    assert response.status_code == 422
    assert "the lot 'paddock-gorse'" in words(response)


def test_what_is_not_there_is_missing(browser: Client, cupboard: str) -> None:
    assert browser.get("/season/nope/cupboard/").status_code == 404
    assert browser.get(f"{cupboard}lot/nope/").status_code == 404
    assert browser.get(f"{cupboard}table/pdf/").status_code == 404
    for action in ("weigh", "change", "take-out", "photo", "photo/away"):
        assert browser.post(f"{cupboard}lot/nope/{action}/").status_code == 404
        assert browser.get(f"{cupboard}{DAMSON}{action}/").status_code == 405


def test_a_reader_of_ounces_reads_yards(browser: Client, cupboard: str) -> None:
    browser.cookies["measures"] = "imperial"
    assert "yd" in words(browser.get(cupboard))
    assert 'placeholder="1 1/2 oz"' in body(browser.get(f"{cupboard}{DAMSON}"))


@pytest.mark.parametrize("below", ["", "?search=merino", DAMSON, "labels/?lot=ropewalk-damson", "table/csv/"])
def test_twice_the_lots_take_no_more_queries(browser: Client, cupboard: str, season: Season, below: str) -> None:
    def queries() -> int:
        with CaptureQueriesContext(connection) as asked:
            assert browser.get(f"{cupboard}{below}").status_code == 200
        return len(asked)

    before = queries()
    twins = {f"{lot.key}-too": {"yarn": lot.yarn, "colour": lot.colour, "put_ups": 1} for lot in season.cupboard}
    changes.change_entries(KEY, "more", added={"cupboard": twins})
    changes.change_garment(KEY, "cardigan", "longer", note="forget what is remembered")
    after_a_change, again = queries(), queries()
    assert after_a_change <= before
    assert again <= after_a_change
