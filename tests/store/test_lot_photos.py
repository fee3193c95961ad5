"""Photos come and go with undo, survive the season's file, and are kept once."""

import pytest

from loopwright.season import Season
from loopwright.store import changes
from loopwright.store.models import LotPhotoRow, Revision
from loopwright.store.photos import LotPhoto, photo_bytes
from loopwright.units import BadInput

ONE, OTHER = LotPhoto(b"one", b"1", 3, 2), LotPhoto(b"other", b"2", 3, 2)
LOT = "ropewalk-damson"


@pytest.fixture
def key(winter: Season, text: str) -> str:
    return changes.keep_season(winter, text=text)


def shown(key: str) -> str | None:
    return changes.photos_of(key).get(LOT)


def test_a_photo_is_put_in_and_undone_in_both_directions(key: str) -> None:
    changes.put_lot_photo(key, LOT, ONE)
    changes.put_lot_photo(key, LOT, OTHER)
    assert changes.undo(key) == "put in a photo of Damson"
    assert shown(key) == ONE.digest
    changes.undo(key)
    assert shown(key) is None
    changes.redo(key)
    changes.redo(key)
    assert shown(key) == OTHER.digest
    assert photo_bytes(OTHER.digest) == b"other"
    assert photo_bytes(OTHER.digest, small=True) == b"2"


def test_a_photo_is_taken_away_and_had_back(key: str) -> None:
    changes.put_lot_photo(key, LOT, ONE)
    changes.take_lot_photo_away(key, LOT)
    assert shown(key) is None
    assert changes.undo(key) == "took the photo away of Damson"
    assert shown(key) == ONE.digest


def test_a_lot_that_is_taken_out_takes_its_photo_along_and_brings_it_back(key: str) -> None:
    changes.put_lot_photo(key, "culvert-slate", ONE)
    changes.remove_entry(key, "cupboard", "culvert-slate", "took out Slate")
    assert changes.photos_of(key) == {}
    changes.undo(key)
    assert changes.photos_of(key) == {"culvert-slate": ONE.digest}
    changes.redo(key)
    assert changes.photos_of(key) == {}


def test_other_changes_leave_photos_alone(key: str) -> None:
    changes.put_lot_photo(key, LOT, ONE)
    changes.change_garment(key, "cardigan", "longer", **{"changes.body_longer": "6 cm"})
    changes.change_entry(key, "cupboard", LOT, "weighed", {"weighed": "40 g"})
    changes.undo(key)
    assert shown(key) == ONE.digest


def test_the_file_loaded_again_finds_its_photos(key: str, later: Season, text: str) -> None:
    changes.put_lot_photo(key, LOT, ONE)
    assert changes.text_of(key, "toml") == text  # a photo changes nothing of the season
    changes.keep_season(later)
    assert shown(key) == ONE.digest


def test_a_season_that_was_put_away_comes_back_with_its_photos(key: str) -> None:
    changes.put_lot_photo(key, LOT, ONE)
    changes.forget_season(key)
    changes.bring_back(key)
    assert shown(key) == ONE.digest


def test_the_same_photo_is_kept_once_and_no_change(key: str) -> None:
    LotPhotoRow.objects.all().delete()
    changes.put_lot_photo(key, LOT, ONE)
    changes.put_lot_photo(key, "culvert-slate", ONE)
    changes.put_lot_photo(key, "culvert-slate", ONE)
    assert LotPhotoRow.objects.count() == 1
    changes.undo(key)
    assert changes.photos_of(key) == {LOT: ONE.digest}


def test_a_lot_that_is_not_there_gets_no_photo(key: str) -> None:
    LotPhotoRow.objects.all().delete()
    with pytest.raises(BadInput, match="'nope', which is not there"):
        changes.put_lot_photo(key, "nope", ONE)
    assert LotPhotoRow.objects.count() == 0


def test_a_change_of_before_there_were_photos_can_be_undone(key: str) -> None:
    changes.change_entry(key, "cupboard", LOT, "weighed", {"weighed": "40 g"})
    revision = Revision.objects.get()
    assert revision.other_side is not None
    del revision.other_side["photos"]
    revision.save()
    changes.undo(key)
    assert changes.photos_of(key) == {}
