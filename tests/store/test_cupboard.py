"""The cupboard read in parts: it finds what a plain loop finds, remembers nothing that is out of date."""

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from loopwright.season import Season, plan
from loopwright.season.cupboard_report import cupboard_report
from loopwright.season.cupboard_search import find_lots
from loopwright.store import changes
from loopwright.store.cupboard import cupboard_of, lots_found, lots_named, one_lot
from loopwright.store.errors import NoSuchSeason
from loopwright.store.models import LotRow, YarnRow
from tests.season.small import season
from tests.strategies import keys, lots, yarns

LETTERS = "aAäÄßẞ\u017féÉoO%_\\'\"07\u0130\u0131Å \u0301"


@st.composite
def searched_seasons(draw: st.DrawFn) -> tuple[Season, str]:
    """A cupboard in letters that are hard to compare, and a search in the same."""
    texts = st.text(LETTERS, max_size=4).map(str.strip)
    of = draw(st.lists(keys, unique=True, min_size=1, max_size=3))
    kinds = tuple(draw(yarns(key)).model_copy(update={"name": draw(texts), "note": draw(texts)}) for key in of)
    held = tuple(
        draw(lots(key, tuple(of))).model_copy(
            update={"colour": draw(texts), "dye_lot": draw(texts), "kept_in": draw(texts), "note": draw(texts)}
        )
        for key in draw(st.lists(keys, unique=True, max_size=4))
    )
    small = season()
    return small.model_copy(
        update={
            "yarns": (*small.yarns, *(yarn for yarn in kinds if yarn.key not in small.yarn_by_key)),
            "cupboard": held,
        }
    ), draw(st.text(LETTERS, max_size=4))


@given(searched_seasons())
@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow]
)
def test_a_search_finds_what_a_plain_loop_finds(drawn: tuple[Season, str]) -> None:
    there, text = drawn
    changes.keep_season(there, key="small")
    kept = changes.season_of("small")
    found = lots_found(cupboard_of("small"), text, 1, 100)
    assert [one.lot for one in found.lots] == list(find_lots(kept, text))


@pytest.fixture
def key(winter: Season) -> str:
    return changes.keep_season(winter)


def test_a_lot_is_told_as_the_whole_plan_tells_it(key: str, winter: Season) -> None:
    found = lots_found(cupboard_of(key), "", 1, 100)
    assert found.lots == cupboard_report(winter, plan(winter))


def test_pages_follow_one_another(key: str, winter: Season) -> None:
    cupboard = cupboard_of(key)
    pages = [lots_found(cupboard, "", number, 5) for number in (1, 2, 3)]
    assert [one.lot for page in pages for one in page.lots] == list(winter.cupboard)
    assert [(page.number, page.pages, page.count) for page in pages] == [(1, 3, 13), (2, 3, 13), (3, 3, 13)]
    assert lots_found(cupboard, "", 99, 5).number == 3
    assert lots_found(cupboard, "nothing of this", 1, 5).pages == 1


def test_named_lots_are_given_and_unknown_ones_passed_over(key: str) -> None:
    assert [one.lot.key for one in lots_named(cupboard_of(key), ["paddock-rust", "nope"])] == ["paddock-rust"]
    assert one_lot(cupboard_of(key), "nope") is None


def test_nothing_that_is_remembered_is_out_of_date(key: str) -> None:
    before = cupboard_of(key)
    changes.change_entry(key, "cupboard", "ropewalk-damson", "weighed", {"weighed": "9 g"})
    weighed = cupboard_of(key)
    assert weighed.mass_g.mean == pytest.approx(before.mass_g.mean - 40)
    changes.undo(key)
    assert cupboard_of(key).mass_g == before.mass_g
    changes.redo(key)
    assert cupboard_of(key).mass_g == weighed.mass_g
    changes.forget_season(key)
    with pytest.raises(NoSuchSeason):
        cupboard_of(key)
    changes.bring_back(key)
    assert cupboard_of(key).use == weighed.use


def test_as_many_queries_for_twice_the_lots(key: str) -> None:
    def queries() -> int:
        with CaptureQueriesContext(connection) as asked:
            lots_found(cupboard_of(key), "merino", 1, 48)
        return len(asked)

    before = queries()
    lot = {"yarn": "paddock-dk", "colour": "Oat", "put_ups": 1}
    changes.change_entries(key, "more", added={"cupboard": {f"more-{number}": lot for number in range(20)}})
    assert queries() == before


def test_a_season_that_cannot_be_planned_has_its_cupboard() -> None:
    lots = season({"hours_a_week": 0.001, "hours_a_week_sd": None})
    cupboard = cupboard_of(changes.keep_season(lots))
    assert "a hundred years" in cupboard.cannot_plan
    assert (cupboard.count, cupboard.use.reserved) == (1, {})


def test_what_is_searched_is_kept_by_lot_and_yarn(winter: Season) -> None:
    changes.keep_season(winter)
    assert LotRow.objects.get(key="paddock-gorse").folded.startswith("gorse remnant tin left from mittens")
    assert "merino longwool" in YarnRow.objects.get(key="paddock-dk").folded
