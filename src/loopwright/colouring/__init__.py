"""Whose yarn knits which stitch of a draft: edges, stripes and charts laid over its rows.

* :class:`ColourWork`: what a knitter says of it, with the charts that she names.
* :func:`coloured`: a draft with its roles in place.
* :func:`laid_charts`, :class:`LaidChart`: how a chart came to lie on each section.
* :func:`place_of`: which part of the garment a section is, for colours.
"""

from loopwright.colouring.coloured import coloured
from loopwright.colouring.laid import LaidChart, laid_charts
from loopwright.colouring.places import place_of
from loopwright.colouring.work import ColourWork

__all__ = ["ColourWork", "LaidChart", "coloured", "laid_charts", "place_of"]
