"""The form of one person: measures as she would write them, and the day on which they were taken."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from loopwright.body import MEASURES, Wearer
from loopwright.files import FileFault
from loopwright.units import BadInput, Reader
from loopwright.web.bodies.rows import plain_name
from loopwright.web.reading import kept_text

__all__ = ["FIELDS", "Field", "day_of", "kept_fields", "new_person", "person_form", "told", "typed_fields"]

_PERSON: Final = {"name": "Name", "wearer": "Whose sizes", "age_years": "Age in years"}
_MASS: Final = "Mass, only if you like"
FIELDS: Final = (*_PERSON, *MEASURES, "mass", "note")
"""Every field that can be written, by its name in the season file."""


@dataclass(frozen=True, slots=True)
class Field:
    """One field of the form: a choice when it has options, else a line to write in."""

    name: str
    label: str
    value: str
    hint: str = ""
    options: tuple[str, ...] = ()


def typed_fields(posted: Mapping[str, Any]) -> dict[str, str]:
    """Give what she wrote, by field; what the form did not hold is left out."""
    return {name: str(posted[name]).strip() for name in FIELDS if name in posted}


def new_person(posted: Mapping[str, Any]) -> dict[str, str]:
    """Give what she wrote of a new person.

    :raises BadInput: there is no name.
    """
    typed = {name: value for name, value in typed_fields(posted).items() if name in _PERSON}
    if not typed.get("name"):
        raise BadInput("nothing", "a name", place="Name")
    return typed


def day_of(posted: Mapping[str, Any], usual: dt.date) -> dt.date:
    """Give the day on which she measured.

    :param usual: the day to take where she wrote none.
    :raises BadInput: what she wrote is no day.
    """
    text = str(posted.get("measured_on", "")).strip()
    if not text:
        return usual
    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        raise BadInput(text, "a day such as 2027-03-01", place="Measured on") from None


def kept_fields(fields: Mapping[str, Any]) -> dict[str, str]:
    """Give what is kept as text, by field.

    :param fields: the body in the words of the season file.
    """
    return {name: f"{kept:g}" if isinstance(kept, float) else str(kept) for name, kept in fields.items()}


def person_form(fields: Mapping[str, Any], typed: Mapping[str, str], reader: Reader) -> dict[str, Field]:
    """Give every field by its name, holding what she typed, else what is kept, in the reader's measures.

    :param fields: the body in the words of the season file.
    """
    kept = kept_fields(fields)

    def value(name: str) -> str:
        return typed[name] if name in typed else kept_text(kept.get(name, ""), reader)

    made = {name: Field(name, label, value(name)) for name, label in _PERSON.items()}
    made["wearer"] = Field("wearer", _PERSON["wearer"], value("wearer"), options=tuple(Wearer))
    made |= {key: Field(key, plain_name(key), value(key), "36 cm or 14 in") for key in MEASURES}
    made["mass"] = Field("mass", _MASS, value("mass"), "68 kg or 150 lb")
    made["note"] = Field("note", "Note", value("note"))
    return made


def told(fault: FileFault) -> str:
    """Say what is wrong with what she typed, under the label of its field."""
    name = fault.path.rpartition(".")[2]
    label = plain_name(name) if name in MEASURES else {**_PERSON, "mass": "Mass"}.get(name, "")
    return str(FileFault.make(fault.found, fault.wanted, path=label, hint=fault.hint)) if label else str(fault)
