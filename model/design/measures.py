"""The kinds of number and text that a design is made of, and how they stand in a file.

In memory all is SI.  A file is read and written with the context ``{"unit": "mm"}`` or
``{"unit": "in"}``: then lengths are in that unit and masses in grams, and both may also be text
such as ``"3 3/8 in"``.  Without a context (in code) numbers are plain SI.
"""

import re
from math import inf
from typing import Annotated, Any

from pydantic import AfterValidator, BeforeValidator, Field, PlainSerializer, StringConstraints
from pydantic_core import PydanticCustomError
from pydantic_core.core_schema import SerializationInfo, ValidationInfo

from model.errors import LengthError
from model.units import KILOGRAMS, METRES, SNAP_DIGITS, parse_length, parse_mass, snap

FILE_DIGITS = 8  # of an inch or mm: finer than the 1 nm that lengths are snapped to
GRAM_DIGITS = 6
_DIRECTION = re.compile(r"[+-][xyz](?:[+-][xyz])?")


def _unit(info: ValidationInfo | SerializationInfo) -> Any:
    return (info.context or {}).get("unit")


def _read_length(value: Any, info: ValidationInfo) -> Any:
    unit = _unit(info)
    if unit is None:
        return value
    if isinstance(value, str):
        return _spoken(parse_length, value, unit)
    return _scaled(value, METRES[unit], "a length like 86 or '3 3/8 in'")


def _read_mass(value: Any, info: ValidationInfo) -> Any:
    if _unit(info) is None:
        return value
    if isinstance(value, str):
        return _spoken(parse_mass, value)
    return _scaled(value, KILOGRAMS["g"], "a weight in grams, like 86")


def _scaled(value: Any, factor: float, expected: str) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise PydanticCustomError("expected", "{expected}", {"expected": expected})
    try:
        return value * factor
    except OverflowError:  # a whole number of more than 308 digits
        return inf


def _spoken(parse: Any, *arguments: str) -> Any:
    """What ``parse`` returns; its error as the kind that pydantic collects."""
    try:
        return parse(*arguments)
    except LengthError as problem:
        raise PydanticCustomError("unreadable", "{sentence}", {"sentence": str(problem)}) from problem


def _tidy(amount: float) -> int | float:
    return int(amount) if amount.is_integer() else amount


def _write_length(metres: float, info: SerializationInfo) -> int | float:
    unit = _unit(info)
    return metres if unit is None else _tidy(round(metres / METRES[unit], FILE_DIGITS))


def _write_mass(kilograms: float, info: SerializationInfo) -> int | float:
    return kilograms if _unit(info) is None else _tidy(round(kilograms / KILOGRAMS["g"], GRAM_DIGITS))


def _direction(value: str) -> str:
    if not _DIRECTION.fullmatch(value) or value[1] == value[3:4]:
        raise ValueError("a direction is written like +x, -z or +x+y")
    return value if len(value) == 2 or value[1] < value[3] else value[2:] + value[:2]


Length = Annotated[float, BeforeValidator(_read_length), AfterValidator(snap), PlainSerializer(_write_length)]
"""[m]"""
Size = Annotated[Length, Field(gt=0)]
"""A length above zero [m]."""
Depth = Annotated[Length, Field(ge=0)]
"""A length of zero or more [m]."""
Mass = Annotated[
    float,
    BeforeValidator(_read_mass),
    AfterValidator(lambda kilograms: round(kilograms, SNAP_DIGITS)),
    PlainSerializer(_write_mass),
]
"""[kg]; in a file [g]"""
Weight = Annotated[Mass, Field(ge=0)]
"""A mass of zero or more [kg]; in a file [g]."""
Money = Annotated[float, Field(ge=0)]
"""In the currency of the brief."""
Density = Annotated[float, Field(gt=0)]
"""[kg/m3]"""
Share = Annotated[float, Field(ge=0, le=1)]
"""A place on a bar: 0 at the joint where it starts, 1 at the joint where it ends."""
Direction = Annotated[str, AfterValidator(_direction)]
"""Where something points: +x ahead, +y to port, +z up; two of them make 45 degrees, like +x+y."""
Id = Annotated[str, StringConstraints(min_length=1, max_length=40, pattern=r"^[A-Za-z0-9._-]+$")]
"""An opaque name for references inside a file; it says nothing about place or order."""
Name = Annotated[str, StringConstraints(min_length=1, max_length=80)]
Text = Annotated[str, StringConstraints(max_length=20_000)]
