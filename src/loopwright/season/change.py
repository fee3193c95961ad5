"""Changing one garment of a season, in the words of the season file."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from loopwright.records import FROM_FILE
from loopwright.season.season import Season
from loopwright.units import BadInput

__all__ = ["garment_fields", "with_garment"]


def garment_fields(season: Season, key: str) -> dict[str, Any]:
    """Give a garment as the season file has it: only what differs from the defaults, quantities as text."""
    if key not in season.garment_by_key:
        raise BadInput(found=f"the garment '{key}'", wanted=f"one of {', '.join(season.garment_by_key)}")
    fields: dict[str, Any] = season.garment_by_key[key].model_dump(
        mode="json", by_alias=True, exclude_none=True, exclude_defaults=True, exclude={"key"}
    )
    return fields


def with_garment(season: Season, key: str, changes: Mapping[str, Any]) -> Season:
    """Give the season with fields of one garment changed; everything is checked anew.

    :param changes: by field path in the words of the season file, such as ``size`` or ``changes.body_longer``;
        values as a person writes them (``4 cm``). An empty value takes the field away.
    :raises pydantic.ValidationError: a value does not fit; nothing is changed.
    :raises BadInput: no garment of that key.
    """
    garment = garment_fields(season, key)
    for path, value in changes.items():
        *tables, last = path.split(".")
        place = garment
        for name in tables:
            place = place.setdefault(name, {})
        if value in (None, ""):
            place.pop(last, None)
        else:
            place[last] = value
    data = season.model_dump(mode="json", by_alias=True, exclude_none=True, exclude_defaults=True)
    data["garments"][key] = garment
    return Season.model_validate(data, context=FROM_FILE)
