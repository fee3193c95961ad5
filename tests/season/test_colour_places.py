"""Where the colours go: what the season says of it, what it changes, and what is refused."""

from __future__ import annotations

import math

import pytest

from loopwright.calendar.hours import fixed_hours
from loopwright.files import demo_text, read_season_text
from loopwright.season import Season, plan, with_entry
from loopwright.season.remake import draft_of
from loopwright.season.result import GarmentPlan

DEMO = read_season_text(demo_text(), "winter.toml", "toml")


def with_colours(**colours: str | None) -> Season:
    cleared = {f"colours.{field}": None for field in ("everywhere", "edges")}
    return with_entry(DEMO, "garments", "pullover", cleared | {f"colours.{key}": text for key, text in colours.items()})


def pullover(season: Season) -> GarmentPlan:
    return plan(season).garment("pullover")


def metres(planned: GarmentPlan) -> dict[str, float]:
    return {role.role: role.need_m.mean for role in planned.roles}


def test_stripes_share_out_the_yarn_by_their_rows() -> None:
    """Arithmetic: 5, 4 and 3 rows of every 12 but for the edges, which are main; narrow stripes leave few ends."""
    planned = pullover(DEMO)
    draft = draft_of(DEMO, planned)
    assert draft is not None
    edges = sum(
        one.worked * piece.made for piece, one in draft.sections() if one.key in ("hem", "cuff", "band", "neckband")
    )
    striped = draft.stitches - edges
    told = metres(planned)
    share = told["contrast-1"] / math.fsum(told.values())
    assert share == pytest.approx(4 / 12 * striped / draft.stitches, rel=0.08)  # rows differ in width
    assert told["contrast-2"] / told["contrast-1"] == pytest.approx(3 / 4, rel=0.08)


def test_the_whole_takes_the_same_yarn_however_it_is_striped() -> None:
    striped, plain = (sum(metres(pullover(season)).values()) for season in (DEMO, with_colours(everywhere="main")))
    assert striped == pytest.approx(plain, rel=0.03)


def test_a_role_that_knits_nothing_needs_nothing() -> None:
    assert set(metres(pullover(with_colours(everywhere="4 main, 2 contrast-1")))) == {"main", "contrast-1"}


def test_a_role_that_a_longer_body_alone_brings_in_is_counted() -> None:
    season = with_entry(
        with_colours(body="70 main, contrast-1"), "garments", "pullover", {"changes.body_longer": "8 cm"}
    )
    planned = pullover(season)
    (here,) = [one for one in planned.sections if one.role == "contrast-1"]
    assert here.section == "body"
    assert metres(planned)["contrast-1"] == pytest.approx(here.length_m)


def test_a_chart_takes_more_than_plain_rows_by_its_floats() -> None:
    """Two colours in a row: each of its stitches carries one width more, about a quarter of a loop."""
    plain, charted = (pullover(with_colours(body=text)) for text in ("main", "12 main, 2 chart tide-line, main"))
    more = sum(metres(charted).values()) - sum(metres(plain).values())
    draft = draft_of(with_colours(body="12 main, 2 chart tide-line, main"), charted)
    assert draft is not None
    floated = sum(rows.sum() for rows in draft.section("body", "body").floated_by_role().values())
    width_m = draft.section("body", "body").stitch_width_cm / 100
    assert floated > 0
    assert more == pytest.approx(floated * width_m, rel=0.35)  # joined with the pattern's amounts, and a few ends more


def test_stranded_rows_take_longer() -> None:
    """Common practice, no source: 1.4 times the time of a knit stitch, and 1.1 for stocking stitch worked flat."""
    season = with_colours(body="chart tide-line")
    plain, charted = pullover(with_colours(body="main")), pullover(season)
    draft = draft_of(season, charted)
    assert draft is not None
    body = draft.section("body", "body")
    rows = sum(rows > 0 for rows in body.stitches_by_role().values())
    share = float(body.stitches[rows > 1].sum()) / draft.stitches
    hours = [one.hours.mean for one in (plain, charted) if one.hours is not None]
    knitting = hours[0] - fixed_hours("raglan", child=True).mean
    assert hours[1] - hours[0] == pytest.approx(knitting * (1.4 / 1.1 - 1) * share)


def test_sections_add_up_to_their_roles() -> None:
    planned = pullover(with_colours(everywhere="4 main, 3 contrast-1", edges="contrast-2"))
    for role in planned.roles:
        mine = [section.length_m for section in planned.sections if section.role == role.role]
        assert math.fsum(mine) == pytest.approx(role.need_m.mean)


def test_how_charts_lie_is_told_with_what_does_not_come_out_even() -> None:
    season = with_colours(body="3 main, 2 chart tide-line, main")
    answer = pullover(season).answer("colour-places")
    assert answer.tone == "unsure"
    assert "Tide line on the body, rounds 4 to 27: 148 stitches: 12.33 repeats" in " ".join(answer.reasons)
    assert "leave 4 plain at the side" in " ".join(answer.reasons)  # 148 − 12 × 12
    (figure,) = answer.figures
    assert (figure.label, figure.text) == ("body", "3 rows Oat, then the chart Tide line, 2 times, then Oat")


def test_nothing_is_said_where_she_says_nothing() -> None:
    assert "colour-places" not in [answer.key for answer in pullover(with_colours()).answers]


def test_roles_are_told_in_the_order_of_the_garment() -> None:
    """Whichever is knitted first: a hat begins with its brim in the contrast, a cardigan with its edges."""
    for key in ("hat", "cardigan"):
        answer = plan(DEMO).garment(key).answer("colour-places")
        colours = [role.colour for role in DEMO.garment_by_key[key].yarns]
        places = [answer.sentence.index(colour) for colour in colours]
        assert places == sorted(places)


def test_the_hem_of_a_hat_is_told_as_its_brim() -> None:
    assert [figure.label for figure in plan(DEMO).garment("hat").answer("colour-places").figures] == ["brim"]


def test_the_share_of_each_role_is_told() -> None:
    answer = pullover(with_colours(everywhere="main", edges="contrast-1")).answer("colour-places")
    assert answer.sentence.startswith(("Oat knits", "Rust knits"))
    assert answer.tone == "plain"


@pytest.mark.parametrize(
    ("field", "text", "fault"),
    [
        ("body", "4 main, 2 gold", "a role of this garment"),
        ("yoke", "chart waves", "a chart of this season"),
        ("body", "main, 2 contrast-1", "how many rows, such as 4 main"),
        ("edges", "four main", "rows and a role"),
    ],
)
def test_what_cannot_be_is_refused_at_its_place(field: str, text: str, fault: str) -> None:
    with pytest.raises(Exception, match=fault) as refused:
        with_colours(**{field: text})
    assert "colours" in str(refused.value) or "colours" in repr(getattr(refused.value, "errors", lambda: "")())


def test_a_chart_whose_role_has_no_yarn_is_refused() -> None:
    with pytest.raises(Exception, match="which has the role 'contrast-1'"):
        with_entry(DEMO, "garments", "hat", {"colours.body": "chart tide-line"})


def test_an_undrafted_garment_is_told_nothing() -> None:
    settled_without = with_entry(DEMO, "garments", "pullover", {"draft.measures.neck_width": "200 cm"})
    planned = pullover(settled_without)
    assert planned.drafted is None
    assert "colour-places" not in [answer.key for answer in planned.answers]


def test_the_lot_that_she_names_is_the_one_that_is_drawn() -> None:
    oats = [lot.key for lot in DEMO.cupboard if (lot.yarn, lot.colour) == ("paddock-dk", "Oat")]
    assert len(oats) == 2
    season = with_entry(DEMO, "cupboard", oats[1], {"shade": "#c0b090"})
    for named, shade in (([oats[1]], "#c0b090"), ([oats[0]], "#dccdae")):
        chosen = with_entry(season, "garments", "pullover", {"yarns.main.lots": named})
        assert pullover(chosen).roles[0].shade == shade
