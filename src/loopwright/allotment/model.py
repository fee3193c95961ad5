"""What is shared out and what comes of it: sections that want yarn, dye lots that have it, and the answer."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

from loopwright.units import BadInput

__all__ = [
    "ALTERNATE",
    "BESIDE",
    "LEVEL_GRAIN",
    "VISIBLE",
    "Allotment",
    "AllotmentProblem",
    "At",
    "Change",
    "Lack",
    "Levels",
    "LotSupply",
    "LotUse",
    "Meeting",
    "Place",
    "Portion",
    "Proof",
    "SectionDemand",
]

Place = Literal["plain field", "pair", "seam", "stripe", "rib", "hem", "cuff", "yoke edge", "band"]
"""What lies where two sections meet, or inside a section. A pair is two pieces made alike, such as sleeves: they do not
touch, but are seen together."""
VISIBLE: Final = frozenset({"plain field"})
BESIDE: Final[Mapping[str, int]] = {"seam": 1, "pair": 2}
"""Where two dye lots lie side by side, with how much a change weighs there; every other place but a plain field is one
at which the eye expects a change. Common practice, no source; the weights are our judgement."""
At = Literal["begin", "end", "side"]
ALTERNATE: Final = "alternate every two rows"


@dataclass(frozen=True, slots=True)
class SectionDemand:
    """Yarn that one section takes, in m.

    :ivar length_m: mean; above 0.
    :ivar own_sd_m: doubt that this section does not share with any other.
    :ivar shared_sd_m: doubt that all sections share, such as that of the loop length: they err together.
    :ivar visibility: how much it shows, over 0 to 1: an uncovered metre counts by it.
    :ivar within: what a change of lot in its middle lies in.
    :ivar part: which part of the garment it is, such as ``hem`` or ``cuff``; a substitute knits all of one name.
    :ivar name: piece and section in words.
    """

    key: str
    garment: str
    role: str
    length_m: float
    own_sd_m: float = 0.0
    shared_sd_m: float = 0.0
    visibility: float = 1.0
    within: Place = "plain field"
    part: str = ""
    name: str = ""

    def __post_init__(self) -> None:
        """Refuse what is no length or no doubt."""
        if not self.length_m > 0 or self.own_sd_m < 0 or self.shared_sd_m < 0:
            raise BadInput(
                place=self.key,
                found=f"{self.length_m:g} m with doubts of {self.own_sd_m:g} and {self.shared_sd_m:g} m",
                wanted="more than 0 m, and doubts of 0 or more",
            )
        if not 0 < self.visibility <= 1:
            raise BadInput(place=self.key, found=f"a visibility of {self.visibility:g}", wanted="over 0, up to 1")


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two sections that meet.

    :ivar one_at, other_at: with which edge: where its knitting begins, where it ends, or along its rows.
    """

    one: str
    other: str
    place: Place
    one_at: At = "side"
    other_at: At = "side"


@dataclass(frozen=True, slots=True)
class LotSupply:
    """Yarn of one dye lot.

    :ivar dye_lot: what the band says; empty where it is not known, and then it is like no other.
    :ivar length_m, sd_m: all of it, in m, and its doubt.
    :ivar put_ups: metres of each put-up; they add up to ``length_m``. Empty for one.
    """

    key: str
    yarn: str
    colour: str
    dye_lot: str
    length_m: float
    sd_m: float = 0.0
    put_ups: tuple[float, ...] = ()

    def __post_init__(self) -> None:
        """Refuse put-ups that are not the lot."""
        if self.length_m < 0 or self.sd_m < 0:
            raise BadInput(place=self.key, found=f"{self.length_m:g} ± {self.sd_m:g} m", wanted="0 or more")
        if self.put_ups and abs(sum(self.put_ups) - self.length_m) > 1e-6 * max(self.length_m, 1.0):
            raise BadInput(
                place=self.key, found=f"put-ups of {sum(self.put_ups):g} m", wanted=f"the lot's {self.length_m:g} m"
            )


@dataclass(frozen=True, slots=True)
class AllotmentProblem:
    """Sections, where they meet, the lots, and which of them may play which role.

    :ivar may_play: keys of lots by (garment, role); a role that is not named has none.
    :ivar sureness: how sure each garment's yarn of one kind must suffice, from 0.5 to under 1.
    :ivar garment_sureness: the same for single garments.
    :ivar alternate: whether two dye lots may meet on a plain field, in alternating rows.
    """

    sections: tuple[SectionDemand, ...]
    meetings: tuple[Meeting, ...]
    lots: tuple[LotSupply, ...]
    may_play: Mapping[tuple[str, str], tuple[str, ...]]
    sureness: float = 0.95
    garment_sureness: Mapping[str, float] = field(default_factory=dict)
    alternate: bool = False

    def __post_init__(self) -> None:
        """Refuse keys that lead nowhere or stand twice, and a sureness that is none."""
        sections = _once("section", (one.key for one in self.sections))
        lots = _once("lot", (one.key for one in self.lots))
        for meeting in self.meetings:
            _known("section", (meeting.one, meeting.other), sections)
            if meeting.one == meeting.other:
                raise BadInput(found=f"'{meeting.one}' that meets itself", wanted="two sections")
        for keys in self.may_play.values():
            _known("lot", keys, lots)
        for sureness in (self.sureness, *self.garment_sureness.values()):
            if not 0.5 <= sureness < 1:
                raise BadInput(found=f"a sureness of {sureness:.4g}", wanted="from 0.5 to under 1")

    def sureness_of(self, garment: str) -> float:
        """Give how sure the yarn of a garment must suffice."""
        return self.garment_sureness.get(garment, self.sureness)


def _once(kind: str, keys: Iterable[str]) -> frozenset[str]:
    seen: set[str] = set()
    for key in keys:
        if key in seen:
            raise BadInput(found=f"the {kind} '{key}' twice", wanted="each key once")
        seen.add(key)
    return frozenset(seen)


def _known(kind: str, keys: Iterable[str], known: frozenset[str]) -> None:
    for key in keys:
        if key not in known:
            raise BadInput(found=f"the {kind} '{key}', which is not there", wanted=f"a {kind} of this problem")


@dataclass(frozen=True, slots=True)
class Portion:
    """What one dye lot knits of one section; a section's portions stand in the order of knitting.

    :ivar lots: keys of the lots of that dye lot.
    :ivar share: of the section's stitches.
    :ivar length_m: mean.
    """

    section: str
    lots: tuple[str, ...]
    share: float
    length_m: float


@dataclass(frozen=True, slots=True)
class Change:
    """Two dye lots that meet: between two sections, or inside one, which then stands twice.

    :ivar lots: of the one and of the other; empty where the other section is left uncovered.
    """

    one: str
    other: str
    place: Place
    lots: tuple[tuple[str, ...], tuple[str, ...]]

    @property
    def note(self) -> str:
        """Give what hides it; empty where nothing is needed."""
        return ALTERNATE if self.place in VISIBLE and all(self.lots) else ""


@dataclass(frozen=True, slots=True)
class LotUse:
    """One dye lot that is opened.

    :ivar used_m: mean of what is knitted from it.
    :ivar put_ups: metres of each put-up that is opened.
    :ivar p_enough: chance that it suffices for all that it is given.
    """

    lots: tuple[str, ...]
    used_m: float
    put_ups: tuple[float, ...]
    p_enough: float

    @property
    def left_m(self) -> float:
        """Give what is left over in the opened put-ups, in m."""
        return sum(self.put_ups) - self.used_m


@dataclass(frozen=True, slots=True, order=True)
class Levels:
    """How good an allotment is, the weightiest first; less is better in each.

    :ivar uncovered_m: metres of sections left uncovered, each by its visibility.
    :ivar plain: meetings on a plain field of two dye lots, or of a covered and an uncovered section.
    :ivar beside: the same along seams, and between pieces made as a pair, which count double.
    :ivar expected: the same where the eye expects a change.
    :ivar lots: dye lots opened.
    :ivar left_m: metres left over in opened put-ups.
    """

    uncovered_m: float = 0.0
    plain: float = 0.0
    beside: float = 0.0
    expected: float = 0.0
    lots: float = 0.0
    left_m: float = 0.0

    def as_tuple(self) -> tuple[float, float, float, float, float, float]:
        """Give the levels in their order."""
        return self.uncovered_m, self.plain, self.beside, self.expected, self.lots, self.left_m


LEVEL_GRAIN: Final = (1e-5, 0.5, 0.5, 0.5, 0.5, 1e-4)
"""Below these, two values of a level are one: whole counts by a half, metres by what the solver's arithmetic leaves."""


@dataclass(frozen=True, slots=True)
class Proof:
    """How sure it is that nothing better exists.

    :ivar bound: below which no allotment can get, level by level; up to the first that is not proven it is the value.
    :ivar time_limit_s: that each programme was given.
    :ivar next_best: levels of the best other allotment that covers as much; None where there is no other, or where it
        was not asked for.
    :ivar programmes: how many integer programmes were solved.
    """

    status: Literal["proven", "time limit"]
    bound: Levels
    gap: float
    time_limit_s: float
    next_best: Levels | None
    programmes: int


@dataclass(frozen=True, slots=True)
class Lack:
    """Why sections of one role are uncovered.

    :ivar kind: nothing may play the role; its lots hold too little, all together; or they hold enough, but not so that
        none of them meets another where it must not.
    :ivar have_m: mean of all lots that may play it, what other garments take from them taken off.
    :ivar want_m: metres that would be wanted of yarn as doubtful as that, to be as sure as she wants.
    :ivar p_enough: chance that all of it together suffices.
    """

    garment: str
    role: str
    sections: tuple[str, ...]
    kind: Literal["no lot", "too little", "dye lots"]
    have_m: float
    want_m: float
    p_enough: float


@dataclass(frozen=True, slots=True)
class Allotment:
    """Which dye lot knits which section.

    :ivar uncovered: keys of sections that no yarn is sure enough for.
    :ivar lacks: why they are uncovered, one for each role of a garment.
    """

    portions: tuple[Portion, ...]
    uncovered: tuple[str, ...]
    changes: tuple[Change, ...]
    uses: tuple[LotUse, ...]
    levels: Levels
    proof: Proof
    lacks: tuple[Lack, ...] = ()

    def of(self, section: str) -> tuple[Portion, ...]:
        """Give the portions of one section, in the order of knitting; none where it is uncovered."""
        return tuple(one for one in self.portions if one.section == section)
