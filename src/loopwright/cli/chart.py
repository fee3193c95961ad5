"""The verb ``chart``."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from loopwright.cli.options import AsJson, MeasuresOption, WordsOption

__all__ = ["chart"]

FileArgument = Annotated[
    Path | None,
    typer.Argument(
        metavar="FILE",
        help="A chart as .csv, .png with one point a cell, or .svg written here; or a season file.",
        show_default=False,
    ),
]
ChartArgument = Annotated[
    str | None, typer.Argument(metavar="CHART", help="The key of one of the season's charts.", show_default=False)
]
PictureOption = Annotated[
    Path | None, typer.Option("--picture", metavar="FILE", help="Turn this JPEG, PNG or WebP into a chart.")
]
PaletteOption = Annotated[
    str | None,
    typer.Option(
        "--palette",
        metavar="COLOURS",
        help='Yarns with commas between, "#dccdae,rust=#a2502f"; else found in the picture.',
    ),
]
ColoursOption = Annotated[int, typer.Option("--colours", metavar="N", help="How many to find in the picture.")]
StitchesOption = Annotated[int, typer.Option("--stitches", metavar="N", help="Stitches across, from a picture.")]
TwoOption = Annotated[bool, typer.Option("--two-in-a-row", help="Keep to two colours in every row.")]
DitherOption = Annotated[bool, typer.Option("--dither", help="Mix colours by specks, for the look from afar.")]
SpecksOption = Annotated[bool, typer.Option("--keep-specks", help="Leave single cells as they come out.")]
GaugeOption = Annotated[
    str | None, typer.Option("--gauge", metavar="GAUGE", help='Such as "22 sts x 30 rows = 10 cm".', show_default=False)
]
GristOption = Annotated[
    str | None,
    typer.Option(
        "--yarn", metavar="GRIST", help='Grist of the yarn, such as "50 g = 115 m" or "435 tex".', show_default=False
    ),
]
LimitOption = Annotated[
    int | None, typer.Option("--limit", metavar="N", help="Stitches that a float may pass, else the usual.")
]
FitOption = Annotated[
    int | None, typer.Option("--fit", metavar="COUNT", help="Fit the repeat to so many stitches.", show_default=False)
]
RoundOption = Annotated[bool, typer.Option("--in-the-round", help="It is worked in the round.")]
EdgeOption = Annotated[int, typer.Option("--edge", metavar="N", help="Plain stitches at each side, flat.")]
MirrorOption = Annotated[bool, typer.Option("--mirror", help="Mirror the right half of a fit to the left one.")]
SvgOption = Annotated[Path | None, typer.Option("--svg", metavar="FILE", help="Draw it, with numbers and key.")]
PngOption = Annotated[Path | None, typer.Option("--png", metavar="FILE", help="Write it with one point a cell.")]
CsvOption = Annotated[Path | None, typer.Option("--csv", metavar="FILE", help="Write it as a table.")]
OnGarmentOption = Annotated[
    Path | None,
    typer.Option("--on-garment", metavar="FILE", help="Draw the garment with the chart on it, .png or .svg."),
]
PlaceOption = Annotated[
    str | None,
    typer.Option(
        "--place",
        metavar="PLACE",
        help="On which part of it, such as body or yoke; else where its colours have it, or where it usually goes.",
        show_default=False,
    ),
]
CheckOption = Annotated[
    bool, typer.Option("--check", help="End with exit code 1 when a float is too long or a row has three colours.")
]


def chart(
    file: FileArgument = None,
    key: ChartArgument = None,
    *,
    picture: PictureOption = None,
    palette: PaletteOption = None,
    colours: ColoursOption = 4,
    stitches: StitchesOption = 60,
    two: TwoOption = False,
    dither: DitherOption = False,
    keep_specks: SpecksOption = False,
    gauge: GaugeOption = None,
    yarn: GristOption = None,
    limit: LimitOption = None,
    fit: FitOption = None,
    in_the_round: RoundOption = False,
    edge: EdgeOption = 0,
    mirror: MirrorOption = False,
    svg: SvgOption = None,
    png: PngOption = None,
    csv: CsvOption = None,
    on_garment: OnGarmentOption = None,
    place: PlaceOption = None,
    check: CheckOption = False,
    as_json: AsJson = False,
    measures: MeasuresOption = None,
    words: WordsOption = None,
) -> None:
    """Read a chart: its size, colours in a row, long floats and where to catch them, yarn, and how its repeat fits.

    With --fit what is written is the whole row or round. From a picture, the gauge decides how many rows it has.
    """
    from loopwright.cli.chart_source import Asked, source_of
    from loopwright.cli.charting import Wish, tell_chart

    asked = Asked(
        file=file,
        key=key,
        picture=picture,
        palette=palette or "",
        colours=colours,
        stitches=stitches,
        two_in_a_row=two,
        dither=dither,
        despeckle=not keep_specks,
        gauge=gauge,
        grist=yarn,
        limit=limit,
        in_the_round=in_the_round,
    )
    wish = Wish(fit, in_the_round, edge, mirror, svg, png, csv, on_garment, place)
    tell_chart(source_of(asked, measures, words), wish, check=check, as_json=as_json)
