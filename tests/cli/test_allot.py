"""``loopwright allot``."""

import ctypes
import json
import os
from pathlib import Path

import pytest

from loopwright.cli.allotting import without_solver_output
from tests.cli.conftest import Run


def words(text: str) -> str:
    return " ".join(text.split())


def test_the_whole_season_is_told_and_what_is_short_ends_with_one(run: Run, winter: Path) -> None:
    done = run("allot", winter)
    assert (done.code, done.err) == (1, "")
    said = words(done.out)
    assert "Not all of it can be knitted: no yarn is sure enough for both sleeves." in said
    assert "Knit both sleeves in another colour, which frees" in said
    assert "Proven: no allotment is better" in said


def test_one_garment_that_has_enough(run: Run, winter: Path) -> None:
    done = run("allot", winter, "slipover")
    assert done.code == 0
    assert "Each colour comes from one dye lot" in done.out
    assert "jetty-kelp with kelp-1" in done.out


def test_json_says_who_knits_what(run: Run, winter: Path) -> None:
    done = run("allot", winter, "--json")
    told = json.loads(done.out)
    assert told["proof"]["status"] == "proven"
    assert {one["garment"] for one in told["knits"]} == {"shawl", "hat", "pullover", "cardigan", "slipover"}
    (cardigan,) = (one for one in told["short"] if one["garment"] == "cardigan")
    assert cardigan["kind"] == "too little"
    assert cardigan["have_m"] == 680
    used = sum(one["length_m"] for one in told["knits"] if one["lots"] == ["headland-tarn"])
    (tarn,) = (one for one in told["lots"] if one["lots"] == ["headland-tarn"])
    assert abs(tarn["used_m"] - used) < 0.2


def test_a_garment_that_is_not_there(run: Run, winter: Path) -> None:
    done = run("allot", winter, "cardgan")
    assert done.code == 2
    assert "cardgan" in done.err


@pytest.mark.skipif(os.name != "posix", reason="writes through the C library of a POSIX system")
def test_what_the_solver_writes_past_python_does_not_reach_the_reader(capfd: pytest.CaptureFixture[str]) -> None:
    library = ctypes.CDLL(None)
    with without_solver_output():
        library.puts(b"a line from below")
        library.fflush(None)
        library.puts(b"a line kept in the buffer")
    print("told", flush=True)  # noqa: T201
    library.fflush(None)
    assert capfd.readouterr().out == "told\n"
