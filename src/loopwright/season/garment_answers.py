"""A garment's own questions, answered in words."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence

from loopwright.calendar import Forecast
from loopwright.parcels import ParcelPlan
from loopwright.season.result import Answer, Figure, GaugeAnswer, RolePlanned, Tone
from loopwright.season.settle import Settled
from loopwright.season.wording import POINT_NAMES, Wording, odds
from loopwright.units import Money, write_money, write_share

__all__ = ["buy_answer", "fabric_answer", "time_answer", "yarn_answer"]

SAME_GAUGE = 0.01
"""Gauges that differ by less than this share are called the same."""


def fabric_answer(one: Settled, wording: Wording) -> Answer:
    """Answer *Is my tension right?* from the swatch against the pattern."""
    question = f"Is my {wording.word('tension')} right?"
    gauge = one.gauge
    if gauge is None or one.swatch is None:
        return Answer(
            key="fabric",
            question=question,
            sentence=f"Not known: {wording.word('cast on')} a swatch, wash it, and count it dry. "
            "Until then the pattern's own figures stand.",
            tone="no",
        )
    sentence, tone = _gauge_sentence(one, gauge, wording)
    return Answer(
        key="fabric",
        question=question,
        sentence=sentence,
        tone=tone,
        reasons=_gauge_reasons(one, gauge, wording),
        figures=(
            Figure(label="yours", text=wording.gauge(gauge.own.stitches_per_10cm, gauge.own.rows_per_10cm)),
            Figure(
                label="the pattern's",
                text=wording.gauge(gauge.pattern.stitches_per_10cm, gauge.pattern.rows_per_10cm),
            ),
        ),
    )


def _gauge_sentence(one: Settled, gauge: GaugeAnswer, wording: Wording) -> tuple[str, Tone]:
    own, wanted = gauge.own, gauge.pattern
    ratio = own.stitches_per_10cm / wanted.stitches_per_10cm
    text = wording.gauge(own.stitches_per_10cm, own.rows_per_10cm)
    if abs(ratio - 1) < SAME_GAUGE:
        asked = "the stitches are the pattern's" if _rows_differ(gauge) else "as the pattern asks"
        return f"Yes: {text}, {asked}.", "yes" if gauge.is_washed else "unsure"
    finer = "finer" if ratio > 1 else "looser"
    if one.choice is not None and not one.choice.counts_kept:
        return f"It is {finer} than the pattern's ({text}); your own stitch counts allow for it.", "unsure"
    if gauge.width_point is None:
        return f"It is {finer} than the pattern's: {text}.", "unsure"
    measure = one.finished_cm[gauge.width_point]
    change = abs(measure - measure * ratio)
    way = "narrower" if ratio > 1 else "wider"
    return (
        f"It is {finer} than the pattern's ({text}): at the pattern's counts the {POINT_NAMES[gauge.width_point]} "
        f"comes out {wording.cm(measure)}, {wording.cm(change)} {way}.",
        "unsure",
    )


def _row_ratio(gauge: GaugeAnswer) -> float | None:
    own, wanted = gauge.own.rows_per_10cm, gauge.pattern.rows_per_10cm
    return own / wanted if own and wanted else None


def _rows_differ(gauge: GaugeAnswer) -> bool:
    ratio = _row_ratio(gauge)
    return ratio is not None and abs(ratio - 1) >= SAME_GAUGE


def _change(factor: float, more: str, less: str) -> str:
    percent = round(abs(factor - 1) * 100, 1)
    return f"no {more}" if percent == 0 else f"{percent:g} % {more if factor > 1 else less}"


def _gauge_reasons(one: Settled, gauge: GaugeAnswer, wording: Wording) -> tuple[str, ...]:
    reasons = []
    assert one.swatch is not None  # asked only with a swatch
    if not gauge.is_washed:
        reasons.append("The swatch is not washed yet, and finished measures are after washing.")
    if (rows := _row_ratio(gauge)) is not None and _rows_differ(gauge):
        more = "more" if rows > 1 else "fewer"
        reasons.append(
            f"Your rows are {more} to a length than the pattern's: knit to the length, not to its row count."
        )
    if gauge.wash_length is not None and gauge.wash_width is not None and "length" in one.finished_cm:
        length = one.finished_cm["length"]
        reasons.append(
            f"Washing makes it {_change(gauge.wash_width, 'wider', 'narrower')} and "
            f"{_change(gauge.wash_length, 'longer', 'shorter')}: "
            f"knit to {wording.cm(length / gauge.wash_length)} on the needles to have {wording.cm(length)}."
        )
    if gauge.width_point is not None and gauge.width_doubt_cm is not None:
        places, point = wording.counted(one.swatch.places_counted, "place"), POINT_NAMES[gauge.width_point]
        reasons.append(f"Counted in {places}, it leaves ± {wording.cm(gauge.width_doubt_cm)} at the {point}.")
    if other := _other_yarn(one):
        reasons.append(f"The swatch is not of the yarn you mean to use ({other}): swatch in that.")
    if one.swatch.fabric != one.pattern.fabric:
        reasons.append(
            f"The swatch is {wording.fabric(one.swatch.fabric)}, the pattern {wording.fabric(one.pattern.fabric)}: "
            "swatch in the garment's own fabric."
        )
    return tuple(reasons)


def _other_yarn(one: Settled) -> str:
    """Give the main role's yarn when the swatch was knitted in another; empty when it is the same."""
    assert one.swatch is not None  # asked only with a swatch
    main = one.garment.role("main") or one.garment.yarns[0]
    strand = sorted([main.yarn] * main.strands + [strand.yarn for strand in main.held_with])
    return "" if strand == sorted(one.swatch.yarns) else " with ".join(strand)


def yarn_answer(
    one: Settled, roles: Sequence[RolePlanned], kept_for: Mapping[str, Sequence[str]], wording: Wording
) -> Answer:
    """Answer *Is there enough yarn?* by the least sure of the roles; one of which nothing is known is named.

    :param kept_for: the other garments, by role, for which yarn of the same kind and colour is reserved.
    """
    question = "Is there enough yarn?"
    if not roles:
        return Answer(
            key="yarn",
            question=question,
            sentence="Not known: the pattern states no amount; a size and a swatch are needed to work it out.",
            tone="no",
        )
    if one.unknown_roles:
        return Answer(
            key="yarn",
            question=question,
            sentence=f"Not known for {wording.listed(one.unknown_roles)}: the pattern states no amount for it, and "
            "its measures do not give an area.",
            tone="no",
            figures=tuple(figure for role in roles for figure in _role_figures(role, wording)),
        )
    worst = min(roles, key=lambda role: role.p_enough - role.sureness)
    word, tone = odds(worst.p_enough, worst.sureness)
    need, have = wording.estimate(worst.need_m), wording.yarn(worst.have_m.mean)
    if tone == "yes" and len(roles) == 1:
        sentence = f"Yes: {have} for the {need} you need, {write_share(worst.p_enough)} sure."
    elif tone == "yes":
        sentence = f"Yes, in every {wording.word('colour')}; least sure is {worst.colour}: {have} for {need}."
    else:
        sentence = (
            f"{word}: {have} of the {need} you need in {worst.colour}, {write_share(worst.p_enough)} sure. "
            f"{wording.counted(worst.balls_to_buy, 'ball').capitalize()} more "
            f"{'makes' if worst.balls_to_buy == 1 else 'make'} it {write_share(worst.p_after)} sure."
        )
    return Answer(
        key="yarn",
        question=question,
        sentence=sentence,
        tone=tone,
        reasons=tuple(reason for role in roles for reason in _role_reasons(role, kept_for.get(role.role, ()), wording)),
        figures=tuple(figure for role in roles for figure in _role_figures(role, wording)),
    )


def _role_reasons(role: RolePlanned, kept_for: Sequence[str], wording: Wording) -> list[str]:
    reasons = []
    if role.balls_to_buy and kept_for:
        reasons.append(f"Other {role.yarn_name} in {role.colour} is reserved for {wording.listed(kept_for)}.")
    known = [lot for lot in role.dye_lots if lot]
    if len(role.dye_lots) > 1:
        named = wording.listed([lot or "an unknown one" for lot in role.dye_lots])
        reasons.append(
            f"{role.colour.capitalize()} comes from more than one dye lot ({named}): "
            "alternate them every two rows, or change at a rib or an edge."
        )
    elif role.balls_to_buy and role.have_m.mean > 0:
        lot = f"dye lot {known[0]}" if known else "the same dye lot"
        reasons.append(
            f"Ask for {lot} in {role.colour}; another may show. Then alternate rows, or keep it for the edges."
        )
    return reasons


def _role_figures(role: RolePlanned, wording: Wording) -> list[Figure]:
    name = f"{role.role}, {role.yarn_name} in {role.colour}"
    return [
        Figure(
            label=f"{name}: needed",
            text=f"{wording.estimate(role.need_m)}, {wording.mass(role.need_g)}",
            estimate=role.need_m,
        ),
        Figure(label=f"{name}: at home or on its way", text=wording.estimate(role.have_m), estimate=role.have_m),
        Figure(label=f"{name}: chance that it suffices", text=write_share(role.p_enough)),
    ]


def buy_answer(
    key: str,
    roles: Sequence[RolePlanned],
    parcels: ParcelPlan,
    to_pay: Money | None,
    shop_names: Mapping[str, str],
    wording: Wording,
) -> Answer:
    """Answer *What must I buy?* for one garment."""
    question = "What must I buy?"
    short = [role for role in roles if role.balls_to_buy]
    if not short:
        return Answer(key="buy", question=question, sentence="Nothing.", tone="yes")
    wanted = wording.listed(
        [f"{wording.counted(role.balls_to_buy, 'ball')} of {role.yarn_name} in {role.colour}" for role in short]
    )
    unsold = [need for need in parcels.unsupplied if key in need.garments]
    if unsold:
        colours = wording.listed([need.colour for need in unsold])
        where = f"no shop that you listed sells enough in {colours}" if shop_names else "list a shop to see its price"
        sentence = f"{wanted[0].upper()}{wanted[1:]}; {where}."
        return Answer(key="buy", question=question, sentence=sentence, tone="no")
    shops = wording.listed(
        [shop_names[parcel.shop] for parcel in parcels.parcels if any(key in line.garments for line in parcel.lines)]
    )
    price = f", {write_money(to_pay)} landed with its share of postage" if to_pay is not None else ""
    return Answer(
        key="buy",
        question=question,
        sentence=f"{wanted[0].upper()}{wanted[1:]}, from {shops}{price}.",
        tone="unsure",
    )


def time_answer(one: Settled, starts_on: dt.date | None, dates: Forecast | None, wording: Wording) -> Answer:
    """Say how long it takes and when it is done, if it has a date."""
    question = "How long will it take, and when is it done?"
    if one.hours is None:
        return Answer(key="time", question=question, sentence="Not known until it has a size.", tone="no")
    named = (("stitches", one.stitches), ("hours still to knit", one.hours))
    figures = tuple(
        Figure(label=label, text=wording.estimate(estimate), estimate=estimate) for label, estimate in named if estimate
    )
    if dates is None or starts_on is None:
        sentence = f"{wording.estimate(one.hours)} of knitting; it has no date yet, because its yarn cannot be had."
        return Answer(key="time", question=question, sentence=sentence, tone="no", figures=figures)
    sentence = (
        f"{wording.estimate(one.hours)} from {wording.date(starts_on)} on: half likely done by "
        f"{wording.date(dates.half_likely)}, eight in ten by {wording.date(dates.eight_in_ten)}."
    )
    tone: Tone = "plain"
    if one.garment.due is not None and dates.p_by_due is not None:
        tone = odds(dates.p_by_due, 0.8)[1]
        sentence += f" Due {wording.date(one.garment.due)}: {write_share(dates.p_by_due)} sure."
    return Answer(key="time", question=question, sentence=sentence, tone=tone, figures=figures)
