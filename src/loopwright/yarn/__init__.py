"""Yarn: fibre, put-up, grist, strands held together, and the lots in the cupboard.

* :class:`Yarn`, :class:`FibreShare`: a kind of yarn, as its band states it.
* :class:`Lot`, :func:`length_in_lot`: put-ups of one dye lot that she owns, down to the remnant.
* :class:`YarnOrder`: yarn that is paid for and on its way.
* :func:`grist_held_together`, :func:`effective_diameter_mm`: strands as one, and how thick they lie in a fabric.
"""

from loopwright.yarn.fibre import FIBRES, FibreFacts, FibreShare
from loopwright.yarn.lot import Lot, length_in_lot
from loopwright.yarn.order import OrderLine, YarnOrder
from loopwright.yarn.strands import effective_diameter_mm, grist_held_together
from loopwright.yarn.yarn import Colour, Yarn

__all__ = [
    "FIBRES",
    "Colour",
    "FibreFacts",
    "FibreShare",
    "Lot",
    "OrderLine",
    "Yarn",
    "YarnOrder",
    "effective_diameter_mm",
    "grist_held_together",
    "length_in_lot",
]
