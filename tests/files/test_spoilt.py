"""Any value of a season replaced by something else: there is an answer to all of it, and never jargon."""

import json
from typing import Any

import pytest

from loopwright.files import SeasonFileFaults, read_season_text, write_season_text
from tests.files.texts import SEASON

JARGON = ("Input should", "type=", "input_value", "validation error", "pydantic", "Value error", "Extra inputs")
SPOILERS: tuple[object, ...] = (
    True,
    -1,
    0,
    1e300,
    "",
    "x",
    [],
    ["x"],
    [[]],
    {},
    {"x": {}},
    {"x": {"x": 1}},
    None,
    "2027-02-30",
)


@pytest.mark.parametrize("spoiler", SPOILERS, ids=repr)
def test_no_wrong_value_anywhere_is_met_with_jargon_or_a_crash(spoiler: object) -> None:
    season: Any = json.loads(write_season_text(read_season_text(SEASON, "winter.toml", "toml"), "json"))
    for path in list(paths_in(season)):
        text = json.dumps(with_value(season, path, spoiler))
        try:
            read_season_text(text, "winter.json", "json")
        except SeasonFileFaults as faults:
            said = str(faults)
            assert not [word for word in JARGON if word in said], said
            assert all(line.startswith("winter.json:1: ") for line in said.splitlines()), said


def paths_in(value: object, above: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    if isinstance(value, dict):
        below = [(*above, key) for key in value]
    elif isinstance(value, list):
        below = [(*above, number) for number in range(len(value))]
    else:
        return []
    inside = value if isinstance(value, dict) else dict(enumerate(value))
    return below + [deeper for path in below for deeper in paths_in(inside[path[-1]], path)]


def with_value(tree: Any, path: tuple[str | int, ...], value: object) -> Any:
    copy = json.loads(json.dumps(tree))
    here = copy
    for part in path[:-1]:
        here = here[part]
    here[path[-1]] = value
    return copy
