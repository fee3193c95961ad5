"""Ranking a million yarns against one wish, beside a plain dataframe and beside what the memory allows.

The dataframe library is no part of the project: ``.venv/bin/python -m pip install pandas`` to measure against it.
"""

import importlib
import importlib.util
import io
from collections.abc import Callable
from typing import Any

import numpy as np

from loopwright.fabric import Gauge
from loopwright.files.catalogue import read_catalogue_text
from loopwright.need.substitution import FIBRE_NAMES, LIMITS, Original, Wish, YarnCatalogue, predicted, rank_catalogue
from loopwright.need.substitution import wish_of as wish_for
from loopwright.need.substitution.limits import MOST_PENALTY
from loopwright.need.substitution.score import JAMMED_DIAMETERS, VERDICT_STEP, WEIGHT_IN_ALL
from loopwright.yarn import Yarn

YARNS = 1_000_000
LINES = 100_000
BEST = 10


def substitutes(
    seconds: Callable[[Callable[[], object]], float], line: Callable[[str, float, str, float], None]
) -> None:
    """Measure with these two, the clock and the printer of ``bench``."""
    print("Substitution")
    strand = Yarn.model_validate(
        {"key": "dk", "name": "Bench DK", "fibres": {"wool": 100}, "length_m": 120, "mass_g": 50}
    )
    wish = wish_for(Original(strands=(strand,), gauge=Gauge(stitches_per_10cm=22, rows_per_10cm=30)))
    catalogue = million()
    ours = seconds(lambda: rank_catalogue(wish, catalogue, BEST))
    columns = catalogue.strands.columns()
    spare = [np.empty_like(column) for column in columns]
    copying = seconds(lambda: [np.copyto(to, column) for to, column in zip(spare, columns, strict=True)])
    name = f"the best {BEST} of {YARNS // 1_000_000} million yarns"
    moved_gb = 2 * sum(column.nbytes for column in columns) / 1e9
    touched = sum(column.nbytes for column in columns[:-1]) + 2 * columns[0].nbytes
    bound = touched / (2 * sum(column.nbytes for column in columns)) * copying
    line(name, ours, f"the bytes it touches, at the {moved_gb / copying:.1f} GB/s of copying", ours / bound)
    frames = importlib.import_module("pandas") if importlib.util.find_spec("pandas") else None
    if frames is None:
        line(name, ours, "itself; pandas is not installed, so no dataframe stands beside it", 1)
    else:
        frame = frame_of(frames, catalogue)
        theirs = seconds(lambda: best_of_frame(frame, wish))
        same = list(best_of_frame(frame, wish)) == list(rank_catalogue(wish, catalogue, BEST).places)
        line(name, ours, f"the dataframe ({'same yarns' if same else 'OTHER YARNS'})", ours / theirs)
    making = seconds(lambda: remade(catalogue))
    line("working out a catalogue's columns, once", making, "ranking it", making / ours)
    text = lines()
    reading = seconds(lambda: read_catalogue_text(text, "bench.csv"))
    if frames is None:
        line(f"reading a catalogue of {LINES:,} lines", reading, "ranking a million", reading / ours)
    else:
        theirs = seconds(lambda: frames.read_csv(io.StringIO(text)))
        line(
            f"reading a catalogue of {LINES:,} lines",
            reading,
            "reading it unchecked into the dataframe",
            reading / theirs,
        )


def million() -> YarnCatalogue:
    """Invented yarns of one to two fibres, 125 to 2,000 tex; always the same."""
    chance = np.random.default_rng(2027)
    shares = np.zeros((YARNS, len(FIBRE_NAMES)), dtype=np.float32)
    rows = np.arange(YARNS)
    part = chance.integers(5, 11, YARNS) / 10
    np.add.at(shares, (rows, chance.integers(0, len(FIBRE_NAMES), YARNS)), part)
    np.add.at(shares, (rows, chance.integers(0, len(FIBRE_NAMES), YARNS)), 1 - part)
    names = [f"Yarn {row}" for row in rows]
    return YarnCatalogue.made(names, chance.uniform(50, 800, YARNS), np.full(YARNS, 100.0), shares)


def remade(catalogue: YarnCatalogue) -> YarnCatalogue:
    return YarnCatalogue.made(catalogue.names, catalogue.length_m, catalogue.mass_g, catalogue.shares)


def lines() -> str:
    blends = ("80 % merino, 20 % nylon", "wool", "55 % wool, 45 % hemp")
    rows = [f'Yarn {n},"{blends[n % 3]}",{50 + n * 7 % 750},100,{5 + n % 36}.50' for n in range(LINES)]
    return "\n".join(["name,fibres,metres,grams,price nzd", *rows])


def frame_of(frames: Any, catalogue: YarnCatalogue) -> Any:
    strands = catalogue.strands
    return frames.DataFrame(
        {
            "tex": strands.grist_tex,
            "bulk": strands.bulk_cm3_g,
            "drape": strands.drape,
            "warmth": strands.warmth,
            "elasticity": strands.elasticity,
            "wash_length": strands.wash_length_pct,
            "wash_width": strands.wash_width_pct,
            "care": strands.care_step,
        }
    )


def best_of_frame(frame: Any, wish: Wish) -> Any:
    """The same formulas as one writes them on a dataframe, column by column, and its own ``nsmallest``."""
    own, fabric = wish.strand, predicted(wish, wish.strand)
    diameter = 0.0564 * (frame["tex"] * frame["bulk"] * 0.40) ** 0.5
    loop = wish.loop_bare_mm + wish.loop_per_mm * diameter
    fullness = diameter / loop / 0.0564
    room = loop / (JAMMED_DIAMETERS * diameter)
    falls = (frame["drape"] * wish.usual_tightness / fullness).clip(1, 10)
    off = {
        "thickness": (diameter / wish.diameter_mm - 1).abs(),
        "squeeze": (1 - room).where(room < fabric.room[0], 0),
        "mass": (frame["tex"] * loop / (own.grist_tex[0] * wish.loop_mm) - 1).abs(),
        "wash_length": (frame["wash_length"] - own.wash_length_pct[0]).abs(),
        "wash_width": (frame["wash_width"] - own.wash_width_pct[0]).abs(),
        "drape": (falls - fabric.drape[0]).abs(),
        "warmth": (frame["warmth"] - own.warmth[0]).abs(),
        "elasticity": (frame["elasticity"] - own.elasticity[0]).abs(),
        "care": (frame["care"] - own.care_step[0]).clip(lower=0),
    }
    score = 0
    close, works = True, True
    for limit in LIMITS.values():
        here = off[limit.trait].fillna(2 * limit.close)
        score = score + ((here / limit.close) ** 2).clip(upper=MOST_PENALTY) * limit.weight / WEIGHT_IN_ALL
        close, works = close & (here <= limit.close), works & (here <= limit.end)
    return (score + VERDICT_STEP * (2 - close.astype(int) - works.astype(int))).nsmallest(BEST).index
