"""The lots in the cupboard: what is there, down to the remnant."""

from __future__ import annotations

import math
from typing import Annotated

from pydantic import Field, model_validator

from loopwright.records import Keyed, MassG
from loopwright.uncertainty import Estimate, Origin
from loopwright.units import BadInput
from loopwright.yarn.yarn import Shade, Yarn

__all__ = ["Lot", "length_in_lot"]

LABEL_RELATIVE_SD = 0.03
"""Spread of a ball's length about its band, as a share: 3 to 5 % is reported for grist; our judgement takes 3 %."""
SCALE_SD_G = 1.0
"""Reading error of a kitchen scale in grams; our judgement."""


class Lot(Keyed):
    """Yarn of one dye lot that she owns: whole put-ups, or a mass on the scale, or both.

    :ivar yarn: key of the yarn.
    :ivar colour: its colour, by the name on the band.
    :ivar put_ups: whole put-ups, untouched.
    :ivar mass_g: grams of opened yarn, weighed (file key ``weighed``).
    :ivar dye_lot: what the band says; unknown when empty.
    """

    yarn: str
    colour: str
    shade: Shade | None = None
    dye_lot: str = ""
    put_ups: Annotated[int, Field(ge=0, le=10_000)] = 0
    mass_g: MassG | None = Field(default=None, alias="weighed")
    kept_in: str = ""
    note: str = ""

    @model_validator(mode="after")
    def _holds_something(self) -> Lot:
        if self.put_ups == 0 and self.mass_g is None:
            raise BadInput(
                found="a lot without put-ups and without a mass",
                wanted='put_ups = 3, weighed = "42 g", or both',
            )
        return self


def length_in_lot(lot: Lot, yarn: Yarn) -> Estimate:
    """Give the metres in a lot: put-ups by their band, opened yarn by its mass and the grist.

    :returns: metres; the doubt of the band's grist is shared by all put-ups of the lot.
    """
    label_m = lot.put_ups * yarn.length_m
    weighed_m = 0.0 if lot.mass_g is None else lot.mass_g / yarn.mass_g * yarn.length_m
    mean = label_m + weighed_m
    scale_sd = 0.0 if lot.mass_g is None else SCALE_SD_G / yarn.mass_g * yarn.length_m
    sd = math.hypot(mean * LABEL_RELATIVE_SD, scale_sd)
    parts = []
    if lot.put_ups:
        parts.append(f"{lot.put_ups} × {yarn.length_m:g} m")
    if lot.mass_g is not None:
        parts.append(f"{lot.mass_g:g} g × {yarn.length_m:g} m / {yarn.mass_g:g} g")
    origin = Origin.STATED if lot.mass_g is None else Origin.MEASURED
    return Estimate.worked(
        f"in the cupboard: {lot.colour}" + (f", dye lot {lot.dye_lot}" if lot.dye_lot else ""),
        " + ".join(parts),
        mean,
        sd,
        "m",
        origin=origin,
        source="length and mass on the band, ± 3 % (our judgement)",
    )
