"""Fibres, and the blend of a yarn in percent by mass."""

from __future__ import annotations

from collections.abc import Mapping
from difflib import get_close_matches
from typing import Annotated, Any, Final

from pydantic import AfterValidator, BeforeValidator, Field, PlainSerializer

from loopwright.data import table
from loopwright.records import Record
from loopwright.units import BadInput

__all__ = ["FIBRES", "Blend", "FibreFacts", "FibreShare"]


class FibreFacts(Record):
    """What is known of a fibre in the first gentle hand wash, and on the skin. Source: ``data/fibre/fibres.csv``."""

    name: str
    wash_length_pct: tuple[float, float]
    """Range of change in length, percent, + grows: common practice, a washed swatch beats it."""
    wash_width_pct: tuple[float, float]
    wash_behaviour: str
    skin_note: str
    skin_source: str


def _read_facts() -> dict[str, FibreFacts]:
    return {
        row["fibre"]: FibreFacts(
            name=row["fibre"],
            wash_length_pct=(float(row["wash_length_pct_low"]), float(row["wash_length_pct_high"])),
            wash_width_pct=(float(row["wash_width_pct_low"]), float(row["wash_width_pct_high"])),
            wash_behaviour=row["wash_behaviour"],
            skin_note=row["skin_note"],
            skin_source=row["skin_source"],
        )
        for row in table("fibre/fibres.csv")
    }


FIBRES: Final = _read_facts()
"""The fibres that have facts, by name."""


def _known_fibre(name: str) -> str:
    if name not in FIBRES and name != "other":
        near = get_close_matches(name, FIBRES, n=1)
        raise BadInput(
            found=f"the fibre '{name}'",
            wanted=f"one of {', '.join(FIBRES)}, or other",
            hint=f"did you mean '{near[0]}'?" if near else None,
        )
    return name


class FibreShare(Record):
    """One fibre of a blend and its percentage by mass."""

    fibre: Annotated[str, AfterValidator(_known_fibre)]
    percent: Annotated[float, Field(gt=0, le=100)]


def _read_blend(value: Any) -> Any:
    if isinstance(value, Mapping):
        return [{"fibre": fibre, "percent": percent} for fibre, percent in value.items()]
    return value


def _sums_to_a_hundred(blend: tuple[FibreShare, ...]) -> tuple[FibreShare, ...]:
    percent = sum(share.percent for share in blend)
    if blend and abs(percent - 100) > 0.5:
        raise BadInput(found=f"fibres that sum to {percent:g} %", wanted="100 %")
    return blend


def _write_blend(blend: tuple[FibreShare, ...]) -> dict[str, float]:
    return {share.fibre: int(share.percent) if share.percent.is_integer() else share.percent for share in blend}


Blend = Annotated[
    tuple[FibreShare, ...],
    BeforeValidator(_read_blend),
    AfterValidator(_sums_to_a_hundred),
    PlainSerializer(_write_blend, return_type=dict, when_used="json"),
]
"""Fibres with their percentages, which sum to 100 (half a percent of rounding is allowed)."""
