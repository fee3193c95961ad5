"""What patterns call their rows, in British and American words. Common practice in the trade, no source."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Final, Literal

from loopwright.pattern.size_block.tree import Of
from loopwright.units import find_unit

__all__ = ["BALLS", "LABELS", "NAMES", "PLAUSIBLE_CM", "Label", "label_of", "nearest_label", "row_name", "unit_symbol"]

LabelKind = Literal["sizes", "measure", "yarn", "ball", "gauge", "needle", "heading", "other"]


@dataclass(frozen=True, slots=True)
class Label:
    """What a row is about.

    :ivar name: the measure, or the role of a yarn.
    :ivar of: body or garment, where the label says which.
    :ivar half: the label says that it is measured flat.
    """

    kind: LabelKind
    name: str = ""
    of: Of | None = None
    half: bool = False


_MEASURES: Final[dict[str, tuple[str, ...]]] = {
    "bust_girth": ("bust", "chest", "bust chest", "chest bust", "bust underarm", "chest underarm", "body underarm"),
    "waist_girth": ("waist",),
    "hip_girth": ("hip", "hips"),
    "upper_arm_girth": (
        *("upper arm", "upperarm", "upper arms", "bicep", "biceps", "sleeve upper arm", "upper sleeve", "top arm"),
        *("upper arm sleeve", "sleeve bicep"),
    ),
    "wrist_girth": ("wrist", "cuff", "cuffs", "wrists", "sleeve cuff", "sleeve wrist", "cuff wrist", "wrist cuff"),
    "shoulder_width": (
        *("cross back", "crossback", "back width", "shoulder width", "shoulders", "across back", "across shoulders"),
        *("shoulder shoulder", "cross shoulder", "width across shoulders", "cross back width", "width shoulders"),
        *("width across back", "back shoulder width"),
    ),
    "head_girth": ("head", "hat", "brim", "head brim"),
    "length": (
        *("length", "total length", "full length", "overall length", "garment length", "back length", "body length"),
        *("length back neck", "length shoulder", "length back of neck", "length shoulder hem", "length hem shoulder"),
        *("shoulder hem", "hem shoulder", "length top shoulder", "length center back", "center back length"),
        *("length back", "length neck", "back neck hem", "length back neck hem", "length hem back neck", "hat length"),
        *("length nape", "nape hem", "length down back", "length side neck", "height hat", "hat height"),
    ),
    "armhole_depth": ("armhole depth", "armhole", "armscye depth", "armhole length", "armscye", "depth armhole"),
    "sleeve_length": (
        *("sleeve seam", "sleeve length", "sleeve", "sleeves", "sleeve length underarm", "sleeve underarm"),
        *("underarm seam", "underarm sleeve", "underarm sleeve seam", "underarm cuff", "underarm wrist"),
        *("inner sleeve", "inside sleeve", "inner sleeve length", "inside sleeve length", "sleeve underarm seam"),
        *("underarm sleeve length", "sleeve length underarm cuff", "length sleeve", "sleeve inseam", "sleeves length"),
    ),
    "width": ("width", "wingspan", "shawl width", "width top edge", "scarf width", "total width"),
    "depth": ("depth", "shawl depth", "depth center", "center depth"),
    "side_seam": (
        *("side seam", "side", "side length", "side seam length", "body length underarm", "length underarm"),
        *("body underarm hem", "underarm hem", "hem underarm", "length hem underarm", "body side seam"),
    ),
    "hem_girth": ("hem", "lower edge", "bottom edge", "bottom hem", "lower hem"),
    "neck_girth": ("neck", "neckline", "neck opening"),
    "neck_width": ("neck width", "back neck width", "back neck", "neckline width"),
    "neck_depth": ("neck depth", "front neck depth", "front neck drop", "neckline depth", "neck drop"),
    "yoke_depth": ("yoke depth", "yoke", "raglan depth", "yoke length", "depth yoke"),
    "height": ("height", "body height"),
    "foot_girth": ("foot",),
    "foot_length": ("foot length", "length foot"),
    "hand_girth": ("hand", "palm"),
}
_HALVES: Final = {
    "bust_girth": (
        *("half bust", "half chest", "bust width", "chest width", "width across chest", "width across bust"),
        *("across chest", "across bust", "width chest", "width bust", "width underarm", "underarm underarm", "pit pit"),
    ),
    "hip_girth": ("half hip", "half hips", "hip width", "across hips"),
    "waist_girth": ("half waist", "waist width", "across waist"),
}
_BODY_ONLY: Final = {"height", "foot_girth", "foot_length", "hand_girth"}
_OTHERS: Final[dict[str, LabelKind]] = {
    **dict.fromkeys(("tension", "gauge", "tension square", "tension swatch"), "gauge"),
    **dict.fromkeys(("needle", "needles", "needle sizes", "knitting needles", "circular needle"), "needle"),
    **dict.fromkeys(("ball", "put-up", "put up", "1 ball", "one ball", "each ball", "per ball", "skein"), "ball"),
    **dict.fromkeys(("yarn", "yarns", "yardage", "metreage", "meterage", "amount", "wool", "materials"), "yarn"),
    **dict.fromkeys(("yarn amount", "yarn amounts", "yarn requirements", "yarn required", "you need"), "yarn"),
    **dict.fromkeys(("yarn quantity", "quantity", "yarn yardage"), "yarn"),
    **dict.fromkeys(("balls", "skeins", "hanks", "number balls", "no balls", "number skeins", "yarn balls"), "yarn"),
    **dict.fromkeys(("ease", "positive ease", "negative ease", "recommended ease", "suggested ease"), "other"),
}
_MAIN: Final = (
    *("mc", "main", "main color", "main yarn", "color a", "yarn a", "shade a", "yarn main", "yarn mc", "yarn 1"),
    *("color 1", "shade 1", "yarn main color"),
)
_CONTRAST: Final = (
    *("cc", "contrast", "contrast color", "contrasting color", "contrast yarn", "yarn contrast", "yarn cc"),
    "yarn contrast color",
)
_NUMBERED: Final = re.compile(r"(?:c|cc|contrast|contrast color|contrasting color|yarn contrast) ?(\d{1,2})")
_LETTERED: Final = re.compile(r"(?:yarn |color |shade )?([b-h])|(?:yarn|color|shade) ([2-9])")

LABELS: Final[dict[str, Label]] = {
    **{phrase: Label("measure", name) for name, phrases in _MEASURES.items() for phrase in phrases},
    **{phrase: Label("measure", name, half=True) for name, phrases in _HALVES.items() for phrase in phrases},
    **{phrase: Label(kind) for phrase, kind in _OTHERS.items()},
    **dict.fromkeys(_MAIN, Label("yarn", "main")),
    **dict.fromkeys(_CONTRAST, Label("yarn", "contrast")),
}
"""Every label by its words, without those that only qualify it."""

_SIZES: Final = {"size", "sizes", "age", "ages"}
_FILLERS: Final = {
    *("the", "of", "at", "to", "from", "an", "approx", "approximately", "about", "circumference", "girth"),
    *("around", "round", "measurement", "measurements", "measures", "measure", "measuring", "in", "and", "or", "for"),
    *("each", "is", "are", "given", "size", "when", "worn", "dimensions", "women's", "men's", "total", "all"),
}
_FINISHED: Final = {"finished", "actual", "garment", "knitted", "final", "completed", "blocked"}
_BODY: Final = {"fit", "fits", "fitting", "suit", "suits", "body", "wearer", "wearer's", "your"}
_BODY_WORDS: Final = {"bust", "chest", "waist", "hip", "hips", "measurement", "measurements", "head", "height"}
_SAME_WORD: Final = {
    **{"colour": "color", "colours": "color", "colors": "color", "centre": "center", "tummy": "waist"},
    **{"colorway": "color", "½": "half", "1/2": "half", "yardages": "yardage", "cb": "center back"},
}

BALLS: Final = {"ball", "balls", "skein", "skeins", "hank", "hanks", "cone", "cones", "cake", "cakes"}

NAMES: Final = {
    **{"bust_girth": "bust", "waist_girth": "waist", "hip_girth": "hip", "upper_arm_girth": "upper arm"},
    **{"wrist_girth": "wrist", "shoulder_width": "cross back", "head_girth": "head", "length": "length"},
    **{"armhole_depth": "armhole depth", "sleeve_length": "sleeve seam", "width": "width", "depth": "depth"},
    **{"side_seam": "side seam", "hem_girth": "hem", "neck_girth": "neck", "neck_width": "neck width"},
    **{"neck_depth": "neck depth", "yoke_depth": "yoke depth", "height": "height", "foot_girth": "foot"},
    **{"foot_length": "foot length", "hand_girth": "hand"},
}
"""What each measure is called where it is written."""

PLAUSIBLE_CM: Final[dict[str, tuple[int, int]]] = {
    **{"bust_girth": (25, 250), "waist_girth": (25, 250), "hip_girth": (25, 280), "upper_arm_girth": (8, 100)},
    **{"wrist_girth": (7, 70), "shoulder_width": (12, 80), "head_girth": (25, 75), "length": (8, 400)},
    **{"armhole_depth": (5, 60), "sleeve_length": (3, 90), "width": (5, 400), "depth": (5, 300)},
    **{"side_seam": (3, 150), "hem_girth": (20, 400), "neck_girth": (15, 150), "neck_width": (5, 50)},
    **{"neck_depth": (1, 50), "yoke_depth": (5, 60), "height": (40, 230), "foot_girth": (8, 40)},
    **{"foot_length": (7, 40), "hand_girth": (8, 40)},
}
"""Between what a measure lies, from a newborn's to the largest garment; judged, no source."""


def unit_symbol(word: str) -> str | None:
    """Give the symbol of a unit that can stand behind a figure of a size block, or None."""
    if word in BALLS:
        return "balls"
    unit = find_unit(word)
    return unit.symbol if unit is not None and unit.kind != "time" else None


def _plain(words: Sequence[str]) -> str:
    kept = [_SAME_WORD.get(word, word) for word in words]
    return " ".join(word for word in kept if word not in _FILLERS)


def label_of(words: Sequence[str]) -> Label | None:
    """Give what a label's words name, or None where they name nothing known.

    :param words: in lower case, in their order, without units.
    """
    if not words:
        return None
    of = _of(words)
    named = [word for word in words if word not in (_FINISHED if of == "finished" else _BODY if of == "body" else ())]
    if (
        of != "finished"
        and _SIZES & set(words)
        and not _plain([word for word in named if word not in _SIZES | {"available", "sizing"}])
    ):
        return Label("sizes")
    plain = _plain(named)
    if not plain:
        alone = of == "body" and "fit" in words
        return Label("measure", "bust_girth", "body") if alone else Label("heading", of=of)
    label = LABELS.get(plain) or LABELS.get(_plain(words)) or _role(plain)
    if label is None or label.kind != "measure":
        return label
    return Label("measure", label.name, "body" if label.name in _BODY_ONLY else of, label.half)


def _of(words: Sequence[str]) -> Of | None:
    if _FINISHED & set(words):
        return "finished"
    if {"fit", "fits", "fitting", "suit", "suits"} & set(words):
        return "body"
    is_body = _BODY & set(words) and _BODY_WORDS & set(words) and "length" not in words
    return "body" if is_body else None


def _role(plain: str) -> Label | None:
    numbered = _NUMBERED.fullmatch(plain)
    if numbered:
        return Label("yarn", f"contrast-{int(numbered[1])}")
    lettered = _LETTERED.fullmatch(plain)
    if lettered:
        return Label("yarn", f"contrast-{ord(lettered[1]) - ord('a') if lettered[1] else int(lettered[2]) - 1}")
    return Label("yarn", "main") if plain == "a" else None


def nearest_label(words: Sequence[str]) -> str | None:
    """Give the known label that these words are most like, if they look misspelt."""
    plain = _plain([word for word in words if word not in _FINISHED | _BODY])
    if not 3 < len(plain) < 40:
        return None
    before, _, last = plain.rpartition(" ")
    if last in LABELS and get_close_matches(before, _FINISHED, n=1, cutoff=0.8):
        return f"finished {last}"
    near = get_close_matches(plain, LABELS, n=1, cutoff=0.84)
    swapped = [label for label in LABELS if sorted(label) == sorted(plain)]
    return next(iter([*near, *swapped]), None)


def row_name(of: Of, measure: str, *, half: bool = False) -> str:
    """Give what a row is called: ``To fit bust``, ``Finished half bust``."""
    before = "To fit " if of == "body" else "Finished "
    return f"{before}{'half ' if half else ''}{NAMES[measure]}"
