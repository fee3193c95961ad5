"""What the section shows that lays a chart on the garment that it is for: pictures, the choice, how it lies there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final
from urllib.parse import urlencode

from django.urls import reverse

from loopwright.chart import NamedChart
from loopwright.documents.fit_view import drawn_body
from loopwright.documents.look import LookOfGarment
from loopwright.pictures.patch import Face
from loopwright.season import Season
from loopwright.season.cautions import caution
from loopwright.season.chart_garment import ChartOnGarment, NotLaid, chart_on_garment
from loopwright.season.chart_garment_words import choice_in_words, held_in_words, lying_in_words
from loopwright.season.chart_place import ChartPlace
from loopwright.season.colour_places import FIELD_NAMES
from loopwright.season.wording import Wording
from loopwright.units import BadInput
from loopwright.web.charts.laying_form import LayingForm, choice_asked, laying_form
from loopwright.web.pictures.extent import picture_extent

__all__ = ["LaidPicture", "LayingView", "laying_view"]

SHOWN_PX: Final[Mapping[Face, int]] = {"front": 1000, "back": 480}
LARGE_PX: Final = 1600


@dataclass(frozen=True, slots=True)
class LaidPicture:
    """One picture of the garment with the chart on it.

    :ivar address: with the chart's fingerprint in it, so that a browser asks for a new picture as soon as another chart
        is drawn; ``large`` the same in more pixels.
    """

    face: Face
    address: str
    large: str
    width: int
    height: int
    says: str


@dataclass(frozen=True, slots=True)
class LayingView:
    """The section.

    :ivar why_not: why the chart cannot be laid, else empty.
    :ivar garment: its name, empty where the chart is for none; ``bench`` its address.
    :ivar form: None where nothing can be chosen.
    :ivar main: the colour of the garment's first role.
    :ivar sentence: what is chosen; empty where it is as the garment's own words say.
    :ivar is_kept: whether what is chosen is kept already.
    :ivar held: what is said of the chart in more words than the form holds.
    :ivar words: how it lies.
    :ivar on_it: key and name of each part that it can be taken off.
    """

    why_not: str = ""
    garment: str = ""
    bench: str = ""
    pictures: tuple[LaidPicture, ...] = ()
    form: LayingForm | None = None
    main: str = ""
    faults: tuple[str, ...] = ()
    sentence: str = ""
    is_kept: bool = False
    held: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    on_it: tuple[tuple[str, str], ...] = ()
    caution: str = ""


def laying_view(
    key: str,
    season: Season,
    named: NamedChart,
    asked: Mapping[str, str],
    wording: Wording,
    faults: tuple[str, ...] = (),
) -> LayingView:
    """Give the section; with a fault the garment is shown as it is kept.

    :param key: under which the season is kept.
    :param asked: what she chose, by name of the field; empty for what to begin with.
    :param faults: found already in what she chose.
    """
    on = chart_on_garment(season, named.key)
    if isinstance(on, NotLaid):
        garment = season.garment_by_key.get(on.garment)
        name, bench = (garment.name, _bench(key, on.garment)) if garment else ("", "")
        return LayingView(why_not=wording.told(on.why), garment=name, bench=bench, faults=faults)
    choice = None
    if not faults:
        try:
            choice = choice_asked(on, asked)
        except BadInput as fault:
            faults = (str(fault),)
    return LayingView(
        garment=on.garment.name,
        bench=_bench(key, on.garment.key),
        pictures=tuple(_pictures(key, named, on, choice)),
        form=laying_form(on, choice, asked),
        main=on.garment.yarns[0].colour,
        faults=faults,
        sentence=choice_in_words(on, choice) if choice else "",
        is_kept=choice in on.kept,
        held=held_in_words(on),
        words=lying_in_words(on, choice, wording),
        on_it=tuple((one.place, FIELD_NAMES[one.place]) for one in on.kept),
        caution=caution("colour").text,
    )


def _bench(key: str, garment: str) -> str:
    return reverse("garment", args=[key, garment])


def _pictures(key: str, named: NamedChart, on: ChartOnGarment, choice: ChartPlace | None) -> Iterator[LaidPicture]:
    """Give front and back; the picture's own page of colours takes the choice as what is tried on the bench."""
    query = {"of": named.fingerprint}
    if choice is not None:
        query[f"colours.{choice.place}"] = on.text(choice)
    where = f"{named.name} on the {FIELD_NAMES[choice.place]}" if choice else f"as it is kept, {named.name} on it"
    outline = _outline(on)
    for face, px in SHOWN_PX.items():
        place = reverse("garment-picture", args=[key, on.garment.key, face])
        extent = picture_extent(outline, face, px)
        yield LaidPicture(
            face=face,
            address=f"{place}?{urlencode({**query, 'px': px})}",
            large=f"{place}?{urlencode({**query, 'px': LARGE_PX})}",
            width=extent.width,
            height=extent.height,
            says=f"{on.garment.name} from the {face}, {where}",
        )


def _outline(on: ChartOnGarment) -> LookOfGarment:
    """Give the garment without colours, from which the size of its pictures is known."""
    body = on.settled.body
    return LookOfGarment(
        name=on.garment.name,
        draft=on.draft,
        roles=(),
        colours={},
        edges=None,
        body_cm={} if body is None else drawn_body(body),
    )
