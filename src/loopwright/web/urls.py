"""Every address of the site."""

from __future__ import annotations

from django.urls import URLPattern, path

from loopwright.web.allotment import views as allotment
from loopwright.web.bodies import views as bodies
from loopwright.web.charts import laying_views as laying
from loopwright.web.charts import new_views as new_charts
from loopwright.web.charts import views as charts
from loopwright.web.cupboard import label_views as labels
from loopwright.web.cupboard import lot_views as lots
from loopwright.web.cupboard import table_views as tables
from loopwright.web.cupboard import views as cupboard
from loopwright.web.drafts import views as drafts
from loopwright.web.garment import views as garment
from loopwright.web.home import views as home
from loopwright.web.patterns import views as patterns
from loopwright.web.photo import views as photo
from loopwright.web.pictures import views as pictures
from loopwright.web.reading import choose_reading
from loopwright.web.season import views as season
from loopwright.web.sections import views as sections
from loopwright.web.swap import views as swap
from loopwright.web.swatches import views as swatches
from loopwright.web.yarns import views as yarns

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
    path("season/<slug:key>/cupboard/", cupboard.show, name="cupboard"),
    path("season/<slug:key>/cupboard/lot/<slug:lot_key>/", lots.show, name="lot"),
    path("season/<slug:key>/cupboard/lot/<slug:lot_key>/metres/", lots.metres, name="lot-metres"),
    path("season/<slug:key>/cupboard/lot/<slug:lot_key>/weigh/", lots.weigh, name="lot-weigh"),
    path("season/<slug:key>/cupboard/lot/<slug:lot_key>/change/", lots.change, name="lot-change"),
    path("season/<slug:key>/cupboard/lot/<slug:lot_key>/take-out/", lots.take_out, name="lot-take-out"),
    path("season/<slug:key>/cupboard/lot/<slug:lot_key>/photo/", lots.put_photo, name="lot-photo"),
    path("season/<slug:key>/cupboard/lot/<slug:lot_key>/photo/away/", lots.photo_away, name="lot-photo-away"),
    path("season/<slug:key>/cupboard/photo/<str:digest>/<str:size>.jpg", lots.photo, name="photo"),
    path("season/<slug:key>/cupboard/add/", lots.add, name="lot-add"),
    path("season/<slug:key>/cupboard/labels/", labels.show, name="labels"),
    path("season/<slug:key>/cupboard/table/<str:ending>/", tables.save, name="cupboard-save"),
    path("season/<slug:key>/cupboard/take-in/", tables.show, name="take-in"),
    path("season/<slug:key>/yarns/", yarns.show, name="yarns"),
    path("season/<slug:key>/add-yarn/", yarns.add, name="yarn-add"),
    path("season/<slug:key>/yarns/<slug:yarn_key>/", yarns.one, name="yarn"),
    path("season/<slug:key>/yarns/<slug:yarn_key>/take-out/", yarns.take_out, name="yarn-take-out"),
    path("season/<slug:key>/photo/", photo.show, name="colour-photo"),
    path("season/<slug:key>/photo/measure/", photo.measure, name="colour-photo-measure"),
    path("season/<slug:key>/photo/keep/", photo.keep, name="colour-photo-keep"),
    path("season/<slug:key>/charts/", charts.show_all, name="charts"),
    path("season/<slug:key>/charts/<slug:chart_key>/", charts.show, name="chart"),
    path("season/<slug:key>/charts/<slug:chart_key>/draw/", charts.draw, name="chart-draw"),
    path("season/<slug:key>/charts/<slug:chart_key>/answers/", charts.answers, name="chart-answers"),
    path("season/<slug:key>/charts/<slug:chart_key>/keep/", charts.keep, name="chart-keep"),
    path("season/<slug:key>/charts/<slug:chart_key>/rows/", charts.rows, name="chart-rows"),
    path("season/<slug:key>/charts/<slug:chart_key>/words/", charts.words, name="chart-words"),
    path("season/<slug:key>/charts/<slug:chart_key>/take-away/", charts.take_away, name="chart-take-away"),
    path("season/<slug:key>/charts/<slug:chart_key>/on-garment/", laying.show, name="chart-on-garment"),
    path("season/<slug:key>/charts/<slug:chart_key>/lay/", laying.lay, name="chart-lay"),
    path("season/<slug:key>/charts/<slug:chart_key>/take-off/", laying.take_off, name="chart-take-off"),
    path("season/<slug:key>/charts/<slug:chart_key>/file/<str:ending>/", charts.save, name="chart-save"),
    path("season/<slug:key>/add-chart/", new_charts.add, name="chart-add"),
    path("season/<slug:key>/patterns/", patterns.show, name="patterns"),
    path("season/<slug:key>/patterns/read/", patterns.read, name="patterns-read"),
    path("season/<slug:key>/patterns/keep/", patterns.keep, name="patterns-keep"),
    path("season/<slug:key>/draft/", drafts.new, name="draft-new"),
    path("season/<slug:key>/draft/add/", drafts.add, name="draft-add"),
    path("season/<slug:key>/garment/<slug:garment_key>/", garment.show, name="garment"),
    path("season/<slug:key>/garment/<slug:garment_key>/sizes/", drafts.sizes, name="garment-sizes"),
    path("season/<slug:key>/garment/<slug:garment_key>/sections/", sections.show, name="sections"),
    path("season/<slug:key>/garment/<slug:garment_key>/lots/", allotment.show, name="allotment"),
    path(
        "season/<slug:key>/garment/<slug:garment_key>/lots/<str:kind>/<str:face>.png",
        allotment.picture,
        name="allotment-picture",
    ),
    path("season/<slug:key>/garment/<slug:garment_key>/look/", pictures.look, name="garment-look"),
    path("season/<slug:key>/garment/<slug:garment_key>/picture/<str:view>.png", pictures.show, name="garment-picture"),
    path("season/<slug:key>/garment/<slug:garment_key>/swap/", swap.show, name="swap"),
    path("season/<slug:key>/garment/<slug:garment_key>/keep/", garment.keep, name="keep"),
]
