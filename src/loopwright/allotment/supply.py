"""What there is to knit from: lots in the cupboard and yarn that is on its way."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping

from loopwright.records import Record
from loopwright.uncertainty import Estimate, Origin
from loopwright.yarn import Lot, Yarn, YarnOrder, length_in_lot
from loopwright.yarn.lot import LABEL_RELATIVE_SD

__all__ = ["Supply", "supplies"]


class Supply(Record):
    """Yarn of one dye lot: in the cupboard, or in a parcel.

    :ivar arrives_on: None when it is here.
    """

    key: str
    yarn: str
    colour: str
    shade: str | None = None
    dye_lot: str = ""
    length_m: Estimate
    arrives_on: dt.date | None = None


def supplies(lots: Iterable[Lot], orders: Iterable[YarnOrder], yarns: Mapping[str, Yarn]) -> tuple[Supply, ...]:
    """Give every lot and every ordered line with its metres."""
    here = [
        Supply(
            key=lot.key,
            yarn=lot.yarn,
            colour=lot.colour,
            shade=lot.shade,
            dye_lot=lot.dye_lot,
            length_m=length_in_lot(lot, yarns[lot.yarn]),
        )
        for lot in lots
    ]
    coming = [
        Supply(
            key=f"{order.key}-{number + 1}",
            yarn=line.yarn,
            colour=line.colour,
            dye_lot=line.dye_lot,
            length_m=Estimate.known(
                f"on its way: {line.put_ups} put-up{'' if line.put_ups == 1 else 's'}",
                line.put_ups * yarns[line.yarn].length_m,
                "m",
                Origin.STATED,
                sd=line.put_ups * yarns[line.yarn].length_m * LABEL_RELATIVE_SD,
                source="length on the band, ± 3 % (our judgement)",
            ),
            arrives_on=order.arrives_on,
        )
        for order in orders
        for number, line in enumerate(order.lines)
    ]
    return (*here, *coming)
