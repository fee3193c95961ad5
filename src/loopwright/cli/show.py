"""How a plan is printed for people: sentences first, the evidence indented below them."""

from __future__ import annotations

import sys
from collections.abc import Iterable

from rich import box
from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from loopwright.season import Answer, Caution, GarmentPlan, RolePlanned, SeasonPlan
from loopwright.season.wording import Wording
from loopwright.units import Reader, write_share

__all__ = ["console", "show_answer", "show_plan", "table"]

WIDTH = 100
_STYLES = {"yes": "green", "unsure": "yellow", "no": "red", "plain": "none"}


def console() -> Console:
    """Make the console that prints to standard output: 100 wide where it is no terminal, colour where one has it."""
    made = Console(file=sys.stdout, highlight=False, markup=False, emoji=False, soft_wrap=False)
    made.width = min(made.width, WIDTH) if made.is_terminal else WIDTH
    return made


def table(*headings: str, numbers: Iterable[str] = ()) -> Table:
    """Make a table without lines.

    :param numbers: headings whose columns stand at the right.
    """
    right = set(numbers)
    made = Table(box=box.SIMPLE_HEAD, show_edge=False, pad_edge=False)
    for heading in headings:
        made.add_column(heading, justify="right" if heading in right else "left")
    return made


def show_plan(planned: SeasonPlan, reader: Reader) -> None:
    """Print the season's answers, each garment's, and the cautions."""
    out = console()
    wording = Wording(reader, planned.today.year)
    out.print(Text(planned.name, style="bold"))
    out.print(f"as of {Wording(reader).date(planned.today)}")
    for answer in planned.answers:
        show_answer(out, answer)
        if answer.key == "order" and answer.figures:
            _show_order(out, answer)
    for garment in planned.garments:
        _show_garment(out, garment, wording)
    _show_cautions(out, "Take care", planned.cautions)


def _show_order(out: Console, answer: Answer) -> None:
    """Print the order of making as lines: place, garment, where it stands and from when."""
    made = Table(box=None, show_header=False, show_edge=False, pad_edge=False)
    for place, figure in enumerate(answer.figures, start=1):
        made.add_row(Text(f"{place}"), Text(figure.label), Text(figure.text))
    out.print()
    out.print(Padding(made, (0, 0, 0, 2), expand=False))


def _show_garment(out: Console, garment: GarmentPlan, wording: Wording) -> None:
    out.print()
    out.rule(Text.assemble((garment.name, "bold"), f", {garment.state}"), align="left", characters="─")
    for answer in garment.answers:
        show_answer(out, answer)
    if garment.roles:
        out.print()
        out.print(Padding(_roles_table(garment.roles, wording), (0, 0, 0, 2), expand=False))
    _show_cautions(out, "Take care with this one", garment.cautions)


def show_answer(out: Console, answer: Answer) -> None:
    """Print one answer: the question, the sentence, and the reasons indented."""
    out.print()
    out.print(Text(answer.question, style="bold"))
    _indented(out, Text(answer.sentence, style=_STYLES[answer.tone]), 2)
    for reason in answer.reasons:
        _indented(out, Text(reason), 4)


def _roles_table(roles: Iterable[RolePlanned], wording: Wording) -> Table:
    numbers = ("need", "have", "enough?", "balls in all", "to buy")
    made = table("role", "yarn", wording.word("colour"), *numbers, numbers=numbers)
    for role in roles:
        made.add_row(
            *(Text(text) for text in (role.role, role.yarn_name, role.colour)),
            wording.estimate(role.need_m),
            wording.yarn(role.have_m.mean),
            write_share(role.p_enough),
            str(role.balls_in_all),
            str(role.balls_to_buy) if role.balls_to_buy else "–",
        )
    return made


def _show_cautions(out: Console, heading: str, cautions: Iterable[Caution]) -> None:
    said = [*cautions]
    if not said:
        return
    out.print()
    out.print(Text(heading, style="bold"))
    for caution in said:
        _indented(out, Text(caution.text), 2)


def _indented(out: Console, text: Text, by: int) -> None:
    for line in text.wrap(out, out.width - by):
        line.rstrip()
        out.print(Text(" " * by).append_text(line))
