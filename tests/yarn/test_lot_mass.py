"""The mass of a lot: by the band, by the scale, and both."""

import math

from hypothesis import given

from loopwright.uncertainty import Origin
from loopwright.yarn import Lot, Yarn
from loopwright.yarn.lot_mass import mass_in_lot
from tests.strategies import lots, yarns

DK = Yarn(key="dk", name="DK", length_m=120, mass_g=50)


def test_put_ups_by_their_band_and_the_rest_by_the_scale() -> None:
    mass = mass_in_lot(Lot(key="a", yarn="dk", colour="Oat", put_ups=2, mass_g=31), DK)
    assert mass.mean == 131
    assert math.isclose(mass.sd, math.hypot(0.03 * 100, 1.0))  # band ± 3 %, scale ± 1 g: our judgement
    assert mass.origin is Origin.MEASURED


def test_what_was_not_weighed_is_only_stated() -> None:
    mass = mass_in_lot(Lot(key="a", yarn="dk", colour="Oat", put_ups=2), DK)
    assert (mass.mean, mass.origin) == (100, Origin.STATED)


@given(lots(), yarns())
def test_a_put_up_more_is_its_mass_more(lot: Lot, yarn: Yarn) -> None:
    more = lot.model_copy(update={"put_ups": lot.put_ups + 1})
    assert math.isclose(mass_in_lot(more, yarn).mean - mass_in_lot(lot, yarn).mean, yarn.mass_g, rel_tol=1e-6)
