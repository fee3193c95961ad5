"""What each lot of the cupboard holds, for which garment it is reserved, and what is free."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from pydantic import Field

from loopwright.garment import Garment
from loopwright.records import Record
from loopwright.season.result import SeasonPlan
from loopwright.season.season import Season
from loopwright.season.settle import settle
from loopwright.uncertainty import Estimate, Origin
from loopwright.yarn import Lot, Yarn, length_in_lot
from loopwright.yarn.lot import LABEL_RELATIVE_SD, SCALE_SD_G
from loopwright.yarn.lot_mass import mass_in_lot

__all__ = [
    "CupboardUse",
    "Knitted",
    "LotAmount",
    "LotReport",
    "Reserved",
    "cupboard_report",
    "cupboard_use",
    "lot_report",
    "sum_of_lots",
]


class LotAmount(NamedTuple):
    """How much a lot holds, without anything else: of many thousands this is all that a sum needs."""

    yarn: Yarn
    put_ups: int
    mass_g: float | None


class Reserved(Record):
    """Metres of a lot that are kept for one garment."""

    garment: str
    name: str
    role: str
    metres: float


class Knitted(Record):
    """Yarn of a kind and colour that is in a garment already, reckoned from its need and how far it is.

    :ivar lots: the lots that she named for the role; empty when any of the colour may have gone into it.
    """

    garment: str
    name: str
    yarn: str
    colour: str
    lots: tuple[str, ...]
    metres: Estimate


class CupboardUse(Record):
    """What the season does with the cupboard.

    :ivar reserved: by key of the lot.
    """

    reserved: Mapping[str, tuple[Reserved, ...]] = Field(default_factory=dict)
    knitted: tuple[Knitted, ...] = ()


class LotReport(Record):
    """One lot: what there is of it and what it is for.

    :ivar free_m: metres that no garment has reserved.
    """

    lot: Lot
    yarn: Yarn
    mass_g: Estimate
    length_m: Estimate
    reserved: tuple[Reserved, ...]
    knitted: tuple[Knitted, ...]

    @property
    def reserved_m(self) -> float:
        """Give the metres that are kept for garments."""
        return math.fsum(one.metres for one in self.reserved)

    @property
    def free_m(self) -> float:
        """Give the metres that are kept for nothing."""
        return max(self.length_m.mean - self.reserved_m, 0.0)


def cupboard_use(season: Season, planned: SeasonPlan) -> CupboardUse:
    """Give what a plan reserves of each lot, and what begun and finished garments hold already."""
    reserved: dict[str, list[Reserved]] = {}
    lots = {lot.key for lot in season.cupboard}
    for garment in planned.garments:
        for role in garment.roles:
            for taken in role.taken:
                if taken.supply in lots:
                    one = Reserved(garment=garment.key, name=garment.name, role=role.role, metres=taken.metres)
                    reserved.setdefault(taken.supply, []).append(one)
    return CupboardUse(
        reserved={key: tuple(rows) for key, rows in reserved.items()},
        knitted=tuple(one for garment in season.garments for one in _knitted(season, garment)),
    )


def _knitted(season: Season, garment: Garment) -> Iterable[Knitted]:
    """Give what is in a garment: all of its need when its knitting is done, else the share that is knitted."""
    share = garment.knitted or 0.0
    is_off = garment.done_on is not None or garment.knitted_off_on is not None
    if not is_off and not share:
        return
    factor = (1.0 if is_off else share) / (1 - share)  # needs are for what is still to be knitted
    for need in settle(season, garment).needs:
        role = garment.role(need.role)
        assert role is not None  # needs are made from the garment's own roles
        strands = [(role.yarn, role.colour, role.strands), *((one.yarn, one.colour, 1) for one in role.held_with)]
        for yarn, colour, count in strands:
            mean, sd = (figure * factor * count for figure in (need.strand_m.mean, need.strand_m.sd))
            metres = Estimate.worked(
                f"in {garment.name} already",
                f"{need.strand_m.mean:.4g} m × {factor * count:.3g}",
                mean,
                sd,
                "m",
                after=need.strand_m.steps,
            )
            own = tuple(key for key in role.lots if any(lot.key == key and lot.yarn == yarn for lot in season.cupboard))
            yield Knitted(garment=garment.key, name=garment.name, yarn=yarn, colour=colour, lots=own, metres=metres)


def lot_report(lot: Lot, yarn: Yarn, use: CupboardUse) -> LotReport:
    """Give what is there of one lot and what it is for."""
    return LotReport(
        lot=lot,
        yarn=yarn,
        mass_g=mass_in_lot(lot, yarn),
        length_m=length_in_lot(lot, yarn),
        reserved=use.reserved.get(lot.key, ()),
        knitted=tuple(
            one
            for one in use.knitted
            if (lot.key in one.lots if one.lots else (one.yarn, one.colour) == (lot.yarn, lot.colour))
        ),
    )


def cupboard_report(season: Season, planned: SeasonPlan, lots: Iterable[Lot] | None = None) -> tuple[LotReport, ...]:
    """Give the report of every lot of a season, or of some of them, in the order given."""
    use, yarns = cupboard_use(season, planned), season.yarn_by_key
    return tuple(lot_report(lot, yarns[lot.yarn], use) for lot in (season.cupboard if lots is None else lots))


def sum_of_lots(lots: Iterable[LotAmount]) -> tuple[Estimate, Estimate]:
    """Give the mass and the length of all lots together; lots stray independently of one another.

    The same figures as adding :func:`loopwright.yarn.length_in_lot` and
    :func:`loopwright.yarn.lot_mass.mass_in_lot` of each, without their working.

    :returns: grams, metres.
    """
    count, mass, length, mass_variance, length_variance = 0, 0.0, 0.0, 0.0, 0.0
    for yarn, put_ups, weighed in lots:
        count += 1
        by_band_g, scale_g = put_ups * yarn.mass_g, 0.0 if weighed is None else SCALE_SD_G
        lot_g = by_band_g + (weighed or 0.0)
        metres_per_g = yarn.length_m / yarn.mass_g
        mass += lot_g
        length += lot_g * metres_per_g
        mass_variance += (by_band_g * LABEL_RELATIVE_SD) ** 2 + scale_g**2
        length_variance += ((lot_g * LABEL_RELATIVE_SD) ** 2 + scale_g**2) * metres_per_g**2
    says = f"all {count} lots"
    return (
        Estimate.known(says, mass, "g", Origin.COMPUTED, sd=math.sqrt(mass_variance)),
        Estimate.known(says, length, "m", Origin.COMPUTED, sd=math.sqrt(length_variance)),
    )
