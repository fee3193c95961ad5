"""One file per construction, and the one function that drafts any of them.

* :func:`draft`: a brief in, a garment of pieces, sections and rows out.
"""

from loopwright.garment.constructions.any import draft

__all__ = ["draft"]
