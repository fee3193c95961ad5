"""Words that find yarn, whatever their capitals and accents."""

import pytest

from loopwright.season.cupboard_search import find_lots, folded, search_words
from tests.season.small import season

LOTS = season(
    {
        "yarns.fen": {"name": "Étang Fen", "fibres": {"alpaca": 100}, "length": "100 m", "mass": "50 g"},
        "cupboard.ember": {
            "yarn": "fen",
            "colour": "Straßenstaub",
            "dye_lot": "B7",
            "weighed": "9 g",
            "kept_in": "Hat box",
            "note": "50 % left_over",
        },
    }
)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("", ["oat", "ember"]),
        ("   ", ["oat", "ember"]),
        ("OAT", ["oat"]),
        ("ÉTANG", ["ember"]),
        ("e\u0301tang", ["ember"]),  # an e and an accent of its own
        ("strassen", ["ember"]),
        ("b7", ["ember"]),
        ("alpaca", ["ember"]),
        ("wool", ["oat"]),
        ("hat alpaca", ["ember"]),
        ("kiln oat", ["oat"]),
        ("kiln ember", []),
        ("50 %", ["ember"]),
        ("left_over", ["ember"]),
        ("left%over", []),
    ],
)
def test_every_word_has_to_stand_somewhere(text: str, found: list[str]) -> None:
    assert [lot.key for lot in find_lots(LOTS, text)] == found


def test_folding_twice_changes_nothing() -> None:
    for text in ("\u0391\u0399\u0345", "ǰ", "İstanbul", "ﬃ", "Å", "\u1fb3\u0301"):
        assert folded(folded(text)) == folded(text)


def test_a_word_said_twice_is_one() -> None:
    assert search_words("Oat oat  FOG") == ("oat", "fog")
