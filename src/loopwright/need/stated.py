"""Need from the amounts that the pattern states, scaled to what she makes."""

from __future__ import annotations

import math

from loopwright.fabric import Gauge, loop_length_mm
from loopwright.fit import SizeChoice
from loopwright.garment.stitches import ONE_COUNT_DENSITY_SD
from loopwright.pattern import PatternFacts, RoleAmount
from loopwright.uncertainty import Estimate, Origin, interval_moments
from loopwright.yarn.lot import LABEL_RELATIVE_SD

__all__ = ["amount_m", "extra_length_m", "gauge_factor", "stated_need"]

STATED_RELATIVE_SD = 0.05
"""How far two knitters stray from one stated amount at one gauge, as a share; our judgement."""


def amount_m(pattern: PatternFacts, amount: RoleAmount, choice: SizeChoice) -> Estimate | None:
    """Give the metres that the pattern states for a role in this size, or None where it is silent.

    Metres stand as they are; grams go through the grist of the pattern's own yarn; n whole balls say only that the
    need lies between n - 1 and n of them.
    """
    if amount.balls is not None:
        return _from_balls(pattern, amount, choice)
    value = choice.of(amount.row)
    if value is None:
        return None
    if amount.length_m is not None:
        metres, relative, working = value, STATED_RELATIVE_SD, f"{value:.5g} m"
    else:
        grist = pattern.grist_tex
        assert grist is not None  # PatternFacts asks for the put-up where grams are stated
        metres = value / grist * 1000
        relative = math.hypot(STATED_RELATIVE_SD, LABEL_RELATIVE_SD)
        working = f"{value:.5g} g at {grist:.4g} tex"
    return _stated(metres, relative * metres, amount.key, choice, working)


def _from_balls(pattern: PatternFacts, amount: RoleAmount, choice: SizeChoice) -> Estimate | None:
    balls = choice.of(amount.row)
    ball_m = pattern.ball_length_m
    assert ball_m is not None  # PatternFacts asks for the put-up where balls are stated
    if balls is None:
        return None
    mean, rounding_sd = interval_moments((balls - 1) * ball_m, balls * ball_m)
    sd = math.hypot(rounding_sd, STATED_RELATIVE_SD * mean)
    word = "ball" if balls == 1 else "balls"
    between = f"{(balls - 1) * ball_m:.5g} to {balls * ball_m:.5g} m"
    working = f"{balls:g} {word} of {ball_m:g} m, rounded up: {between}"
    return _stated(mean, sd, amount.key, choice, working)


def _stated(metres: float, sd: float, role: str, choice: SizeChoice, working: str) -> Estimate:
    return Estimate.worked(
        f"the pattern's amount for {role}, size {choice.name}",
        working,
        metres,
        sd,
        "m",
        origin=Origin.STATED,
        source="the pattern; spread between knitters 5 % (our judgement)",
    )


def gauge_factor(
    pattern: PatternFacts, choice: SizeChoice, gauge: Gauge, grist_tex: float, *, density_sd: float, washed: bool
) -> Estimate:
    r"""Give how many times the pattern's metres her gauge takes.

    Where she keeps the pattern's counts, stitches per row stay and lengths are knitted to measure, so
    :math:`f = \frac{r}{r_p}\,\frac{l}{l_p}`; where she works counts of her own for stated measures,
    :math:`f = \frac{s r}{s_p r_p}\,\frac{l}{l_p}`, with s, r stitches and rows per 10 cm, l the loop length, and
    p for the pattern. A fabric's own loop factor is in both and cancels.

    :param grist_tex: grist of the strand she works with.
    :param density_sd: doubt of her stitches × rows as a share; the loop length follows half of it the other way. The
        loop model errs by half of what it changes (our judgement).
    """
    own_mm = loop_length_mm(gauge, grist_tex, "washed" if washed else "unwashed")
    pattern_mm = loop_length_mm(pattern.gauge, pattern.grist_tex or grist_tex, "washed")
    own_rows, pattern_rows = gauge.rows_or_usual_per_10cm, pattern.gauge.rows_or_usual_per_10cm
    rows = own_rows / pattern_rows
    stitches = 1.0 if choice.counts_kept else gauge.stitches_per_10cm / pattern.gauge.stitches_per_10cm
    factor = rows * stitches * own_mm / pattern_mm
    sd = math.hypot(density_sd / 2, abs(own_mm / pattern_mm - 1) / 2) * factor
    across = "" if choice.counts_kept else f" × {gauge.stitches_per_10cm:.4g}/{pattern.gauge.stitches_per_10cm:.4g} sts"
    return Estimate.worked(
        "your swatch against the pattern's",
        f"{own_rows:.4g}/{pattern_rows:.4g} rows{across} × {own_mm:.4g}/{pattern_mm:.4g} mm a stitch",
        factor,
        sd,
        "×",
        source="loop length after Dalidovich and Munden",
    )


def extra_length_m(
    longer_cm: float,
    girth_cm: float,
    gauge: Gauge,
    grist_tex: float,
    yarn_per_stitch: float,
    *,
    says: str,
    washed: bool,
) -> Estimate:
    """Give the metres that a longer (or, below nothing, shorter) tube takes: rows × stitches × loop length.

    :param girth_cm: mean girth of the part that is made longer; for two sleeves the sum of both.
    :param yarn_per_stitch: the fabric's loop factor against stocking stitch.
    Source: arithmetic on the gauge; loop length as named there, 6 % (judged).
    """
    loop_mm = loop_length_mm(gauge, grist_tex, "washed" if washed else "unwashed") * yarn_per_stitch
    rows, stitches = longer_cm * gauge.rows_or_usual_per_10cm / 10, gauge.stitches_in(girth_cm)
    metres = rows * stitches * loop_mm / 1000
    return Estimate.worked(
        says,
        f"{rows:.3g} rows × {stitches:.4g} sts × {loop_mm:.4g} mm",
        metres,
        abs(metres) * 0.06,
        "m",
        source="gauge and loop length",
    )


def stated_need(
    pattern: PatternFacts,
    amount: RoleAmount,
    choice: SizeChoice,
    gauge: Gauge | None,
    grist_tex: float,
    *,
    density_sd: float = ONE_COUNT_DENSITY_SD,
    washed: bool = True,
) -> Estimate | None:
    """Give the metres of one role by the pattern's amounts at her gauge, before changes of length.

    :param gauge: hers, or None when there is no swatch yet: the stated amount then stands as it is.
    :returns: None where the pattern states no amount for this size.
    """
    stated = amount_m(pattern, amount, choice)
    if stated is None or gauge is None:
        return stated
    factor = gauge_factor(pattern, choice, gauge, grist_tex, density_sd=density_sd, washed=washed)
    return stated.times(factor, f"{amount.key} as you knit it", f"{stated.mean:.4g} m × {factor.mean:.3f}")
