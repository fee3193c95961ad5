"""The season file as JSON Schema (draft 2020-12): for editors, for other programs, and for our own messages.

It is made from the records that read the file, so it cannot fall behind them. What a record keeps as a tuple of
keyed rows is a table by key in the file, and so it is here.
"""

from __future__ import annotations

import copy
from functools import cache
from typing import Any, Final, get_args

from pydantic import TypeAdapter
from pydantic_core import to_jsonable_python

from loopwright.body.dated import BodyMassKg
from loopwright.fabric import Counts, GaugeField
from loopwright.files.field_words import field_words, record_words
from loopwright.garment.wanted.colours import ColourRuns
from loopwright.garment.wanted.options import RepeatField
from loopwright.pattern.facts import CountRow, LengthRowCm, MassRowG, SizeNames, YarnRowM
from loopwright.records import GrowthCm, LengthCm, MassG, MoneyField, NeedleMm, Record, Share, YarnLengthM
from loopwright.season import Season
from loopwright.yarn.yarn import Shade

__all__ = ["Schema", "season_schema"]

Schema = dict[str, Any]

_DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"
_KINDS: Final[dict[str, Any]] = {
    "Length": LengthCm,
    "LengthDifference": GrowthCm,
    "YarnLength": YarnLengthM,
    "Mass": MassG,
    "BodyMass": BodyMassKg,
    "Needle": NeedleMm,
    "Share": Share,
    "Money": MoneyField,
    "Gauge": GaugeField,
    "GaugeCounts": Counts,
    "LengthPerSize": LengthRowCm,
    "YarnLengthPerSize": YarnRowM,
    "MassPerSize": MassRowG,
    "CountPerSize": CountRow,
    "SizeNames": SizeNames,
    "Shade": Shade,
    "StitchRepeat": RepeatField,
    "ColourRuns": ColourRuns,
}
"""The kinds of text that stand for a quantity, by the name that the schema gives them."""
_EXTRA: Final[dict[str, Schema]] = {
    "Shade": {"description": "a screen colour as # and six hexadecimal digits", "examples": ["#8a4b2f"]},
}
_BY_NAME: Final = {
    "FibreShare": ("fibre", "percent"),
    "FabricPace": ("fabric", "stitches_per_minute"),
    "Rate": ("currency", "rate"),
    "RoleMark": ("mark", "role"),
}
"""Records of two fields that stand as ``name = value`` in a table of their own."""


def season_schema() -> Schema:
    """Give the JSON Schema of a season file, fields under the names that the file uses.

    It says of the form of a file what can be said without reading quantities; whether a key leads somewhere, rows
    have one figure per size or a blend sums to 100 % only the reader finds out.
    """
    return copy.deepcopy(_season_schema())


@cache
def _season_schema() -> Schema:
    models = _records_in(Season)
    raw = Season.model_json_schema(by_alias=True, mode="validation")
    parts: dict[str, Schema] = {**raw.pop("$defs"), "Season": raw}
    tables = {name: _table(parts, models[name]) if name in models else part for name, part in parts.items()}
    season = tables.pop("Season") | {"title": "Season of a hand-knitter"}
    kept = {name: table for name, table in tables.items() if name not in _BY_NAME}
    return {"$schema": _DIALECT, **season, "$defs": dict(sorted((kept | _kind_schemas()).items()))}


def _records_in(model: type[Record]) -> dict[str, type[Record]]:
    """Give a record and every record that its fields hold, by class name."""
    found = {model.__name__: model}
    waiting: list[Any] = [field.annotation for field in model.model_fields.values()]
    while waiting:
        annotation = waiting.pop()
        if isinstance(annotation, type) and issubclass(annotation, Record):
            if annotation.__name__ not in found:
                found |= _records_in(annotation)
        else:
            waiting += get_args(annotation)
    return found


@cache
def _kind_schemas() -> dict[str, Schema]:
    return {name: TypeAdapter(kind).json_schema() | _EXTRA.get(name, {}) for name, kind in _KINDS.items()}


def _table(parts: dict[str, Schema], model: type[Record]) -> Schema:
    """Give the schema of one record as a table of the file."""
    part = parts[model.__name__]
    aliases = {field.alias or name: name for name, field in model.model_fields.items()}
    properties = {}
    for alias, raw in part["properties"].items():
        if alias == "key":
            continue
        default = model.model_fields[aliases[alias]].default
        properties[alias] = _property(parts, raw, default) | {"description": field_words(model, alias, aliases[alias])}
    return {
        "title": part["title"],
        "description": record_words(model),
        "type": "object",
        "properties": properties,
        "required": [name for name in part.get("required", ()) if name != "key"],
        "additionalProperties": False,
    }


def _property(parts: dict[str, Schema], raw: Schema, default: object) -> Schema:
    """Give the schema of one field: not null, since a file leaves out what is unknown, and with its usual value."""
    kinds = [one for one in raw.get("anyOf", ()) if one != {"type": "null"}]
    schema = kinds[0] if len(kinds) == 1 else {k: v for k, v in raw.items() if k not in {"title", "default"}}
    usual = {}
    if isinstance(default, str | int | float) and default != "":
        usual = {"default": to_jsonable_python(default)}
    row = str(schema.get("items", {}).get("$ref", "")).rpartition("/")[2]
    if row in _BY_NAME:
        value = parts[row]["properties"][_BY_NAME[row][1]]
        values = {k: v for k, v in value.items() if k != "title"}
        return {"type": "object", "additionalProperties": values}
    if row and "key" in parts[row]["properties"]:
        key = parts[row]["properties"]["key"]
        names = {"pattern": key["pattern"], "maxLength": key["maxLength"]}
        return {"type": "object", "additionalProperties": {"$ref": f"#/$defs/{row}"}, "propertyNames": names}
    for name, kind in _kind_schemas().items():
        if _form(kind, name) == {k: v for k, v in schema.items() if k != "title"}:
            if usual:
                usual = {"default": TypeAdapter(_KINDS[name]).dump_python(default, mode="json")}
            return {"$ref": f"#/$defs/{name}", **usual}
    return schema | usual


def _form(kind: Schema, name: str) -> Schema:
    """Give a kind as pydantic writes it, without what we add."""
    return {k: v for k, v in kind.items() if k not in _EXTRA.get(name, {})}
