"""The season as if a garment were as she tries it."""

from __future__ import annotations

from collections.abc import Mapping

from pydantic import ValidationError

from loopwright.season import Season, with_entry, with_garment
from loopwright.units import BadInput, Reader, read_number
from loopwright.web.trial.fields import TENSION, trial_faults, window_cm

__all__ = ["tried_season"]


def tried_season(
    season: Season, garment_key: str, typed: Mapping[str, str], reader: Reader
) -> tuple[Season, list[str]]:
    """Give the season with what she tries, and the faults in it; with a fault the season stays as it was.

    :param typed: by field path, in her words; of sliders only those that she moved.
    :param reader: in whose measures stitches are counted.
    """
    changes_of_garment = {path: value for path, value in typed.items() if path != TENSION}
    try:
        tried = with_garment(season, garment_key, changes_of_garment) if changes_of_garment else season
        if TENSION in typed:
            tried = _at_tension(tried, garment_key, typed[TENSION], reader)
    except (ValidationError, BadInput) as error:
        return season, trial_faults(error)
    return tried, []


def _at_tension(season: Season, garment_key: str, stitches: str, reader: Reader) -> Season:
    """Give the season as if her swatch had so many stitches to 10 cm or 4 in, and rows in the same proportion."""
    key = season.garment_by_key[garment_key].swatch
    if key is None:
        return season
    swatch = season.swatch_by_key[key]
    wanted = float(read_number(stitches)) * 10 / window_cm(reader)
    ratio = wanted / swatch.gauge.stitches_per_10cm
    rows = swatch.gauge.rows_per_10cm
    beside = "" if rows is None else f" x {rows * ratio:.4g} rows"
    field = "after" if swatch.is_washed else "before"
    return with_entry(season, "swatches", key, {field: f"{wanted:.6g} sts{beside} = 10 cm"})
