"""Which yarn of the cupboard knits what: covering each role, and what is then short.

* :class:`Supply`, :func:`supplies`: every lot and every parcel on its way, in metres.
* :func:`cover`: take yarn for one role from what is left, one dye lot before two.
* :class:`SectionDemand`, :class:`Meeting`, :class:`LotSupply`, :class:`AllotmentProblem`: sections and dye lots.
* :func:`sections_of`: sections and meetings from a draft and the needs of its sections.
* :func:`allot`: which dye lot knits which section, with its proof, as an :class:`Allotment`.
* :func:`related`: the part of a problem that bears on one role.
* :func:`hiding`: where a substitute colour hides best when yarn is short.
"""

from loopwright.allotment.cover import Cover, Taken, cover
from loopwright.allotment.from_draft import sections_of
from loopwright.allotment.hiding import Hiding, HidingPlace, hiding
from loopwright.allotment.lots import related
from loopwright.allotment.model import (
    Allotment,
    AllotmentProblem,
    Change,
    Lack,
    Levels,
    LotSupply,
    LotUse,
    Meeting,
    Place,
    Portion,
    Proof,
    SectionDemand,
)
from loopwright.allotment.solve import allot
from loopwright.allotment.supply import Supply, supplies

__all__ = [
    "Allotment",
    "AllotmentProblem",
    "Change",
    "Cover",
    "Hiding",
    "HidingPlace",
    "Lack",
    "Levels",
    "LotSupply",
    "LotUse",
    "Meeting",
    "Place",
    "Portion",
    "Proof",
    "SectionDemand",
    "Supply",
    "Taken",
    "allot",
    "cover",
    "hiding",
    "related",
    "sections_of",
    "supplies",
]
