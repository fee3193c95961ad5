"""Numbers with a unit: text such as ``14 in`` is read once, here, and a fixed unit is kept inside.

Inside are centimetres for widths and heights, metres for yarn, grams and shares of one. Written to a file they
become text again that reads back to the very same number. A bare number is taken in the inside unit by code,
and refused in a file (see :data:`loopwright.records.FROM_FILE`), because a person who writes ``36`` may mean
inches.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from decimal import Decimal
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, PlainSerializer, ValidationInfo, WithJsonSchema

from loopwright.units import (
    BadInput,
    Money,
    length_text,
    mass_text,
    read_length_cm,
    read_mass_g,
    read_money,
    read_quantity,
    read_share,
    read_yarn_length_m,
    yarn_length_text,
)

__all__ = [
    "CountField",
    "GrowthCm",
    "LengthCm",
    "MassG",
    "MoneyField",
    "NeedleMm",
    "Share",
    "YarnLengthM",
]


def _number(
    read: Callable[[str], float],
    wanted: str,
    *,
    signed: bool = False,
    nothing: bool = False,
    least: float = 0.0,
    most: float = math.inf,
    unit: str = "",
) -> Callable[[Any, ValidationInfo], float]:
    """Make the validator of one kind of quantity: text with a unit, or a bare number from code."""

    def validate(value: Any, info: ValidationInfo) -> float:
        if isinstance(value, str):
            number = read(value)
        elif isinstance(value, int | float) and not isinstance(value, bool):
            if info.context and info.context.get("from_file"):
                raise BadInput(found=repr(value), wanted=f"{wanted} (a bare number could be any unit)")
            number = float(value)
        else:
            raise BadInput(found=repr(value), wanted=wanted)
        if not math.isfinite(number) or (not signed and (number < 0 or (number == 0 and not nothing))):
            raise BadInput(found=str(value), wanted=f"{wanted}, {'nothing or more' if nothing else 'above nothing'}")
        if abs(number) > most:
            raise BadInput(found=str(value), wanted=f"{wanted}, at most {most:g}{unit}")
        if not signed and number < least:
            raise BadInput(found=str(value), wanted=f"{wanted}, at least {least:g}{unit}")
        return number

    return validate


def _share_text(value: float) -> str:
    return f"{(Decimal(repr(value)) * 100).normalize():f} %"


def _needle_text(value: float) -> str:
    return f"{Decimal(repr(value)):f}".removesuffix(".0") + " mm"


def _read_needle_mm(text: str) -> float:
    return float(read_quantity(text, "length").in_base * 10)


def _read_growth_cm(text: str) -> float:
    return read_length_cm(text, negative=True)


def _money_text(money: Money) -> str:
    return f"{money.amount} {money.currency}"


def _read_money(value: Any) -> Money:
    if isinstance(value, Money):
        money = value
    elif isinstance(value, str):
        money = read_money(value)
    else:
        raise BadInput(found=repr(value), wanted="an amount with its currency, such as 12.50 NZD")
    if money.minor < 0:
        raise BadInput(found=str(value), wanted="an amount of nothing or more")
    return money


def _text_schema(description: str, *examples: str) -> WithJsonSchema:
    return WithJsonSchema({"type": "string", "description": description, "examples": list(examples)})


LengthCm = Annotated[
    float,
    BeforeValidator(
        _number(read_length_cm, "a length with its unit, such as 36 cm or 14 in", least=0.01, most=1e4, unit=" cm")
    ),
    PlainSerializer(length_text, when_used="json"),
    _text_schema("a length with its unit", "36 cm", "14 1/2 in"),
]
"""A width, height or girth in centimetres, above nothing."""

GrowthCm = Annotated[
    float,
    BeforeValidator(
        _number(_read_growth_cm, "a length with its unit, such as 4 cm or -1 1/2 in", signed=True, most=1e4, unit=" cm")
    ),
    PlainSerializer(length_text, when_used="json"),
    _text_schema("a length with its unit; a minus sign means less", "4 cm", "-1 1/2 in"),
]
"""A difference in centimetres: ease, or how much longer."""

YarnLengthM = Annotated[
    float,
    BeforeValidator(
        _number(
            read_yarn_length_m, "a yarn length with its unit, such as 430 m or 470 yd", least=1, most=1e6, unit=" m"
        )
    ),
    PlainSerializer(yarn_length_text, when_used="json"),
    _text_schema("a length of yarn with its unit", "430 m", "470 yd"),
]
"""A length of yarn in metres, above nothing."""

MassG = Annotated[
    float,
    BeforeValidator(
        _number(read_mass_g, "a mass with its unit, such as 50 g or 1 3/4 oz", least=0.01, most=1e6, unit=" g")
    ),
    PlainSerializer(mass_text, when_used="json"),
    _text_schema("a mass with its unit", "50 g", "1 3/4 oz"),
]
"""A mass in grams, above nothing."""

NeedleMm = Annotated[
    float,
    BeforeValidator(_number(_read_needle_mm, "a needle diameter such as 4.5 mm", least=0.1, most=60, unit=" mm")),
    PlainSerializer(_needle_text, when_used="json"),
    _text_schema("a needle's diameter", "4.5 mm"),
]
"""A needle's diameter in millimetres."""

Share = Annotated[
    float,
    BeforeValidator(_number(read_share, "a share such as 95 %", nothing=True, most=1)),
    PlainSerializer(_share_text, when_used="json"),
    _text_schema("a share in percent", "95 %"),
]
"""A share of one: ``95 %`` is kept as 0.95."""

CountField = Annotated[int, Field(gt=0, le=1_000_000)]
"""A whole number of things, one or more."""

MoneyField = Annotated[
    Money,
    BeforeValidator(_read_money),
    PlainSerializer(_money_text, when_used="json"),
    _text_schema("an amount with its ISO 4217 currency", "12.50 NZD"),
]
"""An amount of money with its currency, nothing or more."""
