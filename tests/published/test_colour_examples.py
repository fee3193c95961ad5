"""Pairs of yarns, marls, other eyes and fades of `colour_examples.json`, computed by another hand (source inside)."""

import json
from pathlib import Path
from typing import Any

import pytest

from loopwright.colour import (
    as_seen,
    delta_e_cie76,
    difference_matrix,
    fade_order,
    judge_pair,
    lab_from_srgb,
    linear_from_srgb,
    mix_strands,
    path_length,
    read_hex,
    read_hexes,
    separation,
    shortest_path,
    vision_matrix,
    wcag_ratio,
    write_hex,
)

DATA: dict[str, Any] = json.loads((Path(__file__).parent / "colour_examples.json").read_text(encoding="utf-8"))
OURS = {"hue-only": "hue alone", "red-green only": "red-green alone", "near-match": "near match", "tonal": "tonal"}
"""Our words for the flags of the table."""


@pytest.mark.parametrize("row", DATA["pairs"], ids=lambda row: f"{row['a']}-{row['b']}")
def test_a_pair(row: dict[str, Any]) -> None:
    one, other = read_hex(row["a"]), read_hex(row["b"])
    pair = judge_pair(one, other)
    printed = 0.501e-2
    assert pair.delta_l == pytest.approx(row["dL"], abs=printed)
    assert pair.delta_e == pytest.approx(row["dE00"], abs=printed)
    assert float(delta_e_cie76(lab_from_srgb(one), lab_from_srgb(other))) == pytest.approx(row["dE76"], abs=printed)
    assert float(wcag_ratio(one, other)) == pytest.approx(row["wcag"], abs=printed)
    assert (pair.grade.name, set(pair.remarks)) == (row["grade"], {OURS[flag] for flag in row["flags"]})


@pytest.mark.parametrize("row", DATA["pairs"], ids=lambda row: f"{row['a']}-{row['b']}")
def test_a_pair_to_other_eyes(row: dict[str, Any]) -> None:
    seen = judge_pair(read_hex(row["a"]), read_hex(row["b"])).delta_e_seen
    assert dict(seen) == pytest.approx({kind: row[f"dE00_{kind}"] for kind in seen}, abs=0.01)


@pytest.mark.parametrize("row", DATA["cvd"], ids=lambda row: f"{row['hex']}-{row['type']}-{row['severity']}")
def test_a_colour_to_other_eyes(row: dict[str, Any]) -> None:
    srgb = read_hex(row["hex"])
    light = linear_from_srgb(srgb) @ vision_matrix(row["type"], row["severity"]).T
    assert light == pytest.approx(row["linear_unclipped"], abs=0.6e-6)
    assert write_hex(as_seen(srgb, row["type"], row["severity"])) == row["hex_out"]


@pytest.mark.parametrize("row", DATA["mixtures"], ids=lambda row: "+".join(row["strands"]))
def test_a_marl(row: dict[str, Any]) -> None:
    """The weights of the table are shares of surface; grist goes with their square."""
    mixed = mix_strands(read_hexes(row["strands"]), [weight**2 for weight in row["weights"]])
    assert linear_from_srgb(mixed) == pytest.approx(row["linear"], abs=0.6e-6)
    assert write_hex(mixed) == row["hex"]
    assert lab_from_srgb(mixed) == pytest.approx(row["Lab"], abs=0.01)


@pytest.mark.parametrize("name", ["fade_easy", "fade_hard"])
def test_a_fade(name: str) -> None:
    colours, best = DATA[name]["colours"], DATA[name]["results"]["dE00"]["best"]
    fade = fade_order(read_hexes(digits for *_, digits in colours))
    found = "".join(colours[at][0] for at in fade.order)
    assert best[2] in (found, found[::-1])
    assert (fade.total, max(fade.steps)) == pytest.approx(best[:2], abs=0.6e-4)
    assert fade.proven


@pytest.mark.parametrize(
    ("name", "first", "last", "order", "total"),
    [
        ("fade_easy", "D", None, "DACFBE", 97.5078),
        ("fade_hard", "A", None, "ABDCEF", 94.9335),
        ("fade_hard", "D", "A", "DBFECA", 103.9072),
    ],
)
def test_a_fade_with_ends(name: str, first: str, last: str | None, order: str, total: float) -> None:
    letters = "ABCDEF"
    distances = difference_matrix(lab_from_srgb(read_hexes(digits for *_, digits in DATA[name]["colours"])))
    path = shortest_path(distances, letters.index(first), None if last is None else letters.index(last))
    assert "".join(letters[at] for at in path) == order
    assert path_length(distances, path) == pytest.approx(total, abs=0.6e-4)


@pytest.mark.parametrize(
    ("light", "dark", "apart"),
    [
        (["#efe6d2", "#c9982e"], ["#22304f", "#3b3b3f", "#2f6f73"], 22.73),
        (["#efe6d2", "#c58a8f"], ["#22304f", "#3b3b3f", "#2f6f73"], 20.29),
        (["#efe6d2", "#c9982e"], ["#22304f", "#3b3b3f", "#2f6f73", "#6b7a3a"], 17.11),
    ],
)
def test_two_sets(light: list[str], dark: list[str], apart: float) -> None:
    assert separation(read_hexes(light), read_hexes(dark)) == pytest.approx(apart, abs=0.01)
