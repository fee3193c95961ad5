"""Where the verb ``chart`` takes its chart from: a file, a season, or a picture."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypeVar

from pydantic import TypeAdapter, ValidationError

from loopwright.chart import Chart, ChartRole, read_chart_csv, read_chart_svg
from loopwright.chart.from_picture import PictureChart, PictureWish, chart_from_picture
from loopwright.chart.grid import named_roles
from loopwright.chart.png_form import read_chart_png
from loopwright.colour import read_hex, write_hex
from loopwright.fabric import Gauge, GaugeField
from loopwright.files import read_season
from loopwright.season import Season
from loopwright.season.chart_report import USUAL_GAUGE, ChartReport, chart_report, report_of
from loopwright.season.wording import Wording
from loopwright.units import BadInput, Measures, Reader, Words, read_grist_tex

__all__ = ["Asked", "Source", "source_of"]

Read = TypeVar("Read")
MOST_BYTES = 25_000_000
_GAUGE = TypeAdapter[Gauge](GaugeField)


@dataclass(frozen=True, slots=True)
class Asked:
    """What was asked for, as it was written."""

    file: Path | None
    key: str | None
    picture: Path | None
    palette: str
    colours: int
    stitches: int
    two_in_a_row: bool
    dither: bool
    despeckle: bool
    gauge: str | None
    grist: str | None
    limit: int | None
    in_the_round: bool


@dataclass(frozen=True, slots=True)
class Source:
    """A chart worked out, and how to tell it.

    :ivar picture: where it comes from a picture, how far it is from it.
    :ivar season: where it is a season's, under ``key``.
    """

    name: str
    report: ChartReport
    wording: Wording
    picture: PictureChart | None = None
    season: Season | None = None
    key: str = ""


def source_of(asked: Asked, measures: Measures | None, words: Words | None) -> Source:
    """Read the chart that is asked for.

    :raises BadInput: nothing or two things are asked for, or what is there cannot be read.
    """
    if (asked.file is None) == (asked.picture is None):
        raise BadInput(
            found="neither a file nor a picture" if asked.file is None else "a file and a picture",
            wanted="one of the two",
            place="FILE",
        )
    if asked.file is not None and asked.file.suffix.lower() in {".toml", ".json"}:
        return _from_season(asked, asked.file, measures, words)
    if asked.key is not None:
        raise BadInput(found=asked.key, wanted="a key only with a season file", place="CHART")
    wording = Wording(Reader(measures=measures or "metric", words=words or "british"))
    gauge = _gauge_of(asked.gauge)
    if asked.picture is not None:
        made = _at(asked.picture, lambda content: chart_from_picture(content, _wish(asked, gauge or USUAL_GAUGE)))
        chart = replace(made.chart, in_the_round=asked.in_the_round)
        return Source(asked.picture.name, _report(asked, chart, gauge), wording, replace(made, chart=chart))
    assert asked.file is not None
    chart = _from_file(asked, asked.file)
    if asked.in_the_round:
        chart = replace(chart, in_the_round=True)
    return Source(asked.file.name, _report(asked, chart, gauge), wording)


def _report(asked: Asked, chart: Chart, gauge: Gauge | None) -> ChartReport:
    tex = {} if asked.grist is None else {role.name: read_grist_tex(asked.grist) for role in chart.roles}
    return report_of(
        chart,
        gauge or USUAL_GAUGE,
        gauge_from="as stated" if gauge else "the usual of a DK yarn, since none was stated",
        counted=gauge is not None,
        tex=tex,
        limit=_limit(asked.limit),
    )


def _from_season(asked: Asked, file: Path, measures: Measures | None, words: Words | None) -> Source:
    season = read_season(file)
    wording = Wording(Reader(measures=measures or season.measures, words=words or season.words), season.today.year)
    key = asked.key or _only_chart(season)
    report = chart_report(season, key)
    stated = (asked.gauge, asked.grist, asked.limit)
    if any(one is not None for one in stated):
        chart = report.chart
        anew = _report(asked, chart, _gauge_of(asked.gauge) or report.gauge)
        named = {one.role: one.name for one in report.roles}
        roles = tuple(replace(one, name=named[one.role]) for one in anew.roles)
        told_from = "as stated" if asked.gauge else report.gauge_from
        report = replace(anew, roles=roles, fits=report.fits, garment=report.garment, gauge_from=told_from)
    return Source(season.chart_by_key[key].name, report, wording, season=season, key=key)


def _only_chart(season: Season) -> str:
    keys = list(season.chart_by_key)
    if len(keys) != 1:
        known = ", ".join(keys) or "none"
        raise BadInput(found="no key", wanted=f"the key of one of the season's charts ({known})", place="CHART")
    return keys[0]


def _from_file(asked: Asked, file: Path) -> Chart:
    suffix = file.suffix.lower()
    if suffix == ".png":
        palette = _palette(asked.palette)
        return _at(file, lambda content: read_chart_png(content, palette))
    if suffix == ".csv":
        return _at(file, lambda content: read_chart_csv(_text(content)))
    if suffix == ".svg":
        return _at(file, lambda content: read_chart_svg(_text(content)))
    raise BadInput(
        found=file.name,
        wanted="a name that ends in .csv, .png, .svg, .toml or .json",
        place="FILE",
        hint=_photo_hint(suffix),
    )


def _photo_hint(suffix: str) -> str | None:
    return "a photo is turned into a chart with --picture" if suffix in {".jpg", ".jpeg", ".webp"} else None


def _at(file: Path, read: Callable[[bytes], Read]) -> Read:
    """Read a file's content; a fault names the file."""
    try:
        if file.stat().st_size > MOST_BYTES:
            raise BadInput(found=f"{file.stat().st_size / 1e6:.0f} MB", wanted=f"at most {MOST_BYTES // 1_000_000} MB")
        return read(file.read_bytes())
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        raise BadInput(found=reason, wanted="a file that can be read", place=str(file)) from error
    except BadInput as fault:
        raise fault.at(file.name) from None


def _text(content: bytes) -> str:
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError as error:
        raise BadInput(found="a file that is not UTF-8", wanted="text in UTF-8") from error


def _gauge_of(text: str | None) -> Gauge | None:
    if text is None:
        return None
    try:
        return _GAUGE.validate_python(text)
    except ValidationError as error:
        raise BadInput(found=text, wanted='a gauge such as "22 sts x 30 rows = 10 cm"', place="--gauge") from error
    except BadInput as fault:
        raise fault.at("--gauge") from None


def _limit(limit: int | None) -> int | None:
    if limit is not None and limit < 1:
        raise BadInput(found=f"{limit}", wanted="one stitch or more", place="--limit")
    return limit


def _wish(asked: Asked, gauge: Gauge) -> PictureWish:
    return PictureWish(
        stitches=asked.stitches,
        gauge=gauge,
        palette=_palette(asked.palette),
        colours=asked.colours,
        two_in_a_row=asked.two_in_a_row,
        dither=asked.dither,
        despeckle=asked.despeckle,
    )


def _palette(text: str) -> tuple[ChartRole, ...]:
    """Read ``#dccdae,rust=#a2502f``; colours without a name are the main one and contrasts in their order."""
    parts = [part.strip() for part in text.split(",") if part.strip()]
    named = [part.rpartition("=") for part in parts]
    try:
        shades = [write_hex(read_hex(shade)) for _, _, shade in named]
    except BadInput as fault:
        raise fault.at("--palette") from None
    usual: Sequence[ChartRole] = named_roles(shades)
    return tuple(
        ChartRole(name.strip() or role.name, shade)
        for (name, _, _), role, shade in zip(named, usual, shades, strict=True)
    )
