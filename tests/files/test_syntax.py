"""Text that is no TOML or no JSON: the line, the column, and what to write instead."""

import pytest

from loopwright.files import Format, SeasonFileFaults, read_season_text
from tests.files.texts import SEASON, changed

TOML = {
    "a quantity without quotes": (
        changed("hours_a_week = 6", "hours_a_week = 6 h"),
        "3:18: found 'hours_a_week = 6 h', which is not TOML from column 18 on; "
        'wanted one field on a line, and text and quantities in quotes (such as length = "36 cm")',
    ),
    "text without quotes": (
        changed('"NZD"', "NZD"),
        "4:12: found 'currency = NZD', which is not TOML from column 12 on; "
        'wanted text in quotes, a number, a date, true or false, or a list in brackets (write "NZD" in quotes)',
    ),
    "curly quotes": (changed('"NZD"', "“NZD”"), "4:12: found 'currency = “NZD”', which"),
    "a word for true": (
        changed("begun_on", "set_aside = Yes\nbegun_on"),
        "37:13: found 'set_aside = Yes', which is not TOML from column 13 on; "
        "wanted text in quotes, a number, a date, true or false, or a list in brackets (write true)",
    ),
    "no equals sign": (
        changed("hours_a_week = 6", "hours_a_week 6"),
        "3:14: found 'hours_a_week 6', which is not TOML from column 14 on; "
        'wanted a field, an equals sign and a value, such as name = "Winter"',
    ),
    "an open quote": (
        changed('"NZD"', '"NZD'),
        "4:16: found 'currency = \"NZD', which is not TOML from column 16 on; "
        "wanted a quote that closes the text on the same line",
    ),
    "a date that is not in the calendar": (
        changed("2027-03-01", "2027-02-30"),
        "2:9: found 'today = 2027-02-30', which is not TOML from column 9 on; "
        "wanted a date that is in the calendar, such as 2027-03-01",
    ),
    "an open heading": (
        changed("[bodies.mira]", "[bodies.mira"),
        "7:13: found '[bodies.mira', which is not TOML from column 13 on; "
        "wanted a table's name between brackets, such as [yarns.rust-dk]",
    ),
    "an open list at the end": (
        'name = "x"\ndays_off = [\n',
        "2:13: found the end of the file after 'days_off = ['; "
        "wanted a comma between the entries of a list and a ] at its end",
    ),
    "a heading twice": (
        SEASON + '\n[yarns.fennock-dk]\nname = "once more"\nlength = "1 m"\n',
        "53: yarns.fennock-dk: found 'fennock-dk' a second time; wanted it once; the first is on line 12",
    ),
    "a field twice": (
        changed('name = "Mira"', 'name = "Mira"\nname = "Mia"'),
        "9: bodies.mira.name: found 'name' a second time; wanted it once; the first is on line 8",
    ),
    "a field twice in braces": (
        changed("wool = 80", "wool = 80, wool = 80"),
        "14: yarns.fennock-dk.fibres.wool: found 'wool' a second time; wanted it once; the first is on line 14",
    ),
    "lists without end": ("a = " + "[" * 20_000, "1: found lists within lists, too deep to follow; wanted"),
    "a number of 5000 digits": ("a = " + "7" * 5_000, "1: found a number too long to read; wanted"),
}
JSON = {
    "a missing comma": (
        '{\n  "name": "x"\n  "today": 1\n}',
        "3:3: found '\"today\": 1', which is not JSON from column 3 on; wanted a comma between fields or entries",
    ),
    "a field without quotes": (
        '{\n  name: "x"\n}',
        '2:3: found \'name: "x"\', which is not JSON from column 3 on; wanted a field in double quotes, such as "name"',
    ),
    "the end too early": (
        '{\n  "name": "x"\n',
        "3:1: found the end of the file; wanted a comma between fields or entries",
    ),
    "no value": ('{"name": }', "1:10: found '{\"name\": }', which is not JSON from column 10 on; wanted text in "),
    "more after the end": ('{"name": "x"}\n{}', "2:1: found '{}', which is not JSON from column 1 on; wanted nothing "),
    "a number that is none": ('{"hours_a_week": NaN}', "1: found the number NaN; wanted a number of usual size"),
    "a field twice": (
        '{"yarns": {\n "a": {},\n "a": {}}}',
        "3: yarns.a: found 'a' a second time; wanted it once; the first is on line 2",
    ),
    "a field twice and broken after that": ('{"a": 1, "a": 2}}', "1:17: found '"),
    "lists without end": ("[" * 200_000, "1: found lists within lists, too deep to follow; wanted"),
}


def said_of(text: str, format: Format) -> str:
    with pytest.raises(SeasonFileFaults) as caught:
        read_season_text(text, "winter", format)
    return str(caught.value)


@pytest.mark.parametrize(("text", "message"), TOML.values(), ids=TOML.keys())
def test_what_is_no_toml_is_named_by_line_and_column(text: str, message: str) -> None:
    said = said_of(text, "toml")
    assert said.startswith(f"winter:{message}")
    assert "\n" not in said


@pytest.mark.parametrize(("text", "message"), JSON.values(), ids=JSON.keys())
def test_what_is_no_json_is_named_by_line_and_column(text: str, message: str) -> None:
    said = said_of(text, "json")
    assert said.startswith(f"winter:{message}")
    assert "\n" not in said


def test_curly_quotes_are_pointed_out() -> None:
    assert said_of(changed('"NZD"', "“NZD”"), "toml").endswith('(quotes must be straight: ")')


def test_several_headings_given_twice_come_at_once() -> None:
    said = said_of(SEASON + "\n[bodies.mira]\n\n[garments.hat]\n", "toml")
    assert [line.split(": ")[1] for line in said.splitlines()] == ["bodies.mira", "garments.hat"]
