"""What must be said to draft a garment of one's own: a name, what it is, for whom, in which fabric and yarn."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final, get_args

from django.http import QueryDict

from loopwright.files import FileFault
from loopwright.garment.garment import EaseStyle
from loopwright.pattern import Construction
from loopwright.season import Season
from loopwright.units import BadInput

__all__ = ["LABELS", "MEASURES", "choices_of", "fields_of", "under_its_label", "written"]

LABELS: Final = {
    "name": "What you call it",
    "construction": "What it is",
    "for": "For whom",
    "fit": "How close",
    "swatch": "Swatch",
    "yarn": "Yarn",
    "colour": "Colour",
    "length": "Length",
    "width": "Width",
    "depth": "Depth",
}
MEASURES: Final = ("length", "width", "depth")
"""Finished measures that a scarf or shawl needs, and that a top takes from its wearer."""


def choices_of(season: Season) -> dict[str, list[tuple[str, str]]]:
    """Give what can be chosen in each field, as (value, words)."""
    return {
        "construction": [(one.value, one.value) for one in Construction],
        "for": [("", "nobody yet"), *((body.key, body.name) for body in season.bodies)],
        "fit": [("", "standard"), *((style, style) for style in get_args(EaseStyle) if style != "standard")],
        "swatch": [(swatch.key, swatch.key.replace("-", " ")) for swatch in season.swatches],
        "yarn": [(yarn.key, yarn.name) for yarn in season.yarns],
    }


def written(asked: QueryDict) -> dict[str, str]:
    """Give what she wrote, by field name."""
    return {name: str(asked.get(name, "")).strip() for name in LABELS}


def fields_of(typed: Mapping[str, str]) -> dict[str, Any]:
    """Give the garment in the words of the season file.

    :raises BadInput: it has no name or no colour.
    """
    for name, wanted in (("name", "a name, such as Jetty raglan"), ("colour", "the colour of the yarn")):
        if not typed[name]:
            raise BadInput(found="", wanted=wanted, place=LABELS[name])
    fields: dict[str, Any] = {name: typed[name] for name in ("name", "for", "fit", "swatch") if typed[name]}
    measures = {name: typed[name] for name in MEASURES if typed[name]}
    draft: dict[str, Any] = {"construction": typed["construction"]}
    if measures:
        draft["measures"] = measures
    return fields | {"draft": draft, "yarns": {"main": {"yarn": typed["yarn"], "colour": typed["colour"]}}}


def under_its_label(fault: FileFault) -> str:
    """Say what is wrong, under the label of its field."""
    for name, label in LABELS.items():
        if fault.path.endswith(f".{name}"):
            return str(FileFault.make(fault.found, fault.wanted, path=label, hint=fault.hint))
    return str(fault)
