"""What can be written about a swatch on its page, as she would write it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from django.http import QueryDict

from loopwright.fabric import Count
from loopwright.files import FileFault
from loopwright.units import Reader
from loopwright.web.reading import kept_text

__all__ = ["FIELDS", "Field", "empty_form", "fields_of", "form_of", "kept_fields", "under_its_label", "written"]

FIELDS: Final = {
    "before": "Counts before washing",
    "after": "Counts after washing",
    "needle": "Needle",
    "mass": "Mass, washed",
    "width": "Width, washed",
    "height": "Height, washed",
    "stretch": "Pulls wider by",
    "places": "Places, 1st count",
}
"""The label of each field, by its name in the season file."""
HINTS: Final = {
    "before": "22 sts x 30 rows = 10 cm",
    "after": "one count on a line",
    "needle": "4.5 mm",
    "mass": "11.4 g",
    "width": "15 cm",
    "height": "14 cm",
    "stretch": "25 %",
    "places": "1",
}
INCH_HINTS: Final = {"before": "22 sts x 30 rows = 4 in", "mass": "1/2 oz", "width": "6 in", "height": "5 1/2 in"}
"""What is written otherwise by a reader of inches."""
COUNTS: Final = ("before", "after")


@dataclass(frozen=True, slots=True)
class Field:
    """One field of the form; counts have several lines."""

    name: str
    label: str
    value: str
    hint: str
    lines: bool


def form_of(kept: Mapping[str, Any], reader: Reader, typed: Mapping[str, str] | None = None) -> tuple[Field, ...]:
    """Give the fields, holding what she typed, else what is kept, in the reader's measures.

    :param kept: the swatch in the words of the season file.
    """
    typed = typed or {}
    hints = HINTS | INCH_HINTS if reader.measures == "imperial" else HINTS
    shown = {name: kept_text(text, reader) for name, text in kept_fields(kept).items()}
    return tuple(
        Field(name, label, typed.get(name, shown.get(name, "")), hints[name], name in COUNTS)
        for name, label in FIELDS.items()
    )


def empty_form(reader: Reader, typed: Mapping[str, str] | None = None) -> tuple[Field, ...]:
    """Give the fields of a swatch that is not there yet."""
    return form_of({}, reader, typed)


def kept_fields(kept: Mapping[str, Any]) -> dict[str, str]:
    """Give what is kept as text, by field name, several counts on a line each.

    :param kept: the swatch in the words of the season file.
    """
    return {name: "\n".join(kept[name]) if isinstance(kept[name], list) else str(kept[name]) for name in kept}


def written(asked: QueryDict) -> dict[str, str]:
    """Give what she wrote, by field name, as it stands."""
    return {name: str(asked[name]).replace("\r\n", "\n").strip() for name in FIELDS if name in asked}


def fields_of(typed: Mapping[str, str]) -> dict[str, Any]:
    """Give what she wrote in the words of the season file: counts as a list, a whole number as one."""
    fields: dict[str, Any] = dict(typed)
    for name in COUNTS:
        if name in typed:
            lines = [line.strip() for line in typed[name].splitlines() if line.strip()]
            fields[name] = lines[0] if len(lines) == 1 else lines or None
    if typed.get("places", "").isdecimal():
        fields["places"] = int(typed["places"])
    return fields


def under_its_label(fault: FileFault) -> str:
    """Say what is wrong, under the label of its field."""
    for name, label in FIELDS.items():
        if f".{name}" in fault.path:
            return str(FileFault.make(fault.found, fault.wanted, path=label, hint=fault.hint))
    return str(fault)


def label_of(count: Count) -> str:
    """Give a count short, for the drawing: stitches × rows in its own window."""
    parts = []
    for per_10cm, window in ((count.stitches_per_10cm, count.across_cm), (count.rows_per_10cm, count.along_cm)):
        parts.append("–" if per_10cm is None else f"{per_10cm * (window or 10.0) / 10:.4g}")
    return " × ".join(parts)
