"""User actions: what each does, what it gives, what it refuses."""

import datetime as dt

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from loopwright.files import read_season_text, write_season_text
from loopwright.season import Season
from loopwright.store import changes
from loopwright.store.models import Revision, SeasonRow
from loopwright.units import BadInput


def test_a_season_is_kept_under_a_key_made_from_its_name(winter: Season) -> None:
    assert changes.keep_season(winter) == "winter-at-wethers-reach"
    assert changes.season_of("winter-at-wethers-reach") == winter


def test_a_season_of_the_same_name_takes_its_place(winter: Season, later: Season) -> None:
    key = changes.keep_season(winter)
    assert changes.keep_season(later) == key
    assert changes.season_keys() == (key,)
    assert changes.season_of(key) == later


def test_a_season_of_another_name_never_does(winter: Season) -> None:
    first = changes.keep_season(winter)
    shouted = winter.model_copy(update={"name": winter.name.upper()})
    assert changes.keep_season(shouted) == f"{first}-2"
    assert changes.season_of(first) == winter


def test_a_key_that_is_given_is_taken(winter: Season, later: Season) -> None:
    changes.keep_season(winter, key="mine")
    assert changes.keep_season(later.model_copy(update={"name": "Other"}), key="mine") == "mine"
    assert changes.undo("mine") == "loaded Other"
    assert changes.season_of("mine") == winter


def test_a_key_that_is_none_is_refused(winter: Season) -> None:
    with pytest.raises(BadInput, match="did you mean 'mine'"):
        changes.keep_season(winter, key="Mine")
    assert changes.season_keys() == ()


def test_keeping_the_same_again_is_no_change(winter: Season, text: str) -> None:
    key = changes.keep_season(winter, text=text)
    changes.keep_season(winter, text=text)
    changes.keep_season(winter)
    assert changes.history(key).undo is None


def test_the_text_of_another_season_is_refused(later: Season, text: str) -> None:
    with pytest.raises(ValueError, match="does not say what the season says"):
        changes.keep_season(later, text=text)


def test_a_text_that_no_database_holds_is_refused(winter: Season) -> None:
    with pytest.raises(BadInput, match="NUL"):
        changes.keep_season(winter.model_copy(update={"note": "a\0b"}))


def test_the_loaded_text_is_given_back_to_the_byte(winter: Season, text: str) -> None:
    crlf = "\N{ZERO WIDTH NO-BREAK SPACE}" + text.replace("\n", "\r\n")
    key = changes.keep_season(winter, text=crlf)
    assert changes.text_of(key, "toml") == crlf


def test_another_format_is_written_afresh(winter: Season, text: str) -> None:
    key = changes.keep_season(winter, text=text)
    assert changes.text_of(key, "json") == write_season_text(winter, "json")


def test_a_changed_season_is_written_afresh_until_the_change_is_undone(winter: Season, text: str) -> None:
    key = changes.keep_season(winter, text=text)
    changed = changes.change_garment(key, "cardigan", "size L", size="L")
    assert read_season_text(changes.text_of(key, "toml"), name="x", format="toml") == changed
    changes.undo(key)
    assert changes.text_of(key, "toml") == text


def test_a_garment_is_changed_as_she_would_write_it(winter: Season) -> None:
    key = changes.keep_season(winter)
    fields = {"changes.body_longer": "2 in", "wearer": "joss", "due": dt.date(2027, 8, 1)}
    cardigan = changes.change_garment(key, "cardigan", "for Joss", **fields).garment_by_key["cardigan"]
    assert (cardigan.changes.body_longer_cm, cardigan.wearer, cardigan.due) == (5.08, "joss", dt.date(2027, 8, 1))
    assert changes.season_of(key).garment_by_key["cardigan"] == cardigan
    assert changes.history(key).undo == "for Joss"


def test_a_field_goes_back_to_its_usual_value(winter: Season) -> None:
    key = changes.keep_season(winter)
    changes.change_garment(key, "shawl", "no date", due=None)
    assert changes.season_of(key).garment_by_key["shawl"].due is None


def test_a_change_to_what_is_there_is_none(winter: Season) -> None:
    key = changes.keep_season(winter)
    changes.change_garment(key, "shawl", "its name", name=winter.garment_by_key["shawl"].name)
    assert changes.history(key).undo is None


@pytest.mark.parametrize(
    ("fields", "message"),
    [
        ({"size": "XXL"}, "garments.cardigan.size: found the size 'XXL', which is not there"),
        ({"changes.body_longer": "4"}, "wanted a length with its unit"),
        ({"swatch": "aran-sq"}, r"found the swatch 'aran-sq', which is not there; .* \(did you mean"),
        ({"colour": "red"}, "the field 'colour', which is not known here"),
    ],
)
def test_a_change_that_breaks_the_season_changes_nothing(winter: Season, fields: dict[str, str], message: str) -> None:
    key = changes.keep_season(winter)
    with pytest.raises(changes.ChangeRefused, match=message):
        changes.change_garment(key, "cardigan", "broken", **fields)
    assert changes.season_of(key) == winter
    assert changes.history(key).undo is None


def test_what_is_not_there_is_named_with_its_neighbours(winter: Season) -> None:
    key = changes.keep_season(winter, key="winter")
    with pytest.raises(
        changes.NoSuchSeason, match=r"^no season 'wintr'; there are winter \(did you mean 'winter'\?\)$"
    ):
        changes.season_of("wintr")
    with pytest.raises(changes.NoSuchGarment, match="did you mean 'cardigan'"):
        changes.change_garment(key, "cardigans", "x", size="L")


@pytest.mark.parametrize("action", [changes.undo, changes.redo, changes.forget_season, changes.bring_back])
def test_nothing_can_be_done_to_what_never_was(action: object) -> None:
    assert callable(action)
    with pytest.raises(changes.NoSuchSeason, match="no season 'nowhere'; there is none yet"):
        action("nowhere")


def test_the_list_tells_each_season_in_order(winter: Season) -> None:
    changes.keep_season(winter, key="b")
    changes.keep_season(winter.model_copy(update={"name": "A"}), key="a")
    assert [(one.key, one.name, one.garments) for one in changes.season_list()] == [
        ("b", winter.name, 5),
        ("a", "A", 5),
    ]
    assert changes.season_list()[0].today == winter.today


def test_twice_the_seasons_take_no_more_queries(winter: Season) -> None:
    changes.keep_season(winter, key="a")
    with CaptureQueriesContext(connection) as few:
        changes.season_list()
    changes.keep_season(winter, key="b")
    with CaptureQueriesContext(connection) as more:
        changes.season_list()
    assert len(more) == len(few)


def test_a_season_keeps_its_place_when_it_is_changed_or_brought_back(winter: Season, later: Season) -> None:
    for key in ("a", "b", "c"):
        changes.keep_season(winter, key=key)
    changes.keep_season(later, key="a")
    changes.forget_season("b")
    changes.bring_back("b")
    assert changes.season_keys() == ("a", "b", "c")


def test_a_season_grows_a_version_with_each_change(winter: Season, later: Season) -> None:
    key = changes.keep_season(winter)
    changes.keep_season(later)
    changes.undo(key)
    assert SeasonRow.objects.get(key=key).version == 3


def test_a_revision_tells_when_and_what(winter: Season, later: Season) -> None:
    key = changes.keep_season(winter)
    changes.keep_season(later, says="a week later")
    revision = Revision.objects.get()
    assert str(revision) == f"{key}: a week later"
    assert revision.made_at.tzinfo is not None
