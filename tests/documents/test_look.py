"""What a garment is drawn in: its colours where she says they go, from afar and from near."""

from __future__ import annotations

from io import BytesIO

import numpy as np
import pytest
from PIL import Image

from loopwright.colour import delta_e_ciede2000, lab_from_srgb, read_hex
from loopwright.documents.look import LookOfGarment, look_of
from loopwright.files import demo_text, read_season_text
from loopwright.season import Season, plan, with_entry

DEMO = read_season_text(demo_text(), "winter.toml", "toml")
CLEARED = {"colours.everywhere": None}


def look(season: Season = DEMO) -> LookOfGarment:
    return look_of(season, plan(season).garment("pullover"))


def shares(png: bytes, colours: dict[str, tuple[str, ...]]) -> dict[str, float]:
    """Give which share of a picture's pixels is nearest to each role's colour."""
    with Image.open(BytesIO(png)) as picture:
        pixels = np.asarray(picture.convert("RGB").reduce(4)).reshape(-1, 3) / 255
    distances = [
        delta_e_ciede2000(lab_from_srgb(pixels), lab_from_srgb(read_hex(strands[0]))) for strands in colours.values()
    ]
    nearest = np.argmin(distances, axis=0)
    return {role: float((nearest == at).mean()) for at, role in enumerate(colours)}


def test_stripes_are_seen_in_their_shares() -> None:
    """Of 12 rows 5 are main, 4 and 3 the others; the picture shows two whole turns of them."""
    made = look()
    seen = shares(made.fabric(made.colours), dict(made.colours))
    assert seen["main"] == pytest.approx(5 / 12, abs=0.06)
    assert seen["contrast-1"] == pytest.approx(4 / 12, abs=0.06)
    assert seen["contrast-2"] == pytest.approx(3 / 12, abs=0.06)


def test_a_chart_is_seen_from_near_and_on_the_front() -> None:
    season = with_entry(DEMO, "garments", "pullover", CLEARED | {"colours.body": "chart tide-line"})
    made = look(season)
    assert made.edges is None
    near = shares(made.fabric(made.colours), dict(made.colours))
    chart = season.chart_by_key["tide-line"].chart
    for at, role in enumerate(chart.roles):
        assert near[role.name] == pytest.approx(float((chart.cells == at).mean()), abs=0.08)
    front = made.picture("front", longest_px=300)
    assert {"main", "contrast-1", "contrast-2"} <= set(front.roles)


def test_where_nothing_is_said_the_roles_stand_above_one_another() -> None:
    made = look(with_entry(DEMO, "garments", "pullover", CLEARED))
    assert made.edges == "contrast-1"
    seen = shares(made.fabric(made.colours), dict(made.colours))
    assert all(share > 0.2 for share in seen.values())
