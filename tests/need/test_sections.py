"""Every section's yarn: arithmetic on its rows, and laws that hold for every draft."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.fabric import Gauge
from loopwright.garment.draft import Draft, Kind, Needle, Piece, RoleCells, RoleRun
from loopwright.need import StrandOfRole, loop_by_gauge, section_needs, swatch_need, together
from loopwright.need.edges import role_loops
from loopwright.need.edges import tails as section_tails
from loopwright.need.sections import counted_m
from loopwright.pattern import Construction
from loopwright.units import BadInput
from tests.need.drafts import GAUGE, STRAND, pullover, pullovers

FEW = settings(max_examples=25, deadline=None)
STITCH_M = STRAND.loop.stitch_mm.mean / 1000


def strip(rows: int = 40, stitches: int = 30, *, made: int = 1, roles: tuple[RoleRun, ...] = ()) -> Draft:
    """A plain strip, cast on and cast off."""
    section = (
        Needle(stitches).plain(rows).section("strip", "strip", "stocking stitch", GAUGE, ends="cast off", roles=roles)
    )
    piece = Piece("strip", "strip", "bottom up", (section,), made=made)
    return Draft(construction="rectangle", direction="bottom up", gauge=GAUGE, pieces=(piece,))


def test_a_strip_by_hand() -> None:
    """1200 stitches, 30 cast on at 2 loops and off at 1.5, two tails of 15 cm; a ball ends every 110 m."""
    (need,) = section_needs(strip(), {"main": STRAND})
    loops = (1200 + 2 * 30 + 1.5 * 30) * STITCH_M
    ends = 2 * 0.15 + loops / 110 * (0.30 + 30 * STITCH_M / 2)
    assert need.length_m == pytest.approx(loops + ends)
    assert need.mass_g == pytest.approx(need.length_m * 0.450)
    assert need.length_m == pytest.approx(sum(step.value for step in need.working[:-1]))


def test_two_pieces_take_twice_one() -> None:
    (one,), (two,) = (section_needs(strip(made=made), {"main": STRAND}) for made in (1, 2))
    assert two.length_m == pytest.approx(2 * one.length_m)


def test_a_rib_on_the_same_stitches_takes_the_same_loops() -> None:
    """Mill constants give a rib the loop of plain fabric; its rows and width differ, and they are in the counts."""
    rib = replace(strip().pieces[0].sections[0], fabric="1x1 rib")
    draft = replace(strip(), pieces=(replace(strip().pieces[0], sections=(rib,)),))
    assert counted_m(draft, STRAND, "main") == pytest.approx(counted_m(strip(), STRAND, "main"))


def test_stitches_cast_off_in_a_row_take_half_as_much_again() -> None:
    section = Needle(30).plain(2).row((Kind.CAST_OFF, "right", 4)).section("s", "s", "stocking stitch", GAUGE)
    assert role_loops(section)["main"].rows.tolist() == [30, 30, 26 + 1.5 * 4]


def test_rows_in_two_roles() -> None:
    """The first edge in the first row's yarn, the last in the last's, each with two tails; together what one takes."""
    stripes = (RoleRun("main", 30), RoleRun("contrast", 10))
    needs = section_needs(strip(roles=stripes), {"main": STRAND, "contrast": STRAND})
    metres = {need.role: need.length_m for need in needs}
    assert metres["main"] == pytest.approx((900 + 60) * STITCH_M + 2 * 0.15, rel=0.01)
    assert metres["contrast"] == pytest.approx((300 + 45) * STITCH_M + 2 * 0.15, rel=0.02)
    assert sum(metres.values()) == pytest.approx(counted_m(strip(), STRAND, "main") + 2 * 0.15)


@pytest.mark.parametrize(("between", "tails"), [(2, 4), (6, 4), (8, 8)])
def test_narrow_stripes_are_carried_and_wide_ones_cut(between: int, tails: int) -> None:
    """Common practice, no source: a yarn that waits for six rows at most runs up the side."""
    stripes = tuple(RoleRun(role, rows) for _ in range(2) for role, rows in (("main", between), ("contrast", between)))
    draft = strip(4 * between, roles=stripes)
    left = section_tails(draft.pieces[0], draft.pieces[0].sections[0])
    assert sum(left.values()) == tails


def test_a_stranded_round_takes_its_loops_and_one_width_a_stitch() -> None:
    """Definition: in the round with two colours in every row, N (l + W) in all, whatever the motif (reference note on
    stranded fabric: share p needs p l + (1 − p) W for each stitch)."""
    plain = Needle(24).plain(10).section("t", "t", "stocking stitch in the round", GAUGE, ends="carried on")
    cells = np.zeros((10, 24), dtype=np.uint8)
    cells[:, ::4] = 1
    tube = replace(plain, in_the_round=True, cells=RoleCells(("main", "contrast"), cells))
    piece = Piece("t", "t", "bottom up", (tube,))
    draft = Draft(construction="cowl", direction="bottom up", gauge=GAUGE, pieces=(piece,))
    needs = {need.role: need for need in section_needs(draft, {"main": STRAND, "contrast": STRAND})}
    width_m = 0.1 / GAUGE.stitches_per_10cm
    terms = {role: {step.says.split(": ")[1]: step.value for step in need.working[:-1]} for role, need in needs.items()}
    assert terms["main"]["stitches"] == pytest.approx(180 * STITCH_M)
    assert terms["main"]["floats"] == pytest.approx(60 * width_m)
    assert terms["contrast"]["stitches"] == pytest.approx(60 * STITCH_M)
    assert terms["contrast"]["floats"] == pytest.approx(180 * width_m)


def test_a_role_without_yarn_is_named() -> None:
    with pytest.raises(BadInput, match="a yarn for the role contrast"):
        section_needs(strip(roles=(RoleRun("contrast", 40),)), {"main": STRAND})


def test_a_swatch_takes_what_its_area_takes() -> None:
    """15 × 15 cm at 20 × 28: 1260 stitches, and 30 of them cast on and off."""
    assert swatch_need(STRAND, GAUGE).length_m == pytest.approx((30 * 42 + 3.5 * 30) * STITCH_M + 0.3)


def test_a_sewn_garment_takes_more_for_its_seams() -> None:
    """Common practice: 3 to 8 % for joining and weaving in where it is sewn, seam stitches counted; else 1 to 2 %."""

    def share(construction: Construction, *, sewn: bool = False) -> float:
        draft = pullover(construction)
        needs = section_needs(draft, {"main": STRAND})
        ends = sum(s.value for need in needs for s in need.working if s.says.endswith((": seams", ": ends")))
        selvedge = sum(2 * one.rows * piece.made for piece, one in draft.sections() if not one.in_the_round)
        return (ends + (selvedge * STITCH_M if sewn else 0.0)) / together(needs).mean

    assert 0.03 < share(Construction.SET_IN, sewn=True) < 0.08
    assert 0.003 < share(Construction.RAGLAN) < 0.02


@FEW
@given(pullovers)
def test_needs_add_up_over_sections_in_any_order(draft: Draft) -> None:
    needs = section_needs(draft, {"main": STRAND})
    whole = together(needs)
    half = len(needs) // 2
    assert whole.mean == pytest.approx(together(needs[:half]).mean + together(needs[half:]).mean)
    assert together(tuple(reversed(needs))).mean == pytest.approx(whole.mean)
    assert together(tuple(reversed(needs))).sd == pytest.approx(whole.sd)
    assert whole.mean == pytest.approx(counted_m(draft, STRAND, "main"))


@FEW
@given(pullovers)
def test_a_sum_errs_between_the_root_of_squares_and_the_plain_sum(draft: Draft) -> None:
    needs = section_needs(draft, {"main": STRAND})
    each = np.array([need.sd_m for need in needs])
    assert np.sqrt((each**2).sum()) <= together(needs).sd * (1 + 1e-9)
    assert together(needs).sd <= each.sum() * (1 + 1e-9)


@FEW
@given(st.integers(0, 12), st.sampled_from(["length", "sleeve_length"]))
def test_more_stitches_never_take_less(more: int, name: str) -> None:
    base = {"length": 60.0, "sleeve_length": 45.0}[name]
    shorter, longer = (pullover(Construction.RAGLAN, **{name: base + cm}) for cm in (0, more))
    assert longer.stitches >= shorter.stitches
    assert counted_m(longer, STRAND, "main") >= counted_m(shorter, STRAND, "main")


def test_without_a_grist_there_is_no_mass() -> None:
    strand = StrandOfRole(loop_by_gauge(Gauge(stitches_per_10cm=20, rows_per_10cm=28), "stocking stitch", None))
    (need,) = section_needs(strip(), {"main": strand})
    assert need.mass_g is None
