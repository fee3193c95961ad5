"""Where the tape lies: a plain light figure with the tape in ink, for each measure of a body."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from html import escape
from typing import Final, Literal

from loopwright.body import MEASURES
from loopwright.pictures.svg import INK, element, number
from loopwright.pictures.tape_figure import Point, curve, figure

__all__ = ["TAPES", "Tape", "tape_drawing", "tape_words"]

Window = Literal["trunk", "arm", "head", "whole"]
_WINDOWS: Final[Mapping[Window, tuple[float, float, float, float]]] = {
    "trunk": (-34, -2, 68, 102),
    "arm": (-8, 20, 44, 82),
    "head": (-23, -3, 46, 46),
    "whole": (-42, -4, 78, 173),
}
"""The part of the figure that is shown: left, top, width and height."""


@dataclass(frozen=True, slots=True)
class Tape:
    """One place of the tape.

    :ivar lines: paths on the side that is seen, through these points.
    :ivar hidden: paths behind the body, drawn broken.
    :ivar string: the height of the string at the natural waist, where the tape ends at it.
    :ivar goes_round: whether it meets itself; one that does not has a beginning and an end to mark.
    :ivar words: where it lies, read aloud instead of the drawing.
    """

    side: Literal["front", "back", "side"]
    window: Window
    words: str
    lines: tuple[tuple[Point, ...], ...]
    hidden: tuple[tuple[Point, ...], ...] = ()
    string: float | None = None
    goes_round: bool = False


def _round(
    side: Literal["front", "back", "side"],
    window: Window,
    words: str,
    middle: Point,
    half: float,
    *,
    sag: float = 1.8,
    slope: float = 0.0,
) -> Tape:
    """Lay the tape round a part: an arc in front, a broken one behind; ``slope`` is the fall per unit to the right."""
    x, y = middle

    def arc(way: float) -> tuple[Point, ...]:
        shares = ((-1, 0.0), (-0.7, 0.71), (0, 1), (0.7, 0.71), (1, 0.0))
        return tuple((x + half * u, y + half * u * slope + way * sag * v) for u, v in shares)

    return Tape(side, window, words, (arc(1),), (arc(-1),), goes_round=True)


WAIST_Y: Final = 64.0
TAPES: Final[Mapping[str, Tape]] = {
    "bust_girth": _round("front", "trunk", "level round the fullest bust", (0, 47.4), 15.4),
    "chest_girth": _round("front", "trunk", "round the chest, close under the armpits", (0, 45.4), 15.2),
    "high_bust_girth": _round("front", "trunk", "high under the armpits, above the breast", (0, 42.4), 15),
    "under_bust_girth": _round("front", "trunk", "level, directly under the breast", (0, 52.6), 14.8),
    "waist_natural_girth": _round("front", "trunk", "round the narrowest place, where the body bends", (0, 64), 12.6),
    "waist_navel_girth": _round("front", "trunk", "level through the navel", (0, 70.5), 13.8),
    "hip_girth": _round("side", "trunk", "level round the fullest part of the seat", (-1.7, 86), 11, sag=1.4),
    "neck_girth": _round("front", "head", "round the middle of the neck", (0, 24.2), 5.3, sag=1.1),
    "neck_base_girth": _round("front", "head", "round the base of the neck, where a round neckline lies", (0, 27.4), 7),
    "head_girth": _round("side", "head", "round the widest part of the head, above the ears", (-0.3, 7.4), 9, sag=0.9),
    "shoulder_width_back": Tape(
        "back",
        "trunk",
        "over the back from one bony shoulder tip to the other, through the base of the neck",
        (((-18.6, 31.8), (-9, 30.2), (0, 29.4), (9, 30.2), (18.6, 31.8)),),
    ),
    "shoulder_length": Tape(
        "front",
        "trunk",
        "from the side of the neck to the bony shoulder tip",
        (((6.6, 27.4), (12.6, 29.9), (18.4, 31.8)),),
    ),
    "back_width": Tape(
        "back", "trunk", "straight across the back from one arm crease to the other", (((-15.4, 38.5), (15.4, 38.5)),)
    ),
    "back_neck_to_waist": Tape(
        "back",
        "trunk",
        "from the bone at the back of the neck straight down to the string at the waist",
        (((0, 28), (0, WAIST_Y)),),
        string=WAIST_Y,
    ),
    "scye_depth": Tape(
        "back",
        "trunk",
        "from the bone at the back of the neck down to the level of the armpits",
        (((0, 28), (0, 43.5)),),
        (((-14.6, 43.5), (14.6, 43.5)),),
    ),
    "armscye_girth": Tape(
        "front",
        "arm",
        "up through the armpit and over the shoulder tip, meeting itself",
        (((14.8, 43.6), (13.9, 39), (15, 34.5), (18.4, 31.8)),),
        (((18.4, 31.8), (19.6, 36), (18.2, 41), (14.8, 43.6)),),
        goes_round=True,
    ),
    "upper_arm_girth": _round(
        "front", "arm", "round the fullest place of the upper arm", (19.4, 47.4), 3.9, sag=1, slope=-0.3
    ),
    "forearm_girth": _round("front", "arm", "round the forearm at its widest", (24.2, 68), 3.5, sag=0.9, slope=-0.3),
    "wrist_girth": _round("front", "arm", "round the wrist over the bony knob", (27.6, 80.4), 2.2, sag=0.7, slope=-0.2),
    "hand_girth": _round("front", "arm", "round the palm over the knuckles", (29, 89), 2.4, sag=0.7, slope=-0.1),
    "arm_length_shoulder_to_wrist": Tape(
        "front",
        "arm",
        "from the shoulder tip down the outside of the arm to the wrist knob",
        (((18.6, 31.8), (21.4, 36), (22.9, 44), (24.4, 54), (27, 66), (29.5, 79.6)),),
    ),
    "underarm_to_wrist": Tape(
        "front",
        "arm",
        "from high in the armpit along the inside of the arm to the wrist knob",
        (((14.8, 43.6), (16, 47), (18.3, 56), (21.4, 68), (25.3, 79.6)),),
    ),
    "back_neck_to_wrist": Tape(
        "back",
        "trunk",
        "from the bone at the back of the neck over the shoulder tip and down the arm to the wrist knob",
        (((0, 28.4), (8, 29.8), (18, 31.8), (21.4, 36), (24.4, 54), (27, 66), (29.5, 79.6)),),
    ),
    "front_length_over_bust": Tape(
        "front",
        "trunk",
        "from the side of the neck over the bust point to the string at the waist",
        (((6.6, 27.6), (8, 38), (8.4, 47), (7.6, 56), (6.6, WAIST_Y)),),
        string=WAIST_Y,
    ),
    "back_length_side_neck": Tape(
        "back",
        "trunk",
        "from the side of the neck down the back to the string at the waist",
        (((6.6, 27.6), (6.8, 40), (6.6, 52), (6.2, WAIST_Y)),),
        string=WAIST_Y,
    ),
    "neck_to_bust_point": Tape(
        "front", "trunk", "from the side of the neck to the bust point", (((6.6, 27.6), (7.8, 38), (8.4, 47)),)
    ),
    "armpit_to_waist": Tape(
        "front",
        "trunk",
        "from high in the armpit straight down to the string at the waist",
        (((14.8, 43.8), (15, 48), (13.9, 56), (12.6, WAIST_Y)),),
        string=WAIST_Y,
    ),
    "waist_to_hip": Tape(
        "front",
        "trunk",
        "from the string at the waist down the side to the fullest hip level",
        (((12.6, WAIST_Y), (13.6, 70), (16.6, 80), (17.6, 87)),),
        (((-17.4, 87), (17.4, 87)),),
        string=WAIST_Y,
    ),
    "back_neck_to_hip": Tape(
        "back",
        "trunk",
        "from the bone at the back of the neck down to the fullest hip level",
        (((0, 28), (0, 87)),),
        (((-17.4, 87), (17.4, 87)),),
    ),
    "height": Tape(
        "front",
        "whole",
        "from the floor to a book on the head, beside the body",
        (((-37, 0), (-37, 164.4)),),
        (((-40, 0), (7, 0)), ((-40, 164.4), (12, 164.4))),
    ),
}
"""Where the tape lies for each measure, on the figure of :mod:`loopwright.pictures.tape_figure`."""


def tape_words(measure_key: str) -> str:
    """Say where the tape lies, for those who do not see the drawing.

    :raises KeyError: there is no such measure.
    """
    return f"{MEASURES[measure_key].name}: tape {TAPES[measure_key].words}"


def tape_drawing(measure_key: str) -> str:
    """Draw the figure with the tape of one measure, as SVG text that is read from about 160 px of width on.

    :raises KeyError: there is no such measure.
    """
    tape = TAPES[measure_key]
    parts = [figure(tape.side, with_bust="bust" in measure_key)]
    if tape.string is not None:
        parts.append(_line(((-13, tape.string), (13, tape.string)), 1.1, "1.5 3"))
    parts += [_line(points, 1.4, "3 3") for points in tape.hidden]
    parts += [_line(points, 2.6) + ("" if tape.goes_round else _ends(points)) for points in tape.lines]
    left, top, width, height = _WINDOWS[tape.window]
    says = tape_words(measure_key)
    return element(
        "svg",
        element("title", escape(says)) + "".join(parts),
        xmlns="http://www.w3.org/2000/svg",
        viewBox=" ".join(number(value) for value in (left, top, width, height)),
        width=width * 4,
        height=height * 4,
        role="img",
        aria_label=says,
        class_="tape",
    )


def _line(points: Sequence[Point], width: float, dashes: str = "") -> str:
    broken = {"stroke_dasharray": dashes} if dashes else {}
    return element(
        "path",
        d=curve(points),
        fill="none",
        stroke=INK,
        stroke_width=width,
        stroke_linecap="round",
        vector_effect="non-scaling-stroke",
        **broken,
    )


def _ends(points: Sequence[Point]) -> str:
    return "".join(element("circle", cx=x, cy=y, r=0.9, fill=INK) for x, y in (points[0], points[-1]))
