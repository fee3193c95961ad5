"""Shaping against worked examples of handbooks, magazines and period patterns: the rows of `shaping_checks.csv`.

Each row names its source and status. Text answers are lists or distributions, of which the table fixes the parts and
not their order; numbers hold at the row's tolerance, 0 meaning equal to the digits shown. Rows whose table entry is not
what a function of ours gives (a half round, a width before it is whole, a fault) have a test of their own further down.

Of the rows on shaping these are not here, as no function of this room answers them: N142 and N145 (a cap's height by
class of chest, for whoever drafts the cap), N173 (75 − 17 rows).
"""

import csv
import re
from collections.abc import Callable, Iterable
from fractions import Fraction
from itertools import pairwise
from math import lcm
from pathlib import Path

import pytest

from loopwright.fabric import Gauge
from loopwright.garment.shaping import (
    Rhythm,
    bust_short_rows,
    buttonholes,
    cup_depth_cm,
    even_ratio,
    even_steps,
    fits_repeat,
    measured_depth_cm,
    nearest_count,
    pick_up_pattern,
    pick_up_ratio,
    pick_up_steps,
    picked_up,
    round_neck,
    rows_at,
    shaping_times,
    shoulder_steps,
    slant_rise_cm,
    slanted_length_cm,
    spread_across,
    spread_along,
    spread_decreases,
    tally,
    v_neck,
    worked_across,
)
from loopwright.units import BadInput

IN = 2.54
with (Path(__file__).parent / "shaping_checks.csv").open(encoding="utf-8", newline="") as file:
    ROWS = {row["id"]: row for row in csv.DictReader(file)}


class Given(dict[str, str]):
    """The inputs of a row by key."""

    def __call__(self, key: str) -> int:
        return int(self[key])

    def exact(self, key: str) -> Fraction:
        return Fraction(self[key])

    def real(self, key: str) -> float:
        return float(self[key])


def given(name: str) -> Given:
    return Given(part.split("=", 1) for part in ROWS[name]["inputs"].split(";"))


def listed(counts: Iterable[int]) -> str:
    return ",".join(map(str, counts))


def times_each(counts: Iterable[int]) -> str:
    return "+".join(f"{value}x{often}" for value, often in tally(counts))


def in_words(intervals: Iterable[int]) -> str:
    return ", ".join(f"every {interval} x{often}" for interval, often in tally(intervals))


def rhythm(of: Rhythm) -> str:
    return in_words(of.intervals())


def operations(rule: str) -> list[tuple[int, int]]:
    """Read "k1,k2tog" or "narrow, knit 4" as (takes, leaves)."""
    found: list[tuple[int, int]] = []
    for word in re.split(r", ?", rule):
        if word in ("k2tog", "narrow"):
            found.append((2, 1))
        elif word == "increase 1":
            found.append((0, 1))
        else:
            found += [(1, 1)] * int(word.removeprefix("knit ").removeprefix("k"))
    return found


def by_rule(g: Given) -> int:
    return worked_across(g("st"), operations(g["rule"]))


def three_rounds(g: Given) -> str:
    counts = [g("st")]
    for _ in range(3):
        counts.append(worked_across(counts[-1], operations(g["rule"].removesuffix(" three times"))))
    return listed(counts[1:])


def lay_decreases(g: Given) -> str:
    plain = spread_decreases(g("st"), g("dec"), in_the_round=True)
    return " and ".join(f"(k{knit},k2tog)x{often}" for knit, often in sorted(tally(plain), reverse=True))


def flat(g: Given) -> str:
    return listed(spread_across(g("st"), g("inc"), in_the_round=False))


def in_round(g: Given) -> tuple[int, ...]:
    return spread_across(g("st"), g("inc"), in_the_round=True)


def along(g: Given, step: int = 1) -> str:
    return rhythm(spread_along(g("rows"), g("times"), step=step))


def across(width_in: float, st_per_in: float) -> float:
    return Gauge(stitches_per_10cm=st_per_in * 10 / IN).stitches_in(width_in * IN)


def half_armhole_in(g: Given) -> float:
    """Cast-off, slanted decreases and straight edge, in inches."""
    rise = g("dec_rows") / g("rows_per_in")
    run = g("dec_st") / g("st_per_in")
    slope = slanted_length_cm(run * IN, rise * IN) / IN
    return g("bo_st") / g("st_per_in") + slope + g("depth_in") - rise


def cap_rise_in(g: Given) -> float:
    slope = g.real("half_armhole") - g.real("bo_in") - g.real("half_top_in")
    return slant_rise_cm(slope * IN, g.real("run_in") * IN) / IN


def crew(g: Given) -> str:
    neck = round_neck(g("neck_st"), 20, centre_share=g.real("centre_share"))
    return listed((neck.centre, sum(neck.sides)))


def rows_of_sides(g: Given, depth: int) -> int:
    """Rows up to the last shaping of a neck of 36 with 10 a side, in a depth that the next slower pace would exceed."""
    neck = round_neck(36, depth)
    assert sum(neck.sides) == g("side_st")
    return neck.at[-1] + 1


def v_intervals(g: Given) -> str:
    at = v_neck(2 * g("side_st"), g("rows")).at
    return in_words(after - before for before, after in pairwise((-1, *at)))


def slope_rows(g: Given) -> int:
    return nearest_count(g.exact("slope_in") * g("rows_per_in"), multiple=2)


def twice_the_slope(g: Given) -> str:
    size, often = map(int, g["old"].split(" x"))
    once = 2 * often
    assert tally(shoulder_steps(size * often, once)) == ((size, often),)
    steeper = once * g("slope_in") // g("from_slope_in")
    return times_each(shoulder_steps(size * often, steeper)).replace("x", " x")


def cup(cups_above_b: int) -> str:
    return "-".join(f"{depth / IN:g}" for depth in cup_depth_cm(cups_above_b))


def turns_apart(g: Given) -> str:
    depth_cm = (2 * g("turns")) / 28 * 10
    found = bust_short_rows(depth_cm, g("half_front_st"), g("side_gap_st"), g("apex_half_st"), 28)
    return listed({after - before for before, after in pairwise(found.turns)})


def ratio(g: Given, unit: str) -> str:
    return str(pick_up_ratio(g.real(f"st_per_{unit}"), g.real(f"rows_per_{unit}")))


def of_all(g: Given) -> str:
    rows = g("length_in") * g("rows_per_4in") // 4
    share = pick_up_ratio(g.real("st_per_4in"), g.real("rows_per_4in"))
    return f"{picked_up(rows, share)} of {rows} = {share}"


def groups(g: Given) -> str:
    found: list[str] = []
    pattern = pick_up_pattern(g("rows"), g("st"))
    for stitches, of in dict.fromkeys(pattern):
        often = pattern.count((stitches, of))
        found.append(f"{stitches} of {of}" + (f" x{often}" if often > 1 else ""))
    return ", then ".join(found)


def holes(g: Given) -> tuple[int, ...]:
    first = g(next(key for key in ("bottom", "edge") if key in g))
    last = g(next(key for key in ("top", "edge") if key in g))
    return buttonholes(g("band"), holes=g("holes"), width=g("width"), first=first, last=last)


def equal_gap(g: Given) -> str:
    return listed(set(holes(g)))


def v_edge_in(g: Given) -> float:
    run, rise = g("side_st") / g("st_per_in"), g("rows") / g("rows_per_in")
    return slanted_length_cm(run * IN, rise * IN) / IN


def fits(g: Given) -> str:
    return str(fits_repeat(g("count"), g("multiple"), g("plus"))).lower()


ANSWERS: dict[str, Callable[[Given], str | float]] = {
    "N023": lambda g: nearest_count(g("target"), multiple=g("multiple"), plus=g("plus")),
    "N024": lambda g: nearest_count(g("target"), multiple=g("multiple"), plus=g("plus")),
    "N025": fits,
    "N026": fits,
    "N027": fits,
    "N028": lambda g: nearest_count(
        g("min_width_in") * g("st_per_in"),
        multiple=g("multiple"),
        plus=g("plus"),
        least=g("min_width_in") * g("st_per_in"),
    ),
    "N029": lambda g: nearest_count(g("count"), multiple=lcm(*map(int, g["multiple"].split(",")))),
    "N030": lambda g: nearest_count(
        g("repeat") * g("columns") + g("extra"), multiple=g("repeat"), plus=g("extra") + g("borders")
    ),
    "N031": lambda g: nearest_count(g("lace_st"), multiple=g("lace_st"), plus=2 * g("edge")),
    "N085": flat,
    "N086": flat,
    "N087": flat,
    "N088": lambda g: listed(in_round(g)),
    "N089": lambda g: times_each(in_round(g)),
    "N090": lambda g: times_each(in_round(g)),
    "N091": lambda g: in_words(in_round(g)),
    "N092": lambda g: times_each(in_round(g)),
    "N093": lay_decreases,
    "N094": by_rule,
    "N095": by_rule,
    "N096": by_rule,
    "N097": along,
    "N098": along,
    "N099": lambda g: along(g, step=2),
    "N100": along,
    "N117": three_rounds,
    "N118": by_rule,
    "N119": by_rule,
    "N125": lambda g: even_ratio(g("base"), g("neck"), g("rounds")),
    "N126": lambda g: even_ratio(g("base"), g("neck"), g("rounds")),
    "N127": lambda g: listed(done + 1 for done in rows_at(g("rows"), [Fraction(1, 4), Fraction(1, 2)])),
    "N144": lambda g: shaping_times(g("upper_arm") - g("initial") - g("top_steps"), g("final")),
    "N146": half_armhole_in,
    "N147": cap_rise_in,
    "N148": crew,
    "N149": lambda g: rows_of_sides(g, 29),
    "N150": lambda g: rows_of_sides(g, 39),
    "N151": v_intervals,
    "N162": lambda g: listed(shoulder_steps(g("st"), g("rows"))),
    "N164": twice_the_slope,
    "N165": lambda g: listed(shoulder_steps(g("st"), slope_rows(g))),
    "N166": lambda g: cup(1),
    "N167": lambda g: cup(3),
    "N168": lambda g: (
        measured_depth_cm(
            g.real("front_in") * IN, g.real("back_in") * IN, stretch_cm=g.real("stretch_allowance_in") * IN
        )
        / IN
    ),
    "N169": lambda g: bust_short_rows(g.real("depth_in") * IN, 50, 5, 25, g("rows_per_in") * 10 / IN).pairs,
    "N170": turns_apart,
    "N171": lambda g: across(g.real("hip_in") - g.real("waist_in"), g.real("st_per_in")),
    "N172": lambda g: shaping_times(g("st"), 0, per_row=g("per_round")),
    "N174": lambda g: across(g.real("loss_in"), g.real("st_per_in")),
    "N175": lambda g: shaping_times(
        nearest_count(g.exact("loss_in") * g("st_per_in"), multiple=g("per_round")), 0, per_row=g("per_round")
    ),
    "N176": along,
    "N177": lambda g: ratio(g, "4in"),
    "N178": of_all,
    "N179": lambda g: ratio(g, "in"),
    "N180": lambda g: ratio(g, "10cm"),
    "N181": groups,
    "N182": lambda g: float(pick_up_ratio(g("st"), g("rows"), longest=g("rows"))),
    "N183": lambda g: picked_up(g("ridges"), pick_up_ratio(1, 1)),
    "N184": v_edge_in,
    "N185": equal_gap,
    "N186": lambda g: times_each(holes(g)),
    "N187": equal_gap,
}
APART = {"N101", "N102", "N103", "N104", "N120", "N121", "N139", "N140", "N141", "N143", "N163", "N188"}


def test_every_row_is_checked() -> None:
    assert set(ANSWERS) | APART == set(ROWS)
    assert not set(ANSWERS) & APART


def parts(text: str) -> list[str]:
    return sorted(re.split(r", ?| and |\+", text.replace(", then ", "; then ")))


@pytest.mark.parametrize("name", ANSWERS)
def test_published_value(name: str) -> None:
    row, answer = ROWS[name], ANSWERS[name](given(name))
    try:
        expected = float(row["expected"])
    except ValueError:
        assert parts(str(answer)) == parts(row["expected"])
    else:
        assert float(answer) == pytest.approx(expected, abs=float(row["tolerance"]) or 1e-9)


@pytest.mark.parametrize("name", ["N101", "N102"])
def test_a_printed_interval_fills_its_rows(name: str) -> None:
    g, rows = given(name), int(ROWS[name]["expected"])
    found = spread_along(rows, shaping_times(g("from_st"), g("to_st")), step=2)
    assert found.every == ((g("every"), found.times),)


def test_pairs_cannot_join_even_and_odd() -> None:
    g = given("N103")
    with pytest.raises(BadInput, match="multiple of 2 apart"):
        shaping_times(g("bottom_st"), g("top_st"))


def test_sixes_and_fours_in_turn() -> None:
    """N104: 26 decrease rows over 130, worked 6, 4 in turn there and the fours first here."""
    found = spread_along(130, int(ROWS["N104"]["expected"]), step=2)
    assert sorted(found.intervals()) == sorted([6, 4] * 13)
    assert len(found.shaping_rows()) == 26


def test_three_fifths_of_a_yoke_that_is_no_multiple_of_five() -> None:
    """N120: five rounds long the ratio comes out; once, 54 decreases have to be spread to land on 80."""
    g, expected = given("N120"), float(ROWS["N120"]["expected"])
    assert worked_across(5 * g("st"), operations(g["rule"])) / 5 == expected
    decreases = shaping_times(g("st"), nearest_count(expected), per_row=1)
    plain = spread_decreases(g("st"), decreases, in_the_round=True)
    assert (decreases, sum(plain) + decreases) == (54, 80)


def test_yoke_rounds_at_shares_of_the_depth() -> None:
    """N121 prints 52.5, in words rounds 50 to 56: ours is a whole round within half a round."""
    g = given("N121")
    shares = [Fraction(share) for share in g["fractions"].split(",")]
    printed = map(float, ROWS["N121"]["expected"].split(","))
    assert rows_at(g("depth_rounds"), shares) == pytest.approx(list(printed), abs=0.5)


def test_an_armhole_in_whole_stitches() -> None:
    """N139–N141: 12 cm a side of a piece of 62 cm, 8.4 stitches bound off as 8, 25.2 taken as 26."""
    gauge = Gauge(stitches_per_10cm=28)
    off, rest = (float(ROWS[name]["expected"]) for name in ("N140", "N141"))
    assert gauge.stitches_in(given("N140").real("bind_off_cm")) == pytest.approx(off)
    assert gauge.stitches_in(given("N141").real("rest_cm")) == pytest.approx(rest)
    assert (nearest_count(off), nearest_count(rest, multiple=2)) == (8, 26)
    wide = nearest_count(gauge.stitches_in(given("N139").real("width_cm")))
    narrow = nearest_count(gauge.stitches_in(given("N139").real("shoulder_cm")), like=wide)
    assert shaping_times(wide, narrow) == 8 + 26
    half_a_stitch_cm = gauge.width_cm(0.5)
    assert gauge.width_cm(8 + 26) == pytest.approx(float(ROWS["N139"]["expected"]), abs=half_a_stitch_cm)


def test_rows_of_a_cap() -> None:
    """N143: 35.75, worked as 36 rows in the text."""
    g = given("N143")
    wanted = g.exact("cap_in") * g.exact("rows_per_in")
    assert wanted == Fraction(ROWS["N143"]["expected"])
    assert nearest_count(wanted, multiple=2) == 36


def test_two_shoulders_in_three_steps_and_a_neck() -> None:
    g = given("N163")
    shoulder = shaping_times(int(ROWS["N163"]["expected"]), g("neck"))
    assert listed(even_steps(shoulder, 3, larger_first=False)) == g["steps"]


def test_buttonholes_of_1918() -> None:
    """N188: 125 stitches used, from the first hole's side to the end of the last hole."""
    g, used = given("N188"), int(ROWS["N188"]["expected"])
    gaps = buttonholes(used, holes=g("holes"), width=g("width"), first=g("first"), last=0)
    assert gaps == (g("gap"),) * 7


def test_a_mix_of_three_of_four_and_four_of_five() -> None:
    """N182: the ratio lies between the two; all but the last group are one or the other."""
    g = given("N182")
    *most, last = pick_up_pattern(g("rows"), g("st"))
    assert set(most) == {(3, 4), (4, 5)}
    assert last == (3, 3)


def test_stitches_along_a_v() -> None:
    """N184: 44 stitches at 5 to the inch, more than the 42 that 3 of every 4 rows would give."""
    g = given("N184")
    assert nearest_count(v_edge_in(g) * g("st_per_in")) == 44
    assert picked_up(g("rows"), Fraction(3, 4)) == 42


def test_ten_thirteenths_taken_apart() -> None:
    """N177: 3/4 + 3/4 + 4/5 in the note; a ratio of gauges rounded to two decimals is the same."""
    ratio = pick_up_ratio(19.69, 25.59)
    assert ratio == Fraction(ROWS["N177"]["expected"])
    assert sorted(pick_up_steps(ratio)) == [(3, 4), (3, 4), (4, 5)]
