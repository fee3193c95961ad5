"""A section: a run of rows of one fabric in one piece, with the stitches of every row and where each is shaped."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from loopwright.fabric import Gauge, StructureName

__all__ = ["Begins", "Counts", "Ends", "Face", "Kind", "Part", "RoleCells", "RoleRun", "Section", "Shaping", "Side"]

Counts = NDArray[np.int64]
"""Stitches per row: shape (rows,)."""


class Kind(StrEnum):
    """What changes the number of stitches worked; the first three add, the last three take away."""

    INCREASE = "increase"
    CAST_ON = "cast on"
    TAKE_UP = "take up"
    """Stitches that rested are worked again."""
    DECREASE = "decrease"
    CAST_OFF = "cast off"
    REST = "rest"
    """Stitches are left on the needle, unworked: the turn of a short row, or a neck put aside."""

    @property
    def sign(self) -> int:
        """Give 1 where stitches are added, −1 where they are taken away."""
        return 1 if self in {Kind.INCREASE, Kind.CAST_ON, Kind.TAKE_UP} else -1


Side = Literal["left", "right", "middle", "evenly", "lines"]
"""Where in the row, seen from the right side of the fabric: at an edge, in the middle, spread over the row, or
along the lines of a raglan or the two sides of a tube."""

Begins = Literal["cast on", "picked up", "carried on"]
Ends = Literal["cast off", "carried on", "drawn together", "three-needle cast-off", "grafted"]
Face = Literal["whole", "front", "back"]


@dataclass(frozen=True, slots=True)
class Shaping:
    """One change of the count in one row.

    :ivar row: the row of the section, from 0.
    :ivar stitches: how many are added or taken away; always above 0.
    :ivar places: at how many places in the row they are shared out, such as the 4 lines of a raglan.
    """

    row: int
    kind: Kind
    side: Side
    stitches: int
    places: int = 1

    @property
    def change(self) -> int:
        """Give the signed change of the count."""
        return self.kind.sign * self.stitches


@dataclass(frozen=True, slots=True)
class RoleRun:
    """Rows that one role's yarn knits."""

    role: str
    rows: int


@dataclass(frozen=True, slots=True, eq=False)
class RoleCells:
    """Whose yarn knits each stitch of a section.

    :ivar roles: the roles, in the order of their numbers.
    :ivar cells: the number of each stitch's role; shape (rows, stitches of the widest row). The first column is the
        left end of a row as seen from the right side; of a round, the left end of the front, which comes before the
        back. What lies beyond a narrower row's last stitch says nothing.
    """

    roles: tuple[str, ...]
    cells: NDArray[np.uint8]

    def __post_init__(self) -> None:
        """Make the array read-only."""
        self.cells.setflags(write=False)


@dataclass(frozen=True, slots=True)
class Part:
    """A named share of the stitches of every row, such as the back of a yoke; the parts add up to the whole."""

    name: str
    stitches: Counts


@dataclass(frozen=True, eq=False)
class Section:
    """A run of rows of one fabric in one piece: the unit of counting, colouring, yarn and time.

    :ivar key: unique in its piece.
    :ivar name: what it is called in the trade's words.
    :ivar gauge: of its fabric after washing.
    :ivar first: stitches that it begins with, before the shaping of its first row.
    :ivar stitches: stitches worked in each row, once the row is done; shape (rows,).
    :ivar left_edge: left end of each row in stitches from the middle line of the piece, seen from the right side, in
        steps of a half; shape (rows,). A tube lies flat, so its edge is a quarter of its stitches from the middle.
    :ivar in_the_round: rows are rounds of a tube.
    :ivar after: key of the section whose live stitches it carries on.
    :ivar roles: whose yarn knits which rows, from the first; left out, the main yarn knits them all.
    :ivar cells: whose yarn knits which stitch, where a row has several; it stands for ``roles`` there.
    :ivar parts: shares of every row, left out where the row is one whole.
    :ivar closed: how many of the stitches left on the needle are cast off once its rows are done, such as the middle of
        a neck; of a section that ends cast off, all are, and nothing need be said.
    :ivar face: on which side of the wearer it lies, where a tube divides into front and back.
    """

    key: str
    name: str
    fabric: StructureName
    gauge: Gauge
    first: int
    stitches: Counts
    left_edge: NDArray[np.float64]
    in_the_round: bool = False
    begins: Begins = "cast on"
    ends: Ends = "carried on"
    after: str | None = None
    shapings: tuple[Shaping, ...] = ()
    roles: tuple[RoleRun, ...] = ()
    cells: RoleCells | None = None
    parts: tuple[Part, ...] = ()
    face: Face = "whole"
    closed: int = 0

    def __post_init__(self) -> None:
        """Make the arrays read-only."""
        self.stitches.setflags(write=False)
        self.left_edge.setflags(write=False)

    @property
    def rows(self) -> int:
        """Give the number of rows or rounds."""
        return len(self.stitches)

    @property
    def role_runs(self) -> tuple[RoleRun, ...]:
        """Give whose yarn knits which rows; they add up to its rows."""
        return self.roles or (RoleRun("main", self.rows),)

    @property
    def is_coloured(self) -> bool:
        """Say whether it is known whose yarn knits it."""
        return bool(self.roles) or self.cells is not None

    def stitches_by_role(self, main: str = "main") -> dict[str, Counts]:
        """Give the stitches of each role row by row, each of shape (rows,).

        :param main: the role that knits it all where nothing is said.
        """
        if self.cells is not None:
            worked = np.arange(self.cells.cells.shape[1]) < self.stitches[:, None]
            return {
                role: np.count_nonzero((self.cells.cells == number) & worked, axis=1).astype(np.int64)
                for number, role in enumerate(self.cells.roles)
            }
        runs = self.roles or (RoleRun(main, self.rows),)
        whose = np.repeat([run.role for run in runs], [run.rows for run in runs])
        return {role: np.where(whose == role, self.stitches, 0) for role in dict.fromkeys(run.role for run in runs)}

    def floated_by_role(self) -> dict[str, Counts]:
        """Give the stitches that each role's yarn passes behind row by row, each of shape (rows,).

        A round is passed all the way round by a yarn that is used in it; a flat row from its first to its last use.
        Source: definition of a float.
        """
        if self.cells is None:
            return {role: np.zeros(self.rows, dtype=np.int64) for role in self.stitches_by_role()}
        columns = np.arange(self.cells.cells.shape[1])
        worked = columns < self.stitches[:, None]
        floated = {}
        for number, role in enumerate(self.cells.roles):
            used = (self.cells.cells == number) & worked
            count = used.sum(axis=1)
            first = used.argmax(axis=1)
            last = columns.size - 1 - used[:, ::-1].argmax(axis=1)
            spanned = self.stitches if self.in_the_round else last - first + 1
            floated[role] = np.where(count > 0, spanned - count, 0).astype(np.int64)
        return floated

    @property
    def last(self) -> int:
        """Give the stitches worked in the last row; of no rows, those it begins with."""
        return int(self.stitches[-1]) if self.rows else self.first

    @property
    def begin_left(self) -> float:
        """Give where its left end lies before the shaping of its first row, in stitches from the middle line."""
        if self.in_the_round:
            return -self.first / 4
        moved = sum(
            one.change * (1.0 if one.side == "left" else 0.5)
            for one in self.shapings
            if one.row == 0 and one.side != "right"
        )
        return float(self.left_edge[0]) + moved if self.rows else -self.first / 2

    @property
    def resting(self) -> int:
        """Give the stitches that were left on the needle, unworked, when the section ends."""
        return -sum(one.change for one in self.shapings if one.kind in {Kind.REST, Kind.TAKE_UP})

    @property
    def live(self) -> int:
        """Give the stitches on the needle when the section ends: those worked last and those resting."""
        return self.last + self.resting

    @property
    def worked(self) -> int:
        """Give all stitches worked in it: the sum over its rows."""
        return int(self.stitches.sum())

    @property
    def row_height_cm(self) -> float:
        """Give the height of one row in cm."""
        return 10 / self.gauge.rows_or_usual_per_10cm

    @property
    def stitch_width_cm(self) -> float:
        """Give the width of one stitch in cm."""
        return 10 / self.gauge.stitches_per_10cm

    @property
    def height_cm(self) -> float:
        """Give its height in cm."""
        return self.rows * self.row_height_cm

    @property
    def area_cm2(self) -> float:
        """Give the area of its fabric in cm²: stitches worked × width × height of one stitch."""
        return self.worked * self.row_height_cm * self.stitch_width_cm

    @property
    def flat_stitches(self) -> NDArray[np.float64]:
        """Give the width of each row in stitches as it lies on a table: a tube lies double; shape (rows,)."""
        return self.stitches / (2.0 if self.in_the_round else 1.0)
