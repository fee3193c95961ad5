"""The JSON Schema, checked with an independent validator (the jsonschema library)."""

import json
import tomllib
from typing import Any

import pytest
from hypothesis import given, settings
from jsonschema import Draft202012Validator

from loopwright.files import SeasonFileFaults, demo_text, read_season_text, season_schema, write_season_text
from loopwright.season import Season
from tests.files.texts import SEASON
from tests.strategies import seasons

SCHEMA = season_schema()
VALIDATOR = Draft202012Validator(SCHEMA)


def as_json(text: str) -> Any:
    """Give the plain tables of TOML text with dates as JSON has them."""
    return json.loads(json.dumps(tomllib.loads(text), default=str))


def test_it_is_a_schema_of_its_draft() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"


@settings(max_examples=40)
@given(seasons())
def test_it_accepts_every_written_season(season: Season) -> None:
    written = json.loads(write_season_text(season, "json"))
    assert [error.message for error in VALIDATOR.iter_errors(written)] == []


def test_it_accepts_a_season_written_by_hand() -> None:
    assert [error.message for error in VALIDATOR.iter_errors(as_json(SEASON))] == []


def test_it_accepts_the_demonstration_season() -> None:
    assert [error.message for error in VALIDATOR.iter_errors(as_json(demo_text()))] == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("name =", "nmae ="),
        ('name = "Mira"\n', ""),
        ("hours_a_week = 6", "hours_a_week = 0"),
        ("hours_a_week = 6", 'hours_a_week = "6 h"'),
        ('"50 g"', "50"),
        ('"hat"', '"cap"'),
        ("[bodies.mira]", "[bodies.Mira]"),
        ("wool = 80", 'wool = "80 %"'),
        ("[bodies.mira]", "[[bodies]]"),
    ],
)
def test_it_refuses_what_the_reader_refuses(old: str, new: str) -> None:
    text = SEASON.replace(old, new, 1)
    assert text != SEASON
    assert not VALIDATOR.is_valid(as_json(text))
    with pytest.raises(SeasonFileFaults):
        read_season_text(text, "winter.toml", "toml")


def test_every_table_and_field_is_described() -> None:
    tables = {"Season": SCHEMA, **SCHEMA["$defs"]}
    silent = [
        f"{title}.{name}"
        for title, table in tables.items()
        for name, field in {"": table, **table.get("properties", {})}.items()
        if not field.get("description")
    ]
    assert silent == []


def test_no_description_speaks_of_the_program() -> None:
    assert not [mark for mark in ("``", ":ivar", "_cm", "_g ", "file key") if mark in json.dumps(SCHEMA)]


def test_keyed_tables_are_objects_by_key() -> None:
    assert SCHEMA["properties"]["yarns"]["additionalProperties"] == {"$ref": "#/$defs/Yarn"}
    assert "key" not in SCHEMA["$defs"]["Yarn"]["properties"]


def test_it_can_be_changed_without_harm() -> None:
    season_schema()["properties"].clear()
    assert season_schema() == SCHEMA
