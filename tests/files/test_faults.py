"""What a person reads when a season file is wrong: every message whole, with line and field."""

import json

import pytest

from loopwright.files import SeasonFileFaults, read_season_text, write_season_text
from tests.files.texts import SEASON, changed

EMPTY = 'name = "x"\ntoday = 2027-03-01\nhours_a_week = 6\ncurrency = "NZD"\n'

MESSAGES = {
    "unknown unit": (
        changed('"115 m"', '"115 metrs"'),
        '15: yarns.fennock-dk.length: found "115 metrs"; wanted a yarn length with its unit, '
        'such as 430 m or 470 yd (did you mean "m"?)',
    ),
    "uneven size columns": (
        changed("46 (50, 54)", "46 (50)"),
        "30: patterns.brim-hat.finished.head_girth: found 2 figures; wanted 3, one for each of the sizes S, M, L "
        "(a size without that figure is written as a dash: 86 (-, 102) cm)",
    ),
    "negative mass": (
        changed('"50 g"', '"-50 g"'),
        '16: yarns.fennock-dk.mass: found "-50 g"; wanted a mass with its unit, such as 50 g or 1 3/4 oz '
        "(it cannot be negative)",
    ),
    "a yarn that is not there": (
        changed('yarn = "fennock-dk"\ncolour = "Lichen"\n\n', 'yarn = "fenock"\ncolour = "Lichen"\n\n'),
        "41: garments.hat.yarns.main.yarn: found the yarn 'fenock', which is not there; "
        "wanted a yarn of this season (fennock-dk) (did you mean 'fennock-dk'?)",
    ),
    "a season without garments": (
        EMPTY,
        "1: garments: found a season without garments; wanted at least one garment, such as [garments.cardigan]",
    ),
    "an empty file": (
        "# nothing yet\n",
        "1: found nothing; wanted a season: its name, today, hours_a_week and currency, and its tables",
    ),
    "a bare number without a unit": (
        changed('"56 cm"', "56"),
        "10: bodies.mira.head_girth: found 56; wanted a length with its unit, such as 36 cm or 14 in "
        "(a bare number could be any unit)",
    ),
    "a list of bare numbers": (
        changed('"46 (50, 54) cm"', "[46, 50, 54]"),
        "30: patterns.brim-hat.finished.head_girth: found [46, 50, 54]; "
        "wanted one text with a figure per size, such as 86 (94, 102, 110) cm",
    ),
    "a blend that sums to 90": (
        changed("wool = 80", "wool = 70"),
        "14: yarns.fennock-dk.fibres: found fibres that sum to 90 %; wanted 100 %",
    ),
    "two dates out of order": (
        changed("done_on = 2027-03-09", "done_on = 2027-03-01"),
        "33: garments.hat: found 2027-03-02 then 2027-03-01; wanted begun_on before knitted_off_on before done_on",
    ),
    "a key with capital letters": (
        changed("[bodies.mira]", '[bodies."Mira M."]'),
        "7: bodies.Mira M.: found the key 'Mira M.'; wanted a key of small letters, digits and single hyphens, "
        "at most 60, such as rust-dk (did you mean 'mira-m'?)",
    ),
    "an unknown field": (
        changed("wearer =", "waerer ="),
        "9: bodies.mira.waerer: found the field 'waerer', which is not known here; wanted a field of this table "
        "(did you mean 'wearer'?)",
    ),
    "a field by the name it has in the program": (
        changed('length = "115 m"', 'length_m = "115 m"'),
        "15: yarns.fennock-dk.length_m: found the field 'length_m', which is not known here; wanted one of the fields "
        "name, fibres, length, mass, needle, plies, note (did you mean 'length'?)",
    ),
    "a field of the season below a heading": (
        changed('head_girth = "56 cm"', 'purse = "90 NZD"'),
        "10: bodies.mira.purse: found the field 'purse', which is not known here; wanted one of the fields ",
    ),
    "a missing field": (
        changed('mass = "50 g"\n', ""),
        '12: yarns.fennock-dk.mass: found nothing; wanted a mass with its unit, such as "50 g" or "1 3/4 oz" '
        "(mass of one put-up)",
    ),
    "a word that is not allowed": (
        changed('"hat"', '"Hats"'),
        '25: patterns.brim-hat.construction: found "Hats"; wanted one of set-in sleeve, raglan, round yoke, '
        "drop shoulder, sleeveless, hat, half-round shawl, triangle shawl, crescent shawl, rectangle, "
        "cowl (did you mean 'hat'?)",
    ),
    "a number that is text": (
        changed("hours_a_week = 6", 'hours_a_week = "six"'),
        '3: hours_a_week: found "six"; wanted a number above 0, at most 100',
    ),
    "a number out of range": (
        changed("hours_a_week = 6", "hours_a_week = 200"),
        "3: hours_a_week: found 200; wanted a number above 0, at most 100",
    ),
    "text that is a number": (
        changed('name = "Two hats"', "name = 2"),
        "1: name: found 2; wanted text in quotes",
    ),
    "a date as text that is none": (
        changed("2027-03-01", '"1 March"'),
        '2: today: found "1 March"; wanted a date, such as 2027-03-01',
    ),
    "a quantity where a table stands": (
        changed('postage = { flat = "6.50 EUR" }', 'postage = "6.50 EUR"'),
        '47: shops.skerrow.postage: found "6.50 EUR"; wanted a table of fields',
    ),
    "a value where a keyed table stands": (
        changed('[bodies.mira]\nname = "Mira"', '[bodies]\nmira = "Mira"'),
        "8: bodies.mira: found 'Mira'; wanted a table of fields under 'mira'",
    ),
    "a key said twice": (
        changed('name = "Mira"', 'name = "Mira"\nkey = "mira"'),
        "7: bodies.mira: found the field 'key'; wanted the key once, as the table's name 'mira'",
    ),
    "a gauge that is a number": (
        changed('"22 sts x 30 rows = 10 cm"', "22"),
        "26: patterns.brim-hat.gauge: found 22; wanted stitches and rows over a stated length, "
        'such as "22 sts x 30 rows = 10 cm" or "28 sts / 4 in"',
    ),
    "a list that needs an entry": (
        changed("[cupboard.", '[swatches.one]\nyarns = []\nafter = "22 sts = 10 cm"\n\n[cupboard.'),
        "19: swatches.one.yarns: found an empty list; wanted a list in brackets, each entry text in quotes, "
        "and at least one",
    ),
    "a price in another currency than the shop's": (
        changed("5.20 EUR", "5.20 NZD"),
        "51: shops.skerrow.offers (1st).price: found NZD 5.20; wanted EUR, the shop's currency",
    ),
    "no rate for a currency": (
        changed("EUR = ", "GBP = "),
        "5: rates: found no rate for EUR, the currency of Skerrow Yarn Room; "
        'wanted rates = { EUR = "…" }: what one EUR costs in NZD',
    ),
    "a rate of nothing": (
        changed('"1.85"', "0"),
        "5: rates.EUR: found 0; wanted a number above 0",
    ),
    "a measure named by some of its words": (
        changed('name = "Mira"', 'name = "Mira"\nwaist_girth = "80 cm"'),
        "9: bodies.mira.waist_girth: found the field 'waist_girth', which is not known here; "
        "wanted a field of this table (did you mean 'waist_natural_girth'?)",
    ),
    "a fibre that is not known": (
        changed("wool = 80", "wol = 80"),
        "14: yarns.fennock-dk.fibres.wol: found the fibre 'wol'; wanted one of merino, ",
    ),
}


def fault_of(text: str) -> str:
    with pytest.raises(SeasonFileFaults) as caught:
        read_season_text(text, "winter.toml", "toml")
    return str(caught.value)


@pytest.mark.parametrize(("text", "message"), MESSAGES.values(), ids=MESSAGES.keys())
def test_a_fault_names_line_field_found_and_wanted(text: str, message: str) -> None:
    said = fault_of(text)
    assert said.startswith(f"winter.toml:{message}")
    assert "\n" not in said


def test_the_unchanged_season_has_no_fault() -> None:
    assert read_season_text(SEASON, "winter.toml", "toml").name == "Two hats"


def test_a_misplaced_field_is_sent_to_the_top() -> None:
    assert fault_of(changed('head_girth = "56 cm"', 'purse = "90 NZD"')).endswith(
        "('purse' belongs to the top of the file, above the first table)"
    )


def test_all_faults_come_at_once_in_the_order_of_lines() -> None:
    text = SEASON.replace('"115 m"', '"115"').replace("hours_a_week = 6", "hours_a_week = -6")
    text = text.replace('"56 cm"', '"56 kg"')
    with pytest.raises(SeasonFileFaults) as caught:
        read_season_text(text, "winter.toml", "toml")
    assert [(fault.line, fault.path) for fault in caught.value.faults] == [
        (3, "hours_a_week"),
        (10, "bodies.mira.head_girth"),
        (15, "yarns.fennock-dk.length"),
    ]


def test_several_keys_that_lead_nowhere_come_at_once() -> None:
    said = fault_of(SEASON.replace('for = "mira"', 'for = "mia"').replace('pattern = "brim-hat"', 'pattern = "hat"'))
    assert [line.split(": ")[1] for line in said.splitlines()] == ["garments.hat.pattern", "garments.hat.for"]


def test_a_fault_can_be_placed_further_out() -> None:
    with pytest.raises(SeasonFileFaults) as caught:
        read_season_text(changed('"50 g"', '"50"'), "winter.toml", "toml")
    fault = caught.value.faults[0].at("guild/spring")
    assert fault.place == "guild/spring: winter.toml:16: yarns.fennock-dk.mass"


def test_json_faults_have_the_same_fields_on_their_own_lines() -> None:
    data = json.loads(write_season_text(read_season_text(SEASON, "winter.toml", "toml"), "json"))
    data["yarns"]["fennock-dk"]["length"] = "115 metrs"
    text = json.dumps(data, indent=2)
    line = next(number for number, row in enumerate(text.split("\n"), 1) if "metrs" in row)
    with pytest.raises(SeasonFileFaults, match=f'^winter.json:{line}: yarns.fennock-dk.length: found "115 metrs"'):
        read_season_text(text, "winter.json", "json")


@pytest.mark.parametrize(("text", "found"), [("[1]", "a list"), ('"x"', '"x"'), ("7", "7"), ("{}", "nothing")])
def test_a_json_text_that_is_no_table_is_no_season(text: str, found: str) -> None:
    with pytest.raises(SeasonFileFaults, match=f"^winter.json:1: found {found}; wanted "):
        read_season_text(text, "winter.json", "json")
