"""What each table and field of a season file means, in the words of the person who fills it in.

The docstrings of the records are the first source. Where they are silent, or speak to programmers, the words
stand here; those for the measures of a body come from its own table of measures.
"""

from __future__ import annotations

import inspect
import re
from typing import Final

from loopwright.body import MEASURES, Measures
from loopwright.records import Record

__all__ = ["field_words", "record_words"]

_IVAR = re.compile(r"^:ivar (?P<names>[\w, ]+): (?P<words>.*?)(?=\n:|\n\n|\Z)", re.MULTILINE | re.DOTALL)
_FILE_KEY = re.compile(r"\s*\(file key `[^`]*`\)")

_ANYWHERE: Final = {
    "name": "what you call it",
    "note": "anything you want to remember",
    "fabric": "the fabric, such as stocking stitch, garter stitch or 1x1 rib",
    "needle": "diameter of the needle",
    "colour": "the colour, by the name on the band",
}
_RECORDS: Final = {
    "Season": "The fields at the top of the file, before the first table.",
    "Body": "A person's measures; leave out what you have not measured.",
    "EarlierMeasures": "Measures of an earlier day; those that have not changed since need not stand here.",
    "Ease": "Finished measure minus body measure, where you want a certain one; elsewhere the fit decides.",
    "RoleAmount": "Yarn that the pattern asks for in one role: as a length, a mass or whole balls, one of the three.",
    "RolePlan": "Which yarn plays a role, such as main or contrast. The key is the role.",
    "FinishedMeasures": "Finished measures of the garment per size, after washing; girths go all the way round.",
    "ToFit": "Body measures that each size is meant for; a man's or child's chest stands as the bust.",
    "Changes": "What you make otherwise than the pattern says; lengths are finished, after washing.",
    "Lot": "Yarn of one dye lot that you own: whole put-ups, or a mass on the scale, or both.",
    "Pace": "How fast you knit.",
    "Shop": "Where you can buy yarn. Taxes and fees at the border are your own figures: check the official page.",
    "RepeatPart": "The part of a chart that is worked again and again.",
    "YarnOrder": "A parcel you have ordered: what is in it and when it should be here.",
}
_FIELDS: Final = {
    "Season.hours_a_week": "hours that you knit in a usual week",
    "Season.days_off": "days without knitting",
    "Season.currency": "what everything is reckoned in: an ISO 4217 code, such as NZD",
    "Season.rates": 'what one unit of another currency costs in yours, such as EUR = "1.85"',
    "Season.rates_as_of": "the day on which you looked up the rates",
    "Season.purse": "what you will spend on yarn, postage and border charges included",
    "Season.measures": "how results are shown; in the file you may write either",
    "Season.words": "British or American terms of the trade",
    "Season.pace": "how fast you knit",
    "Season.bodies": "the people you knit for",
    "Season.yarns": "the yarns that you own or think of buying",
    "Season.swatches": "what you have knitted, washed, measured and weighed",
    "Season.cupboard": "the yarn that you own, down to the remnant",
    "Season.patterns": "the facts of the patterns",
    "Season.garments": "what you make",
    "Season.shops": "where you can buy",
    "Season.orders": "parcels on their way",
    "Season.charts": "charts of colours and stitches",
    "DaysOff.from": "first day without knitting",
    "DaysOff.until": "last day without knitting",
    "Pace.stitches_per_minute": "plain knit stitches a minute while you knit; left out, 30",
    "Pace.fabrics": 'your own stitches a minute in a fabric, such as "1x1 rib" = 24',
    "Pace.overhead": "time on top for counting, reading and small mistakes",
    "Body.name": "the person's name",
    "Body.wearer": "whose sizes apply",
    "Body.age_years": "age in years; for a child it decides which cautions are shown",
    "Body.measured_on": "the day on which the measures were taken",
    "Body.taken_on": "the day of each measure that was taken on another day, such as hip_girth = 2027-02-20",
    "Body.earlier": "what was measured before and has changed since",
    "Yarn.name": "the name on the band",
    "Yarn.fibres": "fibres in percent by mass, such as wool = 80 and nylon = 20; they sum to 100",
    "Yarn.length": "length of one put-up (ball, skein, hank, cake or cone)",
    "Yarn.mass": "mass of one put-up",
    "Yarn.needle": "needle that the band suggests",
    "Yarn.plies": "how many singles are twisted together",
    "Swatch.needle": "needle it was knitted on",
    "Swatch.mass": "mass of the washed swatch",
    "Swatch.width": "width of the washed swatch",
    "Swatch.height": "height of the washed swatch",
    "Lot.shade": "the colour's likeness on a screen; judge the yarn itself in daylight",
    "Lot.kept_in": "where it lies",
    "PatternFacts.name": "the pattern's name",
    "PatternFacts.by": "who designed it",
    "PatternFacts.construction": "how it is built",
    "PatternFacts.wearer": "for whom its sizes are",
    "PatternFacts.fabric": "its main fabric, such as stocking stitch or garter stitch",
    "PatternFacts.needle": "needle that the pattern suggests",
    "PatternFacts.to_fit": "the body measures that each size is meant for",
    "PatternFacts.finished": "the finished measures that it states",
    "PatternFacts.ease": "the ease that it means; left out, it follows from to_fit and finished",
    "PatternFacts.opens_in_front": "whether it is a cardigan",
    "PatternFacts.ball_length": "put-up of the yarn it was written for: length; needed for amounts in balls or grams",
    "PatternFacts.ball_mass": "put-up of the yarn it was written for: mass; needed for amounts in balls or grams",
    "PatternFacts.yarn": "the yarn that it asks for, by role",
    "ToFit.bust_girth": "full bust, or chest, of the body",
    "ToFit.waist_girth": "natural waist of the body",
    "ToFit.hip_girth": "hip of the body",
    "ToFit.upper_arm_girth": "upper arm of the body",
    "ToFit.shoulder_width": "shoulder to shoulder across the back of the body",
    "ToFit.head_girth": "head",
    "FinishedMeasures.bust_girth": "bust or chest, all the way round",
    "FinishedMeasures.waist_girth": "waist, all the way round",
    "FinishedMeasures.hip_girth": "hem at the hip, all the way round",
    "FinishedMeasures.upper_arm_girth": "sleeve at its widest, all the way round",
    "FinishedMeasures.wrist_girth": "cuff, all the way round",
    "FinishedMeasures.shoulder_width": "across the back from shoulder to shoulder",
    "FinishedMeasures.head_girth": "brim of a hat, all the way round",
    "FinishedMeasures.length": "shoulder to hem of a top; brim to crown of a hat; end to end of a rectangle or cowl",
    "FinishedMeasures.armhole_depth": "straight down from shoulder to underarm",
    "FinishedMeasures.sleeve_length": "underarm to wrist",
    "FinishedMeasures.width": "across the top edge of a shawl; the width of a rectangle; the girth of a cowl",
    "FinishedMeasures.depth": "middle of a shawl's top edge to its point or rim",
    "RoleAmount.length": "length of yarn",
    "RoleAmount.mass": "mass of yarn",
    "RoleAmount.balls": "whole balls, as the pattern rounded them up",
    "Garment.pattern": "key of the pattern",
    "Garment.for": "key of the body that it is for",
    "Garment.swatch": "key of the swatch; leave it out while there is none",
    "Garment.ease": "the ease you want, point by point",
    "Garment.changes": "what you make otherwise than the pattern says",
    "Garment.yarns": "which yarn plays which role",
    "Garment.begun_on": "the day you cast on",
    "Garment.knitted_off_on": "the day the last stitch was cast off",
    "Garment.done_on": "the day it was dry and finished",
    "Garment.set_aside": "whether you have put it away for now",
    "Ease.bust_girth": "at the bust or chest",
    "Ease.waist_girth": "at the waist",
    "Ease.hip_girth": "at the hip",
    "Ease.upper_arm_girth": "at the upper arm",
    "Ease.shoulder_width": "across the shoulders",
    "Ease.head_girth": "round the head",
    "Changes.body_longer": "how much longer the body is; with a minus sign, shorter",
    "Changes.sleeves_longer": "how much longer the sleeves are; with a minus sign, shorter",
    "Strand.yarn": "key of the other yarn",
    "Shop.name": "the shop's name",
    "Shop.country": "where it is",
    "Shop.currency": "the currency of all its prices: an ISO 4217 code, such as EUR",
    "Shop.postage": "what it takes to send a parcel",
    "Shop.days_to_arrive": "days from order to door",
    "Shop.days_to_arrive_sd": "how far that strays, as a standard deviation in days",
    "Shop.border_tax": "share of goods and postage taken at the border, as the official page has it",
    "Shop.offers": "what it sells",
    "Postage.packing": "mass of the wrapping, added to the yarn's",
    "PostageStep.up_to": "heaviest parcel at this price, wrapping included",
    "PostageStep.price": "postage up to that mass",
    "RepeatPart.from_stitch": "its first stitch, counted from the right as below the chart",
    "RepeatPart.to_stitch": "its last stitch",
    "RepeatPart.from_row": "its first row",
    "RepeatPart.to_row": "its last row; left out, the last of the chart",
    "YarnOrder.shop": "where it comes from",
    "YarnOrder.lines": "what is in it",
    "OrderLine.yarn": "key of the yarn",
    "OrderLine.put_ups": "how many put-ups",
    "OrderLine.dye_lot": "dye lot, if the shop has said",
}
_MEASURED: Final = {"mass": "the person's mass, never needed; where it is given, it helps to fill gaps"}


def record_words(model: type[Record]) -> str:
    """Say in a sentence or two what a table is."""
    first = inspect.cleandoc(model.__doc__ or "").split("\n\n")[0]
    return _RECORDS.get(model.__name__) or _plain(first)


def field_words(model: type[Record], alias: str, name: str) -> str:
    """Say what a field means; empty if nobody has said it yet.

    :param alias: the field in the file's words.
    :param name: the field in the record.
    """
    own = _FIELDS.get(f"{model.__name__}.{alias}")
    if own is None and issubclass(model, Measures):
        own = MEASURES[alias].name if alias in MEASURES else _MEASURED.get(alias)
    return own or _docstring_words(model).get(name) or _ANYWHERE.get(alias, "")


def _docstring_words(model: type[Record]) -> dict[str, str]:
    words = {}
    for record in reversed(model.__mro__):
        for match in _IVAR.finditer(inspect.cleandoc(vars(record).get("__doc__") or "")):
            for name in match["names"].split(","):
                words[name.strip()] = _plain(match["words"]).rstrip(".")
    return words


def _plain(text: str) -> str:
    """Give a docstring's text without its mark-up, on one line."""
    one_line = " ".join(text.replace("``", "`").split())
    return _FILE_KEY.sub("", one_line)
