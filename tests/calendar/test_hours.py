"""Hours from stitches and pace: arithmetic, and whose pace counts."""

import numpy as np
import pytest

from loopwright.calendar import Pace, hours_for
from loopwright.calendar.hours import fixed_hours, stitches_per_minute
from loopwright.pattern import Construction
from loopwright.uncertainty import Estimate, Origin

STITCHES = Estimate.known("stitches", 60_000, "sts", Origin.COMPUTED, sd=4800)
ROUND = "stocking stitch in the round"


def pace(**facts: object) -> Pace:
    return Pace.model_validate(facts)


def test_stitches_over_pace_and_overhead_and_fixed() -> None:
    """60,000 / (60 × 30) = 33.3 h, a tenth on top, and 3 h for a raglan."""
    found = hours_for(STITCHES, ROUND, "raglan", pace(stitches_per_minute=30))
    assert found.mean == pytest.approx(60_000 / 1800 * 1.1 + 3)


def test_what_is_knitted_is_done_but_the_fixed_hours_stay() -> None:
    whole, rest = (hours_for(STITCHES, ROUND, "raglan", pace(), knitted=done).mean for done in (0, 0.75))
    assert rest - 3 == pytest.approx((whole - 3) / 4)


def test_her_own_pace_in_a_fabric_beats_the_table() -> None:
    own = stitches_per_minute("lace", pace(stitches_per_minute=30, fabrics={"lace": 12}))
    assert (own.mean, own.origin) == (12, Origin.MEASURED)


def test_else_her_plain_pace_over_the_multiplier() -> None:
    """Lace 1.2 to 1.7, typically 1.4 times a knit stitch (common practice)."""
    found = stitches_per_minute("lace", pace(stitches_per_minute=28))
    assert found.mean == pytest.approx(28 / 1.4)


def test_a_guessed_pace_says_so_and_is_more_doubtful() -> None:
    guess, timed = stitches_per_minute(ROUND, pace()), stitches_per_minute(ROUND, pace(stitches_per_minute=30))
    assert guess.origin is Origin.GUESS
    assert guess.relative_sd > timed.relative_sd


def test_the_doubt_by_monte_carlo() -> None:
    """8 % on stitches, 8 % on pace, 0.9 h on the fixed ones; a ratio's second-order term allows 3 %."""
    found = hours_for(STITCHES, ROUND, "raglan", pace(stitches_per_minute=30))
    random = np.random.default_rng(9)
    stitches, speed = random.normal(60_000, 4800, 400_000), random.normal(30, 2.4, 400_000)
    drawn = stitches / (60 * speed) * 1.1 + random.normal(3, 0.9, 400_000)
    assert found.sd == pytest.approx(drawn.std(), rel=0.03)


@pytest.mark.parametrize("construction", list(Construction))
def test_every_construction_has_fixed_hours(construction: Construction) -> None:
    adult, child = (fixed_hours(construction.value, child=child).mean for child in (False, True))
    assert adult >= child > 0


def test_an_unknown_construction() -> None:
    with pytest.raises(KeyError):
        fixed_hours("poncho", child=False)


def test_american_names_of_fabrics_are_understood() -> None:
    assert pace(fabrics={"seed stitch": 20}).in_fabric("moss stitch") == 20


def test_a_pace_reads_back() -> None:
    whole = pace(stitches_per_minute=31.5, fabrics={"lace": 12}, overhead="5 %")
    assert Pace.model_validate(whole.model_dump(mode="json")) == whole
