"""What can be tried on the bench: a few fields of the garment, as she would write them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final, get_args

from pydantic import ValidationError

from loopwright.fabric import Gauge
from loopwright.files import FileFault, faults_of
from loopwright.garment.garment import EaseStyle
from loopwright.pattern import PatternFacts
from loopwright.units import BadInput, Reader
from loopwright.web.reading import kept_text
from loopwright.web.trial.colours import colour_fields
from loopwright.web.trial.making import making_fields

__all__ = [
    "TENSION",
    "TRIAL_FIELDS",
    "Field",
    "Slide",
    "ease_slide",
    "moved_sliders",
    "tension_slide",
    "trial_faults",
    "trial_form",
    "unmoved",
    "window_cm",
]

TRIAL_FIELDS: Final = {
    "size": "Size",
    "fit": "Fit",
    "changes.bust_girth": "Bust between sizes",
    "changes.body_longer": "Body longer by",
    "changes.sleeves_longer": "Sleeves longer by",
    "sureness": "How sure of the yarn",
    "ease.bust_girth": "Ease wanted at the bust",
    "ease.head_girth": "Ease wanted at the head",
    "tension": "Stitches",
    "draft.neckline": "Neckline",
    "draft.sleeves": "Sleeves",
    "draft.direction": "Direction",
    "draft.worked": "Worked",
    "draft.hem.depth": "Hem edge, how deep",
    "draft.cuff.depth": "Cuff, how deep",
    "draft.neckband.depth": "Neckband, how deep",
    "draft.repeat": "Stitch repeat that must fit",
    "draft.bust_short_rows": "Longer over the bust by",
    "draft.measures.waist_girth": "Waist",
    "draft.measures.hip_girth": "Hip",
    "draft.measures.upper_arm_girth": "Upper arm",
    "draft.measures.armhole_depth": "Armhole depth",
    "draft.measures.neck_width": "Neck width",
    "draft.measures.front_neck_depth": "Front neck depth",
    "colours.everywhere": "Body, sleeves and yoke",
    "colours.edges": "Hem, cuffs, neckband, bands",
    "colours.body": "Body",
    "colours.sleeves": "Sleeves",
    "colours.yoke": "Yoke",
    "colours.hem": "Hem or brim",
    "colours.cuff": "Cuffs",
    "colours.neckband": "Neckband",
    "colours.band": "Front bands",
}
"""The label of each field, by its path in the words of the season file; ``tension`` is only tried, never kept."""
TENSION: Final = "tension"
FOLDS: Final = {"draft": "How it is made", "colours": "Where the colours go"}


@dataclass(frozen=True, slots=True)
class Field:
    """One field of the form: a choice when it has options, else a line to write in."""

    path: str
    label: str
    value: str
    hint: str = ""
    options: tuple[tuple[str, str], ...] = ()
    slide: Slide | None = None

    @property
    def fold(self) -> str:
        """Give the heading of the fold that it stands in; empty where it stands in the open."""
        return FOLDS.get(self.path.partition(".")[0], "")


@dataclass(frozen=True, slots=True)
class Slide:
    """The reach of a slider, in the unit that stands beside it."""

    low: float
    high: float
    step: float
    unit: str


def ease_slide(point: str, wanted_cm: float, reader: Reader) -> Field:
    """Give the slider of the ease at one point, standing at what is wanted now."""
    inch = reader.measures == "imperial"
    factor, step, unit = (2.54, 0.25, "in") if inch else (1.0, 0.5, "cm")
    low, high = (-12.0, 6.0) if point == "head_girth" else (-10.0, 30.0)
    value = round(wanted_cm / factor / step) * step
    reach = Slide(low=round(low / factor / step) * step, high=round(high / factor / step) * step, step=step, unit=unit)
    path = f"ease.{point}"
    return Field(path, TRIAL_FIELDS[path], f"{value:g}", slide=reach)


def window_cm(reader: Reader) -> float:
    """Give the length over which this reader counts stitches: 10 cm, or 4 in."""
    return 10.16 if reader.measures == "imperial" else 10.0


def tension_slide(gauge: Gauge, reader: Reader) -> Field:
    """Give the slider of the stitches to 10 cm or 4 in, standing at her swatch."""
    value = round(gauge.stitches_per_10cm * window_cm(reader) / 10 * 4) / 4
    reach = Slide(low=max(value - 4, 1), high=value + 4, step=0.25, unit="sts")
    over = "4 in" if reader.measures == "imperial" else "10 cm"
    return Field(TENSION, f"{TRIAL_FIELDS[TENSION]} to {over}", f"{value:g}", slide=reach)


def moved_sliders(fields: Sequence[Field], typed: Mapping[str, str]) -> dict[str, str]:
    """Give what she typed without the sliders that she left where they stood, lengths with their unit."""
    stands = {field.path: field for field in fields if field.slide is not None}
    moved = {}
    for path, value in typed.items():
        field = stands.get(path)
        if field is None:
            moved[path] = value
        elif field.slide is not None and value not in ("", field.value):
            bare = path != TENSION and not any(letter.isalpha() for letter in value)
            moved[path] = f"{value} {field.slide.unit}" if bare else value
    return moved


def _stored(fields: Mapping[str, Any], path: str) -> str:
    value: Any = fields
    for name in path.split("."):
        value = value.get(name, "") if isinstance(value, Mapping) else ""
    return str(value)


def unmoved(fields: Mapping[str, Any], path: str, text: str, reader: Reader) -> bool:
    """Say whether a field was left as it was shown."""
    return text == kept_text(_stored(fields, path), reader)


def trial_form(
    pattern: PatternFacts,
    fields: Mapping[str, Any],
    typed: Mapping[str, str],
    reader: Reader,
    charts: Sequence[str] = (),
) -> tuple[Field, ...]:
    """Give the fields that bear on this pattern, holding what she typed, else what is kept, in the reader's measures.

    :param fields: the garment in the words of the season file.
    :param charts: keys of the charts that may lie on it.
    """
    inch = reader.measures == "imperial"

    def value(path: str) -> str:
        return typed[path] if path in typed else kept_text(_stored(fields, path), reader)

    def field(path: str, hint: str = "", options: tuple[tuple[str, str], ...] = ()) -> Field:
        return Field(path, TRIAL_FIELDS[path], value(path), hint, options)

    form = []
    if len(pattern.sizes) > 1:
        form.append(field("size", options=(("", "by the fit"), *((name, name) for name in pattern.sizes))))
    if pattern.construction.is_top:
        form.append(field("fit", options=(("", "as the pattern"), *((style, style) for style in get_args(EaseStyle)))))
        if len(pattern.sizes) > 1:
            form.append(field("changes.bust_girth", _between_sizes(pattern, inch=inch)))
    if pattern.finished.length is not None:
        form.append(field("changes.body_longer", "1 1/2 in, or -1 in" if inch else "4 cm, or -2 cm"))
    if pattern.finished.sleeve_length is not None:
        form.append(field("changes.sleeves_longer", "1 in, or -2 in" if inch else "3 cm, or -5 cm"))
    form.append(field("sureness", "such as 90 %"))
    more = [*making_fields(pattern, inch=inch), *colour_fields(pattern, list(fields.get("yarns", {})), charts)]
    return (*form, *(field(path, hint, options) for path, hint, options in more))


def _between_sizes(pattern: PatternFacts, *, inch: bool) -> str:
    """Suggest a bust between the two middle sizes of the pattern, so that a child's is a child's."""
    busts_cm = sorted(cm for cm in pattern.finished.bust_girth or () if cm is not None)
    if not busts_cm:
        return "such as 38 in" if inch else "such as 98 cm"
    middle = len(busts_cm) // 2
    between_cm = (busts_cm[middle - 1] + busts_cm[middle]) / 2
    return f"such as {between_cm / 2.54:.0f} in" if inch else f"such as {between_cm:.0f} cm"


def trial_faults(error: ValidationError | BadInput) -> list[str]:
    """Say what is wrong with what she typed, each fault under the label of its field."""
    if isinstance(error, BadInput):
        return [str(error)]
    return [str(_under_its_label(fault)) for fault in faults_of(error)]


def _under_its_label(fault: FileFault) -> FileFault:
    for path, label in TRIAL_FIELDS.items():
        if fault.path.endswith(f".{path}"):
            return FileFault.make(fault.found, fault.wanted, path=label, hint=fault.hint)
    return fault
