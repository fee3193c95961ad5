import tomllib
from typing import Any

import pytest
from hypothesis import given, settings

from loopwright.files import write_season_text
from loopwright.files.places import Path
from loopwright.files.toml_places import toml_places
from loopwright.season import Season
from tests.strategies import seasons

CASES: dict[str, tuple[str, dict[Path, int]]] = {
    "fields at the top": ("a = 1\n\n# b = 0\nb = 2", {("a",): 1, ("b",): 4}),
    "a table": ("\n[a.b]\nc = 1\n", {("a",): 2, ("a", "b"): 2, ("a", "b", "c"): 3}),
    "blanks in a heading": ("[ a . b ] # c\nd = 1", {("a", "b"): 1, ("a", "b", "d"): 2}),
    "a list of tables": (
        "[[a]]\nb = 1\n[[a]]\nb = 2\n[a.c]\nd = 3",
        {("a",): 1, ("a", 0, "b"): 2, ("a", 1): 3, ("a", 1, "b"): 4, ("a", 1, "c", "d"): 6},
    ),
    "a list of tables in a list of tables": (
        "[[a]]\n[[a.b]]\nc = 1\n[[a.b]]\n[[a]]\n[[a.b]]\nc = 2",
        {("a", 0, "b", 0, "c"): 3, ("a", 0, "b", 1): 4, ("a", 1, "b", 0, "c"): 7},
    ),
    "a dotted key": ("[x]\na.b = 1\na . c = 2", {("x", "a"): 2, ("x", "a", "b"): 2, ("x", "a", "c"): 3}),
    "quoted keys": ('"a.b" = 1\n\'c # d\' = 2\n"\\u00e9" = 3', {("a.b",): 1, ("c # d",): 2, ("é",): 3}),
    "a table in braces": (
        "\na = { b = 1, c = { d = 2 } }",
        {("a",): 2, ("a", "b"): 2, ("a", "c"): 2, ("a", "c", "d"): 2},
    ),
    "a list over lines": ("a = [ # one\n  1,\n\n  2, # two\n]\nb = 3", {("a", 0): 2, ("a", 1): 4, ("b",): 6}),
    "tables in a list": ("a = [\n  { b = 1 },\n  { b = 2, c = [3] },\n]", {("a", 0, "b"): 2, ("a", 1, "c", 0): 3}),
    "lists in a list": ("a = [[1, 2],\n[3]]", {("a", 0, 1): 1, ("a", 1, 0): 2}),
    "text over lines": ('a = """\nb = 1\n[c]\n"""\nd = 2', {("a",): 1, ("d",): 5}),
    "text that ends in quotes": ('a = """x"""""\nb = 2', {("b",): 2}),
    "literal text over lines": ("a = '''\n\"\"\" \\\n'''\nb = 2", {("b",): 4}),
    "marks within text": ('a = "] } # \\" ="\nb = \'\\\'\nc = ["]", "#"]\nd = 4', {("b",): 2, ("c", 1): 3, ("d",): 4}),
    "dates and numbers": ("a = 2027-03-01 10:00:00\nb = -1.5e3 # c\nd = inf", {("b",): 2, ("d",): 3}),
    "lines that end in CR LF": ("a = 1\r\n[b]\r\nc = 2\r\n", {("a",): 1, ("b", "c"): 3}),
}


@pytest.mark.parametrize(("text", "lines"), CASES.values(), ids=CASES.keys())
def test_the_line_of_each_path(text: str, lines: dict[Path, int]) -> None:
    tomllib.loads(text)
    places = toml_places(text)
    assert {path: places.line_of(path) for path in lines} == lines
    assert not places.repeats


@pytest.mark.parametrize(("text", "lines"), CASES.values(), ids=CASES.keys())
def test_every_path_that_the_parser_gives_has_a_line(text: str, lines: dict[Path, int]) -> None:
    assert set(paths_in(tomllib.loads(text))) == set(toml_places(text).lines)


@settings(max_examples=30)
@given(seasons())
def test_every_path_of_a_season_has_a_line_that_holds_its_name(season: Season) -> None:
    text = write_season_text(season, "toml")
    rows, places = text.split("\n"), toml_places(text)
    named = [path for path in paths_in(tomllib.loads(text)) if isinstance(path[-1], str) and path[-1].isidentifier()]
    assert [path for path in named if str(path[-1]) not in rows[places.lines[path] - 1]] == []


def test_something_missing_is_placed_at_the_table_above() -> None:
    places = toml_places("a = 1\n[b]\n[b.c]\nd = 2")
    assert places.line_of(("b", "c", "e", "f")) == 3
    assert places.line_of(("z",)) == 1


@pytest.mark.parametrize(
    ("text", "repeat"),
    [
        ("a = 1\nb = 2\na = 3", (("a",), 1, 3)),
        ("[a]\nb = 1\n[c]\n[a]\nb = 2", (("a",), 1, 4)),
        ("[a]\nb.c = 1\nb.c = 2", (("a", "b", "c"), 2, 3)),
        ("a = { b = 1, b = 2 }", (("a", "b"), 1, 1)),
        ('"a" = 1\na = 2', (("a",), 1, 2)),
    ],
)
def test_what_is_given_twice_is_found_with_both_lines(text: str, repeat: tuple[Path, int, int]) -> None:
    assert [(one.path, one.first_line, one.line) for one in toml_places(text).repeats] == [repeat]


@pytest.mark.parametrize(
    "text", ["[", "[a", "a", "a =", "a = [", "a = {", "a = [1 2", "= 1", "a = {b 1}", '"a', "]", "}"]
)
def test_broken_text_is_gone_over_without_an_end(text: str) -> None:
    assert toml_places(f"{text}\nz = 1").line_of(()) == 1


def paths_in(value: Any, above: Path = ()) -> list[Path]:
    """Give every path below a parsed value."""
    below = dict(enumerate(value)) if isinstance(value, list) else value if isinstance(value, dict) else {}
    return [path for key in below for path in [(*above, key), *paths_in(below[key], (*above, key))]]
