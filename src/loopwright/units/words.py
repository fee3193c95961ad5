"""Terms of the trade in their British and American forms.

The British form is the key. Take care with `moss stitch`: the American moss stitch is the British double
moss stitch, and the British moss stitch is the American seed stitch. Likewise `vest` is an undergarment in
one and a waistcoat in the other.
"""

from dataclasses import dataclass

from loopwright.units.reader import Reader

__all__ = ["TERMS", "Term", "term"]

_LISTS = "trade abbreviation lists (several agree)"
_RECALLED = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Term:
    """One notion and its two names.

    Args:
        british: the name in British patterns; unique, and the key for `term`.
        american: the name in American patterns; the same where both agree.
        source: where the pair comes from.
    """

    british: str
    american: str
    source: str


TERMS: tuple[Term, ...] = (
    Term("tension", "gauge", _LISTS),
    Term("tension square", "gauge swatch", _RECALLED),
    Term("cast on", "cast on", _LISTS),
    Term("cast off", "bind off", _LISTS),
    Term("cast-off edge", "bind-off edge", _RECALLED),
    Term("stocking stitch", "stockinette stitch", _LISTS),
    Term("reverse stocking stitch", "reverse stockinette stitch", _LISTS),
    Term("garter stitch", "garter stitch", _LISTS),
    Term("moss stitch", "seed stitch", "stitch lists; names vary"),
    Term("double moss stitch", "moss stitch", _RECALLED),
    Term("work straight", "work even", _RECALLED),
    Term("yarn round needle", "yarn over", _LISTS),
    Term("miss", "skip", _RECALLED),
    Term("make up", "finish", _RECALLED),
    Term("making up", "finishing", _RECALLED),
    Term("jumper", "pullover", _RECALLED),
    Term("waistcoat", "vest", _RECALLED),
    Term("slipover", "sweater vest", _RECALLED),
    Term("polo neck", "turtleneck", _RECALLED),
    Term("4 ply", "fingering", "yarn weight tables (most; some put 4 ply at sport)"),
    Term("double knitting", "light worsted", "yarn weight tables"),
    Term("aran", "worsted", "yarn weight tables"),
    Term("chunky", "bulky", "yarn weight tables"),
    Term("super chunky", "super bulky", "yarn weight tables"),
    Term("colour", "color", "spelling"),
    Term("colourwork", "colorwork", "spelling"),
    Term("contrasting colour", "contrasting color", _LISTS),
    Term("main colour", "main color", _LISTS),
    Term("centre", "center", "spelling"),
    Term("fibre", "fiber", "spelling"),
    Term("grey", "gray", "spelling"),
    Term("metre", "meter", "spelling"),
    Term("centimetre", "centimeter", "spelling"),
)

_BY_BRITISH = {pair.british: pair for pair in TERMS}
if len(_BY_BRITISH) != len(TERMS):
    raise AssertionError("a British term stands twice in the table")


def term(name: str, reader: Reader) -> str:
    """The trade term `name` (its British form, in lower case) as this reader knows it.

    Raises:
        KeyError: the term is not in the table, which is a fault of the caller.

    >>> term("cast off", Reader(words="american"))
    'bind off'
    """
    pair = _BY_BRITISH[name]
    return pair.american if reader.words == "american" else pair.british
