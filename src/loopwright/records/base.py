"""The base of all frozen values, and tables of keyed records."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Annotated, Any, Final

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    PlainSerializer,
    SerializationInfo,
    StringConstraints,
)

from loopwright.units import BadInput

__all__ = ["FROM_FILE", "Key", "Keyed", "Record", "keyed_table"]

FROM_FILE: Final = {"from_file": True}
"""Validation context for values that a person wrote: a bare number is then refused where a unit is wanted."""

Key = Annotated[str, StringConstraints(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=60)]
"""A short name that other parts of a season point to: small letters, digits and single hyphens."""


class Record(BaseModel):
    """A frozen value. Fields are checked when it is made; an unknown field is a fault, never dropped."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        validate_by_name=True,
        validate_by_alias=True,
        serialize_by_alias=True,
        str_strip_whitespace=True,
        arbitrary_types_allowed=True,
        allow_inf_nan=False,
    )


class Keyed(Record):
    """A record that stands in a table of the season file under its ``key``."""

    key: Key


def _rows_of_table(value: Any) -> Any:
    """Turn ``{"ina": {...}}`` as a file has it into ``[{"key": "ina", ...}]``."""
    if not isinstance(value, Mapping):
        return value
    rows = []
    for key, row in value.items():
        if not isinstance(row, Mapping):
            raise BadInput(found=repr(row), wanted=f"a table of fields under '{key}'", place=str(key))
        if "key" in row:
            raise BadInput(found="the field 'key'", wanted=f"the key once, as the table's name '{key}'", place=str(key))
        rows.append({**row, "key": key})
    return rows


def _no_key_twice(rows: tuple[Keyed, ...]) -> tuple[Keyed, ...]:
    seen: set[str] = set()
    for row in rows:
        if row.key in seen:
            raise BadInput(found=f"'{row.key}' twice", wanted="each key once in its table")
        seen.add(row.key)
    return rows


def _table_of_rows(rows: Iterable[Keyed], info: SerializationInfo) -> dict[str, Any]:
    """Turn rows back into the table that a file has, without saying the key twice."""
    dumped = {}
    for row in rows:
        fields = row.model_dump(
            mode=info.mode,
            by_alias=True,
            exclude_none=info.exclude_none,
            exclude_defaults=info.exclude_defaults,
        )
        dumped[row.key] = {name: value for name, value in fields.items() if name != "key"}
    return dumped


keyed_table: Final = (
    BeforeValidator(_rows_of_table),
    AfterValidator(_no_key_twice),
    PlainSerializer(_table_of_rows, return_type=dict, when_used="json"),
)
"""Markers for a tuple of keyed records: ``Annotated[tuple[Body, ...], *keyed_table]``.

Inside it is a tuple, which cannot be changed and keeps its order; in a file it is a table by key.
"""
