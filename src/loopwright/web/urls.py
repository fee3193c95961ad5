"""Every address of the site."""

from __future__ import annotations

from django.urls import URLPattern, path

from loopwright.web.bodies import views as bodies
from loopwright.web.garment import views as garment
from loopwright.web.home import views as home
from loopwright.web.patterns import views as patterns
from loopwright.web.reading import choose_reading
from loopwright.web.season import views as season
from loopwright.web.swatches import views as swatches

__all__ = ["urlpatterns"]

urlpatterns: list[URLPattern] = [
    path("", home.show, name="home"),
    path("load/", home.load, name="load"),
    path("demo/", home.load_demo, name="demo"),
    path("bring-back/<slug:key>/", home.bring_back, name="bring-back"),
    path("reading/", choose_reading, name="reading"),
    path("icon.svg", home.icon, name="icon"),
    path("season/<slug:key>/", season.show, name="season"),
    path("season/<slug:key>/report/", season.report, name="report"),
    path("season/<slug:key>/file/<str:ending>/", season.save, name="save"),
    path("season/<slug:key>/undo/", season.undo, name="undo"),
    path("season/<slug:key>/redo/", season.redo, name="redo"),
    path("season/<slug:key>/put-away/", season.put_away, name="put-away"),
    path("season/<slug:key>/bodies/", bodies.show, name="bodies"),
    path("season/<slug:key>/bodies/<slug:body_key>/", bodies.person, name="body"),
    path("tape/<slug:measure>.svg", bodies.tape, name="tape"),
    path("season/<slug:key>/swatches/", swatches.show, name="swatches"),
    path("season/<slug:key>/swatches/<slug:swatch_key>/keep/", swatches.keep, name="swatch-keep"),
    path("season/<slug:key>/add-swatch/", swatches.add, name="swatch-add"),
    path("season/<slug:key>/patterns/", patterns.show, name="patterns"),
    path("season/<slug:key>/patterns/read/", patterns.read, name="patterns-read"),
    path("season/<slug:key>/patterns/keep/", patterns.keep, name="patterns-keep"),
    path("season/<slug:key>/garment/<slug:garment_key>/", garment.show, name="garment"),
    path("season/<slug:key>/garment/<slug:garment_key>/keep/", garment.keep, name="keep"),
]
