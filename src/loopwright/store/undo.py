"""Every change of a season is noted with the way back. All of this runs inside the transaction of the change."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from typing import Any, Final

from django.db.models import Max

from loopwright.files import Format
from loopwright.store.errors import NothingToRedo, NothingToUndo
from loopwright.store.models import Revision, SeasonRow
from loopwright.store.rows import Form, read_form, write_form

__all__ = ["MOST_REVISIONS", "State", "change", "go_on", "locked_row", "state_of", "step"]

MOST_REVISIONS: Final = 500
"""Changes of one season that are remembered; older ones can no longer be undone."""


@dataclass(frozen=True, slots=True)
class State:
    """All that is kept of one season at one time.

    :ivar form: the season itself, see :mod:`loopwright.store.rows`.
    :ivar source_text: the file as it was loaded, empty once anything was changed.
    :ivar photos: the digest of the photo of each lot that has one, by the lot's key.
    :ivar position: its place among the seasons; None for the next free one.
    """

    form: Form
    source_text: str = ""
    source_format: Format = "toml"
    position: int | None = None
    photos: Mapping[str, str] = field(default_factory=dict)


def locked_row(key: str) -> SeasonRow | None:
    """Give a season's row, held against other writers to the end of the transaction."""
    return SeasonRow.objects.select_for_update().filter(key=key).first()


def state_of(row: SeasonRow) -> State:
    """Give all that is kept of a season now."""
    format: Format = "json" if row.source_format == "json" else "toml"
    return State(read_form(row), row.source_text, format, row.position, row.photos)


def change(key: str, row: SeasonRow | None, state: State | None, says: str, *, present: State | None = None) -> None:
    """Put a state in the place of the present one, which goes to a revision; what was undone is dropped.

    A season that comes to be is no change; there is nothing to go back to. One that was forgotten still is: a new one
    under its key takes its place.

    :param row: as :func:`locked_row` gives it.
    :param state: the new state, None to forget the season.
    :param present: what the row holds, where it was read already.
    """
    revisions = Revision.objects.filter(season_key=key)
    revisions.filter(undone=True).delete()
    before: dict[str, Any] | None = None
    if row is not None:
        before = _plain(present or state_of(row))
    else:
        forgetting = revisions.last()
        if forgetting is not None:
            before = forgetting.other_side
            forgetting.delete()
    if before is not None:
        Revision.objects.create(season_key=key, says=says, other_side=before)
        _drop_oldest(key)
    _put(key, row, state, before["form"] if row is not None and before else None)


def go_on(key: str, row: SeasonRow, state: State, present: State) -> None:
    """Put a state in the place of the present one as part of the change that was made last; undo takes back both.

    Where the two together change nothing, nothing is left to undo.

    :param row: as :func:`locked_row` gives it; ``present`` what it holds.
    """
    last = Revision.objects.filter(season_key=key, undone=False).last()
    if last is not None and last.other_side is not None and last.other_side["form"] == state.form:
        last.delete()
    _put(key, row, state, present.form)


def step(key: str, *, back: bool) -> str:
    """Undo the last change (``back``), or make the one that was undone last again; give what it says.

    The revision then holds the state that was left, so that the step can be taken the other way.

    :raises NothingToUndo, NothingToRedo: there is no such change.
    """
    row = locked_row(key)
    revisions = Revision.objects.select_for_update().filter(season_key=key, undone=not back)
    revision = revisions.order_by("-pk" if back else "pk").first()
    if revision is None:
        raise NothingToUndo(key) if back else NothingToRedo(key)
    left = _plain(state_of(row)) if row is not None else None
    state = State(**revision.other_side) if revision.other_side is not None else None
    _put(key, row, state, left["form"] if left else None)
    revision.other_side, revision.undone = left, back
    revision.save()
    return revision.says


def _plain(state: State) -> dict[str, Any]:
    """Give a state as a revision keeps it; the form, which may hold thousands of lots, is not copied."""
    return {one.name: getattr(state, one.name) for one in fields(state)}


def _put(key: str, row: SeasonRow | None, state: State | None, before: Form | None) -> None:
    """Make the rows hold a state.

    :param before: the form that they hold.
    """
    if state is None:
        if row is not None:
            row.delete()
        return
    if row is None:
        row = SeasonRow(key=key, position=_next_position() if state.position is None else state.position)
    else:
        row.version += 1
    row.source_text, row.source_format = state.source_text, state.source_format
    row.photos = dict(state.photos)
    write_form(row, state.form, before)


def _next_position() -> int:
    last = SeasonRow.objects.aggregate(last=Max("position"))["last"]
    return 0 if last is None else last + 1


def _drop_oldest(key: str) -> None:
    newest_first = Revision.objects.filter(season_key=key).order_by("-pk")
    too_old = newest_first.values_list("pk", flat=True)[MOST_REVISIONS : MOST_REVISIONS + 1].first()
    if too_old is not None:
        Revision.objects.filter(season_key=key, pk__lte=too_old).delete()
