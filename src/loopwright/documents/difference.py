"""What a change does: figures of a garment before and after it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from loopwright.season import GarmentPlan
from loopwright.season.wording import POINT_NAMES, Wording

__all__ = ["Difference", "differences"]


@dataclass(frozen=True, slots=True)
class Difference:
    """One figure as it is kept and as it is tried."""

    label: str
    kept: str
    tried: str


def differences(kept: GarmentPlan, tried: GarmentPlan, wording: Wording) -> tuple[Difference, ...]:
    """Give every figure that reads otherwise after the change; those that read the same are left out."""
    return tuple(row for row in _rows(kept, tried, wording) if row.kept != row.tried)


def _rows(kept: GarmentPlan, tried: GarmentPlan, wording: Wording) -> Iterator[Difference]:
    yield Difference("size", kept.size or "not settled", tried.size or "not settled")
    yield Difference("verdict on the fit", _verdict(kept), _verdict(tried))
    for point, measure in tried.finished_cm.items():
        before = kept.finished_cm.get(point)
        name = f"finished {POINT_NAMES[point]}"
        yield Difference(name, "unknown" if before is None else wording.cm(before), wording.cm(measure))
    roles = {(role.role, role.yarn): role for role in kept.roles}
    for role in tried.roles:
        old = roles.get((role.role, role.yarn))
        if old is None:
            continue
        yield Difference(f"{role.colour} needed", wording.estimate(old.need_m), wording.estimate(role.need_m))
        yield Difference(f"{role.colour} to buy", _balls(old.balls_to_buy), _balls(role.balls_to_buy))
    if kept.stitches and tried.stitches:
        yield Difference("stitches", wording.estimate(kept.stitches), wording.estimate(tried.stitches))
    if kept.hours and tried.hours:
        yield Difference("hours", wording.estimate(kept.hours), wording.estimate(tried.hours))


def _verdict(garment: GarmentPlan) -> str:
    return next((fit.verdict for fit in garment.fits if fit.size == garment.size), "none")


def _balls(count: int) -> str:
    return Wording.counted(count, "ball") if count else "nothing"
