"""``loopwright colour``."""

import json
from typing import Any

import pytest

from tests.cli.conftest import Run

FADE = ["oat=#e6d8bd", "plum=#5a2f4e", "rose=#c47a86", "peach=#e3aa8c", "ink=#2a2c48", "mauve=#8f5a77"]


def told(run: Run, *arguments: str) -> dict[str, Any]:
    done = run("colour", *arguments, "--json")
    assert (done.code, done.err) == (0, "")
    said: dict[str, Any] = json.loads(done.out)
    return said


def test_a_person_reads_pairs_fade_and_caution(run: Run) -> None:
    done = run("colour", *FADE)
    assert (done.code, done.err) == (0, "")
    assert "oat → peach → rose → mauve → plum → ink" in done.out
    assert "the weakest is peach → rose, 20.4" in done.out
    assert "red-green alone: nearly alike to protan or deutan eyes." in done.out
    assert "judge the yarn in daylight" in done.out
    assert all(len(line) <= 100 for line in done.out.splitlines())


def test_json_has_the_published_fade(run: Run) -> None:
    """Example 1 of the reference table on fades: 84.8773 in all, 20.4015 at most."""
    said = told(run, *FADE)
    assert said["fade"]["order"] == ["oat", "peach", "rose", "mauve", "plum", "ink"]
    assert (said["fade"]["total"], max(said["fade"]["steps"])) == (84.8773, 20.4015)
    assert said["fade"]["weakest"] == ["peach", "rose"]
    assert len(said["pairs"]) == 15
    assert "daylight" in said["caution"]["text"]


def test_the_ends_of_the_fade(run: Run) -> None:
    fade = told(run, *FADE, "--first", "peach")["fade"]
    assert (fade["order"], fade["total"]) == (["peach", "oat", "rose", "mauve", "plum", "ink"], 97.5078)


def test_other_eyes_and_grey(run: Run) -> None:
    (cherry, _), (pair,) = (told(run, "cherry=#b02a37", "pine=#2e6b45")[key] for key in ("colours", "pairs"))
    assert cherry["grey"] == "#5e5e5e"
    assert cherry["seen"] == {"protan": "#514c36", "deutan": "#736833", "tritan": "#c20030"}
    assert (pair["contrast"], pair["remarks"]) == ("poor", ["hue alone", "red-green alone"])


@pytest.mark.parametrize(
    ("held", "digits", "shares"),
    [
        ("cream + navy", "#b1aca2", [0.5, 0.5]),
        ("cream 400 tex + #a4502f 100 tex", "#dac4b1", [0.6667, 0.3333]),
        ("navy + #2F6F73 + cream", "#959b94", [0.3333, 0.3333, 0.3333]),
    ],
)
def test_strands_held_together(run: Run, held: str, digits: str, shares: list[float]) -> None:
    (marl,) = told(run, "cream=#efe6d2", "navy=#22304f", "#a4502f", "#2f6f73", "--held", held)["held"]
    assert (marl["srgb"], marl["shares"]) == (digits, shares)
    assert (
        f"{digits} from afar"
        in run("colour", "cream=#efe6d2", "navy=#22304f", "#a4502f", "#2f6f73", "--held", held).out
    )


def test_one_colour_has_no_pair(run: Run) -> None:
    said = told(run, "#A43C2B")
    assert (said["colours"][0]["name"], said["pairs"], said["fade"]) == ("#a43c2b", [], None)
    assert "Order of a fade" not in run("colour", "#a43c2b").out


def test_poor_contrast_ends_with_one_if_asked(run: Run) -> None:
    assert run("colour", "#a43c2b", "#a43c2c", "--check").code == 1
    assert run("colour", "#a43c2b", "#a43c2c").code == 0
    assert run("colour", "#efe6d2", "#22304f", "--check").code == 0


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        ([], "put each in quotes"),
        (["a43c2b"], 'did you mean "#a43c2b"?'),
        (["rust=#xyz"], "is no digit"),
        (["=#a43c2b"], "a name without + before"),
        (["a+b=#a43c2b"], "a name without + before"),
        (["a=#a43c2b", "a=#203040"], "each name once"),
        (["a=#a43c2b", "b=#203040", "--first", "c"], "found \"the colour 'c'\"; wanted one of a, b"),
        (["a=#a43c2b", "b=#203040", "--first", "a", "--last", "a"], "two different ones"),
        (["a=#a43c2b", "b=#203040", "--held", "a"], "two strands or more"),
        (["a=#a43c2b", "b=#203040", "--held", "a 100 tex + b"], "of each or of none"),
        (["a=#a43c2b", "b=#203040", "--held", "a 100 bananas + b 100 tex"], "100 bananas"),
        ([f"#{n:06x}" for n in range(41)], "at most 40"),
    ],
)
def test_bad_input_ends_with_two(run: Run, arguments: list[str], says: str) -> None:
    done = run("colour", *arguments)
    assert (done.code, done.out) == (2, "")
    assert says in done.err
