from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units import UnreadableQuantity, read_grist_tex

GRISTS = {
    "437 yd / 100 g": 100_000 / (437 * 0.9144),
    "100 m per 50g": 500.0,
    "115 m/50 g": 50_000 / 115,
    "50 g = 115 m": 50_000 / 115,
    "420 m (459 yd) / 100 g": 100_000 / 420,
    "126 yd (115 m) / 1.75 oz (50 g)": 50_000 / 115,
    "1,200 m / 1 kg": 1000 / 1.2,
    "1000 yd/lb": 496.054647857,
    "1000 yd per lb": 496.054647857,
    "1000 ypp": 496.054647857,
    "250 tex": 250.0,
    "tex 250": 250.0,
    "25 tex x 2": 50.0,
    "25 tex × 2": 50.0,
    "2500 dtex": 250.0,
    "2250 denier": 250.0,
    "Nm 4": 250.0,
    "Nm 30/2": 1000 / 15,
    "30/2 Nm": 1000 / 15,
    "nm 2 / 30": 1000 / 15,
    "NeK 2/24": 885.811871 / 12,
    "NeC 8/4": 590.541247 / 2,
    "Ne 20": 590.541247 / 20,
    "2 run": 310.034155 / 2,
}


@pytest.mark.parametrize(("text", "tex"), GRISTS.items())
def test_reads(text: str, tex: float) -> None:
    assert read_grist_tex(text) == pytest.approx(tex, rel=1e-8)


BAD_GRISTS = {
    "": "say which units",
    "250": "say which units",
    "Nm": "wanted length and mass",
    "Nm 0": "a count is above zero",
    "Nm 30/2/2": 'found "Nm 30/2/2"',
    "Nm 30/0": 'found "Nm 30/0"',
    "250/2 tex": "written 25 tex x 2",
    "25 tex x 0": "a count is above zero",
    "100 m": "write length / mass",
    "100 m / 50 m": "one length and one mass",
    "100 m / 50 g / 2": "one length and one mass",
    "0 m / 50 g": "both are above zero",
    "100 m / -50 g": "both are above zero",
    "100 meterz / 50 g": 'did you mean "m"',
    "100 h / 50 g": '"h" is a unit of time',
    "420 m (400 yd) / 100 g": "the brackets say something else",
    "420 m (100 g) / 100 g": "the brackets say something else",
    "420 m (459 yd / 100 g": "a bracket is not closed",
    "1/0 m / 50 g": "divided by 0",
}


@pytest.mark.parametrize(("text", "message"), BAD_GRISTS.items())
def test_refuses_and_says_why(text: str, message: str) -> None:
    with pytest.raises(UnreadableQuantity, match=message):
        read_grist_tex(text)


@given(st.text(alphabet="0123456789 /xmgydNKtex.,½", max_size=30))
def test_any_text_is_read_or_refused_but_never_breaks(text: str) -> None:
    with suppress(UnreadableQuantity):
        assert read_grist_tex(text) > 0
