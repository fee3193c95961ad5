"""Which lot knits what, answered in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from loopwright.allotment import Change, Hiding, HidingPlace, Lack, LotUse, SectionDemand
from loopwright.season.allotted import Allotted
from loopwright.season.result import Answer, Figure
from loopwright.season.wording import Wording
from loopwright.units import write_share

__all__ = ["allot_answer", "lot_words", "parts_words"]

_PLURAL = {"cuff": "cuffs", "sleeve": "sleeves", "front band": "front bands", "armband": "armbands"}
_PLURAL["lower sleeve"] = "lower thirds of the sleeves"


def lot_words(lots: Sequence[str], names: Mapping[str, str] | None = None) -> str:
    """Give lots of one dye lot by their keys, or by their names where these are given."""
    return " with ".join((names or {}).get(lot, lot) for lot in lots) or "other yarn"


def parts_words(sections: Sequence[SectionDemand], wording: Wording) -> str:
    """Give sections by the parts of the garment that they are, such as ``the hem and both sleeves``."""
    by_part: dict[str, set[str]] = {}
    for one in sections:
        by_part.setdefault(one.part or one.name, set()).add(one.key.rsplit("/", 2)[1])
    return wording.listed([_part(part, len(pieces)) for part, pieces in by_part.items()])


def _part(part: str, pieces: int) -> str:
    if part not in _PLURAL or pieces < 2:
        return f"the {part}"
    return f"both {_PLURAL[part]}" if part != "lower sleeve" else f"the {_PLURAL[part]}"


def allot_answer(found: Allotted, garment: str, wording: Wording) -> Answer:
    """Answer *Which lot knits what?* for one garment."""
    question = "Which lot knits what?"
    own = [one for one in found.problem.sections if one.garment == garment]
    lacks = [lack for lack in found.allotment.lacks if lack.garment == garment]
    if not own:
        return Answer(key="allot", question=question, sentence="Not known: nothing of it is known to knit.", tone="no")
    changes = [one for one in found.allotment.changes if one.one in {section.key for section in own} and all(one.lots)]
    figures = tuple(
        Figure(
            label=f"{lot_words(use.lots, found.names)}: {wording.yarn(use.used_m)} used",
            text=f"{write_share(use.p_enough)} sure",
        )
        for use in _uses(found, own)
    )
    if lacks:
        sections = {one.key: one for one in own}
        bare = parts_words([sections[key] for lack in lacks for key in lack.sections], wording)
        return Answer(
            key="allot",
            question=question,
            sentence=f"Not all of it can be knitted: no yarn is sure enough for {bare}.",
            tone="no",
            reasons=tuple(_lack_reasons(found, lacks, wording)) + tuple(_change_words(found, changes)),
            figures=figures,
        )
    return Answer(
        key="allot",
        question=question,
        sentence=_covered(changes, wording),
        tone="unsure" if any(one.note for one in changes) else "yes",
        reasons=tuple(_change_words(found, changes)),
        figures=figures,
    )


def _uses(found: Allotted, own: Sequence[SectionDemand]) -> list[LotUse]:
    keys = {one.key for one in own}
    lots = {portion.lots for portion in found.allotment.portions if portion.section in keys}
    return [use for use in found.allotment.uses if use.lots in lots]


def _covered(changes: Sequence[Change], wording: Wording) -> str:
    if not changes:
        return "Each colour comes from one dye lot: no two of them meet."
    places = wording.listed(sorted({f"the {one.place}" for one in changes}))
    if any(one.note for one in changes):
        return f"All of it, with two dye lots on a plain field; they meet at {places}."
    return f"All of it; dye lots change at {places}."


def _change_words(found: Allotted, changes: Sequence[Change]) -> Iterator[str]:
    names = {one.key: one.name for one in found.problem.sections}
    begins = {key: name[:1].upper() + name[1:] for key, name in names.items()}
    for one in changes:
        before, after = (lot_words(lots, found.names) for lots in one.lots)
        note = f": {one.note}" if one.note else ""
        if one.one == one.other:
            row = found.change_rows.get(one.one)
            where = f" after about row {row[0]} of {row[1]}" if row else ""
            yield f"{begins[one.one]}: change from {before} to {after}{where}{note}."
        else:
            yield f"{begins[one.one]} in {before} meets {names[one.other]} in {after}, {one.place}{note}."


def _lack_reasons(found: Allotted, lacks: Sequence[Lack], wording: Wording) -> Iterator[str]:
    hidden = {(one.garment, one.role): one for one in found.hidden}
    for lack in lacks:
        role = lack.garment, lack.role
        have, want = wording.yarn(lack.have_m), wording.yarn(lack.want_m)
        if lack.kind == "no lot":
            yield f"There is no yarn for {lack.role} at home or on its way; {want} would be sure enough."
        elif lack.kind == "too little":
            yield f"All lots for {lack.role} hold {have} of the {want} that would be sure enough."
        else:
            yield (
                f"All lots for {lack.role} hold {have}, and {want} would do, but not so that two dye lots keep off one "
                "plain field and each is sure enough."
            )
        if role in found.alternating:
            yield f"With rows of two dye lots alternated on a plain field, all of {lack.role} can be knitted."
        if role in hidden:
            yield _hidden_words(hidden[role], found.names, wording)


def _hidden_words(hidden: Hiding, names: Mapping[str, str], wording: Wording) -> str:
    if not hidden.best:
        return "Parts that hide another colour well do not free enough, even all together."
    parts = wording.listed([_place_words(place) for place in hidden.best])
    freed = wording.yarn(sum(place.length_m for place in hidden.best))
    where = f"in {lot_words(hidden.substitutes[:1], names)}" if hidden.substitutes else "in another colour"
    sure = f"you are {write_share(hidden.p_best)} sure" if hidden.holds else "the length suffices, but not lot by lot"
    return f"Knit {parts} {where}, which frees {freed}, and {sure}."


def _place_words(place: HidingPlace) -> str:
    pieces = {key.rsplit("/", 2)[1] for key in place.sections}
    return _part(place.part, len(pieces))
