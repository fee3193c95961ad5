"""How a garment is to be made: direction, opening, neckline, sleeves, edges."""

from __future__ import annotations

from typing import Annotated, Any, Final, Literal

from pydantic import BeforeValidator, Field, PlainSerializer, ValidationInfo, WithJsonSchema

from loopwright.fit.ways_out import Repeat, read_repeat
from loopwright.garment.wanted.trims import Trim
from loopwright.records import LengthCm, Record

__all__ = ["DraftOptions", "Neckline", "RepeatField", "SleeveLength"]

Neckline = Literal["boat", "round", "V", "high"]
SleeveLength = Literal["none", "short", "three-quarter", "long"]


RepeatField = Annotated[
    Repeat,
    BeforeValidator(lambda value: read_repeat(value) if isinstance(value, str) else value),
    PlainSerializer(str, when_used="json"),
    WithJsonSchema({"type": "string", "description": "a stitch repeat", "examples": ["8n", "8n + 1"]}),
]


_TRIMS: Final[dict[str, dict[str, Any]]] = {
    "band": {"fabric": "1x1 rib", "depth": 3.0},
    "neckband": {"fabric": "1x1 rib", "depth": 2.5},
    "hem": {"fabric": "2x2 rib", "depth": 5.0},
    "cuff": {"fabric": "2x2 rib", "depth": 5.0},
}
"""The usual edges; common practice, no source."""


def _usual(name: str) -> Trim:
    return Trim(fabric=_TRIMS[name]["fabric"], depth_cm=_TRIMS[name]["depth"])


def _with_usual_fabric(value: Any, info: ValidationInfo) -> Any:
    """Give an edge of which only the depth is written its usual fabric."""
    if isinstance(value, dict) and "fabric" not in value:
        return {"fabric": _TRIMS[str(info.field_name)]["fabric"], **value}
    return value


def _with_usual_depth(value: Any, info: ValidationInfo) -> Any:
    """Give an edge of which only the fabric is written its usual depth."""
    if isinstance(value, dict) and "depth" not in value and "depth_cm" not in value:
        return {**value, "depth": f"{_TRIMS[str(info.field_name)]['depth']:g} cm"}
    return value


EdgeTrim = Annotated[Trim, BeforeValidator(_with_usual_fabric), BeforeValidator(_with_usual_depth)]


class DraftOptions(Record):
    """What a knitter chooses about the making of a garment; left out, the usual of its construction.

    :ivar direction: from the hem up or from the neck down, where the construction can be worked both ways.
    :ivar worked: flat in pieces, or in the round as far as it goes.
    :ivar opens_in_front: a cardigan, with a band picked up along each front.
    :ivar band: the front bands of a cardigan; what of an edge is left out is its usual.
    :ivar buttons: holes in one of the front bands.
    :ivar neckline: shape of the neck; left out, round.
    :ivar neckband: the band picked up round the neck, and round the armholes where there are no sleeves.
    :ivar sleeves: how long; left out, as the measures say.
    :ivar hem: the lower edge of a body, the brim of a hat, the ends of a scarf, the rim of a shawl.
    :ivar cuff: the edge of a sleeve.
    :ivar waist_above_hem_cm: how far the waist lies above the hem, where it is shaped.
    :ivar bust_short_rows_cm: extra length in front, worked as short rows below the bust.
    :ivar back_neck_raise_cm: how much higher the back of a yoke or raglan stands than its front.
    :ivar repeat: stitch repeat that the body must hold: all round, or on each flat piece.
    """

    direction: Literal["bottom up", "top down"] | None = None
    worked: Literal["flat", "in the round"] | None = None
    opens_in_front: bool = False
    band: EdgeTrim = _usual("band")
    buttons: Annotated[int, Field(ge=0, le=30)] = 6
    neckline: Neckline | None = None
    neckband: EdgeTrim = _usual("neckband")
    sleeves: SleeveLength | None = None
    hem: EdgeTrim = _usual("hem")
    cuff: EdgeTrim = _usual("cuff")
    waist_above_hem_cm: LengthCm | None = Field(default=None, alias="waist_above_hem")
    bust_short_rows_cm: LengthCm | None = Field(default=None, alias="bust_short_rows")
    back_neck_raise_cm: LengthCm | None = Field(default=None, alias="back_neck_raise")
    repeat: RepeatField | None = None

    def over(self, fabric: str) -> DraftOptions:
        """Give the same options with the rows of every edge reckoned from this main fabric."""
        return self.model_copy(update={name: getattr(self, name).over(fabric) for name in _TRIMS})
