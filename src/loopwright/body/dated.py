"""Measures of a body at one time, each under its ISO 8559-1 term."""

from __future__ import annotations

import datetime as dt
from decimal import Decimal
from typing import Annotated, Any, Final, Self

from pydantic import BeforeValidator, Field, PlainSerializer, ValidationInfo, WithJsonSchema, model_validator

from loopwright.records import LengthCm, Record
from loopwright.units import BadInput, read_quantity

__all__ = ["MEASURE_KEYS", "BodyMassKg", "EarlierMeasures", "Measures"]

_MOST_KG = 500.0


def _read_mass_kg(value: Any, info: ValidationInfo) -> float:
    wanted = "a body's mass with its unit, such as 68 kg or 150 lb"
    if isinstance(value, str):
        mass_kg = float(read_quantity(value, "mass").in_base / 1000)
    elif isinstance(value, int | float) and not isinstance(value, bool):
        if info.context and info.context.get("from_file"):
            raise BadInput(found=repr(value), wanted=f"{wanted} (a bare number could be any unit)")
        mass_kg = float(value)
    else:
        raise BadInput(found=repr(value), wanted=wanted)
    if not 0 < mass_kg <= _MOST_KG:
        raise BadInput(found=str(value), wanted=f"{wanted}, at most {_MOST_KG:g} kg")
    return mass_kg


def _mass_text(mass_kg: float) -> str:
    return f"{Decimal(repr(mass_kg)):f}".removesuffix(".0") + " kg"


BodyMassKg = Annotated[
    float,
    BeforeValidator(_read_mass_kg),
    PlainSerializer(_mass_text, when_used="json"),
    WithJsonSchema({"type": "string", "description": "a body's mass with its unit", "examples": ["68 kg", "150 lb"]}),
]
"""The mass of a person in kilograms."""


class Measures(Record):
    """A person's measures in centimetres, each under its ISO 8559-1 term; what is unknown is left out.

    The waist is the natural waist; a waist at the navel is another measure. Women give ``bust_girth``, men and
    children ``chest_girth``. The mass is never asked for; where it is given, it helps to fill gaps.
    """

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
    mass_kg: BodyMassKg | None = Field(default=None, alias="mass")

    @model_validator(mode="after")
    def _chest_lies_in_human_range(self) -> Self:
        """Refuse a bust or chest that no wearer has, which is most often inches read as centimetres."""
        for girth in (self.bust_girth_cm, self.chest_girth_cm):
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

    def known(self) -> dict[str, float]:
        """Give every measure that is known by its key: lengths in cm, and ``mass`` in kg."""
        found = {key: self.measure_cm(key) for key in MEASURE_KEYS if key != "mass"} | {"mass": self.mass_kg}
        return {key: value for key, value in found.items() if value is not None}


MEASURE_KEYS: Final = tuple(field.alias or name for name, field in Measures.model_fields.items())
"""The key of every measure, in the order of a season file; ``mass`` is the last."""


class _Dated(Record):
    measured_on: dt.date


class EarlierMeasures(Measures, _Dated):
    """Measures that were taken on an earlier day, and have other values now.

    :ivar measured_on: the day on which they were taken.
    """
