"""What a draft is made from: construction, measures, gauge and options."""

from __future__ import annotations

from dataclasses import dataclass, field

from loopwright.fabric import Gauge, StructureName
from loopwright.garment.wanted.measures import GarmentMeasures
from loopwright.garment.wanted.options import DraftOptions
from loopwright.pattern import Construction

__all__ = ["Brief"]


@dataclass(frozen=True, slots=True)
class Brief:
    """Everything that one draft is computed from.

    :ivar measures: finished measures wanted, after washing.
    :ivar gauge: of the washed fabric; where rows were not counted, the usual ratio stands in.
    :ivar fabric: the main fabric, worked flat; in the round where a section is a tube.
    :ivar head_girth_cm: of the wearer, where known: the neck must pass it.
    :ivar stretch: how far an edge stretches, as a share of its length, when it is pulled over the head.
    """

    construction: Construction
    measures: GarmentMeasures
    gauge: Gauge
    options: DraftOptions = field(default_factory=DraftOptions)
    fabric: StructureName = "stocking stitch"
    head_girth_cm: float | None = None
    stretch: float = 0.5
