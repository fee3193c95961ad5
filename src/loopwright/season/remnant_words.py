"""A remnant in words: its mass as a person writes it, and what it can still knit, in sentences."""

from __future__ import annotations

from loopwright.season.remnant_report import RemnantReport
from loopwright.season.wording import Wording
from loopwright.units import BadInput, read_mass_g, write_share

__all__ = ["read_remnant_g", "remnant_lines"]


def read_remnant_g(text: str, place: str) -> float:
    """Read the mass of a remnant, in grams.

    :param place: what the field or option that it is written in is called.
    :raises BadInput: it is no mass with its unit, or weighs nothing.
    """
    try:
        mass_g = read_mass_g(text)
    except BadInput as fault:
        raise fault.at(place) from fault
    if mass_g <= 0:
        raise BadInput(found=text, wanted="a mass above nothing, such as 38 g", place=place)
    return mass_g


def remnant_lines(report: RemnantReport, wording: Wording) -> list[str]:
    """Give the answer, then how far it reaches and where to use it, a sentence each."""
    noun = "round" if report.in_the_round else "row"
    one = f"one {report.section} of {report.made}" if report.made > 1 else f"the {report.section}"
    left = report.rows - report.done
    lines = [
        f"{wording.estimate(report.have_m)} of {report.role}, and {one} takes {wording.estimate(report.need_m)} "
        f"from here, {wording.counted(left, noun)}.",
        f"It finishes it {write_share(report.p_finish)} sure.",
        f"It knits {wording.counted(report.rows_sure, noun)} from here {write_share(report.sureness)} sure, "
        f"{report.rows_even} as likely as not.",
    ]
    if report.finishes_after >= report.rows:
        lines.append(f"It does not finish it from any {noun} that sure.")
    elif report.p_finish < report.sureness:
        lines.append(f"Used for the end, it finishes it once {wording.counted(report.finishes_after, noun)} are done.")
    if report.then_m is not None and report.change_after is None:
        lines.append(f"With {wording.estimate(report.then_m)} of the other colour there is no {noun} to change at.")
    elif report.change_after is not None:
        first, last = report.change_after
        lines.append(f"Change to the other colour after {noun} {first} at the earliest and {last} at the latest.")
    return lines
