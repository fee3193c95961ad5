"""Which yarn of the cupboard knits what: covering each role, and what is then short.

* :class:`Supply`, :func:`supplies`: every lot and every parcel on its way, in metres.
* :func:`cover`: take yarn for one role from what is left, one dye lot before two.
"""

from loopwright.allotment.cover import Cover, Taken, cover
from loopwright.allotment.supply import Supply, supplies

__all__ = ["Cover", "Supply", "Taken", "cover", "supplies"]
