"""Edges of a garment: ribs, garter and moss bands, and how their counts and rows go with the fabric."""

from __future__ import annotations

from functools import cache
from typing import Literal

from pydantic import Field, PrivateAttr

from loopwright.data import table
from loopwright.fabric import Gauge
from loopwright.records import LengthCm, Record

__all__ = ["Trim", "TrimFabric"]

TrimFabric = Literal["1x1 rib", "2x2 rib", "garter stitch", "moss stitch", "stocking stitch"]


@cache
def _facts(fabric: str) -> tuple[int, int]:
    row = next(row for row in table("garment/trims.csv") if row["fabric"] == fabric)
    return int(row["multiple"]), int(row["plus_flat"])


@cache
def _rows_rel(fabric: str) -> float:
    """Give how long the same rows are against stocking stitch; as long where the table is silent."""
    row = next((row for row in table("garment/trims.csv") if row["fabric"] == fabric), None)
    return 1.0 if row is None else float(row["rows_rel"])


def _usual_fabric() -> TrimFabric:
    return "2x2 rib"


def _usual_depth_cm() -> float:
    return 5.0


class Trim(Record):
    """An edge: its fabric and depth. Usual are 2x2 rib of 5 cm, at the neck and along a front 1x1 rib of 2.5 and 3 cm.

    :ivar depth_cm: finished depth (file key ``depth``).
    """

    _over: str = PrivateAttr(default="stocking stitch")
    fabric: TrimFabric = Field(default_factory=_usual_fabric)
    depth_cm: LengthCm = Field(default_factory=_usual_depth_cm, alias="depth")

    @property
    def multiple(self) -> int:
        """Give the stitches of one repeat. Source: ``data/garment/trims.csv``."""
        return _facts(self.fabric)[0]

    def plus(self, *, in_the_round: bool) -> int:
        """Give the stitches beyond whole repeats that make a flat edge end as it begins; none in the round."""
        return 0 if in_the_round else _facts(self.fabric)[1]

    def over(self, fabric: str) -> Trim:
        """Give the same edge on another main fabric than stocking stitch, whose rows it is reckoned from."""
        edge = self.model_copy()
        edge._over = fabric
        return edge

    def gauge(self, main: Gauge) -> Gauge:
        """Give the trim's gauge: the stitches of the fabric that it belongs to, its own rows."""
        rows = main.rows_or_usual_per_10cm * _rows_rel(self._over) / _rows_rel(self.fabric)
        return Gauge(stitches_per_10cm=main.stitches_per_10cm, rows_per_10cm=rows)

    def rows(self, main: Gauge, *, even: bool = False) -> int:
        """Give the rows nearest to its depth, at least 1; an even number where both sides must be worked."""
        wanted = self.depth_cm * self.gauge(main).rows_or_usual_per_10cm / 10
        return max(2 * round(wanted / 2), 2) if even else max(round(wanted), 1)
