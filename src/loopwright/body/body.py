"""One person's measures."""

from __future__ import annotations

import datetime as dt
from enum import StrEnum
from typing import Annotated

from pydantic import Field, model_validator

from loopwright.records import Keyed, LengthCm
from loopwright.units import BadInput

__all__ = ["Body", "Wearer"]


class Wearer(StrEnum):
    """Whom a body or a pattern's sizes belong to."""

    WOMAN = "woman"
    MAN = "man"
    CHILD = "child"


class Body(Keyed):
    """A person's measures in centimetres, each under its ISO 8559-1 term; what is unknown is left out.

    The waist is the natural waist; a waist at the navel is another measure. Women give ``bust_girth``, men and
    children ``chest_girth``.
    """

    name: str
    wearer: Wearer
    age_years: Annotated[float | None, Field(ge=0, le=120)] = None
    measured_on: dt.date | None = None
    bust_girth_cm: LengthCm | None = Field(default=None, alias="bust_girth")
    chest_girth_cm: LengthCm | None = Field(default=None, alias="chest_girth")
    high_bust_girth_cm: LengthCm | None = Field(default=None, alias="high_bust_girth")
    under_bust_girth_cm: LengthCm | None = Field(default=None, alias="under_bust_girth")
    waist_natural_girth_cm: LengthCm | None = Field(default=None, alias="waist_natural_girth")
    waist_navel_girth_cm: LengthCm | None = Field(default=None, alias="waist_navel_girth")
    hip_girth_cm: LengthCm | None = Field(default=None, alias="hip_girth")
    neck_girth_cm: LengthCm | None = Field(default=None, alias="neck_girth")
    neck_base_girth_cm: LengthCm | None = Field(default=None, alias="neck_base_girth")
    head_girth_cm: LengthCm | None = Field(default=None, alias="head_girth")
    shoulder_width_back_cm: LengthCm | None = Field(default=None, alias="shoulder_width_back")
    shoulder_length_cm: LengthCm | None = Field(default=None, alias="shoulder_length")
    back_width_cm: LengthCm | None = Field(default=None, alias="back_width")
    back_neck_to_waist_cm: LengthCm | None = Field(default=None, alias="back_neck_to_waist")
    scye_depth_cm: LengthCm | None = Field(default=None, alias="scye_depth")
    armscye_girth_cm: LengthCm | None = Field(default=None, alias="armscye_girth")
    upper_arm_girth_cm: LengthCm | None = Field(default=None, alias="upper_arm_girth")
    forearm_girth_cm: LengthCm | None = Field(default=None, alias="forearm_girth")
    wrist_girth_cm: LengthCm | None = Field(default=None, alias="wrist_girth")
    hand_girth_cm: LengthCm | None = Field(default=None, alias="hand_girth")
    arm_length_shoulder_to_wrist_cm: LengthCm | None = Field(default=None, alias="arm_length_shoulder_to_wrist")
    underarm_to_wrist_cm: LengthCm | None = Field(default=None, alias="underarm_to_wrist")
    back_neck_to_wrist_cm: LengthCm | None = Field(default=None, alias="back_neck_to_wrist")
    front_length_over_bust_cm: LengthCm | None = Field(default=None, alias="front_length_over_bust")
    back_length_side_neck_cm: LengthCm | None = Field(default=None, alias="back_length_side_neck")
    neck_to_bust_point_cm: LengthCm | None = Field(default=None, alias="neck_to_bust_point")
    armpit_to_waist_cm: LengthCm | None = Field(default=None, alias="armpit_to_waist")
    waist_to_hip_cm: LengthCm | None = Field(default=None, alias="waist_to_hip")
    back_neck_to_hip_cm: LengthCm | None = Field(default=None, alias="back_neck_to_hip")
    height_cm: LengthCm | None = Field(default=None, alias="height")
    note: str = ""

    @model_validator(mode="after")
    def _chest_lies_in_human_range(self) -> Body:
        """Refuse a bust or chest that no wearer has, which is most often inches read as centimetres."""
        girth = self.chest_or_bust_cm
        if girth is not None and not 30 <= girth <= 220:
            hint = f"did you mean {girth:g} in?" if 30 <= girth * 2.54 <= 150 else None
            raise BadInput(found=f"a bust or chest of {girth:g} cm", wanted="a girth from 30 to 220 cm", hint=hint)
        return self

    @property
    def chest_or_bust_cm(self) -> float | None:
        """Give the full bust of a woman, or the chest of a man or child, in cm, if known."""
        return self.bust_girth_cm if self.bust_girth_cm is not None else self.chest_girth_cm

    def measure_cm(self, key: str) -> float | None:
        """Give a measure by its key, such as ``hip_girth``, in cm, or None when it is not known."""
        value: float | None = getattr(self, f"{key}_cm")
        return value

    @property
    def is_young_child(self) -> bool:
        """Say whether the wearer is a child under three, or a child of unknown age."""
        return self.wearer is Wearer.CHILD and (self.age_years is None or self.age_years < 3)
