"""One garment of a season: pattern, wearer, swatch, yarns and what she changes."""

from __future__ import annotations

import datetime as dt
from typing import Annotated, Literal

from pydantic import Field, model_validator

from loopwright.garment.wanted import ColourPlan, DraftWish
from loopwright.pattern import Ease
from loopwright.records import GrowthCm, Keyed, LengthCm, Record, Share, keyed_table
from loopwright.units import BadInput

__all__ = ["Changes", "EaseStyle", "Garment", "RolePlan", "Strand"]

EaseStyle = Literal["very close", "close", "standard", "loose", "oversized"]


class Changes(Record):
    """What she makes otherwise than the pattern says; lengths are finished, after washing.

    :ivar bust_girth_cm: knit to this bust, between two sizes (file key ``bust_girth``).
    :ivar body_longer_cm, sleeves_longer_cm: how much longer, minus for shorter.
    :ivar role: the role whose yarn a longer body or sleeve takes.
    """

    bust_girth_cm: LengthCm | None = Field(default=None, alias="bust_girth")
    body_longer_cm: GrowthCm | None = Field(default=None, alias="body_longer")
    sleeves_longer_cm: GrowthCm | None = Field(default=None, alias="sleeves_longer")
    role: str = "main"


class Strand(Record):
    """Another yarn held together with a role's own, by key and colour."""

    yarn: str
    colour: str


class RolePlan(Keyed):
    """Which yarn plays a role. ``key`` is the role.

    :ivar yarn: key of the yarn.
    :ivar colour: its colour; lots of that yarn in that colour cover it.
    :ivar strands: how many strands of it are held together.
    :ivar held_with: other yarns held together with it as one strand.
    :ivar lots: only these lots of the cupboard may be used; empty for every lot that suits.
    """

    yarn: str
    colour: str
    strands: Annotated[int, Field(ge=1, le=12)] = 1
    held_with: tuple[Strand, ...] = ()
    lots: tuple[str, ...] = ()


class Garment(Keyed):
    """One thing to be made, from a pattern or a draft of her own, for a wearer, in a swatched fabric.

    :ivar pattern, wearer, swatch: keys; a swatch may still be missing. Without a pattern it is a draft of her own.
    :ivar draft: how she wants it drafted; without a pattern it names the construction.
    :ivar size: size name to knit; left out, the fit decides.
    :ivar fit: style of ease, used where ``ease`` names no figure; left out, the ease that the pattern means, and the
        standard style where it means none.
    :ivar colours: where each role goes; left out, whole sections share them by the pattern's amounts.
    :ivar sureness: how sure the yarn must suffice when balls are counted; else the season's.
    :ivar due: date by which it must be dry and finished.
    :ivar knitted: share of the knitting already done, once begun.
    """

    name: str
    pattern: str | None = None
    draft: DraftWish | None = None
    wearer: str | None = Field(default=None, alias="for")
    swatch: str | None = None
    size: str | None = None
    fit: EaseStyle | None = None
    ease: Ease = Ease()
    changes: Changes = Changes()
    yarns: Annotated[tuple[RolePlan, ...], *keyed_table]
    colours: ColourPlan = ColourPlan()
    sureness: Share | None = None
    due: dt.date | None = None
    begun_on: dt.date | None = None
    knitted: Share | None = None
    knitted_off_on: dt.date | None = None
    done_on: dt.date | None = None
    set_aside: bool = False
    note: str = ""

    @model_validator(mode="after")
    def _has_a_shape(self) -> Garment:
        if self.pattern is None and (self.draft is None or self.draft.construction is None):
            raise BadInput(
                found="a garment with neither a pattern nor a construction",
                wanted='a pattern, or draft = { construction = "raglan" }',
                place="pattern",
            )
        return self

    @model_validator(mode="after")
    def _has_yarn(self) -> Garment:
        if not self.yarns:
            raise BadInput(found="a garment without yarn", wanted="a yarn for at least one role, such as main")
        return self

    @model_validator(mode="after")
    def _colours_have_yarn(self) -> Garment:
        known = [role.key for role in self.yarns]
        for field, run in self.colours.named():
            if run.role is not None and run.role not in known:
                raise BadInput(
                    found=f"rows in '{run.role}'",
                    wanted=f"a role of this garment ({', '.join(known)}), or chart and its key",
                    place=f"colours.{field}",
                )
        return self

    @model_validator(mode="after")
    def _shares_in_range(self) -> Garment:
        if self.sureness is not None and not 0.5 <= self.sureness < 1:
            raise BadInput(found=f"a sureness of {self.sureness * 100:g} %", wanted="from 50 % to under 100 %")
        if self.knitted is not None and self.knitted >= 1:
            raise BadInput(
                found=f"knitted of {self.knitted * 100:g} %",
                wanted="under 100 %, or the day it came off the needles as knitted_off_on",
            )
        return self

    @model_validator(mode="after")
    def _dates_in_order(self) -> Garment:
        dates = [day for day in (self.begun_on, self.knitted_off_on, self.done_on) if day is not None]
        if dates != sorted(dates):
            raise BadInput(
                found=" then ".join(str(day) for day in dates),
                wanted="begun_on before knitted_off_on before done_on",
            )
        return self

    def role(self, key: str) -> RolePlan | None:
        """Give the yarn that plays a role, or None."""
        return next((role for role in self.yarns if role.key == key), None)
