"""Faults of a season that comes from no file: the same words, without lines."""

import pytest
from pydantic import ValidationError

from loopwright.files import faults_of, read_season_text
from loopwright.season import Season
from loopwright.yarn import Yarn
from tests.files.texts import SEASON

TABLES = {"name": "x", "today": "2027-03-01", "hours_a_week": 6, "currency": "NZD"}


def said_of(tables: dict[str, object]) -> list[str]:
    with pytest.raises(ValidationError) as caught:
        Season.model_validate(tables)
    return [str(fault) for fault in faults_of(caught.value, tables)]


def test_tables_are_named_by_key() -> None:
    tables = TABLES | {"yarns": {"rust": {"name": "Rust", "length": "1 metr", "mass": "50 g"}}}
    assert said_of(tables) == [
        'yarns.rust.length: found "1 metr"; wanted a yarn length with its unit, such as 430 m or 470 yd '
        '(did you mean "m"?)'
    ]


def test_a_key_that_leads_nowhere_is_named_by_its_field() -> None:
    assert said_of(TABLES) == [
        "garments: found a season without garments; wanted at least one garment, such as [garments.cardigan]"
    ]


def test_without_tables_rows_are_numbered() -> None:
    yarns = read_season_text(SEASON, "winter.toml", "toml").yarns
    yarn = {"key": "Rust", "name": "Rust", "length": -1, "mass": 50, "plys": 2}
    with pytest.raises(ValidationError) as caught:
        Season.model_validate(TABLES | {"yarns": [*yarns, yarn]})
    faults = faults_of(caught.value)
    assert [fault.path for fault in faults] == ["yarns (2nd).plys", "yarns (2nd)", "yarns (2nd).length"]
    assert [fault.hint for fault in faults] == ["did you mean 'plies'?", "did you mean 'rust'?", None]
    assert all(str(fault).startswith("yarns (2nd)") for fault in faults)


def test_a_record_alone_can_be_explained() -> None:
    with pytest.raises(ValidationError) as caught:
        Yarn.model_validate({"key": "rust", "name": "Rust", "length": "1 m"})
    assert [(fault.path, fault.found, fault.place) for fault in faults_of(caught.value)] == [
        ("mass", "nothing", "mass")
    ]
