"""The bench of a garment: trying, keeping, and what cannot be tried."""

import pytest
from django.test import Client

from loopwright.season import Season, plan, with_garment
from loopwright.store import changes
from loopwright.units import read_length_cm
from tests.documents.pages import read_page
from tests.web.asking import body, try_out, words

KEY = "winter-at-wethers-reach"


@pytest.fixture
def bench(page: str) -> str:
    return f"{page}garment/cardigan/"


def test_it_answers_as_the_plan_does(browser: Client, bench: str, season: Season) -> None:
    said = words(browser.get(bench)).splitlines()
    for answer in plan(season).garment("cardigan").answers:
        assert answer.question in said
        assert answer.sentence in said


@pytest.mark.parametrize("key", ["shawl", "hat", "pullover", "cardigan", "slipover"])
def test_every_bench_is_well_built(browser: Client, page: str, key: str) -> None:
    response = browser.get(f"{page}garment/{key}/")
    assert response.status_code == 200
    assert read_page(body(response)).faults == []


@pytest.mark.parametrize(
    ("key", "fields"),
    [
        ("shawl", {"size"}),
        ("hat", {"size", "changes.body_longer"}),
        ("slipover", {"size", "fit", "changes.bust_girth", "changes.body_longer"}),
        ("cardigan", {"size", "fit", "changes.bust_girth", "changes.body_longer", "changes.sleeves_longer"}),
    ],
)
def test_only_what_bears_on_the_pattern_can_be_tried(browser: Client, page: str, key: str, fields: set[str]) -> None:
    form = body(browser.get(f"{page}garment/{key}/")).partition('aria-label="Try something"')[2].partition("</form>")[0]
    bearing = {"size", "fit", "changes.bust_girth", "changes.body_longer", "changes.sleeves_longer"}
    assert bearing & set(read_page(f"<form {form}</form>").values("name")) == fields


@pytest.mark.parametrize("key", ["pullover", "cardigan", "slipover"])
def test_a_bust_between_sizes_is_suggested_within_the_sizes_of_its_pattern(
    browser: Client, page: str, season: Season, key: str
) -> None:
    """A child's pullover suggests no grown-up's bust."""
    form = body(browser.get(f"{page}garment/{key}/"))
    hint = form.partition('name="changes.bust_girth"')[2].partition('placeholder="such as ')[2].partition('"')[0]
    pattern = season.garment_by_key[key].pattern
    busts_cm = [cm for one in season.patterns if one.key == pattern for cm in one.finished.bust_girth or () if cm]
    assert min(busts_cm) < read_length_cm(hint) < max(busts_cm)


def test_what_a_field_of_colours_suggests_can_be_tried(browser: Client, page: str) -> None:
    """The hint beside an empty field names roles and a chart of this season."""
    pullover = f"{page}garment/pullover/"
    form = body(browser.get(pullover))
    hint = form.partition('name="colours.body"')[2].partition('placeholder="such as ')[2].partition('"')[0]
    assert "chart" in hint
    assert "That cannot be tried" not in words(try_out(browser, pullover, colours__body=hint))


def test_it_shows_what_is_kept(browser: Client, bench: str) -> None:
    assert 'name="changes.body_longer" value="4 cm"' in body(browser.get(bench))


# --- Trying -------------------------------------------------------------------------------------------------


def test_a_trial_answers_for_the_changed_garment(browser: Client, bench: str, season: Season) -> None:
    tried = plan(with_garment(season, "cardigan", {"changes.body_longer": "8 cm"})).garment("cardigan")
    said = words(try_out(browser, bench, changes__body_longer="8 cm"))
    assert tried.answer("yarn").sentence in said
    assert "What it changes" in said
    assert "finished length\n64 cm\n68 cm" in said


def test_a_trial_writes_nothing(browser: Client, bench: str, season: Season) -> None:
    try_out(browser, bench, changes__body_longer="8 cm", size="XL")
    assert changes.season_of(KEY) == season
    assert changes.history(KEY).undo is None


def test_trying_what_is_kept_changes_nothing(browser: Client, bench: str) -> None:
    said = words(try_out(browser, bench, changes__body_longer="4 cm", fit="", size="", sureness=""))
    assert "What it changes" not in said
    assert "Keep it" not in said


def test_a_change_without_another_figure_says_so(browser: Client, bench: str) -> None:
    assert "No figure reads otherwise." in words(try_out(browser, bench, sureness="94 %"))


@pytest.mark.parametrize(
    ("fields", "told"),
    [
        ({"changes__body_longer": "8 blah"}, 'Body longer by: found "8 blah"; wanted a length with its unit'),
        ({"changes__body_longer": "8"}, "Body longer by: found"),
        (
            {"changes__body_longer": "-900 cm"},
            "Body longer by: found 900 cm less of 57 cm; wanted something left to knit",
        ),
        ({"sureness": "120 %"}, 'How sure of the yarn: found "120 %"; wanted a share from 0 % to 100 %'),
        ({"size": "Q"}, "Size: found the size 'Q', which is not there; wanted a size of this season (XS, S, M, L, XL)"),
        ({"fit": "odd"}, 'Fit: found "odd"; wanted one of very close, close, standard, loose, oversized'),
        (
            {"changes__bust_girth": "10 cm"},
            "Bust between sizes: found a finished bust of 10 cm; wanted from 90 to 122 cm",
        ),
    ],
)
def test_a_fault_is_told_and_the_answers_stay_as_kept(
    browser: Client, bench: str, season: Season, fields: dict[str, str], told: str
) -> None:
    response = try_out(browser, bench, **fields)
    assert response.status_code == 200
    assert told in words(response)
    assert plan(season).garment("cardigan").answer("yarn").sentence in words(response)
    assert "Keep it" not in words(response)


def test_with_a_fault_what_she_typed_stays(browser: Client, bench: str) -> None:
    assert 'value="8 blah"' in body(try_out(browser, bench, changes__body_longer="8 blah"))


def test_other_names_in_the_address_change_nothing(browser: Client, bench: str) -> None:
    response = browser.get(bench, {"name": "Another", "done_on": "2027-02-01"})
    assert words(response) == words(browser.get(bench))


def test_a_script_gets_only_the_answers(browser: Client, bench: str) -> None:
    part = browser.get(bench, {"changes.body_longer": "8 cm"}, headers={"hx-request": "true"})
    assert "<html" not in body(part)
    assert "What it changes" in words(part)
    assert {"HX-Request", "Cookie"} <= {name.strip() for name in part["Vary"].split(",")}


def test_the_part_is_what_stands_in_the_page(browser: Client, bench: str) -> None:
    heard, part = words(browser.get(bench, {"size": "L"}, headers={"hx-request": "true"})).split("\n", 1)
    assert heard.startswith("With changes, L")  # for those who hear the page: one line, not all of it again
    assert part in words(browser.get(bench, {"size": "L"}))


# --- Keeping ------------------------------------------------------------------------------------------------


def test_keeping_changes_the_season_and_goes_back(browser: Client, bench: str, season: Season) -> None:
    response = browser.post(f"{bench}keep/", {"changes.body_longer": "8 cm"})
    assert (response.status_code, response["Location"]) == (302, bench)
    assert changes.season_of(KEY) == with_garment(season, "cardigan", {"changes.body_longer": "8 cm"})


def test_what_is_offered_to_keep_is_what_was_tried(browser: Client, bench: str) -> None:
    html = body(try_out(browser, bench, changes__body_longer="8 cm"))
    form = html.partition(f'action="{bench}keep/"')[2].partition("</form>")[0]
    assert 'name="changes.body_longer" value="8 cm"' in form


def test_an_emptied_field_takes_the_change_away(browser: Client, bench: str) -> None:
    browser.post(f"{bench}keep/", {"changes.body_longer": ""})
    assert changes.season_of(KEY).garment_by_key["cardigan"].changes.body_longer_cm is None


def test_keeping_what_is_kept_is_no_change(browser: Client, bench: str) -> None:
    browser.post(f"{bench}keep/", {"changes.body_longer": "4 cm"})
    assert changes.history(KEY).undo is None


def test_a_fault_is_not_kept_but_shown(browser: Client, bench: str, season: Season) -> None:
    response = browser.post(f"{bench}keep/", {"changes.body_longer": "8 blah"}, follow=True)
    assert "Body longer by: found" in words(response)
    assert changes.season_of(KEY) == season


def test_nothing_secret_gets_into_the_address(browser: Client, bench: str) -> None:
    response = browser.post(f"{bench}keep/", {"csrfmiddlewaretoken": "x" * 64, "changes.body_longer": "8 blah"})
    assert "csrf" not in response["Location"]
    trial = body(browser.get(bench)).partition('aria-label="Try something"')[2].partition("</form>")[0]
    assert "csrf" not in trial


def test_a_tension_alone_is_not_offered_to_keep(browser: Client, bench: str) -> None:
    said = words(try_out(browser, bench, size="", changes__body_longer="4 cm", tension="18"))
    assert "A tension is tried here, not kept" in said
    assert "Keep it" not in said
