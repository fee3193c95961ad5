"""Fabric structures: how much yarn and time a stitch takes against stocking stitch."""

from __future__ import annotations

from difflib import get_close_matches
from typing import Annotated, Final

from pydantic import AfterValidator

from loopwright.data import table
from loopwright.records import Record
from loopwright.units import BadInput

__all__ = ["STRUCTURES", "Structure", "StructureName"]

_AMERICAN = {
    "stockinette": "stocking stitch",
    "stockinette stitch": "stocking stitch",
    "stockinette in the round": "stocking stitch in the round",
    "seed stitch": "moss stitch",
    "rib and seed stitch": "rib and moss stitch",
}


class Structure(Record):
    """One fabric. Times are multiples of a plain knit stitch: common practice with a wide personal spread."""

    name: str
    yarn_per_stitch: float
    """Loop length over that of a stocking stitch of the same yarn and needle."""
    width_rel: float
    length_rel: float
    """Width of a stitch and height of a row over those of stocking stitch of the same yarn and needle, relaxed."""
    area_low: float
    area_high: float
    """Range of the yarn to an area against stocking stitch."""
    time_low: float
    time_typical: float
    time_high: float
    time_source: str

    @property
    def size_relative_sd(self) -> float:
        """Give the doubt that the sizes add to a loop length worked out from this fabric's own gauge, as a share.

        The range of yarn to an area is taken as four standard deviations; the loop goes as the root of an area.
        """
        return (self.area_high - self.area_low) / (self.area_high + self.area_low) / 4


STRUCTURES: Final = {
    row["fabric"]: Structure(
        name=row["fabric"],
        yarn_per_stitch=float(row["yarn_per_stitch"]),
        width_rel=float(row["width_rel"]),
        length_rel=float(row["length_rel"]),
        area_low=float(row["area_low"]),
        area_high=float(row["area_high"]),
        time_low=float(row["time_low"]),
        time_typical=float(row["time_typical"]),
        time_high=float(row["time_high"]),
        time_source=row["time_source"],
    )
    for row in table("fabric/structures.csv")
}
"""The fabrics by their British name. Source: ``data/fabric/structures.csv``."""


def _known(name: str) -> str:
    british = _AMERICAN.get(name, name)
    if british not in STRUCTURES:
        near = get_close_matches(name, [*STRUCTURES, *_AMERICAN], n=1)
        raise BadInput(
            found=f"the fabric '{name}'",
            wanted=f"one of {', '.join(STRUCTURES)}",
            hint=f"did you mean '{near[0]}'?" if near else None,
        )
    return british


StructureName = Annotated[str, AfterValidator(_known)]
"""A fabric by its British or American name; kept by the British one."""
