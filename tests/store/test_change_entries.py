"""Several entries as one action, and only those rows written that change."""

import pytest

from loopwright.season import Season
from loopwright.season.change import Entries
from loopwright.store import changes
from loopwright.store.errors import ChangeRefused
from loopwright.store.models import LotRow
from loopwright.units import BadInput

LOT = {"yarn": "paddock-dk", "colour": "Fog", "put_ups": 2}
YARN = {"name": "Fen", "length": "200 m", "mass": "100 g"}


@pytest.fixture
def key(winter: Season) -> str:
    return changes.keep_season(winter)


def test_many_are_added_and_changed_in_one_step_both_ways(key: str, winter: Season) -> None:
    new: Entries = {"yarns": {"fen": YARN}, "cupboard": {"fog": LOT, "moss": LOT | {"yarn": "fen"}}}
    season = changes.change_entries(key, "took in", added=new, changed={"cupboard": {"paddock-rust": {"put_ups": 1}}})
    assert [lot.key for lot in season.cupboard[-2:]] == ["fog", "moss"]
    assert next(lot for lot in season.cupboard if lot.key == "paddock-rust").put_ups == 1
    assert changes.season_of(key) == season
    assert changes.undo(key) == "took in"
    assert changes.season_of(key) == winter
    changes.redo(key)
    assert changes.season_of(key) == season


def test_one_fault_keeps_all_of_it_out(key: str, winter: Season) -> None:
    with pytest.raises(ChangeRefused, match="the yarn 'fen', which is not there"):
        changes.change_entries(key, "took in", added={"cupboard": {"fog": LOT, "moss": LOT | {"yarn": "fen"}}})
    with pytest.raises(BadInput, match="which is there already"):
        changes.change_entries(key, "took in", added={"cupboard": {"paddock-rust": LOT}})
    assert changes.season_of(key) == winter


def test_a_change_of_one_lot_writes_one_row(key: str) -> None:
    before = dict(LotRow.objects.values_list("key", "pk"))
    changes.change_entry(key, "cupboard", "paddock-rust", "less", {"put_ups": 1})
    after = dict(LotRow.objects.values_list("key", "pk"))
    assert {lot for lot in before if before[lot] != after[lot]} == {"paddock-rust"}


def test_a_lot_taken_out_leaves_the_others_in_their_order(key: str, winter: Season) -> None:
    left = changes.remove_entry(key, "cupboard", "paddock-rust", "out")
    assert changes.season_of(key) == left
    assert [lot.key for lot in left.cupboard] == [lot.key for lot in winter.cupboard if lot.key != "paddock-rust"]
    changes.undo(key)
    assert changes.season_of(key) == winter


def test_more_rows_than_a_query_may_name_are_written(key: str) -> None:
    many = {f"l{number}": LOT for number in range(1200)}
    changes.change_entries(key, "many", added={"cupboard": many})
    again: Entries = {"cupboard": {lot: {"put_ups": 3} for lot in many}}
    season = changes.change_entries(key, "all", added={}, changed=again)
    assert changes.season_of(key) == season
    assert LotRow.objects.count() == 1213
