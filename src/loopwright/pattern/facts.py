"""Facts of a published pattern: sizes, finished measures, gauge, yarn per role, construction."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from enum import StrEnum
from statistics import median
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BeforeValidator,
    Field,
    PlainSerializer,
    ValidationInfo,
    WithJsonSchema,
    model_validator,
)

from loopwright.body import Wearer
from loopwright.fabric import GaugeField, StructureName
from loopwright.pattern.ease import Ease
from loopwright.pattern.size_row import EXAMPLES, read_size_names, read_size_row, write_size_row
from loopwright.records import Keyed, MassG, NeedleMm, Record, YarnLengthM, keyed_table
from loopwright.units import BadInput

__all__ = ["Construction", "FinishedMeasures", "PatternFacts", "RoleAmount", "SizeRow", "SizeRows", "ToFit"]

SizeRow = tuple[float | None, ...]
"""One figure per size; None where the pattern gives none."""


class Construction(StrEnum):
    """How the garment is built; it decides which measures shape it and how far shoulders must agree."""

    SET_IN = "set-in sleeve"
    RAGLAN = "raglan"
    YOKE = "round yoke"
    DROP = "drop shoulder"
    SLEEVELESS = "sleeveless"
    HAT = "hat"
    HALF_ROUND_SHAWL = "half-round shawl"
    TRIANGLE_SHAWL = "triangle shawl"
    CRESCENT_SHAWL = "crescent shawl"
    RECTANGLE = "rectangle"
    COWL = "cowl"

    @property
    def is_top(self) -> bool:
        """Say whether it is worn on the upper body and so has a size."""
        return self in {
            Construction.SET_IN,
            Construction.RAGLAN,
            Construction.YOKE,
            Construction.DROP,
            Construction.SLEEVELESS,
        }

    @property
    def has_sleeves(self) -> bool:
        """Say whether it has two sleeves."""
        return self.is_top and self is not Construction.SLEEVELESS

    @property
    def width_is_cast_on(self) -> bool:
        """Say whether its width is cast on by count; that of a shawl comes from how far it is knitted."""
        return self in {Construction.RECTANGLE, Construction.COWL}


def _reader(kind: str) -> Callable[[Any, ValidationInfo], Any]:
    def read(value: Any, info: ValidationInfo) -> Any:
        if isinstance(value, str):
            return read_size_row(value, kind)
        if info.context and info.context.get("from_file"):
            raise BadInput(found=repr(value), wanted=f"one text with a figure per size, such as {EXAMPLES[kind]}")
        return value

    return read


def _writer(unit: str) -> Callable[[SizeRow], str]:
    return lambda values: write_size_row(values, unit)


def _row_schema(example: str) -> WithJsonSchema:
    return WithJsonSchema(
        {
            "type": "string",
            "description": "one figure per size, as patterns print them",
            "examples": [example],
        }
    )


LengthRowCm = Annotated[
    SizeRow,
    BeforeValidator(_reader("length")),
    PlainSerializer(_writer("cm"), when_used="json"),
    _row_schema("86 (94, 102, 110) cm"),
]
YarnRowM = Annotated[
    SizeRow,
    BeforeValidator(_reader("yarn")),
    PlainSerializer(_writer("m"), when_used="json"),
    _row_schema("900 (980, 1060) m"),
]
MassRowG = Annotated[
    SizeRow,
    BeforeValidator(_reader("mass")),
    PlainSerializer(_writer("g"), when_used="json"),
    _row_schema("350 (400, 450) g"),
]
CountRow = Annotated[
    SizeRow,
    BeforeValidator(_reader("count")),
    PlainSerializer(_writer(""), when_used="json"),
    _row_schema("9 (10, 11, 12)"),
]


def _read_names(value: Any) -> Any:
    return read_size_names(value) if isinstance(value, str) else value


def _write_names(names: tuple[str, ...]) -> str:
    return names[0] + (f" ({', '.join(names[1:])})" if len(names) > 1 else "")


def _names_read_back(names: tuple[str, ...]) -> tuple[str, ...]:
    if not names or read_size_names(_write_names(names)) != names:
        raise BadInput(found=", ".join(names), wanted="size names without commas, semicolons or brackets")
    return names


SizeNames = Annotated[
    tuple[str, ...],
    BeforeValidator(_read_names),
    AfterValidator(_names_read_back),
    PlainSerializer(_write_names, when_used="json"),
    _row_schema("XS (S, M, L)"),
]


class SizeRows(Record):
    """Rows of figures, one figure per size in each."""

    def rows(self) -> Iterator[tuple[str, SizeRow]]:
        """Give the measures that the pattern states, by name."""
        for name in type(self).model_fields:
            row: SizeRow | None = getattr(self, name)
            if row is not None:
                yield name, row

    def at(self, point: str, column: int) -> float | None:
        """Give one measure of one size in cm, or None where the pattern is silent."""
        row: SizeRow | None = getattr(self, point)
        return None if row is None else row[column]


class FinishedMeasures(SizeRows):
    """Finished measures of the garment per size, after washing, in cm; girths go all the way round."""

    bust_girth: LengthRowCm | None = None
    waist_girth: LengthRowCm | None = None
    hip_girth: LengthRowCm | None = None
    upper_arm_girth: LengthRowCm | None = None
    wrist_girth: LengthRowCm | None = None
    shoulder_width: LengthRowCm | None = None
    head_girth: LengthRowCm | None = None
    length: LengthRowCm | None = None
    """Shoulder to hem of a top; brim to crown of a hat; end to end of a rectangle or cowl."""
    armhole_depth: LengthRowCm | None = None
    sleeve_length: LengthRowCm | None = None
    """Underarm to wrist."""
    width: LengthRowCm | None = None
    """Across the top edge of a shawl, the width of a rectangle, or the girth of a cowl."""
    depth: LengthRowCm | None = None
    """From the middle of the top edge of a shawl to its point or rim."""


class ToFit(SizeRows):
    """Body measures that each size is meant for, in cm; a man's or child's chest stands as the bust."""

    bust_girth: LengthRowCm | None = None
    waist_girth: LengthRowCm | None = None
    hip_girth: LengthRowCm | None = None
    upper_arm_girth: LengthRowCm | None = None
    shoulder_width: LengthRowCm | None = None
    head_girth: LengthRowCm | None = None


class RoleAmount(Keyed):
    """Yarn that the pattern states for one role (main, contrast …): metres, grams or whole balls per size.

    ``key`` is the role. Exactly one of ``length_m``, ``mass_g`` and ``balls`` stands.
    """

    length_m: YarnRowM | None = Field(default=None, alias="length")
    mass_g: MassRowG | None = Field(default=None, alias="mass")
    balls: CountRow | None = None
    """Whole balls, rounded up by the pattern: the need lies between one ball less and this."""

    @model_validator(mode="after")
    def _one_way_of_stating(self) -> RoleAmount:
        given = [name for name in ("length", "mass", "balls") if getattr(self, _FIELD_OF[name]) is not None]
        if len(given) != 1:
            raise BadInput(
                found=" and ".join(given) or "no amount", wanted="one of length, mass or balls for each role"
            )
        return self

    @property
    def row(self) -> SizeRow:
        """Give the amounts per size, in whatever unit they are stated."""
        row = self.length_m or self.mass_g or self.balls
        assert row is not None  # by _one_way_of_stating
        return row


_FIELD_OF = {"length": "length_m", "mass": "mass_g", "balls": "balls"}


class PatternFacts(Keyed):
    """What must be known of a pattern to plan from it.

    :ivar sizes: size names in the order of every row.
    :ivar gauge: the pattern's gauge, after washing.
    :ivar ease: the ease that the pattern means; left out, it follows from ``finished`` and ``to_fit``.
    :ivar ball_length_m, ball_mass_g: put-up of the yarn it was written for; needed for balls and grams.
    """

    name: str
    by: str = ""
    construction: Construction
    wearer: Wearer | None = None
    fabric: StructureName = "stocking stitch"
    gauge: GaugeField
    needle_mm: NeedleMm | None = Field(default=None, alias="needle")
    sizes: SizeNames
    to_fit: ToFit = ToFit()
    finished: FinishedMeasures = FinishedMeasures()
    ease: Ease = Ease()
    opens_in_front: bool = False
    ball_length_m: YarnLengthM | None = Field(default=None, alias="ball_length")
    ball_mass_g: MassG | None = Field(default=None, alias="ball_mass")
    yarn: Annotated[tuple[RoleAmount, ...], *keyed_table] = ()
    note: str = ""

    @model_validator(mode="after")
    def _rows_match_the_sizes(self) -> PatternFacts:
        rows = [(f"finished.{name}", row) for name, row in self.finished.rows()]
        rows += [(f"to_fit.{name}", row) for name, row in self.to_fit.rows()]
        rows += [(f"yarn.{role.key}", role.row) for role in self.yarn]
        for place, row in rows:
            if len(row) != len(self.sizes):
                raise BadInput(
                    place=place,
                    found=f"{len(row)} {'figure' if len(row) == 1 else 'figures'}",
                    wanted=f"{len(self.sizes)}, one for each of the sizes {', '.join(self.sizes)}",
                    hint="a size without that figure is written as a dash: 86 (-, 102) cm",
                )
        return self

    @model_validator(mode="after")
    def _balls_have_a_put_up(self) -> PatternFacts:
        for role in self.yarn:
            if role.length_m is None and (self.ball_length_m is None or self.ball_mass_g is None):
                raise BadInput(
                    found=f"an amount of yarn for {role.key} in balls or grams, without the put-up",
                    wanted='ball_length and ball_mass of the yarn it is written for, such as "120 m" and "50 g"',
                )
        return self

    @property
    def grist_tex(self) -> float | None:
        """Give the grist of the yarn that the pattern was written for, if its put-up is known."""
        if self.ball_length_m is None or self.ball_mass_g is None:
            return None
        return self.ball_mass_g / self.ball_length_m * 1000

    def designed_ease_cm(self, point: str) -> float | None:
        """Give the ease that the pattern means at a point, in cm, or None where it says nothing of it.

        What it states in words stands first; else the median, over the sizes, of finished measure less body.
        """
        stated: float | None = getattr(self.ease, point, None)
        if stated is not None:
            return stated
        bodies, finished = dict(self.to_fit.rows()).get(point), dict(self.finished.rows()).get(point)
        if bodies is None or finished is None:
            return None
        eases = [whole - body for whole, body in zip(finished, bodies, strict=True) if whole and body]
        return median(eases) if eases else None

    def role(self, key: str) -> RoleAmount | None:
        """Give the stated amounts of one role, or None."""
        return next((amount for amount in self.yarn if amount.key == key), None)
