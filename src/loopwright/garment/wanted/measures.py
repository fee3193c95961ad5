"""Finished measures that a draft is to reach, and which of them cannot stand together."""

from __future__ import annotations

from collections.abc import Iterator

from pydantic import Field

from loopwright.records import LengthCm, Record
from loopwright.units import BadInput, told

__all__ = ["MEASURE_NAMES", "GarmentMeasures", "refuse_conflicts"]

MEASURE_NAMES = {
    "bust_girth": "bust",
    "waist_girth": "waist",
    "hip_girth": "hip",
    "length": "length",
    "armhole_depth": "armhole depth",
    "shoulder_width": "shoulder width",
    "neck_width": "neck width",
    "front_neck_depth": "front neck depth",
    "back_neck_depth": "back neck depth",
    "shoulder_slope": "shoulder slope",
    "upper_arm_girth": "upper arm",
    "wrist_girth": "wrist",
    "sleeve_length": "sleeve length",
    "head_girth": "head",
    "width": "width",
    "depth": "depth",
}
"""Names of the measures in words, by key; a chest stands as the bust."""


class GarmentMeasures(Record):
    """Finished measures of one garment in cm, after washing; girths go all the way round.

    :ivar bust_girth_cm: round the bust or chest.
    :ivar waist_girth_cm: round the waist, where it is shaped.
    :ivar hip_girth_cm: round the hem, where it is shaped.
    :ivar upper_arm_girth_cm: round the sleeve at the underarm.
    :ivar wrist_girth_cm: round the end of the sleeve.
    :ivar head_girth_cm: round the brim of a hat.
    :ivar length_cm: from the neck end of the shoulder to the hem, edges included; a hat's brim to crown.
    :ivar armhole_depth_cm: straight down from the neck end of the shoulder to the underarm, so that length is side seam
        plus armhole; of a raglan or round yoke, its depth.
    :ivar shoulder_width_cm: across the back from one shoulder end to the other.
    :ivar neck_width_cm: of the opening, before its band is knitted.
    :ivar front_neck_depth_cm: how deep the opening is in front, before its band is knitted.
    :ivar back_neck_depth_cm: how deep it is behind.
    :ivar shoulder_slope_cm: how much lower the outer end of a shoulder lies than the inner.
    :ivar sleeve_length_cm: from the underarm to the wrist, cuff included.
    :ivar width_cm: of a scarf, across the top edge of a shawl, round a cowl.
    :ivar depth_cm: of a shawl, from the middle of its top edge to its point or rim.
    """

    bust_girth_cm: LengthCm | None = Field(default=None, alias="bust_girth")
    waist_girth_cm: LengthCm | None = Field(default=None, alias="waist_girth")
    hip_girth_cm: LengthCm | None = Field(default=None, alias="hip_girth")
    length_cm: LengthCm | None = Field(default=None, alias="length")
    armhole_depth_cm: LengthCm | None = Field(default=None, alias="armhole_depth")
    shoulder_width_cm: LengthCm | None = Field(default=None, alias="shoulder_width")
    neck_width_cm: LengthCm | None = Field(default=None, alias="neck_width")
    front_neck_depth_cm: LengthCm | None = Field(default=None, alias="front_neck_depth")
    back_neck_depth_cm: LengthCm | None = Field(default=None, alias="back_neck_depth")
    shoulder_slope_cm: LengthCm | None = Field(default=None, alias="shoulder_slope")
    upper_arm_girth_cm: LengthCm | None = Field(default=None, alias="upper_arm_girth")
    wrist_girth_cm: LengthCm | None = Field(default=None, alias="wrist_girth")
    sleeve_length_cm: LengthCm | None = Field(default=None, alias="sleeve_length")
    head_girth_cm: LengthCm | None = Field(default=None, alias="head_girth")
    width_cm: LengthCm | None = Field(default=None, alias="width")
    depth_cm: LengthCm | None = Field(default=None, alias="depth")

    def known(self) -> Iterator[tuple[str, float]]:
        """Give the measures that are stated, by name without unit."""
        for name in MEASURE_NAMES:
            value: float | None = getattr(self, f"{name}_cm")
            if value is not None:
                yield name, value

    def need(self, name: str) -> float:
        """Give one measure in cm.

        :raises BadInput: it is not stated.
        """
        value: float | None = getattr(self, f"{name}_cm")
        if value is None:
            raise BadInput(
                found=f"no {MEASURE_NAMES[name]}",
                wanted=told(f"the finished {MEASURE_NAMES[name]}, such as {{}}", _EXAMPLES_CM.get(name, 40)),
                place=name,
            )
        return value

    def filled(self, other: GarmentMeasures) -> GarmentMeasures:
        """Give these measures with what they lack taken from others."""
        return GarmentMeasures.model_validate(dict(other.known()) | dict(self.known()))


_EXAMPLES_CM = {"bust_girth": 98, "length": 60, "head_girth": 52, "width": 30}


def refuse_conflicts(measures: GarmentMeasures) -> None:
    """Refuse measures that cannot make a garment, naming the pair and the nearest value that works.

    :raises BadInput: a neck as wide as the shoulders, an armhole as deep as the garment is long, or shoulders wider
        than half the bust where the sleeve is set in.
    """
    known = dict(measures.known())
    for inner, outer, share, room_cm in _MUST_BE_LESS:
        if inner in known and outer in known and known[inner] > share * known[outer] - room_cm:
            raise BadInput(
                found=told(f"{MEASURE_NAMES[inner]} {{}} with {MEASURE_NAMES[outer]} {{}}", known[inner], known[outer]),
                wanted=told(
                    f"{MEASURE_NAMES[inner]} of at most {{}}, or {MEASURE_NAMES[outer]} of at least {{}}",
                    max(share * known[outer] - room_cm, 0),
                    (known[inner] + room_cm) / share,
                ),
                place=inner,
            )


_MUST_BE_LESS = (
    ("neck_width", "shoulder_width", 1.0, 4.0),
    ("neck_width", "bust_girth", 0.4, 0.0),
    ("armhole_depth", "length", 1.0, 3.0),
    ("front_neck_depth", "length", 1.0, 3.0),
    ("back_neck_depth", "armhole_depth", 1.0, 3.0),
    ("shoulder_slope", "armhole_depth", 1.0, 3.0),
)
"""Inner and outer measure, the share of the outer that the inner may take, and the least room left in cm: two stitches
of shoulder a side, a few rows of side seam, a tenth of the bust beside the neck on each face; our judgement."""
