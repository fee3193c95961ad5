"""How she wants a garment drafted: options, finished measures of her own, a construction if no pattern gives one."""

from __future__ import annotations

from loopwright.garment.wanted.measures import GarmentMeasures
from loopwright.garment.wanted.options import DraftOptions
from loopwright.pattern import Construction

__all__ = ["DraftWish"]


class DraftWish(DraftOptions):
    """What she chooses about the draft of one garment.

    :ivar construction: needed where the garment has no pattern; with one, another construction than the pattern's.
    :ivar measures: finished measures of her own, which stand before the pattern's and before what is usual.
    """

    construction: Construction | None = None
    measures: GarmentMeasures = GarmentMeasures()

    @property
    def options(self) -> DraftOptions:
        """Give the options alone."""
        return DraftOptions.model_validate({name: getattr(self, name) for name in DraftOptions.model_fields})
