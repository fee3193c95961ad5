"""What else could a garment be knitted in: the season's yarns, its cupboard and a catalogue, ranked for one role."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from loopwright.need import yarn_density
from loopwright.need.substitution import (
    VERDICTS,
    Original,
    Side,
    YarnCatalogue,
    catalogue_of,
    free_of,
    rank_held,
    wish_of,
)
from loopwright.need.substitution.side import side_of
from loopwright.records import Record
from loopwright.season.cautions import caution, fibre_cautions
from loopwright.season.free_yarn import free_yarn
from loopwright.season.result import Answer, Caution
from loopwright.season.season import Season
from loopwright.season.settle import Settled, settle
from loopwright.season.swap_options import Shelf, SwapOption, catalogue_options
from loopwright.season.swap_words import swap_answer
from loopwright.units import BadInput
from loopwright.yarn import Yarn

__all__ = ["Swap", "swap"]


class Swap(Record):
    """What else one role of a garment could be knitted in, the best first.

    :ivar by_swatch: whether the gauge is her swatch's; else it is the pattern's.
    :ivar compared: how many strands were compared.
    """

    garment: str
    garment_name: str
    role: str
    stitches_per_10cm: float
    rows_per_10cm: float | None
    fabric: str
    by_swatch: bool
    original: Side
    compared: int
    options: tuple[SwapOption, ...]
    answer: Answer
    cautions: tuple[Caution, ...]


def swap(
    season: Season,
    garment: str,
    role: str = "main",
    *,
    catalogue: YarnCatalogue | None = None,
    held: bool = False,
    without: Sequence[str] = (),
    top: int = 10,
) -> Swap:
    """Rank what else a role could be knitted in at the gauge that it is knitted at.

    Pure. Ranked are the season's yarns, with ``held`` also two or three yarns of the cupboard held together, and the
    catalogue if there is one.

    :param garment: key of the garment.
    :param without: fibres that must not be in it; what is not wholly stated is left out then.
    :param top: how many to give at most.
    :raises BadInput: no such garment or role.
    """
    found = season.garment_by_key.get(garment)
    if found is None:
        raise BadInput(f"the garment '{garment}'", f"one of {', '.join(season.garment_by_key)}")
    plan = found.role(role)
    if plan is None:
        raise BadInput(f"the role '{role}'", f"one of {', '.join(one.key for one in found.yarns)}", place=garment)
    one = settle(season, found)
    strand = (*[plan.yarn] * plan.strands, *(other.yarn for other in plan.held_with))
    original = _original(one, role, tuple(season.yarn_by_key[key] for key in strand))
    free = free_yarn(season, garment, role)
    allowed = _allowed(season.yarns, without)
    sureness = found.sureness or season.sureness
    shelf = Shelf(season, original, free, sureness)
    ways: list[tuple[Yarn, ...]] = [(yarn,) for yarn in allowed]
    if held:
        ways += _held(original, [yarn for yarn in allowed if yarn.key in free], top)
    options = [shelf.option(yarns) for yarns in ways if sorted(yarn.key for yarn in yarns) != sorted(strand)]
    compared = len(options)
    if catalogue is not None:
        options += catalogue_options(original, catalogue, without, top, sureness)
        compared += len(catalogue)
    options.sort(key=lambda option: (VERDICTS.index(option.comparison.verdict), option.comparison.score))
    best = tuple(options[:top])
    return Swap(
        garment=garment,
        garment_name=found.name,
        role=role,
        stitches_per_10cm=original.gauge.stitches_per_10cm,
        rows_per_10cm=original.gauge.rows_per_10cm,
        fabric=original.structure,
        by_swatch=one.swatch is not None,
        original=side_of(original, original.strands),
        compared=compared,
        options=best,
        answer=swap_answer([option.comparison for option in best]),
        cautions=_cautions(best),
    )


def _original(one: Settled, role: str, strands: tuple[Yarn, ...]) -> Original:
    swatch = one.swatch
    need = next((need.strand_m for need in one.needs if need.role == role), None)
    if swatch is None:
        return Original(strands=strands, gauge=one.pattern.gauge, structure=one.pattern.fabric, need_m=need)
    tex = math.fsum(yarn.grist_tex for yarn in strands)
    own = sorted(swatch.yarns) == sorted(yarn.key for yarn in strands)
    return Original(
        strands=strands,
        gauge=swatch.gauge,
        structure=swatch.fabric,
        washed=swatch.is_washed,
        density_relative_sd=swatch.density_relative_sd,
        metres_per_m2=yarn_density(swatch, tex) if own else None,
        need_m=need,
    )


def _allowed(yarns: Sequence[Yarn], without: Sequence[str]) -> list[Yarn]:
    if not yarns or not without:
        return list(yarns)
    free = free_of(catalogue_of(yarns).shares, without)
    return [yarn for yarn, surely in zip(yarns, free, strict=True) if surely]


def _held(original: Original, yarns: Sequence[Yarn], top: int) -> list[tuple[Yarn, ...]]:
    """Give the best ways to hold yarns of the cupboard together."""
    if not yarns:
        return []
    _, members = rank_held(wish_of(original), catalogue_of(yarns).strands, top)
    return [tuple(yarns[int(place)] for place in places) for places in members]


def _cautions(options: Iterable[SwapOption]) -> tuple[Caution, ...]:
    fibres = {fibre for option in options if option.comparison.works for fibre in option.comparison.substitute.fibres}
    return (caution("swap"), *fibre_cautions(fibres))
