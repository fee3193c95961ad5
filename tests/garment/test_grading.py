"""One draft over a range of sizes: a column per size, and a larger size never smaller."""

from __future__ import annotations

import pytest

from loopwright.body import SizeTable, size_table
from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft
from loopwright.garment.grading import count_table
from loopwright.garment.wanted import Brief, DraftOptions, measures_for_body
from loopwright.pattern import Construction

GAUGE = Gauge(stitches_per_10cm=22, rows_per_10cm=30)


def drafts(construction: Construction, table: SizeTable) -> dict[str, Draft]:
    return {
        size: draft(Brief(construction, measures_for_body(body, {}, construction), GAUGE))
        for size, body in size_table(table).items()
    }


@pytest.mark.parametrize("table", ["women", "children"])
@pytest.mark.parametrize("construction", [one for one in Construction if one.is_top])
def test_a_larger_size_never_has_less(construction: Construction, table: SizeTable) -> None:
    made = drafts(construction, table)
    stitches = [one.stitches for one in made.values()]
    assert stitches == sorted(stitches)
    bust = [one.check("bust_girth").drafted_cm for one in made.values()]
    assert bust == sorted(bust)


def test_the_table_has_a_column_for_every_size() -> None:
    made = drafts(Construction.DROP, "women")
    rows = count_table(made)
    assert {len(row.by_size) for row in rows} == {9}
    hem = next(row for row in rows if (row.section, row.what) == ("hem", "begins with"))
    assert hem.by_size == tuple(one.section("body", "hem").first for one in made.values())


def test_a_section_that_a_size_lacks_is_left_open() -> None:
    closed = drafts(Construction.DROP, "women")["M"]
    bust = measures_for_body(size_table("women")["M"], {}, Construction.DROP)
    bare = draft(Brief(Construction.DROP, bust, GAUGE, DraftOptions(sleeves="none")))
    rows = count_table({"with": closed, "without": bare})
    assert next(row for row in rows if row.section == "cuff").by_size[1] is None
    assert next(row for row in rows if row.piece == "armband").by_size[0] is None
