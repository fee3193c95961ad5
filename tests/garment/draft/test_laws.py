"""The laws find what is broken: each test spoils a sound draft in one place."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from loopwright.fabric import Gauge
from loopwright.garment.draft import (
    BrokenDraft,
    Draft,
    Edge,
    Join,
    Kind,
    MeasureCheck,
    Needle,
    Part,
    Piece,
    RoleCells,
    RoleRun,
    Section,
    broken_laws,
    lawful,
)
from loopwright.units import Told

GAUGE = Gauge(stitches_per_10cm=20, rows_per_10cm=28)


def hem() -> Section:
    return Needle(20).plain(4).section("hem", "hem", "2x2 rib", GAUGE)


def body() -> Section:
    needle = Needle(20).plain(1).row((Kind.INCREASE, "left", 1), (Kind.INCREASE, "right", 1)).plain(2)
    return needle.section("body", "body", "stocking stitch", GAUGE, begins="carried on", after="hem", ends="cast off")


def panel(*sections: Section) -> Piece:
    return Piece("panel", "panel", "bottom up", sections or (hem(), body()))


def draft(piece: Piece | None = None, *joins: Join, checks: tuple[MeasureCheck, ...] = ()) -> Draft:
    return Draft("rectangle", "bottom up", GAUGE, (piece or panel(),), joins, checks)


def test_a_sound_draft_breaks_no_law() -> None:
    assert broken_laws(draft()) == ()
    assert lawful(draft()).stitches == 20 * 5 + 22 * 3


def spoilt(section: Section, **changes: object) -> Section:
    return replace(section, **changes)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("sections", "law"),
    [
        ((hem(), spoilt(body(), stitches=np.array([20, 22, 21, 22]))), "do not follow from its shaping"),
        ((spoilt(hem(), first=18), body()), "do not follow from its shaping"),
        ((hem(), spoilt(body(), roles=(RoleRun("main", 3),))), "colours do not add up"),
        ((hem(), spoilt(body(), cells=RoleCells(("a",), np.zeros((4, 9), np.uint8)))), "are not those of its rows"),
        ((hem(), spoilt(body(), cells=RoleCells(("a",), np.ones((4, 22), np.uint8)))), "are not those of its rows"),
        ((hem(), spoilt(body(), parts=(Part("back", np.array([9, 9, 9, 9])),))), "parts do not add up"),
        ((hem(), spoilt(body(), key="hem", after="hem")), "two sections have one key"),
        ((hem(), body(), spoilt(body(), key="more")), "40 stitches carry on from hem, which leaves 20"),
        ((spoilt(hem(), closed=2), body()), "20 are carried on, 2 cast off"),
        ((spoilt(hem(), stitches=np.array([], dtype=np.int64), left_edge=np.array([])), body()), "has no rows"),
    ],
)
def test_a_spoilt_section_is_found(sections: tuple[Section, ...], law: str) -> None:
    assert law in "; ".join(broken_laws(draft(panel(*sections))))


def edge(name: str, amount: int, section: str = "body") -> Edge:
    return Edge("panel", section, name, amount)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("join", "law"),
    [
        (Join("sewn", edge("left", 4), edge("right", 4, "hem")), None),
        (Join("sewn", edge("left", 3), edge("right", 4, "hem")), "3 at panel body meet 4 at panel hem, sewn"),
        (Join("sewn", edge("left", 5), edge("right", 5)), "5 of 4 at its left are joined"),
        (Join("picked up", edge("left", 4), edge("begin", 3)), "picked up without lengths"),
        (Join("set in", edge("left", 4), edge("right", 4), (40.0, 40.7)), None),
        (Join("set in", edge("left", 4), edge("right", 4), (40.0, 41.0)), "panel is +2.5% against the edge"),
    ],
)
def test_edges_that_do_not_agree_are_found(join: Join, law: str | None) -> None:
    faults = "; ".join(broken_laws(draft(None, join)))
    assert law in faults if law else not faults


def test_a_measure_that_is_off_needs_a_reason() -> None:
    off = MeasureCheck("width", 10.0, 10.4, 0.5)
    assert broken_laws(draft(checks=(off,))) == ("width is +0.40 cm off without a reason",)
    assert broken_laws(draft(checks=(replace(off, reason=Told("the repeat")),))) == ()
    assert broken_laws(draft(checks=(replace(off, drafted_cm=10.25),))) == ()


def test_a_broken_draft_is_not_given_out() -> None:
    with pytest.raises(BrokenDraft, match="do not follow"):
        lawful(draft(panel(hem(), spoilt(body(), stitches=np.array([20, 22, 21, 22])))))
