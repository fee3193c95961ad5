"""A chart on the garment that it is for: its parts and their rows, what is kept and usual, how it lies."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.colouring import laid_charts
from loopwright.files import demo_text, read_season_text
from loopwright.garment.wanted import ColourPlan
from loopwright.season import Season, with_entry, with_garment
from loopwright.season.chart_garment import ChartOnGarment, NotLaid, chart_on_garment
from loopwright.season.chart_garment_words import choice_in_words, held_in_words, lying_in_words
from loopwright.season.chart_place import ChartPlace
from loopwright.season.wording import Wording
from loopwright.units import BadInput, Reader

DEMO = read_season_text(demo_text(), "winter.toml", "toml")
WORDING = Wording(Reader(measures="metric"))
HIGH = 5
PLAIN = {"roles": {"m": "main"}, "rows": ["mmmm"] * HIGH}
GARMENTS = ("shawl", "hat", "pullover", "cardigan", "slipover")


@cache
def on(garment: str = "pullover") -> ChartOnGarment:
    """A chart of five rows on a garment of the demo season, of whose colours nothing is said."""
    season = with_entry(DEMO, "charts", "tide-line", {"garment": garment, **PLAIN})
    colours = dict.fromkeys(f"colours.{field}" for field in ColourPlan.model_fields)
    return found(with_garment(season, garment, colours))


def found(season: Season) -> ChartOnGarment:
    laid = chart_on_garment(season, "tide-line")
    assert isinstance(laid, ChartOnGarment)
    return laid


def with_colours(**colours: str | None) -> Season:
    """The demo season, where Tide line has three colours and twelve rows."""
    fields = {"everywhere": None, **colours}
    return with_garment(DEMO, "pullover", {f"colours.{field}": text for field, text in fields.items()})


def rows_laid(laid: ChartOnGarment, choice: ChartPlace) -> dict[str, int]:
    """How many rows of each piece show the chart, as the room that colours drafts tells it."""
    work = laid.work(choice)
    assert work is not None
    rows: dict[str, int] = {}
    for one in laid_charts(laid.draft, work):
        assert one.place == choice.place
        rows[one.piece] = rows.get(one.piece, 0) + one.rows
    return rows


@pytest.mark.parametrize("garment", GARMENTS)
def test_a_part_has_room_for_a_row_as_long_as_it_says_and_no_longer(garment: str) -> None:
    laid = on(garment)
    assert laid.parts
    for part in laid.parts:
        assert part.rows >= 1
        assert rows_laid(laid, part.laid(part.rows - 1, None))
        assert rows_laid(laid, ChartPlace(part.place, part.rows, None)) == {}


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_it_takes_its_rows_times_over_as_far_as_there_are_rows(data: st.DataObject) -> None:
    """Counted by hand. No part of the pullover divides on its way, so each piece shows it alike."""
    laid = on()
    part = data.draw(st.sampled_from(laid.parts))
    choice = part.laid(data.draw(st.integers(0, part.rows - 1)), data.draw(st.none() | st.integers(1, 20)))
    left = part.rows - choice.before
    expected = left if choice.times is None else min(left, HIGH * choice.times)
    assert set(rows_laid(laid, choice).values()) == {expected}


@settings(max_examples=25, deadline=None)
@given(st.data())
def test_what_is_kept_is_what_it_begins_with(data: st.DataObject) -> None:
    laid = on(data.draw(st.sampled_from(GARMENTS)))
    part = data.draw(st.sampled_from(laid.parts))
    choice = part.laid(data.draw(st.integers(0, part.rows - 1)), data.draw(st.none() | st.integers(1, 20)))
    season = with_garment(laid.season, laid.garment.key, {f"colours.{part.place}": laid.text(choice)})
    again = found(season)
    assert (again.kept, again.start, again.held) == ((choice,), choice, ())
    assert again.garment.colours == laid.plan(choice)


@pytest.mark.parametrize("garment", GARMENTS)
def test_what_is_usual_has_room_for_the_whole_chart(garment: str) -> None:
    laid = on(garment)
    for part in laid.parts:
        usual = part.usual(laid.high)
        assert usual.times == 1
        assert usual.before + min(laid.high, part.rows) <= part.rows
    assert laid.start == laid.part("body").usual(laid.high)


def test_on_a_round_yoke_it_usually_lies_on_the_yoke() -> None:
    pattern = DEMO.garment_by_key["pullover"].pattern
    assert pattern is not None
    start = found(with_entry(DEMO, "patterns", pattern, {"construction": "round yoke"})).start
    assert start is not None
    assert start.place == "yoke"


@pytest.mark.parametrize(
    ("place", "before", "times", "fault"),
    [
        ("pocket", 0, 1, "wanted one of body, sleeves, yoke, hem, cuff, neckband"),
        ("band", 0, 1, 'found "band"'),  # the pullover does not open in front
        ("body", 60, 1, 'Rows before it: found "60"; wanted 0 to 59, since the body has 60 rows'),
        ("cuff", 15, 1, "since the cuffs have 15 rows"),
        ("body", -1, 1, "Rows before it"),
        ("body", 0, 0, 'How often: found "0"; wanted 1 to 9999'),
        ("body", 0, 10_000, "How often"),
    ],
)
def test_what_cannot_be_chosen_is_said(place: str, before: int, times: int, fault: str) -> None:
    with pytest.raises(BadInput) as refused:
        on().part(place).laid(before, times)
    assert fault in str(refused.value)


def test_words_that_hold_more_are_left_alone() -> None:
    laid = found(with_colours(yoke="4 contrast-1, chart tide-line, main", sleeves="2 main, chart tide-line"))
    assert laid.held == ("yoke",)
    assert "yoke" not in [part.place for part in laid.parts]
    assert laid.start == ChartPlace("sleeves", 2, None)
    assert held_in_words(laid) == (
        "The words for the yoke hold more than can be chosen here, and stay as they are: "
        "4 rows Rust, then the chart Tide line, then Oat.",
    )


def test_where_all_is_held_it_begins_as_it_is_kept() -> None:
    laid = found(with_colours(everywhere="chart tide-line"))
    assert (laid.start, laid.held, laid.kept) == (None, ("everywhere",), ())
    assert any(line.startswith("Tide line on the body, rounds ") for line in lying_in_words(laid, None, WORDING))


def test_another_chart_is_not_taken_for_this_one() -> None:
    other = DEMO.chart_by_key["tide-line"].model_copy(update={"key": "other"})
    both = DEMO.model_copy(update={"charts": (*DEMO.charts, other)})
    laid = found(with_garment(both, "pullover", {"colours.body": "chart other"}))
    assert (laid.kept, laid.held) == ((), ())


def test_how_it_lies_is_told_for_the_part_that_is_chosen_first() -> None:
    laid = found(with_colours(body="3 main, chart tide-line, main"))
    choice = laid.part("cuff").laid(0, 1)
    told = lying_in_words(laid, choice, WORDING)
    assert choice_in_words(laid, choice) == "On the cuffs: the chart Tide line, then Oat."
    assert told[0].startswith("Tide line on the left sleeve, cuff and the right sleeve, cuff, rounds 1 to 12: 36 stit")
    assert "three repeats exactly" in told[0]  # 36 = 3 × 12
    assert told[1].startswith("Tide line on the body, rounds 4 to 15: 148 stitches: 12.33 repeats; 144 or 156 would be")


def test_what_does_not_come_out_is_told() -> None:
    """The sleeve has 69 rows: after 3 of them 66 are left, five times twelve and six."""
    laid = found(DEMO)
    told = lying_in_words(laid, laid.part("sleeves").laid(3, None), WORDING)
    assert "the count changes within it, in rounds 10, 19, 28" in told[0]
    assert "The last one is cut off after row 6 of its 12." in told
    assert "Knitted from the top down: the chart hangs upside down on the sleeves." in told
    assert any(line.startswith("What is said of the sleeves until now gives way: 5 rows Oat, then 4") for line in told)
    whole = lying_in_words(laid, laid.part("sleeves").laid(3, 5), WORDING)
    assert not any("cut off" in line for line in whole)


@pytest.mark.parametrize(
    ("place", "before", "times", "said"),
    [
        ("sleeves", 3, 9, "There is room for 5 of the 9, and for 6 rows of one more."),  # 66 = 5 × 12 + 6
        ("sleeves", 9, 9, "There is room for 5 of the 9."),  # 60 = 5 × 12
        ("cuff", 10, 2, "There is room for its first 5 rows alone."),  # of 15
        ("cuff", 10, None, "There is room for its first 5 rows alone."),
    ],
)
def test_for_how_many_there_is_room(place: str, before: int, times: int | None, said: str) -> None:
    laid = found(DEMO)
    assert said in lying_in_words(laid, laid.part(place).laid(before, times), WORDING)


def test_a_name_is_told_as_it_stands() -> None:
    laid = found(with_entry(DEMO, "charts", "tide-line", {"name": "Tide {line}"}))
    assert lying_in_words(laid, laid.start, WORDING)[0].startswith("Tide {line} on the body, rounds 7 to 18: ")


def test_a_chart_kept_beyond_the_last_row_is_told() -> None:
    laid = found(with_colours(body="80 main, chart tide-line, main"))
    assert "It does not show: the body has 60 rows." in lying_in_words(laid, laid.start, WORDING)


def test_without_a_garment_it_cannot_be_laid() -> None:
    laid = chart_on_garment(with_entry(DEMO, "charts", "tide-line", {"garment": None}), "tide-line")
    assert isinstance(laid, NotLaid)
    assert str(laid.why).startswith("It is for no garment yet")
    assert laid.garment == ""


def test_a_role_without_yarn_is_named() -> None:
    laid = chart_on_garment(with_entry(DEMO, "charts", "tide-line", {"garment": "hat"}), "tide-line")
    assert isinstance(laid, NotLaid)
    assert "has no yarn for contrast-1, contrast-2, which the chart has" in str(laid.why)
    assert "the garment's own roles, main, contrast." in str(laid.why)
    assert laid.garment == "hat"


def test_what_keeps_a_garment_from_being_drafted_is_told() -> None:
    season = with_garment(DEMO, "pullover", {"draft.measures.neck_width": "200 cm"})
    laid = chart_on_garment(season, "tide-line")
    assert isinstance(laid, NotLaid)
    assert "cannot be drafted: " in str(laid.why)
    assert str(laid.why).endswith(". Its bench says what it needs.")


def test_a_chart_that_is_not_there() -> None:
    with pytest.raises(BadInput, match="the chart 'waves'"):
        chart_on_garment(DEMO, "waves")
