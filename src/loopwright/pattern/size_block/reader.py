"""Reads a pattern's size block as people paste it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from loopwright.pattern.size_block.checks import block_faults
from loopwright.pattern.size_block.figures import Taken, merged, spread, take_all
from loopwright.pattern.size_block.gauge import fabric_in, gauge_in, needles_in
from loopwright.pattern.size_block.lines import Part, Row, parts_of, rows_of
from loopwright.pattern.size_block.names import SizeName, is_name, names_in, sizes_label
from loopwright.pattern.size_block.tokens import Token, span_of
from loopwright.pattern.size_block.tree import BlockFault, MeasureRow, Of, PutUp, Reading, Remark, SizeBlock, YarnRow
from loopwright.pattern.size_block.words import Label, label_of, nearest_label, row_name, unit_symbol
from loopwright.pattern.size_block.yarn import yarn_in
from loopwright.units import BadInput, find_unit

__all__ = ["read_size_block"]

_DASH_HINT: Final = "a size without that figure is written as a dash: 86 (-, 102) cm"
_WANTED_UNIT: Final = "cm or in behind the figures or in the heading"
_WANTED_LABEL: Final = "a row's name in front of figures, such as Finished bust"
_TO_FIT: Final = {"to", "fit", "fits", "sizes"}
_MOST_NAMED: Final = 16
_MOST_LOOK_UPS: Final = 60
"""Labels for which the nearest known one is looked for, which takes a while; no size block has so many rows."""
_STITCHES: Final = {"st", "sts", "stitch", "stitches"}


def read_size_block(text: str) -> SizeBlock:
    r"""Read the lines in which a pattern states its sizes, measures, yarn and tension.

    Read are rows such as ``Finished bust: 86 (94, 102, 110) cm / 34 (37, 40, 43 1/4) in`` under the usual British and
    American labels, whichever of ``( ) [ ] { } , ; / |``, tabs or blanks part the sizes, with the unit at each figure,
    at the end, in the label or in a heading above. A dash is a size without the figure. Time grows with the length of
    the text alone.

    Nothing is raised: what is wrong stands in ``faults``, all of it, each with line and column; what was left out or
    could be taken in two ways stands in ``remarks``. A row whose figures cannot be told apart is left out.

    >>> block = read_size_block("Sizes: S (M, L)\nFinished bust: 86 (94, 102) cm")
    >>> block.sizes, [float(cm) for cm in block.rows[0].in_cm()]
    (('S', 'M', 'L'), [86.0, 94.0, 102.0])
    """
    return _Reader(text).read()


class _Reader:
    """Goes once over the rows, after it has looked for the one with the sizes."""

    def __init__(self, text: str) -> None:
        self.rows = rows_of(text)
        self.sizes: list[SizeName] = []
        self.measures: list[MeasureRow] = []
        self.yarn: list[YarnRow] = []
        self.block = SizeBlock()
        self.faults: list[BlockFault] = []
        self.remarks: list[Remark] = []
        self.context: Of | None = None
        self.unit: str | None = None
        self.in_yarn = False
        self.columns = 0
        self.look_ups = 0

    def read(self) -> SizeBlock:
        others = [(row, tokens) for row in self.rows if (tokens := self.sizes_out_of(row))]
        self.columns = len(self.sizes) or self.most_columns(tokens for _, tokens in others)
        for row, tokens in others:
            self.row(row, tokens)
        names = tuple(dict.fromkeys(name.text for name in self.sizes))
        whole = replace(self.block, sizes=names, rows=tuple(self.measures), yarn=tuple(self.roles()))
        self.faults += block_faults(whole)
        self.faults.sort(key=lambda fault: fault.place)
        self.remarks.sort(key=lambda remark: remark.place)
        return replace(whole, faults=tuple(self.faults), remarks=tuple(self.remarks))

    # ------------------------------------------------------------------------------------------------- sizes
    def sizes_out_of(self, row: Row) -> Sequence[Token]:
        """Take the size names out of a row; give the tokens that are left to read."""
        words = sizes_label(row)
        if not words or (words < 0 and self.sizes):
            return row.tokens
        end = _other_label(row.tokens, max(words, 0))
        names, left = names_in(row, words, row.tokens[end] if end else None)
        if self.sizes:
            self.remark(row.tokens[: end or None], "left out, because the sizes are named above")
            return row.tokens[end:] if end else []
        if not names:
            self.fault(row.tokens, "no size", "size names, such as XS (S, M, L)")
        seen: set[str] = set()
        for name in names:
            if not is_name(name.text):
                found = f'"{name.text}"'
                self.faults.append(BlockFault(name.place, len(name.text), found, "a size name, such as XS or 4-6"))
            if name.text in seen:
                found = f'"{name.text}" twice'
                self.faults.append(BlockFault(name.place, len(name.text), found, "each size named once"))
            seen.add(name.text)
        self.sizes = names
        self.remarks += [Remark(one.place, len(one.text), one.text, "left out, no size") for one in left]
        return row.tokens[end:] if end else []

    @staticmethod
    def most_columns(rows: Iterator[Sequence[Token]]) -> int:
        """Give how many figures most rows of measures have, where no size is named; of two the larger number."""
        counts: Counter[int] = Counter()
        for tokens in rows:
            for part in parts_of(tokens):
                if part.label is not None and part.label.kind == "measure":
                    counts.update(len(one.figures) for one in merged(next(take_all(part.body)).groups, part.units)[:1])
        return max(counts, key=lambda count: (counts[count], count), default=1)

    # -------------------------------------------------------------------------------------------------- rows
    def row(self, row: Row, tokens: Sequence[Token]) -> None:
        words = [token.name for token in tokens if token.kind == "word"]
        label = _first_label(tokens)
        if label is not None and label.kind == "gauge":
            self.gauge(Row([*tokens], row.chunks), said=True)
        elif (label is not None and label.kind == "needle") or {"needle", "needles"} & set(words[:4]):
            self.needle(tokens)
        elif _STITCHES & set(words) and tokens[0].kind == "number":
            self.gauge(Row([*tokens], row.chunks), said=False)
        else:
            for part in parts_of(tokens, yarn=self.in_yarn):
                self.part(part)

    def part(self, part: Part) -> None:
        figures = any(token.kind == "number" for token in part.body)
        if figures and part.label is not None and part.label.kind == "heading" and part.label.of is not None:
            part.label = Label("measure", "bust_girth", part.label.of)
            self.remark(part.words, "taken as the bust")
        kind = part.label.kind if part.label is not None else self.kind_of_unknown(part)
        self.in_yarn = kind in {"yarn", "ball"}
        if kind == "heading" or (kind == "measure" and not figures and not part.body):
            self.heading(part)
        elif kind == "yarn" and not figures:
            if part.body:
                self.remark(part.body, "left out, no amount")
        elif kind in {"yarn", "ball"}:
            self.yarn_row(part, amounts=kind == "yarn")
        elif kind == "measure":
            self.measure(part)
        else:
            self.unknown(part, figures=figures)

    @staticmethod
    def kind_of_unknown(part: Part) -> str:
        """Give what an unknown label may head: yarn, where balls are counted behind it."""
        counted = any(unit_symbol(token.name) == "balls" for token in part.body if token.name)
        return "yarn" if counted and any(token.kind == "number" for token in part.body) else "other"

    def heading(self, part: Part) -> None:
        """Note what a heading says of the rows below it."""
        names = {word.name for word in part.words}
        of = part.label.of if part.label is not None else None
        if part.label is not None and part.label.kind == "measure" and not names <= _TO_FIT:
            self.remark(part.tokens, "left out, no figures")
            return
        if of is not None or part.units:
            self.context = of or self.context
            self.unit = part.units[0] if part.units else self.unit
        elif names & {"inches", "inch"} or _last_name(part) == "in":
            self.unit = "in"
        if part.body and not any(token.kind == "number" for token in part.body):
            self.remark(part.body, "left out, not a row that is known here")
        elif part.body:
            self.fault(part.tokens, f'figures behind "{_text(part.words)}"', _WANTED_LABEL)

    def unknown(self, part: Part, *, figures: bool) -> None:
        near = None
        if figures and part.label is None and self.look_ups < _MOST_LOOK_UPS:
            near = nearest_label([word.name for word in part.words if word.kind == "word"])
            self.look_ups += 1
        if near is not None:
            found = f'"{_text(part.words)}", which is no row known here'
            self.fault(part.words, found, _WANTED_LABEL, f"did you mean {near}?")
        elif figures and not part.words:
            self.fault(part.tokens, f'"{_text(part.tokens)}" without a name', _WANTED_LABEL)
        elif part.tokens:
            self.remark(part.tokens, "left out, not a row that is known here")

    # ---------------------------------------------------------------------------------------------- measures
    def measure(self, part: Part) -> None:
        assert part.label is not None  # it is a measure's
        taken, readings = self.best_readings(part)
        self.faults += taken.faults
        for word in taken.left:
            self.remark([word], "left out")
        place, width = part.tokens[0].place, span_of(part.words or part.tokens)
        if not readings:
            self.fault(part.tokens, "no figures", f"{self.columns}, one for each size")
            return
        if not all(self.is_whole(reading, part) for reading in readings):
            return
        of = part.label.of or self.context
        row = MeasureRow(of or "finished", part.label.name, readings, part.label.half, place, width)
        if of is None and part.label.name == "bust_girth":
            says = "taken as the finished garment's; write To fit bust if it is the body's"
            self.remark(part.words or part.tokens, says)
        elif part.label.half:
            self.remark(part.words, "taken as measured flat; the girth is twice that")
        self.add(row)

    def best_readings(self, part: Part) -> tuple[Taken, tuple[Reading, ...]]:
        """Take the figures in the first way that gives one for each size."""
        units = part.units or ([self.unit] if self.unit else [])
        usual: tuple[Taken, tuple[Reading, ...]] | None = None
        for taken in take_all(part.body):
            readings = merged(taken.groups, units)
            if taken.for_all:
                readings = tuple(spread(one, self.columns) if len(one.figures) == 1 else one for one in readings)
            usual = usual or (taken, readings)
            if readings and all(len(reading.figures) == self.columns for reading in readings):
                return taken, readings
        assert usual is not None  # there is always the usual way
        return usual

    def is_whole(self, reading: Reading, part: Part) -> bool:
        """Say whether a reading has a unit of length and a figure for each size; if not, note the fault."""
        first, last = reading.figures[0], reading.figures[-1]
        if len(reading.figures) != self.columns:
            same_line = last.place.line == first.place.line
            width = last.place.column + last.width - first.place.column if same_line else first.width
            names = ", ".join(name.text for name in self.sizes[:_MOST_NAMED]) + ", …" * (len(self.sizes) > _MOST_NAMED)
            wanted = f"{self.columns}, {f'one for each of the sizes {names}' if names else 'as in other rows'}"
            found = f"{len(reading.figures)} {'figure' if len(reading.figures) == 1 else 'figures'}"
            hint = "write all sizes behind it if it holds for each" if len(reading.figures) == 1 else _DASH_HINT
            self.faults.append(BlockFault(first.place, max(width, 1), f"{found} for {_name(part)}", wanted, hint))
            return False
        unit = find_unit(reading.unit)
        if unit is None or unit.kind != "length":
            found = "figures without a unit" if not reading.unit else f'"{reading.unit}" for a length'
            self.faults.append(BlockFault(last.place, last.width, f"{found} for {_name(part)}", _WANTED_UNIT))
            return False
        return True

    def add(self, row: MeasureRow) -> None:
        """Add a row; one that was there in another unit is joined with it."""
        there = next((one for one in self.measures if (one.of, one.measure) == (row.of, row.measure)), None)
        if there is None:
            self.measures.append(row)
            return
        new = [one for one in row.readings if one.unit not in {reading.unit for reading in there.readings}]
        told_again = len(new) < len(row.readings) and not _same(there, row)
        if told_again or row.half != there.half:
            name = row_name(row.of, row.measure)
            wanted = f"each row once (it stands on line {there.place.line} as well)"
            self.faults.append(BlockFault(row.place, row.width, f"{name} twice", wanted))
        else:
            self.measures[self.measures.index(there)] = replace(there, readings=(*there.readings, *new))

    # --------------------------------------------------------------------------------------- yarn and tension
    def yarn_row(self, part: Part, *, amounts: bool) -> None:
        found = yarn_in(part, self.columns, amounts=amounts)
        self.faults += found.faults
        for word in found.left:
            self.remark([word], "left out")
        if found.put_up is not None:
            self.put_up(found.put_up, part)
        if found.row is None:
            return
        if any(one.role == found.row.role for one in self.yarn):
            self.fault(part.tokens, f"the yarn {found.row.role or 'main'} twice", "each yarn once")
        else:
            self.yarn.append(found.row)

    def roles(self) -> Iterator[YarnRow]:
        """Give the rows of yarn; one without a role is the main yarn, or a sum where the main yarn has its own."""
        named = {row.role for row in self.yarn}
        for row in self.yarn:
            if row.role:
                yield row
            elif "main" not in named:
                yield replace(row, role="main")
            else:
                says = "left out, because the main yarn has a row of its own"
                self.remarks.append(Remark(row.place, row.width, "Yarn", says))

    def put_up(self, put_up: PutUp, part: Part) -> None:
        before = self.block.put_up
        if before is not None and _disagree(before, put_up):
            hint = "give the amounts of the second in metres or yards"
            self.fault(part.tokens, "two sizes of ball", "one, since a pattern's facts hold one", hint)
        elif before is None:
            self.block = replace(self.block, put_up=put_up)
        else:
            joined = PutUp(before.length or put_up.length, before.mass or put_up.mass, before.place)
            self.block = replace(self.block, put_up=joined)

    def gauge(self, row: Row, *, said: bool) -> None:
        self.in_yarn = False
        if said and not any(token.kind == "number" for token in row.tokens):
            if len(row.tokens) > 2:
                self.remark(row.tokens, "left out, no figures")
            return
        try:
            found = gauge_in(row)
        except BadInput as problem:
            if said:
                self.fault(row.tokens, f'"{problem.found}"', problem.wanted, problem.hint)
            else:
                self.remark(row.tokens, "left out, not a row that is known here")
            return
        if self.block.gauge is not None and self.block.gauge != found.gauge:
            self.fault(row.tokens, "the tension twice", "one tension, of the fabric that decides the size")
            return
        fabric = fabric_in(found.rest) or self.block.fabric
        needles = needles_in(found.rest_tokens)
        needle_mm = needles[0] if len(needles) == 1 and self.block.needle_mm is None else self.block.needle_mm
        self.block = replace(self.block, gauge=found.gauge, gauge_text=found.text, fabric=fabric, needle_mm=needle_mm)

    def needle(self, tokens: Sequence[Token]) -> None:
        self.in_yarn = False
        needles = needles_in(tokens)
        if len(needles) == 1:
            self.block = replace(self.block, needle_mm=needles[0])
        elif needles:
            self.remark(tokens, "left out: several needles, and one is wanted, that of the tension")
        else:
            self.remark(tokens, "left out: no needle in millimetres")

    # -------------------------------------------------------------------------------------- faults and remarks
    def fault(self, tokens: Sequence[Token], found: str, wanted: str, hint: str | None = None) -> None:
        self.faults.append(BlockFault(tokens[0].place, span_of(tokens), found, wanted, hint))

    def remark(self, tokens: Sequence[Token], says: str) -> None:
        self.remarks.append(Remark(tokens[0].place, span_of(tokens), _text(tokens), says))


def _first_label(tokens: Sequence[Token]) -> Label | None:
    """Give the label that a row's leading words name, the longest that is known."""
    words: list[str] = []
    found = None
    for token in tokens[:6]:
        if token.kind != "word":
            break
        words.append(token.name)
        found = label_of(words) or found
    return found


def _other_label(tokens: Sequence[Token], start: int) -> int:
    """Give where, behind size names, another row begins on the same line; 0 for nowhere."""
    for at in range(start + 1, len(tokens)):
        if tokens[at].kind != "word":
            continue
        for length in (2, 1):
            names = [token.name for token in tokens[at : at + length] if token.kind == "word"]
            label = label_of(names)
            long_enough = len("".join(names)) > 3 or names == ["to", "fit"]
            if label is not None and label.kind != "sizes" and long_enough and label.kind != "heading":
                return at
    return 0


def _same(there: MeasureRow, row: MeasureRow) -> bool:
    both = {reading.unit: reading for reading in there.readings}
    return all(both.get(reading.unit, reading) == reading for reading in row.readings)


def _disagree(one: PutUp, other: PutUp) -> bool:
    pairs = ((one.length, other.length), (one.mass, other.mass))
    for first, second in pairs:
        if first is not None and second is not None:
            low, high = sorted(reading.in_base(reading.figures[0].value or 0) for reading in (first, second))  # type: ignore[arg-type]
            if (high - low) * 50 > high:
                return True
    return False


def _name(part: Part) -> str:
    """Give the words of a label, for a fault."""
    return f'"{_text(part.words)}"' if part.words else "a row"


def _last_name(part: Part) -> str:
    return part.words[-1].name if part.words else ""


def _text(tokens: Sequence[Token]) -> str:
    """Write tokens on one line, not too long."""
    text = ""
    for token in tokens[:40]:
        text += (" " if token.spaced or token.kind in {"break", "tab"} else "") + token.text
    text = " ".join(text.split())
    return text if len(text) <= 80 else f"{text[:79]}…"
