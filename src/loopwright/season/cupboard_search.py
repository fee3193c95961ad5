"""Finding yarn in the cupboard by words: what is searched, and how letters are compared."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping

from loopwright.season.season import Season
from loopwright.yarn import FibreShare, Lot, Yarn

__all__ = ["find_lots", "folded", "lot_text", "search_words", "yarn_text"]


def folded(text: str) -> str:
    """Give a text as it is compared: composed letters, no capitals, single spaces; ``Straße`` meets ``STRASSE``.

    Source: Unicode Standard, 3.13 (case folding) and UAX 15 (NFKC); folding may undo composition, hence twice.
    """
    once = unicodedata.normalize("NFKC", text).casefold()
    return " ".join(unicodedata.normalize("NFKC", once).replace("\0", " ").split())


def lot_text(lot: Lot) -> str:
    """Give what a lot itself is found by: colour, dye lot, where it is kept, note."""
    return folded("\n".join((lot.colour, lot.dye_lot, lot.kept_in, lot.note)))


def yarn_text(yarn: Yarn) -> str:
    """Give what every lot of a yarn is found by: the yarn's name, its fibres, its note."""
    return folded("\n".join((yarn.name, fibre_words(yarn.fibres), yarn.note)))


def fibre_words(fibres: tuple[FibreShare, ...]) -> str:
    """Give the fibres by name, with line ends between."""
    return "\n".join(share.fibre for share in fibres)


def search_words(text: str) -> tuple[str, ...]:
    """Give the words of a search, each once, folded."""
    return tuple(dict.fromkeys(folded(text).split()))


def find_lots(season: Season, text: str) -> tuple[Lot, ...]:
    """Give the lots in which every word of a search stands, be it in the lot or in its yarn; all for no word.

    The plain loop over everything: the database searches faster, and must find the same.
    """
    words = search_words(text)
    yarns: Mapping[str, str] = {yarn.key: yarn_text(yarn) for yarn in season.yarns}
    return tuple(
        lot for lot in season.cupboard if all(word in lot_text(lot) or word in yarns[lot.yarn] for word in words)
    )
