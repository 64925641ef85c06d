"""The kinds of number and text that a design is made of, and how they stand in a file.

In memory all is SI.  A file is read and written with the context ``{"unit": "mm"}`` or
``{"unit": "in"}``: then lengths are in that unit and masses in grams, and both may also be text
such as ``"3 3/8 in"``.  Without a context (in code) numbers are plain SI.
"""

import re
from functools import partial
from math import inf
from typing import Annotated, Any

from msgspec import Struct
from pydantic import (
    AfterValidator,
    BeforeValidator,
    Field,
    GetCoreSchemaHandler,
    PlainSerializer,
    StringConstraints,
)
from pydantic_core import PydanticCustomError
from pydantic_core.core_schema import CoreSchema, SerializationInfo, ValidationInfo

from model.errors import LengthError
from model.units import KILOGRAMS, METRES, SNAP_DIGITS, parse_length, parse_mass, snap

FILE_DIGITS = 8  # of an inch or mm: finer than the 1 nm that lengths are snapped to
GRAM_DIGITS = 6
LENGTH_MOST = 1000.0
"""[m] No length of a vehicle is beyond it."""
MASS_MOST = 1e6
"""[kg] No weight of a vehicle is beyond it."""
LENGTH_USUAL, MASS_USUAL = 10.0, 100.0
"""[m], [kg] What a team types for a part of a vehicle that it can carry is within them."""
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


def _within(most: float, words: str) -> AfterValidator:
    """Refuses what is beyond any pool, where sums would run out of numbers."""

    def check(value: float) -> float:
        if abs(value) > most:
            raise ValueError(f"expected {words}")
        return value

    return AfterValidator(check)


def below(other: str) -> AfterValidator:
    """Refuses a value that is not below that of another field of the same record, named before it."""
    return AfterValidator(partial(_compared, other=other, equal=False))


def not_above(other: str) -> AfterValidator:
    """Refuses a value above that of another field of the same record, named before it."""
    return AfterValidator(partial(_compared, other=other, equal=True))


def _compared(value: float, info: ValidationInfo, other: str, equal: bool) -> float:
    most = info.data.get(other)
    if most is not None and (value > most or (value == most and not equal)):
        raise ValueError(f"expected {'no more' if equal else 'less'} than the {other.replace('_', ' ')}")
    return value


class Plausible(Struct, frozen=True):
    """What a person may type for a number: beyond it is a slip of the finger.

    A file may hold more, up to what the kind of number takes, so that no design is ever shut out.
    That of a field goes before that of its kind.

    Attributes:
        least, most: in SI.
        above: whether it must be more than the least.
    """

    least: float = -inf
    most: float = inf
    above: bool = False


class Once:
    """Last among the annotations of a kind of value: its schema is worked out once.

    Without it pydantic would work it out anew for each of some three hundred fields, at every start.
    """

    def __init__(self) -> None:
        self._schema: CoreSchema | None = None

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        if self._schema is None:
            self._schema = handler(source)
        return self._schema


Length = Annotated[
    float,
    BeforeValidator(_read_length),
    AfterValidator(snap),
    _within(LENGTH_MOST, "a length within 1 km"),
    PlainSerializer(_write_length),
    Plausible(-LENGTH_USUAL, LENGTH_USUAL),
    Once(),
]
"""[m]"""
Size = Annotated[Length, Field(gt=0), Once()]
"""A length above zero [m]."""
Depth = Annotated[Length, Field(ge=0), Once()]
"""A length of zero or more [m]."""
Run = Annotated[Depth, Plausible(0.0, 200.0), Once()]
"""A length of zero or more [m] that runs on: of a tether, or a course."""
Mass = Annotated[
    float,
    BeforeValidator(_read_mass),
    AfterValidator(lambda kilograms: round(kilograms, SNAP_DIGITS)),
    _within(MASS_MOST, "a weight within 1000 tonnes"),
    PlainSerializer(_write_mass),
    Plausible(-MASS_USUAL, MASS_USUAL),
    Once(),
]
"""[kg]; in a file [g]"""
Weight = Annotated[Mass, Field(ge=0), Once()]
"""A mass of zero or more [kg]; in a file [g]."""
Money = Annotated[float, Field(ge=0, le=1e9), Once()]
"""In the currency of the brief."""
Density = Annotated[float, Field(ge=1, le=30_000), Once()]
"""[kg/m3], from that of air to above that of gold."""
Share = Annotated[float, Field(ge=0, le=1), Once()]
"""A place on a bar: 0 at the joint where it starts, 1 at the joint where it ends."""
Direction = Annotated[str, AfterValidator(_direction), Once()]
"""Where something points: +x ahead, +y to port, +z up; two of them make 45 degrees, like +x+y."""
Id = Annotated[str, StringConstraints(min_length=1, max_length=40, pattern=r"^[A-Za-z0-9._-]+$"), Once()]
"""An opaque name for references inside a file; it says nothing about place or order."""
Name = Annotated[str, StringConstraints(min_length=1, max_length=80), Once()]
Text = Annotated[str, StringConstraints(max_length=20_000), Once()]
