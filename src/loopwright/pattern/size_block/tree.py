"""What a size block says, as frozen values. Where something stands takes no part in comparing."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Final, Literal

from loopwright.fabric import Gauge
from loopwright.pattern.size_block.tokens import Place
from loopwright.units import find_unit

__all__ = ["NOWHERE", "BlockFault", "Figure", "MeasureRow", "Of", "PutUp", "Reading", "Remark", "SizeBlock", "YarnRow"]

Of = Literal["body", "finished"]
NOWHERE: Final = Place(1, 1)


@dataclass(frozen=True, slots=True)
class Figure:
    """One printed figure of one size.

    :ivar value: exact, in the unit of its reading; None where the pattern has a dash.
    :ivar upto: the upper end, where a range such as ``71-76`` is printed.
    """

    value: Fraction | None
    upto: Fraction | None = None
    place: Place = field(default=NOWHERE, compare=False)
    width: int = field(default=1, compare=False)


@dataclass(frozen=True, slots=True)
class Reading:
    """The figures of one row in one unit, one for each size.

    :ivar unit: a symbol such as ``cm``, ``in``, ``m``, ``g`` or ``balls``.
    """

    unit: str
    figures: tuple[Figure, ...]

    @property
    def metric(self) -> bool:
        """Say whether the unit is metric."""
        unit = find_unit(self.unit)
        return unit is not None and unit.metric

    def in_base(self, value: Fraction) -> Fraction:
        """Give a figure of this reading in cm or g; a count of balls stays as it is."""
        unit = find_unit(self.unit)
        return value if unit is None else value * unit.factor


@dataclass(frozen=True, slots=True)
class MeasureRow:
    """One measure for every size, in one unit or in two.

    :ivar of: whether it is the wearer's body that it is meant to fit, or the garment as finished.
    :ivar measure: a field of the finished measures, or another measure that the words of this room name.
    :ivar half: measured flat, from side to side; the girth is twice that.
    """

    of: Of
    measure: str
    readings: tuple[Reading, ...]
    half: bool = False
    place: Place = field(default=NOWHERE, compare=False)
    width: int = field(default=1, compare=False)

    @property
    def first(self) -> Reading:
        """The reading that counts: the metric one, as with gauges, else the first."""
        return next((reading for reading in self.readings if reading.metric), self.readings[0])

    def in_cm(self) -> tuple[Fraction | None, ...]:
        """Give the measure in cm for every size, all the way round; of a range the lower end."""
        times = 2 if self.half else 1
        of = self.first
        return tuple(None if one.value is None else of.in_base(one.value) * times for one in of.figures)


@dataclass(frozen=True, slots=True)
class YarnRow:
    """The yarn of one role for every size.

    :ivar role: ``main``, ``contrast``, ``contrast-1`` …
    """

    role: str
    readings: tuple[Reading, ...]
    place: Place = field(default=NOWHERE, compare=False)
    width: int = field(default=1, compare=False)


@dataclass(frozen=True, slots=True)
class PutUp:
    """One ball of the yarn as sold: its length and mass, each with one figure, as printed."""

    length: Reading | None = None
    mass: Reading | None = None
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class BlockFault:
    """One thing that is wrong: where it stands, what was found there and what is wanted.

    :ivar width: how many columns of the line are meant.
    """

    place: Place
    width: int
    found: str
    wanted: str
    hint: str | None = None

    def __str__(self) -> str:
        after = f" ({self.hint})" if self.hint else ""
        return f"{self.place}: found {self.found}; wanted {self.wanted}{after}"


@dataclass(frozen=True, slots=True)
class Remark:
    """Text that was left out, or taken in one of several ways."""

    place: Place
    width: int
    text: str
    says: str

    def __str__(self) -> str:
        return f'{self.place}: "{self.text}": {self.says}'


@dataclass(frozen=True, slots=True)
class SizeBlock:
    """A pattern's size block.

    :ivar sizes: their names, in the order of every row; empty where the block names none.
    :ivar gauge_text: the gauge as printed, such as ``20 sts = 4"``.
    :ivar fabric: the fabric in which the gauge is counted, if the block says.
    :ivar faults: everything that is wrong, in the order of the text. Rows that are at fault are kept as far as
        they could be read.
    :ivar remarks: what was left out or guessed; part of the text, not of what it says.
    """

    sizes: tuple[str, ...] = ()
    rows: tuple[MeasureRow, ...] = ()
    yarn: tuple[YarnRow, ...] = ()
    put_up: PutUp | None = None
    gauge: Gauge | None = None
    fabric: str | None = None
    needle_mm: Fraction | None = None
    faults: tuple[BlockFault, ...] = ()
    remarks: tuple[Remark, ...] = field(default=(), compare=False)
    gauge_text: str = field(default="", compare=False)

    @property
    def columns(self) -> int:
        """How many sizes there are: named ones, else as many as the first row has."""
        if self.sizes:
            return len(self.sizes)
        return next((len(row.first.figures) for row in self.rows), 0)

    def row(self, of: Of, measure: str) -> MeasureRow | None:
        """Give one row, or None."""
        return next((row for row in self.rows if (row.of, row.measure) == (of, measure)), None)
