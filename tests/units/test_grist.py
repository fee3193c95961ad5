"""Count systems against constants derived from the yard and pound (as ASTM D2260 has them) and pint."""

import csv
from fractions import Fraction
from pathlib import Path

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units import (
    COUNT_SYSTEMS,
    BadInput,
    CountSystem,
    count_from_tex,
    find_count_system,
    length_of_mass_m,
    mass_of_length_g,
    resultant_count,
    tex_from_count,
    tex_from_put_up,
)

with (Path(__file__).parent / "yarn_count_conversions.csv").open(encoding="utf-8", newline="") as file:
    TABLE = list(csv.DictReader(file))
ROWS = {row["symbol"].split(" (")[0]: row for row in TABLE if not row["symbol"].startswith("spyndle")}
POSITIVE = st.floats(1e-3, 1e6)
SYSTEMS = st.sampled_from([system.symbol for system in COUNT_SYSTEMS])


@pytest.mark.parametrize("symbol", ROWS)
def test_one_of_each_system_in_tex_is_its_tabled_constant(symbol: str) -> None:
    row = ROWS[symbol]
    assert tex_from_count(1, symbol) == pytest.approx(float(row["constant"]), abs=1e-6)
    system = find_count_system(symbol)
    assert system is not None
    assert system.direct == (row["type"] == "direct")


def test_the_table_and_the_program_have_the_same_systems() -> None:
    assert {system.symbol for system in COUNT_SYSTEMS} == set(ROWS)


@pytest.mark.parametrize(
    ("symbol", "pint_name"),
    [("tex", "tex"), ("dtex", "dtex"), ("den", "denier"), ("NeC", "number_english"), ("Nm", "number_meter")],
)
def test_seven_of_a_system_agree_with_pint(symbol: str, pint_name: str) -> None:
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    seven = registry.Quantity(7, pint_name)
    per_length = seven if symbol in ("tex", "dtex", "den") else 1 / seven
    assert tex_from_count(7, symbol) == pytest.approx(per_length.to("tex").magnitude, rel=1e-9)


# Worked in the reference's section on yarn count: one yarn in many systems (derived from exact units).
@pytest.mark.parametrize(
    ("symbol", "count", "tolerance"),
    [("m/100g", 200, 0), ("Nm", 2, 0), ("den", 4500, 0), ("NeK", 1.772, 0.0005), ("yd/lb", 992.1, 0.05)],
)
def test_100_m_per_50_g_in_every_system(symbol: str, count: float, tolerance: float) -> None:
    assert count_from_tex(tex_from_put_up(100, 50), symbol) == pytest.approx(count, abs=tolerance + 1e-9)


# Relations between indirect systems, ASTM D2260 by way of the same section.
@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [("NeK", "NeC", 1.5), ("NeC", "Nm", 0.590541), ("NeK", "Nm", 0.885812), ("yd/lb", "Nm", 496.0546)],
)
def test_ratio_of_two_indirect_systems(one: str, other: str, ratio: float) -> None:
    assert count_from_tex(100, one) / count_from_tex(100, other) == pytest.approx(ratio, abs=5e-5)


def test_denier_times_cotton_count_is_constant() -> None:
    assert count_from_tex(37, "den") * count_from_tex(37, "NeC") == pytest.approx(5314.871, abs=5e-4)


@given(POSITIVE, SYSTEMS)
def test_to_tex_and_back(count: float, system: str) -> None:
    assert count_from_tex(tex_from_count(count, system), system) == pytest.approx(count, rel=1e-14)


@given(POSITIVE, POSITIVE)
def test_mass_to_length_and_back(mass_g: float, grist_tex: float) -> None:
    assert mass_of_length_g(length_of_mass_m(mass_g, grist_tex), grist_tex) == pytest.approx(mass_g, rel=1e-14)


@given(POSITIVE, POSITIVE)
def test_a_put_up_weighs_what_its_grist_says(length_m: float, mass_g: float) -> None:
    assert mass_of_length_g(length_m, tex_from_put_up(length_m, mass_g)) == pytest.approx(mass_g, rel=1e-14)


# Metric 2/28 is 14; worsted 2/6 is 3, that is 1680 yd/lb (trade handbook, read).
@pytest.mark.parametrize(("first", "second", "single"), [(2, 28, 14), (28, 2, 14), (2, 6, 3), (8, 4, 2), (2, 2, 1)])
def test_a_plied_count_is_divided_by_its_plies(first: int, second: int, single: int) -> None:
    assert resultant_count(Fraction(first), Fraction(second)) == single


def test_worsted_two_six_is_1680_yards_a_pound() -> None:
    tex = tex_from_count(resultant_count(Fraction(2), Fraction(6)), "NeK")
    assert count_from_tex(tex, "yd/lb") == pytest.approx(1680, rel=1e-14)


@pytest.mark.parametrize(("first", "second"), [("0", "2"), ("1.5", "30"), ("30", "0.5"), ("-2", "30")])
def test_plies_are_whole_and_above_zero(first: str, second: str) -> None:
    with pytest.raises(BadInput, match="a whole number of plies"):
        resultant_count(Fraction(first), Fraction(second))


@pytest.mark.parametrize("bad", [0, -1, float("nan"), float("inf")])
def test_a_grist_is_finite_and_above_zero(bad: float) -> None:
    with pytest.raises(BadInput, match="a finite number above zero"):
        count_from_tex(bad, "Nm")
    with pytest.raises(BadInput, match="mass_g: found"):
        tex_from_put_up(100, bad)


def test_an_unknown_system_is_answered_with_the_known_ones() -> None:
    with pytest.raises(BadInput, match='found "Nx"; wanted a count system: tex, dtex'):
        tex_from_count(1, "Nx")


@pytest.mark.parametrize("system", COUNT_SYSTEMS, ids=lambda system: system.symbol)
def test_every_name_of_a_system_finds_it(system: CountSystem) -> None:
    assert all(find_count_system(name.upper()) is system for name in (system.symbol, *system.aliases))
