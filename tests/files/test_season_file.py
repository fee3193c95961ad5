import json
import tomllib

import pytest
from hypothesis import given

from loopwright.files import Format, read_season_text, write_season_text
from loopwright.season import Season
from tests.files.texts import SEASON
from tests.strategies import seasons

FORMATS: tuple[Format, ...] = ("toml", "json")


@pytest.fixture
def season() -> Season:
    return read_season_text(SEASON, "winter.toml", "toml")


@given(seasons())
def test_a_written_season_reads_back_equal_and_is_written_the_same_again(season: Season) -> None:
    for format in FORMATS:
        text = write_season_text(season, format)
        again = read_season_text(text, "winter", format)
        assert again == season
        assert write_season_text(again, format) == text


def test_both_formats_hold_the_same_season(season: Season) -> None:
    assert read_season_text(write_season_text(season, "json"), "winter.json", "json") == season


def test_toml_keeps_dates_as_dates(season: Season) -> None:
    text = write_season_text(season, "toml")
    assert "\ntoday = 2027-03-01\n" in text
    assert "\nbegun_on = 2027-03-02\n" in text


def test_toml_has_plain_fields_first_and_tables_in_the_order_of_the_season(season: Season) -> None:
    headings = [line for line in write_season_text(season, "toml").splitlines() if line.startswith("[")]
    assert headings == [
        "[rates]",
        "[bodies.mira]",
        "[yarns.fennock-dk]",
        "[yarns.fennock-dk.fibres]",
        "[cupboard.lichen-box]",
        "[patterns.brim-hat]",
        "[patterns.brim-hat.finished]",
        "[garments.hat]",
        "[garments.hat.yarns.main]",
        "[shops.skerrow]",
        "[shops.skerrow.postage]",
    ]


def test_what_is_as_usual_or_unknown_is_left_out(season: Season) -> None:
    written = tomllib.loads(write_season_text(season, "toml"))
    assert set(written["garments"]["hat"]) == {"name", "pattern", "for", "yarns", "begun_on", "done_on"}
    assert "sureness" not in written


def test_whole_numbers_are_written_whole(season: Season) -> None:
    assert "\nhours_a_week = 6\n" in write_season_text(season, "toml")


def test_json_is_for_people_too(season: Season) -> None:
    text = write_season_text(season.model_copy(update={"note": "grün"}), "json")
    assert '  "note": "grün",\n' in text
    assert list(json.loads(text))[-1] == "shops"


@pytest.mark.parametrize(
    "note", ["one\ntwo", 'say """ and \\', "one\r\ntwo\rthree", "[bodies.mira]\n# x", "\x00\x7f", "a \\\nb"]
)
@pytest.mark.parametrize("format", FORMATS)
def test_notes_over_several_lines_are_kept(season: Season, format: Format, note: str) -> None:
    noted = season.model_copy(update={"note": note})
    assert read_season_text(write_season_text(noted, format), "winter", format).note == note


def test_a_note_over_several_lines_is_written_so(season: Season) -> None:
    noted = season.model_copy(update={"note": "one\ntwo"})
    assert '\nnote = """\none\ntwo"""\n' in write_season_text(noted, "toml")
