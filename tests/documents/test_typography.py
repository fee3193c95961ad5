"""What belongs together stays on one line, and nothing else is changed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.documents.typography import tied

TIE = "\N{NO-BREAK SPACE}"
PARTS = st.sampled_from(
    ["14", "½", "3/16", "cm", "in", "%", "±", "×", "sts", "May", "NZD", "−2", ",", "a", "(", "\n", "1 March 2027"]
)


@pytest.mark.parametrize(
    ("text", "whole"),
    [
        ("890 ± 42 m", f"890{TIE}±{TIE}42{TIE}m"),
        ("bust 40½ in, so", f"bust 40½{TIE}in, so"),
        ("14 3/16 in", f"14{TIE}3/16{TIE}in"),
        ("by 9 April", f"by 9{TIE}April"),
        ("by April 9", f"by April{TIE}9"),
        ("NZD 61.25 landed", f"NZD{TIE}61.25 landed"),
        ("stand 2 L* apart", f"stand 2{TIE}L* apart"),
        ("off by 10 ΔE00 and", f"off by 10{TIE}ΔE00 and"),
        ("at 30 °C;", f"at 30{TIE}°C;"),
        ("99 % sure", f"99{TIE}% sure"),
        ("17.5 sts × 24 rows to 10 cm", f"17.5{TIE}sts × 24{TIE}rows to 10{TIE}cm"),
    ],
)
def test_a_figure_is_tied(text: str, whole: str) -> None:
    assert tied(text) == whole


@pytest.mark.parametrize("text", ["eight in ten", "3 more", "For 4 of 5", "size 4", "in May they", ""])
def test_words_are_left_alone(text: str) -> None:
    assert tied(text) == text


@given(st.lists(PARTS).map(" ".join) | st.text())
def test_without_its_ties_the_text_is_as_it_was(text: str) -> None:
    assert tied(text).replace(TIE, " ") == text.replace(TIE, " ")


@given(st.lists(PARTS).map(" ".join))
def test_tying_twice_is_tying_once(text: str) -> None:
    assert tied(tied(text)) == tied(text)
