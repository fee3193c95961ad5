"""What a page shows of a plan: figures already in the reader's words, drawings already drawn."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from loopwright.allotment import supplies
from loopwright.documents.colour_view import ColoursView, colours_view
from loopwright.documents.draft_view import DraftView, draft_view
from loopwright.documents.fit_view import fit_drawing
from loopwright.pictures import TimeLine, colour_chip, month_bar, time_bar, yarn_bar
from loopwright.season import Answer, Caution, GarmentPlan, RolePlanned, Season, SeasonPlan
from loopwright.season.wording import ONE_SIZE, POINT_NAMES, Wording
from loopwright.uncertainty import Step
from loopwright.units import write_money, write_share

__all__ = [
    "AnswerView",
    "GarmentView",
    "ParcelView",
    "RoleView",
    "SeasonView",
    "SizeView",
    "StepView",
    "WorkingView",
    "answer_view",
    "garment_view",
    "season_view",
]

ORIGIN_WORDS = {
    "measured": "measured by you",
    "stated": "stated",
    "computed": "computed",
    "table": "from a table",
    "guess": "a guess",
}


@dataclass(frozen=True, slots=True)
class StepView:
    """One line of a derivation as it is read."""

    says: str
    working: str
    value: str
    origin: str
    source: str


@dataclass(frozen=True, slots=True)
class WorkingView:
    """The derivation of one figure."""

    label: str
    text: str
    steps: tuple[StepView, ...]


@dataclass(frozen=True, slots=True)
class AnswerView:
    """A question with its answer, the evidence, and the working to unfold."""

    key: str
    question: str
    sentence: str
    tone: str
    reasons: tuple[str, ...]
    evidence: tuple[tuple[str, str], ...]
    workings: tuple[WorkingView, ...]


@dataclass(frozen=True, slots=True)
class RoleView:
    """One yarn of one role: chip, bar and the figures beside them."""

    role: str
    yarn: str
    colour: str
    chip: str
    bar: str
    need: str
    mass: str
    have: str
    chance: str
    to_buy: str
    lots: tuple[str, ...]
    ladder: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class SizeView:
    """One size in the table of sizes."""

    name: str
    chosen: bool
    verdict: str
    score: str
    eases: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class GarmentView:
    """One garment as its bench and the report show it.

    :ivar tension: what the reader calls her tension.
    """

    key: str
    name: str
    state: str
    about: str
    answers: tuple[AnswerView, ...]
    roles: tuple[RoleView, ...]
    sizes: tuple[SizeView, ...]
    figure: str
    draft: DraftView | None
    colours: ColoursView | None
    tension: str
    cautions: tuple[Caution, ...]
    chips: tuple[str, ...]
    bar: str
    when: str
    open: bool


@dataclass(frozen=True, slots=True)
class ParcelView:
    """One parcel of the shopping list."""

    shop: str
    lines: tuple[tuple[str, str, str], ...]
    goods: str
    postage: str
    border: str
    landed: str
    arrives: str


@dataclass(frozen=True, slots=True)
class SeasonView:
    """A season as its page and the report show it."""

    name: str
    about: str
    note: str
    answers: Mapping[str, AnswerView]
    garments: tuple[GarmentView, ...]
    months: str
    parcels: tuple[ParcelView, ...]
    cautions: tuple[Caution, ...]


def _step(step: Step, wording: Wording) -> StepView:
    return StepView(
        says=step.says,
        working=step.working,
        value=wording.step(step),
        origin=ORIGIN_WORDS[step.origin.value],
        source=step.source,
    )


def answer_view(answer: Answer, wording: Wording) -> AnswerView:
    """Give an answer with the figures it rests on and, for those that were worked, their steps."""
    worked = [figure for figure in answer.figures if figure.estimate is not None and figure.estimate.steps]
    return AnswerView(
        key=answer.key,
        question=answer.question,
        sentence=answer.sentence,
        tone=answer.tone,
        reasons=answer.reasons,
        evidence=tuple((figure.label, figure.text) for figure in answer.figures),
        workings=tuple(
            WorkingView(
                label=figure.label,
                text=figure.text,
                steps=tuple(_step(step, wording) for step in figure.estimate.steps),
            )
            for figure in worked
            if figure.estimate is not None
        ),
    )


def _role(role: RolePlanned, lot_names: Mapping[str, str], wording: Wording) -> RoleView:
    need, have = wording.estimate(role.need_m), wording.yarn(role.have_m.mean)
    chance = write_share(role.p_enough)
    to_buy = wording.counted(role.balls_to_buy, "ball") if role.balls_to_buy else "nothing"
    return RoleView(
        role=role.role,
        yarn=role.yarn_name,
        colour=role.colour,
        chip=colour_chip(role.shade, role.colour),
        bar=yarn_bar(
            role.need_m,
            role.have_m,
            role.shade,
            f"{role.colour}: {have} there, {need} needed",
            [taken.metres for taken in role.taken],
        ),
        need=need,
        mass=wording.mass(role.need_g),
        have=have,
        chance=chance,
        to_buy=to_buy,
        ladder=tuple(
            (f"{balls} more" if balls else "as it is", write_share(chance)) for balls, chance in enumerate(role.chances)
        )
        if role.balls_to_buy
        else (),
        lots=tuple(
            f"{wording.yarn(taken.metres)} reserved of {lot_names.get(taken.supply, taken.supply)}"
            + (f", here by {wording.date(taken.arrives_on)}" if taken.arrives_on else "")
            for taken in role.taken
        ),
    )


def _sizes(garment: GarmentPlan, wording: Wording) -> tuple[SizeView, ...]:
    return tuple(
        SizeView(
            name=fit.size,
            chosen=fit.size == garment.size,
            verdict="too small" if fit.too_small_at else fit.verdict,
            score=f"{fit.score:.2f}",
            eases=tuple(
                (
                    POINT_NAMES[point.point],
                    f"{wording.cm(point.garment_cm)} ({wording.signed(point.ease_cm)})",
                )
                for point in fit.points
            ),
        )
        for fit in garment.fits
    )


def _about(garment: GarmentPlan, wording: Wording) -> str:
    parts = [garment.pattern, garment.construction, wording.fabric(garment.fabric)]
    if garment.size:
        parts.append(garment.size if garment.size == ONE_SIZE else f"size {garment.size}")
    if garment.wearer:
        parts.append(f"for {garment.wearer}")
    if garment.due:
        parts.append(f"due {wording.date(garment.due)}")
    return " · ".join(parts)


def garment_view(
    season: Season,
    garment: GarmentPlan,
    wording: Wording,
    line: TimeLine | None = None,
    *,
    with_draft: bool = True,
) -> GarmentView:
    """Lay out one garment.

    :param line: the season's line of time; without it no weeks are drawn.
    :param with_draft: whether its pieces are shown and drawn.
    """
    lot_names = {
        lot.key: f"{season.yarn_by_key[lot.yarn].name} {lot.colour}"
        + (f", dye lot {lot.dye_lot}" if lot.dye_lot else ", dye lot unknown")
        for lot in supplies(season.cupboard, season.orders, season.yarn_by_key)
    }
    chips = {(role.shade, role.colour): colour_chip(role.shade, role.colour) for role in garment.roles}
    dates = garment.forecast
    bar = when = ""
    if dates is not None and garment.starts_on is not None:
        when = (
            f"from {wording.date(garment.starts_on)}; half likely by {wording.date(dates.half_likely)}, "
            f"eight in ten by {wording.date(dates.eight_in_ten)}"
        )
        if line is not None:
            bar = time_bar(
                line,
                garment.starts_on,
                dates.half_likely,
                dates.eight_in_ten,
                dates.nineteen_in_twenty,
                garment.due,
                when,
            )
    return GarmentView(
        key=garment.key,
        name=garment.name,
        state=garment.state.value,
        about=_about(garment, wording),
        answers=tuple(answer_view(answer, wording) for answer in garment.answers),
        roles=tuple(_role(role, lot_names, wording) for role in garment.roles),
        sizes=_sizes(garment, wording),
        figure=fit_drawing(season, garment, wording),
        draft=draft_view(season, garment, wording) if with_draft else None,
        colours=None if garment.colours is None else colours_view(garment.colours, wording),
        tension=wording.word("tension"),
        cautions=garment.cautions,
        chips=tuple(chips.values()),
        bar=bar,
        when=when,
        open=garment.is_open,
    )


def time_line(plan: SeasonPlan) -> TimeLine | None:
    """Give the line of time that all garments of a plan share, or None when nothing has a date."""
    days = [plan.today]
    for garment in plan.garments:
        if garment.forecast is not None:
            days.append(garment.forecast.nineteen_in_twenty)
            if garment.due is not None:
                days.append(garment.due)
    return TimeLine.over(days) if len(days) > 1 else None


def season_view(season: Season, plan: SeasonPlan, wording: Wording, *, with_drafts: bool = False) -> SeasonView:
    """Lay out a whole season.

    :param with_drafts: whether the pieces of every garment are shown and drawn.
    """
    line = time_line(plan)
    shops = {shop.key: shop.name for shop in season.shops}
    return SeasonView(
        name=plan.name,
        about=f"planned from {Wording(wording.reader).date(plan.today)} · {season.hours_a_week:g} hours a week"
        f" · {season.currency}",
        note=season.note,
        answers={answer.key: answer_view(answer, wording) for answer in plan.answers},
        garments=tuple(
            garment_view(season, garment, wording, line, with_draft=with_drafts) for garment in plan.garments
        ),
        months=month_bar(line) if line else "",
        parcels=tuple(
            ParcelView(
                shop=shops[parcel.shop],
                lines=tuple(
                    (
                        wording.counted(row.balls, "ball"),
                        f"{season.yarn_by_key[row.yarn].name} in {row.colour}",
                        write_money(row.price),
                    )
                    for row in parcel.lines
                ),
                goods=write_money(parcel.goods),
                postage=write_money(parcel.postage),
                border=write_money(parcel.border_tax + parcel.border_fee),
                landed=write_money(parcel.landed),
                arrives=wording.date(parcel.arrives_on),
            )
            for parcel in plan.parcels.parcels
        ),
        cautions=plan.cautions,
    )
