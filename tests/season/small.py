"""A small season in which one thing at a time can be changed. Everything in it is invented."""

import copy
import datetime as dt
from typing import Any

from loopwright.records import FROM_FILE
from loopwright.season import Season

__all__ = ["BASE", "TODAY", "season"]

TODAY = dt.date(2027, 3, 1)

BASE: dict[str, Any] = {
    "name": "A small season",
    "today": TODAY,
    "hours_a_week": 8,
    "hours_a_week_sd": 2,
    "currency": "NZD",
    "rates": {"EUR": "1.98"},
    "bodies": {"mo": {"name": "Mo", "wearer": "woman", "bust_girth": "92 cm"}},
    "yarns": {
        "dk": {"name": "Kiln DK", "fibres": {"wool": 100}, "length": "120 m", "mass": "50 g"},
        "lace": {"name": "Kiln Lace", "fibres": {"mohair": 70, "silk": 30}, "length": "210 m", "mass": "25 g"},
    },
    "swatches": {"plain": {"yarns": ["dk"], "after": "22 sts x 30 rows = 10 cm", "places": 3}},
    "cupboard": {"oat": {"yarn": "dk", "colour": "Oat", "dye_lot": "1", "put_ups": 12}},
    "patterns": {
        "plain": {
            "name": "Plain",
            "construction": "raglan",
            "gauge": "22 sts x 30 rows = 10 cm",
            "sizes": "S (M, L)",
            "finished": {
                "bust_girth": "92 (100, 108) cm",
                "length": "56 (58, 60) cm",
                "upper_arm_girth": "33 (35, 37) cm",
                "wrist_girth": "20 (21, 22) cm",
                "sleeve_length": "44 (45, 46) cm",
            },
            "yarn": {"main": {"length": "980 (1060, 1150) m"}},
        }
    },
    "garments": {
        "jumper": {
            "name": "Jumper",
            "pattern": "plain",
            "for": "mo",
            "swatch": "plain",
            "yarns": {"main": {"yarn": "dk", "colour": "Oat"}},
        }
    },
    "shops": {
        "loft": {
            "name": "The Loft",
            "currency": "NZD",
            "days_to_arrive": 3,
            "postage": {"flat": "6.50 NZD"},
            "offers": [{"yarn": "dk", "price": "9.90 NZD"}],
        }
    },
}


def season(changes: dict[str, Any] | None = None) -> Season:
    """The small season with changes by place, such as ``{"garments.jumper.due": day}``; None takes a field out."""
    facts = copy.deepcopy(BASE)
    for place, value in (changes or {}).items():
        *way, last = place.split(".")
        table = facts
        for step in way:
            table = table.setdefault(step, {})
        if value is None:
            table.pop(last, None)
        else:
            table[last] = value
    return Season.model_validate(facts, context=FROM_FILE)
