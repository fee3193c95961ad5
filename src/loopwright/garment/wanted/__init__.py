"""What a draft is to reach: finished measures, options of making, edges.

* :class:`GarmentMeasures`, :func:`refuse_conflicts`: finished measures, and which cannot stand together.
* :func:`usual_measures`: what is usual where a measure is not stated.
* :class:`DraftOptions`, :class:`Trim`: how it is made.
* :class:`DraftWish`: what she chooses for one garment; :func:`measures_for_body`, :func:`with_sleeves`.
* :class:`ColourPlan`: where each colour goes.
* :class:`Brief`: construction, measures, gauge and options together.
"""

from loopwright.garment.wanted.brief import Brief
from loopwright.garment.wanted.colours import ColourPlan
from loopwright.garment.wanted.from_body import measures_for_body
from loopwright.garment.wanted.measures import MEASURE_NAMES, GarmentMeasures, refuse_conflicts
from loopwright.garment.wanted.options import DraftOptions, Neckline, SleeveLength
from loopwright.garment.wanted.sleeves import with_sleeves
from loopwright.garment.wanted.trims import Trim, TrimFabric
from loopwright.garment.wanted.usual import usual_measures
from loopwright.garment.wanted.wish import DraftWish

__all__ = [
    "MEASURE_NAMES",
    "Brief",
    "ColourPlan",
    "DraftOptions",
    "DraftWish",
    "GarmentMeasures",
    "Neckline",
    "SleeveLength",
    "Trim",
    "TrimFabric",
    "measures_for_body",
    "refuse_conflicts",
    "usual_measures",
    "with_sleeves",
]
