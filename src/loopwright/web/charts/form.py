"""What can be written about a chart, and what the drawing bench sends."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Final, Literal

from django.http import HttpRequest

from loopwright.files import FileFault
from loopwright.units import BadInput

__all__ = [
    "EMPTY",
    "LABELS",
    "Drawn",
    "Refused",
    "drawn_in",
    "repeat_fields",
    "rows_typed",
    "settings_typed",
    "under_its_label",
]

LABELS: Final = {
    "name": "Name",
    "garment": "Garment",
    "swatch": "Swatch",
    "gauge": "Tension",
    "worked": "Worked",
    "first_row": "Row 1 is on the",
    "note": "Note",
    "repeat": "Repeat",
    "rows": "Rows",
    "roles": "Colours",
    "shades": "Screen colour",
    "stitches": "Stitches",
}
"""The label of each field, by its name in the season file."""
_SETTINGS: Final = ("name", "garment", "swatch", "gauge", "worked", "first_row", "note")
_USUAL: Final = {"worked": "flat", "first_row": "right side"}
_PART: Final = ("from_stitch", "to_stitch", "from_row", "to_row")
EMPTY: Final = dict.fromkeys((*_SETTINGS, *_PART), "") | _USUAL
"""What the form of settings holds where nothing is kept."""


@dataclass(frozen=True, slots=True)
class Refused:
    """What a form of the bench could not keep: why, and what was typed in it."""

    form: Literal["settings", "rows", "taking away", "laying"]
    faults: tuple[str, ...]
    typed: Mapping[str, str] = field(default_factory=dict)


def settings_typed(posted: Mapping[str, Any]) -> dict[str, Any]:
    """Give what she wrote about a chart in the words of the season file; what is as usual is None.

    :raises BadInput: no name, or a part of the repeat is no number.
    """
    typed: dict[str, Any] = {name: str(posted[name]).strip() for name in _SETTINGS if name in posted}
    if not typed.get("name", "x"):
        raise BadInput(found="", wanted="a name for the chart", place="Name")
    changes = {name: None if text == _USUAL.get(name) else text or None for name, text in typed.items()}
    if "name" in typed:
        changes["name"] = typed["name"]
    return changes | repeat_fields(posted)


def repeat_fields(posted: Mapping[str, Any]) -> dict[str, Any]:
    """Give the repeat that she wrote, None where its fields are empty.

    :raises BadInput: a part of it is no number, or its stitches are missing.
    """
    if not any(name in posted for name in _PART):
        return {}
    texts = {name: str(posted.get(name, "")).strip() for name in _PART}
    if not any(texts.values()):
        return {"repeat": None}
    wrong = next((text for text in texts.values() if text and not text.isdecimal()), None)
    if wrong is not None or not (texts["from_stitch"] and texts["to_stitch"]):
        raise BadInput(
            found=wrong or "a repeat without stitches", wanted="its first and last stitch, as numbers", place="Repeat"
        )
    return {"repeat": {name: int(text) for name, text in texts.items() if text}}


def rows_typed(text: str) -> list[str]:
    """Give the rows that were written as lines; empty lines and spaces between marks do not count."""
    return ["".join(line.split()) for line in text.splitlines() if line.strip()]


@dataclass(frozen=True, slots=True)
class Drawn:
    """What the drawing bench sends.

    :ivar changes: in the words of the season file.
    :ivar known: fingerprint of the chart that it was drawn on.
    :ivar last_version: what was answered to the step before; None at the first step of a sitting.
    """

    changes: dict[str, Any]
    known: str
    last_version: int | None


def drawn_in(request: HttpRequest) -> Drawn:
    """Read what the drawing bench sent.

    :raises BadInput: it is not what a bench sends.
    """
    try:
        sent = json.loads(request.body)
    except (ValueError, RecursionError) as error:
        raise BadInput(found="a body that is no JSON", wanted="a drawing") from error
    if not isinstance(sent, dict) or not isinstance(sent.get("rows"), list) or not isinstance(sent.get("known"), str):
        raise BadInput(found="a body without rows", wanted="a drawing")
    version = sent.get("version")
    changes: dict[str, Any] = {
        name: sent.get(name) or None for name in ("rows", "stitches", "roles", "shades", "repeat")
    }
    return Drawn(changes, sent["known"], version if isinstance(version, int) else None)


def under_its_label(fault: FileFault) -> str:
    """Say what is wrong, under the label of its field."""
    for name, label in LABELS.items():
        if f".{name}" in fault.path:
            return str(FileFault.make(fault.found, fault.wanted, path=label, hint=fault.hint))
    return str(fault)
