"""Small problems of sections, lots and where they meet; everything in them is invented."""

from typing import Literal, get_args

from hypothesis import strategies as st

from loopwright.allotment import AllotmentProblem, LotSupply, Meeting, Place, SectionDemand

__all__ = ["jumper", "problems"]

PLACES = get_args(Place)


def jumper(*lots: LotSupply, alternate: bool = False, sureness: float = 0.95) -> AllotmentProblem:
    """A jumper with a plain body, a hem and two sleeves: 680 m, a ninth of it in common doubt."""
    sections = (
        SectionDemand("body", "jumper", "main", 400, 12, 20, part="body"),
        SectionDemand("hem", "jumper", "main", 40, 2, 2, visibility=0.4, within="rib", part="hem"),
        SectionDemand("sleeve 1", "jumper", "main", 120, 4, 6, visibility=0.7, part="sleeve"),
        SectionDemand("sleeve 2", "jumper", "main", 120, 4, 6, visibility=0.7, part="sleeve"),
    )
    meetings = (
        Meeting("hem", "body", "hem", "end", "begin"),
        Meeting("body", "sleeve 1", "seam"),
        Meeting("body", "sleeve 2", "seam"),
        Meeting("sleeve 1", "sleeve 2", "pair"),
    )
    may_play = {("jumper", "main"): tuple(lot.key for lot in lots)}
    return AllotmentProblem(sections, meetings, lots, may_play, sureness=sureness, alternate=alternate)


@st.composite
def problems(draw: st.DrawFn, most_sections: int = 3, most_lots: int = 2) -> AllotmentProblem:
    """Up to so many sections of one or two garments; every lot suits the first garment, so that all hang together."""
    lots = tuple(draw(lot(key)) for key in "abc"[: draw(st.integers(1, most_lots))])
    keys = tuple(one.key for one in lots)
    sections = tuple(draw(section(number)) for number in range(draw(st.integers(1, most_sections))))
    pairs = [(a.key, b.key) for number, a in enumerate(sections) for b in sections[number + 1 :]]
    at: st.SearchStrategy[Literal["begin", "end", "side"]] = st.sampled_from(("begin", "end", "side"))
    meetings = tuple(
        Meeting(one, other, draw(st.sampled_from(PLACES)), draw(at), draw(at))
        for one, other in pairs
        if draw(st.booleans())
    )
    return AllotmentProblem(
        sections,
        meetings,
        lots,
        {("one", "main"): keys, ("other", "main"): keys[: draw(st.integers(1, len(keys)))]},
        sureness=draw(st.sampled_from((0.5, 0.8, 0.95, 0.99))),
        alternate=draw(st.booleans()),
    )


@st.composite
def lot(draw: st.DrawFn, key: str) -> LotSupply:
    put_ups = tuple(float(draw(st.integers(20, 90))) for _ in range(draw(st.integers(1, 3))))
    sd_m = draw(st.sampled_from((0.0, 0.03, 0.1))) * sum(put_ups)
    return LotSupply(key, "dk", "Oat", f"dye {key}", sum(put_ups), sd_m, put_ups)


@st.composite
def section(draw: st.DrawFn, number: int) -> SectionDemand:
    length_m = draw(st.integers(3, 120))
    return SectionDemand(
        f"s{number}",
        draw(st.sampled_from(("one", "one", "other"))),
        "main",
        length_m,
        draw(st.sampled_from((0.0, 0.05))) * length_m,
        draw(st.sampled_from((0.0, 0.08))) * length_m,
        visibility=draw(st.sampled_from((0.4, 0.7, 1.0))),
        within=draw(st.sampled_from(PLACES)),
        part=draw(st.sampled_from(("", "", "cuff"))),
    )
