"""The rows of `substitution_checks.csv`: strands held together, another ball for the same metres, jammed stitches.

N rows are craft rules and definitions, W rows published questions and pages, J and C rows follow from published
figures; each names source and status. Rules of thumb are held to their own precision, as the table says.
"""

import csv
import math
from pathlib import Path

import pytest

from loopwright.fabric import Gauge
from loopwright.need.substitution import FIBRE_TRAITS, Original, compare, predicted, put_ups_for, strand_of, wish_of
from loopwright.need.substitution.score import JAMMED_DIAMETERS
from loopwright.need.substitution.side import side_of
from loopwright.uncertainty import Estimate, Origin
from loopwright.units import read_gauge
from loopwright.yarn import Yarn

with (Path(__file__).parent / "substitution_checks.csv").open(encoding="utf-8", newline="") as file:
    ROWS = {row["id"]: row for row in csv.DictReader(file)}

PER_IN = 0.254


def near(number: str) -> object:
    return pytest.approx(float(ROWS[number]["expected"]), abs=float(ROWS[number]["tolerance"]) or 1e-9)


def yarn(length_m: float, mass_g: float, fibre: str = "wool", key: str = "y") -> Yarn:
    facts = {"key": key, "name": key, "fibres": {fibre: 100}, "length_m": length_m, "mass_g": mass_g}
    return Yarn.model_validate(facts)


def original(strand: Yarn, gauge: str = "22 sts x 30 rows = 10 cm", need_m: float = 1000) -> Original:
    count = read_gauge(gauge)
    return Original(
        strands=(strand,),
        gauge=Gauge(stitches_per_10cm=count.stitches_per_10cm, rows_per_10cm=count.rows_per_10cm),
        need_m=Estimate.known("given", need_m, "m", Origin.STATED),
    )


def doubled_st_per_in(gauge: str) -> float:
    single = yarn(400, 100)
    return compare(original(single, gauge), [single, single]).substitute.own_stitches_per_10cm.mean * PER_IN


@pytest.mark.parametrize(("number", "gauge"), [("N064", "6 st/in"), ("N065", "6 st/in"), ("N066", "4.5 st/in")])
def test_two_strands_want_fewer_stitches(number: str, gauge: str) -> None:
    assert doubled_st_per_in(gauge) == near(number)


def test_n067_a_garment_in_double_yarn() -> None:
    """The same garment at the wider gauge: 400 g become √2 as much; the printed factor is 1.4."""
    single = yarn(400, 100)
    root = math.sqrt(2)
    thin = original(single, "28 sts x 38 rows = 10 cm")
    wide = Gauge(stitches_per_10cm=28 / root, rows_per_10cm=38 / root)
    thick = Original(strands=(single, single), gauge=wide)
    masses = [side_of(one, one.strands).mass_g_m2.mean for one in (thin, thick)]
    assert 400 * masses[1] / masses[0] == near("N067")


def test_n068_n069_strands_add_by_mass() -> None:
    assert strand_of([yarn(1000, 200)] * 2).grist_tex[0] == near("N068")
    held = strand_of([yarn(420, 100), yarn(210, 25, "mohair", "z")])
    assert 100_000 / held.grist_tex[0] == near("N069")


def test_n070_two_fingering_lie_between_dk_and_worsted() -> None:
    low, high = (float(part) for part in ROWS["N070"]["expected"].split(" to "))
    assert low <= doubled_st_per_in("28 sts = 10 cm") / PER_IN <= high


@pytest.mark.parametrize(
    ("number", "old", "new", "need_m"),
    [("W09", yarn(100, 50), yarn(90, 50), 1100), ("W10", yarn(156, 50), yarn(230, 50 * 230 / 156), 1560)],
)
def test_the_same_gauge_takes_the_same_metres(number: str, old: Yarn, new: Yarn, need_m: float) -> None:
    """W10 does not print the masses: the grist is taken as alike."""
    metres = compare(original(old, need_m=need_m), [new.model_copy(update={"key": "new"})]).substitute.garment_m
    assert metres is not None
    exact = Estimate(mean=metres.mean, sd=0, unit="m", origin=Origin.COMPUTED)
    assert list(put_ups_for([new], exact, 0.5).values()) == [int(ROWS[number]["expected"])]


def test_w16_the_shortest_loop() -> None:
    low, high = (float(part) for part in ROWS["W16"]["expected"].split(" to "))
    assert low <= JAMMED_DIAMETERS <= high


@pytest.mark.parametrize(("number", "fibre"), [("J40", "wool"), ("J50", "cotton")])
def test_tightness_at_which_the_yarn_jams(number: str, fibre: str) -> None:
    """Tightness × room is the same at every gauge: the tightness at which a loop has no room left."""
    assert FIBRE_TRAITS[fibre].bulk_density_g_cm3 == float(ROWS[number]["inputs"].split()[2])
    for gauge in ("18 sts x 24 rows = 10 cm", "28 sts x 36 rows = 10 cm"):
        own = original(yarn(250, 100, fibre), gauge)
        room = float(predicted(wish_of(own), strand_of(own.strands)).room[0])
        assert side_of(own, own.strands).tightness.mean * room == near(number)


def test_c16_cotton_is_heavier_at_equal_thickness() -> None:
    """Equal packing gives the ratio of the densities; we let cotton pack closer, up to 1.25 (our judgement)."""
    densities = [float(word) for word in ROWS["C16"]["inputs"].split() if word[0].isdigit()]
    assert densities[0] / densities[1] == near("C16")
    ours = FIBRE_TRAITS["cotton"].bulk_density_g_cm3 / FIBRE_TRAITS["wool"].bulk_density_g_cm3
    assert float(ROWS["C16"]["expected"]) <= ours <= 1.25 + 1e-9
