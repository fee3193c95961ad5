"""What can be written about a lot, as she would write it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from loopwright.files import FileFault
from loopwright.season import Season
from loopwright.units import BadInput, Reader, mass_text, read_mass_g

__all__ = ["FIELDS", "Field", "Weighing", "fields_of", "lot_form", "told", "typed_fields", "weighing"]

FIELDS: Final = {
    "yarn": "Yarn",
    "colour": "Colour",
    "dye_lot": "Dye lot",
    "put_ups": "Whole balls",
    "weighed": "Opened, weighed",
    "shade": "Screen colour",
    "kept_in": "Kept in",
    "note": "Note",
}
"""The label of each field, by its name in the season file."""
_HINTS: Final = {"put_ups": "3", "shade": "#7a4b2c"}


@dataclass(frozen=True, slots=True)
class Field:
    """One field of the form; a choice when it has options, each a key and what it is called."""

    name: str
    label: str
    value: str
    hint: str = ""
    options: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Weighing:
    """What the scale said.

    :ivar mass_g: of the yarn alone.
    :ivar is_all: whether the whole balls lay on the scale as well.
    """

    mass_g: float
    is_all: bool

    @property
    def fields(self) -> dict[str, Any]:
        """Give what changes in the lot, in the words of the season file."""
        return {"weighed": mass_text(self.mass_g)} | ({"put_ups": None} if self.is_all else {})


def typed_fields(posted: Mapping[str, Any]) -> dict[str, str]:
    """Give what she wrote, by field; what the form did not hold is left out."""
    return {name: str(posted[name]).strip() for name in FIELDS if name in posted}


def fields_of(typed: Mapping[str, str]) -> dict[str, Any]:
    """Give what she wrote in the words of the season file: a whole number as one, nothing for none."""
    fields: dict[str, Any] = dict(typed)
    count = typed.get("put_ups", "")
    if count.isdecimal():
        fields["put_ups"] = int(count) or None
    return fields


def lot_form(
    kept: Mapping[str, Any], season: Season, reader: Reader, typed: Mapping[str, str] | None = None
) -> tuple[Field, ...]:
    """Give the fields, holding what she typed, else what is kept; hints in the reader's measures.

    :param kept: the lot in the words of the season file.
    """
    typed, hints = typed or {}, {**_HINTS, "weighed": _mass_example(reader)}
    yarns = tuple((yarn.key, yarn.name) for yarn in season.yarns)
    return tuple(
        Field(
            name,
            label,
            typed.get(name, str(kept.get(name, ""))),
            hints.get(name, ""),
            yarns if name == "yarn" else (),
        )
        for name, label in FIELDS.items()
    )


def weighing(posted: Mapping[str, Any], reader: Reader) -> Weighing:
    """Read what the scale said, less what else lay on it.

    :raises BadInput: it cannot be read, or nothing is left.
    """
    text, less = (str(posted.get(name, "")).strip() for name in ("mass", "less"))
    if not text:
        raise BadInput("", f"what the scale says, such as {_mass_example(reader)}", place="On the scale")
    mass_g = _read(text, "On the scale")
    left_g = mass_g - (_read(less, "Less the bowl") if less else 0.0)
    if left_g <= 0:
        hint = "a lot that is used up can be taken out"
        raise BadInput(f"{text}, less {less}" if less else text, "yarn that weighs something", hint=hint)
    return Weighing(round(left_g, 6), posted.get("what") == "all")


def _mass_example(reader: Reader) -> str:
    return "1 1/2 oz" if reader.measures == "imperial" else "42 g"


def _read(text: str, label: str) -> float:
    try:
        return read_mass_g(text)
    except BadInput as error:
        raise error.at(label) from None


def told(fault: FileFault) -> str:
    """Say what is wrong with what she typed, under the label of its field."""
    name = fault.path.rpartition(".")[2]
    label = FIELDS.get(name, "")
    if label:
        return str(FileFault.make(fault.found, fault.wanted, path=label, hint=fault.hint))
    if "without put-ups and without a mass" in fault.found:
        return str(FileFault.make("a lot without balls and without a mass", "whole balls, a mass, or both"))
    return str(fault)
