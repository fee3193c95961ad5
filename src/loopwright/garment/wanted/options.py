"""How a garment is to be made: direction, opening, neckline, sleeves, edges."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field, PlainSerializer, WithJsonSchema

from loopwright.fit.ways_out import Repeat, read_repeat
from loopwright.garment.wanted.trims import Trim
from loopwright.records import LengthCm, Record

__all__ = ["DraftOptions", "Neckline", "SleeveLength"]

Neckline = Literal["boat", "round", "V", "high"]
SleeveLength = Literal["none", "short", "three-quarter", "long"]


RepeatField = Annotated[
    Repeat,
    BeforeValidator(lambda value: read_repeat(value) if isinstance(value, str) else value),
    PlainSerializer(str, when_used="json"),
    WithJsonSchema({"type": "string", "description": "a stitch repeat", "examples": ["8n", "8n + 1"]}),
]


class DraftOptions(Record):
    """What a knitter chooses about the making of a garment; left out, the usual of its construction.

    :ivar direction: from the hem up or from the neck down, where the construction can be worked both ways.
    :ivar worked: flat in pieces, or in the round as far as it goes.
    :ivar opens_in_front: a cardigan, with a band picked up along each front.
    :ivar band: the front bands of a cardigan; ``buttons`` holes lie in one of them.
    :ivar waist_above_hem_cm: how far the waist lies above the hem, where it is shaped.
    :ivar bust_short_rows_cm: extra length in front, worked as short rows below the bust.
    :ivar back_neck_raise_cm: how much higher the back of a yoke or raglan stands than its front.
    :ivar repeat: stitch repeat that the body must hold: all round, or on each flat piece.
    """

    direction: Literal["bottom up", "top down"] | None = None
    worked: Literal["flat", "in the round"] | None = None
    opens_in_front: bool = False
    band: Trim = Trim(fabric="1x1 rib", depth_cm=3.0)
    buttons: Annotated[int, Field(ge=0, le=30)] = 6
    neckline: Neckline | None = None
    neckband: Trim = Trim(fabric="1x1 rib", depth_cm=2.5)
    sleeves: SleeveLength | None = None
    hem: Trim = Trim(fabric="2x2 rib", depth_cm=5.0)
    cuff: Trim = Trim(fabric="2x2 rib", depth_cm=5.0)
    waist_above_hem_cm: LengthCm | None = Field(default=None, alias="waist_above_hem")
    bust_short_rows_cm: LengthCm | None = Field(default=None, alias="bust_short_rows")
    back_neck_raise_cm: LengthCm | None = Field(default=None, alias="back_neck_raise")
    repeat: RepeatField | None = None
