import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units.tokens import Cursor, lex


@pytest.mark.parametrize(
    ("text", "pieces"),
    [
        ("14in", ["14", "in"]),
        ("3 1/2 oz.", ["3 1/2", "oz."]),
        ("5.5 st/in", ["5.5", "st", "/", "in"]),
        ('28 sts / 4" (10 cm)', ["28", "sts", "/", "4", '"', "(", "10", "cm", ")"]),
        ("4''", ["4", "''"]),
        ("22 st×30 rows", ["22", "st", "×", "30", "rows"]),
        ("cm½", ["cm", "½"]),
        ("11 in, 25 rows", ["11", "in", ",", "25", "rows"]),
    ],
)
def test_cuts(text: str, pieces: list[str]) -> None:
    assert [token.text for token in lex(text)] == [*pieces, ""]


@given(st.text())
def test_no_sign_is_lost_and_every_piece_knows_its_place(text: str) -> None:
    tokens = lex(text)
    assert all(text[t.start : t.start + len(t.text)] == t.text for t in tokens)
    assert sum(len("".join(t.text.split())) for t in tokens) == len("".join(text.split()))


def test_the_end_stays_the_end() -> None:
    cursor = Cursor(lex("a"))
    assert [cursor.take().kind for _ in range(3)] == ["word", "end", "end"]
    assert cursor.at_end


def test_skip_takes_only_what_is_named_and_never_a_number() -> None:
    cursor = Cursor(lex("PER. 10"))
    assert not cursor.skip("over")
    assert cursor.skip("over", "per")
    assert not cursor.skip("10")
