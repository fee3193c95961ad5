"""What can be written about a yarn, as its band says it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from loopwright.files import FileFault
from loopwright.files.cupboard_table.blend_text import blend_text, read_blend
from loopwright.units import BadInput, Reader, mass_text, yarn_length_text
from loopwright.yarn import Yarn

__all__ = ["FIELDS", "Field", "fields_of", "kept_fields", "told", "typed_fields", "yarn_form"]

FIELDS: Final = {
    "name": "Name on the band",
    "fibres": "Fibres",
    "length": "Length of a ball",
    "mass": "Mass of a ball",
    "needle": "Needle on the band",
    "plies": "Plies",
    "note": "Note",
}
"""The label of each field, by its name in the season file."""
_HINTS: Final = {"fibres": "70 % merino, 30 % silk", "length": "225 m", "mass": "100 g", "needle": "4 mm", "plies": "3"}
_IMPERIAL_HINTS: Final = {"length": "246 yd", "mass": "3 1/2 oz"}


@dataclass(frozen=True, slots=True)
class Field:
    """One field of the form."""

    name: str
    label: str
    value: str
    hint: str


def kept_fields(yarn: Yarn) -> dict[str, str]:
    """Give what is kept as text, by field name."""
    return {
        "name": yarn.name,
        "fibres": blend_text(yarn.fibres),
        "length": yarn_length_text(yarn.length_m),
        "mass": mass_text(yarn.mass_g),
        "needle": "" if yarn.needle_mm is None else f"{yarn.needle_mm:g} mm",
        "plies": "" if yarn.plies is None else str(yarn.plies),
        "note": yarn.note,
    }


def yarn_form(kept: Mapping[str, str], reader: Reader, typed: Mapping[str, str] | None = None) -> tuple[Field, ...]:
    """Give the fields, holding what she typed, else what is kept."""
    typed = typed or {}
    hints = _HINTS | _IMPERIAL_HINTS if reader.measures == "imperial" else _HINTS
    return tuple(
        Field(name, label, typed.get(name, kept.get(name, "")), hints.get(name, "")) for name, label in FIELDS.items()
    )


def typed_fields(posted: Mapping[str, Any]) -> dict[str, str]:
    """Give what she wrote, by field; what the form did not hold is left out."""
    return {name: str(posted[name]).strip() for name in FIELDS if name in posted}


def fields_of(typed: Mapping[str, str]) -> dict[str, Any]:
    """Give what she wrote in the words of the season file.

    :raises BadInput: the fibres cannot be read or do not sum to 100 %.
    """
    fields: dict[str, Any] = dict(typed)
    if typed.get("plies", "").isdecimal():
        fields["plies"] = int(typed["plies"])
    if "fibres" in typed:
        try:
            fields["fibres"] = read_blend(typed["fibres"]) or None
        except BadInput as error:
            raise error.at(FIELDS["fibres"]) from None
    return fields


def told(fault: FileFault) -> str:
    """Say what is wrong with what she typed, under the label of its field."""
    name = fault.path.rpartition(".")[2]
    if name in FIELDS:
        return str(FileFault.make(fault.found, fault.wanted, path=FIELDS[name], hint=fault.hint))
    return str(fault)
