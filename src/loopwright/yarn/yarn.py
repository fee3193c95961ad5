"""A kind of yarn, as its band states it."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, StringConstraints

from loopwright.records import Keyed, MassG, NeedleMm, Record, YarnLengthM
from loopwright.yarn.fibre import Blend

__all__ = ["Colour", "Yarn"]

Shade = Annotated[str, StringConstraints(pattern=r"^#[0-9a-fA-F]{6}$", to_lower=True)]
"""A screen colour in sRGB, ``#rrggbb``. Only a likeness: judge the yarn itself in daylight."""


class Colour(Record):
    """A colour of a yarn by name, with a likeness for the screen if she gave one."""

    name: str
    shade: Shade | None = None


class Yarn(Keyed):
    """A kind of yarn: fibre blend, length and mass of one put-up, hence its grist.

    :ivar length_m: metres in one put-up (file key ``length``).
    :ivar mass_g: grams of one put-up (file key ``mass``).
    """

    name: str
    fibres: Blend = ()
    length_m: YarnLengthM = Field(alias="length")
    mass_g: MassG = Field(alias="mass")
    needle_mm: NeedleMm | None = Field(default=None, alias="needle")
    plies: int | None = None
    note: str = ""

    @property
    def grist_tex(self) -> float:
        """Give the linear density in tex, grams per kilometre. Source: definition, ASTM D861."""
        return self.mass_g / self.length_m * 1000
