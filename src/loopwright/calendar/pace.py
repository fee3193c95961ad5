"""Her own stitches per minute, by fabric."""

from __future__ import annotations

from typing import Annotated, Any, Final

from pydantic import BeforeValidator, Field, PlainSerializer

from loopwright.fabric import StructureName
from loopwright.records import Record, Share

__all__ = ["DEFAULT_STITCHES_PER_MINUTE", "SHARED_PACE", "FabricPace", "Pace"]

DEFAULT_STITCHES_PER_MINUTE: Final = 30.0
"""Planning default of a regular knitter in stocking stitch; hobby knitters who timed themselves report 28 to 51."""
MEASURED_RELATIVE_SD = 0.08
"""Spread of the long-run pace of a knitter who timed herself; our judgement."""
GUESSED_RELATIVE_SD = 0.20
"""Spread when the pace is the default: regular knitters lie between 20 and 40 a minute."""

SHARED_PACE = 0.7
"""Correlation between the errors of two garments' hours: one pace makes them all; our judgement."""


class FabricPace(Record):
    """Her measured pace in one fabric."""

    fabric: StructureName
    stitches_per_minute: Annotated[float, Field(ge=0.1, le=120)]


def _read_fabrics(value: Any) -> Any:
    if isinstance(value, dict):
        return [{"fabric": fabric, "stitches_per_minute": pace} for fabric, pace in value.items()]
    return value


def _write_fabrics(fabrics: tuple[FabricPace, ...]) -> dict[str, float]:
    return {fabric.fabric: fabric.stitches_per_minute for fabric in fabrics}


class Pace(Record):
    """How fast she knits.

    :ivar stitches_per_minute: plain knit stitches while knitting; left out, 30.
    :ivar fabrics: her own pace in a fabric, which beats the common multiplier.
    :ivar overhead: time on top for counting, reading and small mistakes; 10 % unless she says otherwise
        (common practice 5 to 20 %).
    """

    stitches_per_minute: Annotated[float | None, Field(ge=0.1, le=120)] = None
    fabrics: Annotated[
        tuple[FabricPace, ...],
        BeforeValidator(_read_fabrics),
        PlainSerializer(_write_fabrics, return_type=dict, when_used="json"),
    ] = ()
    overhead: Share = 0.10

    def in_fabric(self, fabric: str) -> float | None:
        """Give her measured pace in a fabric in stitches per minute, or None."""
        return next((pace.stitches_per_minute for pace in self.fabrics if pace.fabric == fabric), None)
