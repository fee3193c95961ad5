"""Colours laid over drafts: every stitch has one, rows go on counting, motifs stand in the middle."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from loopwright.chart import find_floats
from loopwright.chart.grid import Chart
from loopwright.colouring import coloured, laid_charts, place_of
from loopwright.colouring.columns import PLAIN, columns_of
from loopwright.garment.draft import Draft, Section, broken_laws
from tests.colouring.samples import diamond, made, work

GARMENTS = [
    (construction, flat, opens)
    for construction, ways in {
        "drop shoulder": (False, True),
        "set-in sleeve": (False, True),
        "sleeveless": (False, True),
        "raglan": (False,),
        "round yoke": (False,),
        "hat": (False,),
    }.items()
    for flat in ways
    for opens in ((False,) if construction == "hat" else (False, True))
]
RUNS = st.sampled_from(["main", "contrast", "3 main, 2 contrast", "chart diamond", "5 main, 2 chart diamond, contrast"])


def columns_of_row(section: Section, row: int, width: int, axis: float) -> NDArray[np.int64]:
    return columns_of(section, width, axis)[row, : section.stitches[row]]


def role_of(draft: Draft, piece: str, section: str, row: int) -> str:
    rows = draft.section(piece, section).stitches_by_role()
    (only,) = [role for role, stitches in rows.items() if stitches[row]]
    return only


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(GARMENTS), RUNS, RUNS)
def test_every_stitch_has_one_role_and_the_laws_still_hold(
    garment: tuple[str, bool, bool], everywhere: str, edges: str
) -> None:
    construction, flat, opens = garment
    plain = made(construction, flat=flat, opens=opens)
    draft = coloured(plain, work({"everywhere": everywhere, "edges": edges}))
    assert broken_laws(draft) == broken_laws(plain)
    for _, section in draft.sections():
        assert section.is_coloured
        assert np.array_equal(sum(section.stitches_by_role().values()), section.stitches)


@pytest.mark.parametrize(("construction", "flat", "opens"), GARMENTS)
def test_what_is_floated_is_what_the_chart_s_own_count_finds(construction: str, flat: bool, opens: bool) -> None:
    """Against the floats that the chart room finds row by row, one by one."""
    draft = coloured(made(construction, flat=flat, opens=opens), work({"everywhere": "chart diamond"}))
    for _, section in draft.sections():
        if section.cells is None:
            continue
        floated = section.floated_by_role()
        for row in (0, section.rows // 2, section.rows - 1):
            cells = section.cells.cells[row : row + 1, : section.stitches[row]]
            roles = tuple(role for role in diamond().roles)
            chart = Chart(cells, np.zeros_like(cells), roles, section.in_the_round)
            found = find_floats(chart)
            for at, role in enumerate(section.cells.roles):
                assert floated[role][row] == found.stitches[found.role == at].sum()


def test_stripes_go_on_counting_where_a_piece_divides() -> None:
    draft = coloured(made("set-in sleeve"), work({"body": "4 main, 2 contrast"}))
    below = draft.section("body", "body").rows
    for at in range(12):
        expected = "main" if (below + at) % 6 < 4 else "contrast"
        assert role_of(draft, "body", "front", at) == role_of(draft, "body", "back", at) == expected


def test_one_word_for_all_goes_on_counting_from_yoke_to_body_and_sleeves() -> None:
    draft = coloured(made("raglan", top_down=True), work({"everywhere": "4 main, 3 contrast"}))
    yoke = sum(one.rows for one in draft.piece("yoke").sections)
    for piece, section in (("body", "body"), ("left sleeve", "sleeve"), ("right sleeve", "sleeve")):
        for row in range(9):
            assert role_of(draft, piece, section, row) == ("main" if (yoke + row) % 7 < 4 else "contrast")


def test_a_yoke_from_below_goes_on_from_the_body_unless_it_has_words_of_its_own() -> None:
    plain = made("round yoke")
    body = plain.section("body", "body").rows
    one, own = (
        coloured(plain, work(plan))
        for plan in ({"everywhere": "4 main, 3 contrast"}, {"body": "4 main, 3 contrast", "yoke": "4 main, 3 contrast"})
    )
    for row in range(9):
        assert role_of(one, "yoke", "yoke", row) == ("main" if (body + row) % 7 < 4 else "contrast")
        assert role_of(own, "yoke", "yoke", row) == ("main" if row % 7 < 4 else "contrast")


def test_runs_are_worked_in_order_and_the_last_goes_on() -> None:
    draft = coloured(made("hat"), work({"body": "2 main, 3 contrast, main", "hem": "contrast"}))
    assert [role_of(draft, "hat", "body", row) for row in range(6)] == ["main"] * 2 + ["contrast"] * 3 + ["main"]
    assert role_of(draft, "hat", "crown", 0) == "main"
    assert role_of(draft, "hat", "brim", 0) == "contrast"


@pytest.mark.parametrize("row", [0, 30, 60])
def test_a_motif_stands_in_the_middle_of_flat_work_with_plain_edges(row: int) -> None:
    section = made("set-in sleeve", flat=True).section("back", "body")
    columns = columns_of_row(section, row, 4, 1.0)
    assert columns[0] == columns[-1] == PLAIN
    inner = columns[1:-1]
    middle = (inner.size - 1) / 2
    shown = np.flatnonzero(inner == 1)
    assert np.abs(shown - middle).min() <= 0.5  # an even count has no stitch in its middle


def test_a_motif_stands_in_the_middle_of_the_front_of_a_tube_and_goes_on_above_it() -> None:
    """Round 1 of the front above the underarm continues the column that stood in the middle below it."""
    draft = made("set-in sleeve")
    body, front = draft.section("body", "body"), draft.section("body", "front")
    round_columns = columns_of_row(body, body.rows - 1, 4, 1.0)
    half = int(body.stitches[-1]) // 2
    flat_columns = columns_of_row(front, 0, 4, 1.0)
    moved = round(float(front.left_edge[0]) + half / 2)
    assert np.array_equal(flat_columns[1:-1], round_columns[moved + 1 : moved + flat_columns.size - 1])


def test_what_a_round_has_left_is_a_plain_panel_at_its_end() -> None:
    section = made("set-in sleeve").section("body", "body")
    columns = columns_of_row(section, 0, 7, 3.0)
    left = int(section.stitches[0]) % 7
    assert left
    assert (columns[-left:] == PLAIN).all()
    assert (columns[:-left] != PLAIN).all()
    assert np.bincount(columns[:-left]).tolist() == [int(section.stitches[0]) // 7] * 7


def test_each_share_of_a_raglan_yoke_has_its_own_middle() -> None:
    section = made("raglan").section("yoke", "yoke")
    columns = columns_of_row(section, 10, 4, 1.0)
    counts = {part.name: int(part.stitches[10]) for part in section.parts}
    first = 0
    for name in ("front", "left sleeve", "back", "right sleeve"):
        share = columns[first : first + counts[name]]
        assert share[(counts[name] - 1) // 2] == 1  # of an even count the left one of the two in the middle
        first += counts[name]


def test_how_a_chart_lies_is_told() -> None:
    draft = made("round yoke")
    told = laid_charts(draft, work({"yoke": "4 main, 2 chart diamond, main"}))
    (one,) = told
    section = draft.section("yoke", "yoke")
    assert (one.piece, one.section, one.first, one.rows) == ("yoke", "yoke", 4, 6)
    assert one.fit.count == section.stitches[4]
    assert one.is_even == (section.stitches[4] % 4 == 0 and len(set(section.stitches[4:10].tolist())) == 1)


@pytest.mark.parametrize(("construction", "flat", "opens"), GARMENTS)
def test_every_section_is_some_part(construction: str, flat: bool, opens: bool) -> None:
    draft = made(construction, flat=flat, opens=opens)
    places = {(piece.key, section.key): place_of(piece, section) for piece, section in draft.sections()}
    assert all("band" not in piece or place in ("neckband", "band") for (piece, _), place in places.items())
    assert {place for (_, section), place in places.items() if section in ("hem", "brim")} == {"hem"}
    assert "body" in places.values()
