"""What the page of substitutes shows: the yarn in use, then each other one with its figures and reasons."""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.documents.view import AnswerView, answer_view
from loopwright.need.substitution import VERDICTS, Side
from loopwright.need.substitution.reasons import range_words
from loopwright.season import Caution
from loopwright.season.swap import Swap
from loopwright.season.swap_options import SwapOption
from loopwright.season.wording import Wording
from loopwright.units import write_money, write_share

__all__ = ["OptionView", "SwapView", "swap_view"]

SOURCES = {"cupboard": "at home", "season": "in this season", "catalogue": "in the list"}


@dataclass(frozen=True, slots=True)
class OptionView:
    """One yarn, or yarns held together; the yarn in use has no verdict and no reasons."""

    name: str
    source: str
    verdict: str
    works: bool
    figures: tuple[tuple[str, str], ...]
    reasons: tuple[str, ...]
    skin: tuple[str, ...]
    free: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SwapView:
    """The whole page."""

    answer: AnswerView
    about: str
    original: OptionView
    options: tuple[OptionView, ...]
    cautions: tuple[Caution, ...]


def swap_view(found: Swap, wording: Wording) -> SwapView:
    """Lay out what a role could be knitted in."""
    gauge = wording.gauge(found.stitches_per_10cm, found.rows_per_10cm)
    whose = "your swatch's" if found.by_swatch else "the pattern's"
    return SwapView(
        answer=answer_view(found.answer, wording),
        about=f"All at {whose} {gauge}, {wording.fabric(found.fabric)}; {found.compared:,} compared.",
        original=OptionView(
            found.original.name,
            "as planned",
            "",
            True,
            (("thick", "1.00 ×"), *_figures(found.original, wording)),
            (),
            (),
            (),
        ),
        options=tuple(_option(option, wording) for option in found.options),
        cautions=found.cautions,
    )


def _figures(side: Side, wording: Wording) -> tuple[tuple[str, str], ...]:
    return (
        ("fabric", f"{side.mass_g_m2.mean:.0f} g/m²"),
        ("washed length", range_words(side.wash.length_pct) if side.wash else "not known"),
        ("garment", wording.mass(side.garment_g.mean) if side.garment_g else "not known"),
    )


def _option(option: SwapOption, wording: Wording) -> OptionView:
    one = option.comparison
    put_ups = " + ".join(str(number) for number in option.put_ups.values()) if option.put_ups else "not known"
    off = tuple(reason.sentence for reason in one.reasons if reason.verdict != VERDICTS[0])
    free = [
        f"{row.colour}: {wording.estimate(row.length_m)} free" for colours in option.free.values() for row in colours
    ]
    if option.p_enough is not None:
        free.append(f"That it suffices, each yarn in one colour: {write_share(option.p_enough)} sure.")
    return OptionView(
        name=option.name,
        source=SOURCES[option.source],
        verdict=one.verdict,
        works=one.works,
        figures=(
            ("thick", f"{one.thickness_ratio.mean:.2f} ×"),
            *_figures(one.substitute, wording),
            ("balls or skeins", put_ups),
            ("price", write_money(option.price) if option.price else "not known"),
        ),
        reasons=off or ("Nothing is off by more than the limits of what is called close.",),
        skin=one.skin,
        free=tuple(free),
    )
