"""The whole season: what it is planned from, and the one pure function that plans it.

* :class:`Season`: everything a plan is computed from.
* :func:`plan`: season in, :class:`SeasonPlan` out.
* :func:`with_entry`, :func:`with_garment`: the season with one entry changed, checked anew.
* :class:`Answer`, :class:`GarmentPlan`, :class:`State`: what a plan holds.
"""

from loopwright.season.change import Table, entry_fields, with_entry, with_garment
from loopwright.season.facts import Rate
from loopwright.season.plan import plan
from loopwright.season.references import Faults
from loopwright.season.result import (
    Answer,
    Caution,
    Figure,
    GarmentPlan,
    RolePlanned,
    SeasonPlan,
    State,
)
from loopwright.season.season import Season

__all__ = [
    "Answer",
    "Caution",
    "Faults",
    "Figure",
    "GarmentPlan",
    "Rate",
    "RolePlanned",
    "Season",
    "SeasonPlan",
    "State",
    "Table",
    "entry_fields",
    "plan",
    "with_entry",
    "with_garment",
]
