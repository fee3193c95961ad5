"""Where each colour goes, as a knitter writes it: edges, and the rows of body, sleeves and yoke."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Annotated, Any, Final, Literal, get_args

from pydantic import BeforeValidator, Field, PlainSerializer, WithJsonSchema

from loopwright.records import Key, Record
from loopwright.units import BadInput

__all__ = ["ColourPlace", "ColourPlan", "ColourRun", "ColourRuns", "read_colour_runs", "write_colour_runs"]

ColourPlace = Literal["hem", "cuff", "neckband", "band", "body", "sleeves", "yoke"]
"""Parts of a garment that have rows of their own; a neckband stands for bands round the armholes too."""
EDGES: Final = frozenset({"hem", "cuff", "neckband", "band"})
MOST_TIMES: Final = 9999
_ITEM: Final = re.compile(r"\s*(?:(\d{1,4})\s+(?:(?:rows|rounds|times)\s+)?)?(chart\s+)?([a-z0-9]+(?:-[a-z0-9]+)*)\s*")


class ColourRun(Record):
    """Rows in one role, or a chart.

    :ivar times: how many rows, or how often the chart is worked one above the other; left out, on to the end.
    """

    role: Key | None = None
    chart: Key | None = None
    times: Annotated[int, Field(ge=1, le=MOST_TIMES)] | None = None

    def __str__(self) -> str:
        """Write it as it is read."""
        named = f"chart {self.chart}" if self.chart else str(self.role)
        return named if self.times is None else f"{self.times} {named}"


def read_colour_runs(text: str) -> tuple[ColourRun, ...]:
    """Read runs in the order of knitting, such as ``4 main, 2 contrast-1`` or ``12 main, chart waves, main``.

    The last goes on to the end where it has no number; where every one has a number, they are worked again and again.
    A chart that others follow is worked once where it has no number.

    :raises BadInput: a run cannot be read, or a role without a number is followed by others.
    """
    runs = []
    for item in text.split(","):
        match = _ITEM.fullmatch(item)
        if match is None or match[1] == "0":
            raise BadInput(
                found=item.strip() or "nothing", wanted="rows and a role, such as 4 main, or chart and its key"
            )
        name = {"chart": match[3]} if match[2] else {"role": match[3]}
        runs.append(ColourRun.model_validate({**name, "times": int(match[1]) if match[1] else None}))
    for at, run in enumerate(runs[:-1]):
        if run.times is None:
            if run.chart is None:
                raise BadInput(found=f"{run}, and more after it", wanted=f"how many rows, such as 4 {run}")
            runs[at] = run.model_copy(update={"times": 1})
    return tuple(runs)


def write_colour_runs(runs: tuple[ColourRun, ...]) -> str:
    """Write runs as they are read."""
    return ", ".join(str(run) for run in runs)


ColourRuns = Annotated[
    tuple[ColourRun, ...],
    BeforeValidator(lambda value: read_colour_runs(value) if isinstance(value, str) else value),
    PlainSerializer(write_colour_runs, when_used="json"),
    WithJsonSchema(
        {
            "type": "string",
            "description": "a role, or runs of rows in the order of knitting",
            "examples": ["contrast-1", "4 main, 2 contrast-1", "12 main, chart waves, main"],
        }
    ),
]


class ColourPlan(Record):
    """Where each colour goes; what is not named is knitted in the garment's first role.

    :ivar everywhere: stands for body, sleeves and yoke where these are not named, and goes on counting from one to the
        next as they are knitted.
    :ivar edges: stands for hem, cuff, neckband and band where these are not named.
    :ivar hem: the lower edge of a body, the brim of a hat, the ends of a scarf, the rim of a shawl.
    :ivar cuff: the edges of sleeves.
    :ivar neckband: the band round the neck, and round the armholes where there are no sleeves.
    :ivar band: the front bands of a cardigan.
    :ivar body: its rows from the edge on; back and front of a body that divides go on counting, a hat's crown too.
    :ivar sleeves: their rows from the edge on, or from the top where they are knitted down.
    :ivar yoke: its rows, from the body on or from the neck.
    """

    everywhere: ColourRuns | None = None
    edges: ColourRuns | None = None
    hem: ColourRuns | None = None
    cuff: ColourRuns | None = None
    neckband: ColourRuns | None = None
    band: ColourRuns | None = None
    body: ColourRuns | None = None
    sleeves: ColourRuns | None = None
    yoke: ColourRuns | None = None

    def runs(self, place: ColourPlace) -> tuple[ColourRun, ...]:
        """Give the runs of one place; none where nothing is said of it."""
        own: tuple[ColourRun, ...] | None = getattr(self, place)
        return own or (self.edges if place in EDGES else self.everywhere) or ()

    def named(self) -> Iterator[tuple[str, ColourRun]]:
        """Give every run with the field that it stands in."""
        for field in type(self).model_fields:
            runs: Any = getattr(self, field)
            for run in runs or ():
                yield field, run

    @property
    def charts(self) -> tuple[str, ...]:
        """Give the keys of the charts in it, each once."""
        return tuple(dict.fromkeys(run.chart for _, run in self.named() if run.chart is not None))

    @property
    def roles(self) -> tuple[str, ...]:
        """Give the roles that are named outside its charts, each once."""
        return tuple(dict.fromkeys(run.role for _, run in self.named() if run.role is not None))

    @property
    def says_anything(self) -> bool:
        """Say whether any place is named."""
        return any(True for _ in self.named())


PLACES: Final[tuple[ColourPlace, ...]] = get_args(ColourPlace)
