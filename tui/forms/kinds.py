"""How a value stands in an entry field, and how it is read back."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from msgspec import Struct

from model.errors import LengthError
from model.units import (
    KILOGRAMS,
    Unit,
    entry_text,
    format_length,
    parse_length,
    parse_mass,
    parse_number,
    snap,
)

if TYPE_CHECKING:
    from model.review import Report

Options = tuple[tuple[str, Any], ...]
"""What can be chosen: the words, and the value."""
_BETWEEN = re.compile(r"\s*(?:[x×*]|by)\s*", re.IGNORECASE)
_UNIT_AT_END = re.compile(r"[a-z\"'″′”]+\s*$", re.IGNORECASE)


class Typed(Struct, frozen=True):
    """A value that is typed.

    Attributes:
        show: from the value to its text.
        read: from the text to the value; raises LengthError with a sentence.
        unit: what stands behind the field; "length" for the unit of the design, "money" for its currency.
    """

    show: Callable[[Any, Unit], str]
    read: Callable[[str, Unit], Any]
    unit: str = ""
    long: bool = False


class Chosen(Struct, frozen=True):
    """A value chosen from a list that may depend on the design."""

    options: Callable[[Report], Options]


class YesNo(Struct, frozen=True):
    """Yes or no."""


class Several(Struct, frozen=True):
    """Any number of a few values."""

    options: Options


Kind = Typed | Chosen | YesNo | Several


def number_text(value: float, digits: int = 9) -> str:
    """A number without needless zeros."""
    text = f"{value + 0.0:.{digits}f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def mass_text(kilograms: float) -> str:
    """A mass [kg] in grams, without loss."""
    return number_text(kilograms / KILOGRAMS["g"], 6)


def read_count(text: str) -> int:
    """A whole number.

    Raises:
        LengthError: it is none.
    """
    number = parse_number(text)
    if not number.is_integer():
        raise LengthError(f"'{text}' is not a whole number; write it like 3")
    return int(number)


def read_sizes(text: str, unit: Unit) -> tuple[float, float, float]:
    """Three lengths [m] such as ``500 x 400 x 300`` or ``50 x 40 x 30 cm``.

    Raises:
        LengthError: there are not three, or one cannot be read.
    """
    parts = _BETWEEN.split(text.strip())
    if len(parts) != 3:
        example = "20 x 16 x 12" if unit == "in" else "500 x 400 x 300"
        raise LengthError(f"'{text}' is not three lengths; write length x width x height, like {example}")
    last = _UNIT_AT_END.search(parts[2])
    bare = not any(_UNIT_AT_END.search(part) for part in parts[:2])
    if last and bare:
        parts = [*(f"{part} {last[0]}" for part in parts[:2]), parts[2]]
    elif bare and unit == "mm" and any("/" in part for part in parts):
        raise LengthError(f"'{text}' has a fraction and no unit; write in behind it")
    length, width, height = (parse_length(part, unit) for part in parts)
    return length, width, height


def read_pair(text: str, unit: Unit) -> tuple[float, float]:
    """Two lengths [m] such as ``400 x 300``.

    Raises:
        LengthError: there are not two, or one cannot be read.
    """
    parts = _BETWEEN.split(text.strip())
    if len(parts) != 2:
        raise LengthError(f"'{text}' is not two lengths; write width x height, like 400 x 300 mm")
    last = _UNIT_AT_END.search(parts[1])
    if last and not _UNIT_AT_END.search(parts[0]):
        parts[0] = f"{parts[0]} {last[0]}"
    width, height = (parse_length(part, unit) for part in parts)
    return width, height


def length_text(metres: float, unit: Unit) -> str:
    """A length [m] as it stands in its field, without loss: in the team's unit where that comes out even,
    else in the other one if it does there.

    >>> length_text(0.3, "mm"), length_text(0.3, "in"), length_text(0.0254, "in")
    ('300', '300 mm', '1')
    """
    other: Unit = "mm" if unit == "in" else "in"
    for each, with_unit in ((unit, False), (other, True)):
        text = format_length(metres, each, with_unit=with_unit)
        if parse_length(text, each) == snap(metres):
            return text
    return entry_text(metres, unit)


def show_sizes(sizes: tuple[float, ...], unit: Unit) -> str:
    """Two or three lengths [m] as they are typed."""
    return " x ".join(length_text(size, unit) for size in sizes)


def read_names(text: str, _unit: Unit) -> tuple[str, ...]:
    """Names with commas between them."""
    return tuple(part.strip() for part in text.split(",") if part.strip())


LENGTH = Typed(length_text, parse_length, "length")
DERIVED_LENGTH = Typed(
    lambda value, unit: format_length(value, unit, with_unit=False), parse_length, "length"
)
"""A length that follows from others: shown to 0.1 mm or 1/16 in, as everywhere else."""
SIZES = Typed(show_sizes, read_sizes, "length")
PAIR = Typed(show_sizes, read_pair, "length")
MASS = Typed(lambda value, _: mass_text(value), lambda text, _: parse_mass(text), "g")
MASS_PER_M = Typed(MASS.show, MASS.read, "g/m")
MONEY = Typed(lambda value, _: number_text(value), lambda text, _: parse_number(text), "money")
COUNT = Typed(lambda value, _: str(value), lambda text, _: read_count(text))
TEXT = Typed(lambda value, _: value, lambda text, _: text.strip())
LONG_TEXT = Typed(lambda value, _: value, lambda text, _: text.rstrip(), long=True)
NAMES = Typed(lambda value, _: ", ".join(value), read_names)
YES_NO = YesNo()


def number(unit: str = "") -> Typed:
    """A plain number, with the unit that stands behind the field."""
    return Typed(MONEY.show, MONEY.read, unit)


def choice(*options: tuple[str, Any]) -> Chosen:
    """One of a few fixed values."""
    return Chosen(lambda _: options)
