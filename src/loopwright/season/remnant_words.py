"""What a remnant can still knit, in sentences."""

from __future__ import annotations

from loopwright.season.remnant_report import RemnantReport
from loopwright.season.wording import Wording
from loopwright.units import write_share

__all__ = ["remnant_lines"]


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
