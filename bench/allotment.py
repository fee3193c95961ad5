"""Which lots knit which sections: of one garment, and of seasons of several, each colour in three dye lots."""

from collections.abc import Callable
from dataclasses import dataclass

from loopwright.allotment import AllotmentProblem, LotSupply, Meeting, SectionDemand, allot, sections_of
from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction

__all__ = ["allotments", "problem_of"]

MEASURES = {
    "bust_girth": 100,
    "length": 60,
    "armhole_depth": 21,
    "shoulder_width": 39,
    "upper_arm_girth": 34,
    "wrist_girth": 21,
    "sleeve_length": 45,
}


@dataclass(frozen=True)
class Need:
    piece: str
    section: str
    name: str
    length_m: float
    own_sd_m: float
    shared_sd_m: float


def jumper() -> Draft:
    brief = Brief(
        Construction.SET_IN,
        GarmentMeasures.model_validate(MEASURES),
        Gauge(stitches_per_10cm=20, rows_per_10cm=28),
        DraftOptions(),
        head_girth_cm=57,
    )
    return draft(brief)


def needs_of(made: Draft, stitch_m: float) -> list[Need]:
    lengths = [(piece, one, stitch_m * one.worked * piece.made) for piece, one in made.sections()]
    return [Need(p.key, s.key, s.name, metres, 0.02 * metres, 0.06 * metres) for p, s, metres in lengths]


def problem_of(garments: int, *, hard: bool = False) -> AllotmentProblem:
    """So many jumpers of 800 to 1,100 m, each fourth in the colour of the one before it.

    Usually a colour is one dye lot, and each third is two, of which neither is enough. In the hard case each colour is
    three dye lots, and each third of them has too little.
    """
    made = jumper()
    sections: list[SectionDemand] = []
    meetings: list[Meeting] = []
    lots: dict[str, list[LotSupply]] = {}
    may_play = {}
    for number in range(garments):
        own, met = sections_of(f"g{number}", "main", needs_of(made, 0.016 + 0.0005 * (7 * number % 11)), made)
        sections += own
        meetings += met
        colour = f"C{number - (number % 4 == 3)}"
        if colour not in lots:
            lots[colour] = lots_of(colour, balls(len(lots), hard=hard))
        may_play[f"g{number}", "main"] = tuple(lot.key for lot in lots[colour])
    every = tuple(lot for own_lots in lots.values() for lot in own_lots)
    return AllotmentProblem(tuple(sections), tuple(meetings), every, may_play)


def balls(number: int, *, hard: bool) -> tuple[int, ...]:
    third = number % 3 == 1
    if hard:
        return (8, 4, 3) if third else (9, 7, 5)
    return (8, 5) if third else (22,)


def lots_of(colour: str, put_ups: tuple[int, ...]) -> list[LotSupply]:
    return [
        LotSupply(f"{colour}-{lot}", "dk", colour, str(lot), 120.0 * n, 3.6 * n, (120.0,) * n)
        for lot, n in enumerate(put_ups)
    ]


def allotments(
    seconds: Callable[[Callable[[], object]], float], line: Callable[[str, float, str, float], None]
) -> None:
    """Measure with these two, the clock and the printer of ``bench``."""
    print("Allotment")
    unit = 0.0
    for number, hard in ((1, False), (5, False), (20, False), (1, True), (5, True)):
        problem = problem_of(number, hard=hard)
        took = seconds(lambda problem=problem: allot(problem, with_next_best=False))  # type: ignore[misc]
        unit = unit or took
        found = allot(problem, with_next_best=False)
        how = f"dye lots: {len(problem.lots)}, {found.proof.status}"
        line(f"{number} garment{'' if number == 1 else 's'}, {how}", took, "that of one", took / unit)
