"""A garment over a range of sizes, as a page and a terminal show it: a row per measure and count, a column per size."""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.garment.grading import count_table
from loopwright.garment.wanted import MEASURE_NAMES
from loopwright.season.grading import Graded
from loopwright.season.wording import Wording

__all__ = ["SizesRow", "SizesView", "sizes_view"]


@dataclass(frozen=True, slots=True)
class SizesRow:
    """One row: what it is, and its figure in each size.

    :ivar begins: whether another piece or section begins here.
    """

    label: str
    what: str
    figures: tuple[str, ...]
    begins: bool = False


@dataclass(frozen=True, slots=True)
class SizesView:
    """The whole table, and the sizes that cannot be drafted with the reason."""

    sizes: tuple[str, ...]
    measures: tuple[SizesRow, ...]
    counts: tuple[SizesRow, ...]
    faults: tuple[tuple[str, str], ...]


def sizes_view(found: Graded, wording: Wording) -> SizesView:
    """Lay out the drafts of every size."""
    sizes = tuple(found.drafts)
    unit = "in" if wording.reader.measures == "imperial" else "cm"
    measures = []
    for name, label in MEASURE_NAMES.items():
        row = [found.finished_cm[size].get(name) for size in sizes]
        if any(row):
            figures = tuple("" if cm is None else wording.cm(cm).removesuffix(f" {unit}") for cm in row)
            measures.append(SizesRow(f"{label}, {unit}", "", figures))
    counts, before = [], ""
    for count in count_table(found.drafts):
        label = count.section if count.section == count.piece else f"{count.piece}, {count.section}"
        figures = tuple("" if number is None else f"{number:,}" for number in count.by_size)
        counts.append(SizesRow(label if label != before else "", count.what, figures, label != before))
        before = label
    if sizes:
        whole = tuple(f"{draft.stitches:,}" for draft in found.drafts.values())
        counts.append(SizesRow("stitches in all", "", whole, True))
    faults = tuple((size, wording.told(fault)) for size, fault in found.faults.items())
    return SizesView(sizes, tuple(measures), tuple(counts), faults)
