"""Lengths, weights and numbers as people write them, and back.

Inside the model everything is SI.  At the edge a length is in mm or in inches (to the nearest
1/16), a weight in grams.  A decimal comma is read, a decimal point is written.
"""

import re
from typing import Literal

from model.errors import LengthError

Unit = Literal["mm", "in"]

METRES: dict[str, float] = {
    "mm": 1e-3,
    "cm": 1e-2,
    "m": 1.0,
    "in": 0.0254,  # exact, international yard and pound agreement of 1959
    "ft": 0.3048,  # exact, the same
}
KILOGRAMS: dict[str, float] = {
    "g": 1e-3,
    "kg": 1.0,
    "lb": 0.45359237,  # exact, international yard and pound agreement of 1959
    "oz": 0.028349523125,  # lb / 16
}
ALIASES: dict[str, str] = {
    '"': "in",
    "''": "in",
    "″": "in",
    "”": "in",
    "inch": "in",
    "inches": "in",
    "'": "ft",
    "′": "ft",
    "feet": "ft",
    "foot": "ft",
    "gram": "g",
    "grams": "g",
    "lbs": "lb",
}
SNAP_DIGITS = 9  # metres are kept to 1 nm, so that inches come back exactly
SIXTEENTH = 0.0254 / 16
LONGEST_TEXT = 40  # of an amount; what is longer is no length

_WHOLE = r"\d+(?:[.,]\d+)?|[.,]\d+"
_AMOUNT = re.compile(
    rf"""\s*(?P<sign>[+-]?)\s*
    (?:(?P<number>{_WHOLE})(?![\d/.,]))?
    (?:(?P<gap>\s*-\s*|\s+)?(?P<top>\d+)\s*/\s*(?P<bottom>\d+))?
    \s*(?P<unit>[a-zA-Z]+|''|["'″′”])?\s*""",
    re.VERBOSE,
)
_THOUSANDS = re.compile(r"[1-9]\d{0,2},\d{3}")


def usual_length(unit: Unit, millimetres: float, inches: float) -> float:
    """A length to begin with [m], round in the unit that it will be read in.

    >>> usual_length("mm", 300, 12), usual_length("in", 300, 12)
    (0.3, 0.3048)
    """
    return snap(inches * METRES["in"] if unit == "in" else millimetres * METRES["mm"])


def snap(metres: float) -> float:
    """A length [m] to the nearest nanometre.

    >>> snap(3.375 * 0.0254)
    0.085725
    """
    return round(metres, SNAP_DIGITS) + 0.0


def parse_number(text: str) -> float:
    """A plain number with a decimal point or comma.

    Raises:
        LengthError: the text is no number, or ``1,234`` could be read in two ways.

    >>> parse_number("8,6")
    8.6
    """
    amount = text.strip()
    if _THOUSANDS.fullmatch(amount.lstrip("+-")):
        plain, point = amount.replace(",", ""), amount.replace(",", ".")
        raise LengthError(f"'{amount}' could be {point} or {plain}; write {point} or {plain}")
    if not re.fullmatch(rf"[+-]?\s*(?:{_WHOLE})", amount):
        found = f"'{text}' is not a number" if amount else "there is nothing here"
        raise LengthError(f"{found}; write it like 8.6")
    return float(amount.replace(",", ".").replace(" ", ""))


def parse_length(text: str, unit: Unit) -> float:
    """A length [m] from what a person typed; a bare number is in ``unit``, a bare fraction in inches.

    Raises:
        LengthError: it cannot be read, or could be read in two ways.

    >>> parse_length('3-3/8"', "mm")
    0.085725
    >>> parse_length("8,6 cm", "in")
    0.086
    """
    return snap(_parse(text, unit, METRES, "86, 8.6 cm or 3 3/8 in"))


def parse_mass(text: str) -> float:
    """A mass [kg] from what a person typed; a bare number is in grams.

    Raises:
        LengthError: it cannot be read, or could be read in two ways.

    >>> parse_mass("0,25 kg")
    0.25
    """
    return round(_parse(text, "g", KILOGRAMS, "86, 86 g or 0.2 lb"), SNAP_DIGITS)


def format_length(metres: float, unit: Unit, *, with_unit: bool = True) -> str:
    """A length [m] as it is shown: mm to 0.1, inches to the nearest 1/16.

    >>> format_length(0.085725, "in"), format_length(0.085725, "mm")
    ('3 3/8 in', '85.7 mm')
    """
    amount = (
        _sixteenths(metres) if unit == "in" else f"{_no_minus_zero(metres * 1000, 1):.1f}".removesuffix(".0")
    )
    return f"{amount} {unit}" if with_unit else amount


def format_mass(kilograms: float) -> str:
    """A mass [kg] in grams below 10 kg, else in kg.

    >>> format_mass(0.0274), format_mass(12.34)
    ('27 g', '12.3 kg')
    """
    if abs(kilograms) >= 10:
        return f"{kilograms:.1f} kg"
    return f"{_no_minus_zero(kilograms * 1000, 0):.0f} g"


def entry_text(metres: float, unit: Unit) -> str:
    """A length [m] as it stands in an entry field, without loss: typed back it gives the same length."""
    shown = format_length(metres, unit, with_unit=False)
    if parse_length(shown, unit) == snap(metres):
        return shown
    return f"{metres / METRES[unit]:.8f}".rstrip("0").rstrip(".")


def _no_minus_zero(value: float, digits: int) -> float:
    return round(value, digits) + 0.0


def _sixteenths(metres: float) -> str:
    count = round(abs(metres) / SIXTEENTH)
    whole, rest = divmod(count, 16)
    sign = "-" if metres < 0 and count else ""
    if not rest:
        return f"{sign}{whole}"
    top, bottom = rest, 16
    while top % 2 == 0:
        top, bottom = top // 2, bottom // 2
    return f"{sign}{whole} {top}/{bottom}" if whole else f"{sign}{top}/{bottom}"


def _parse(text: str, default: str, table: dict[str, float], examples: str) -> float:
    match = _AMOUNT.fullmatch(text) if len(text) <= LONGEST_TEXT else None
    if match is None or not (match["number"] or match["top"]):
        found = f"'{text[:LONGEST_TEXT]}' cannot be read" if text.strip() else "there is nothing here"
        raise LengthError(f"{found}; write it like {examples}")
    name = (match["unit"] or "").lower()
    unit = ALIASES.get(name, name) or (_fraction_unit(match, default, table))
    if unit not in table:
        raise LengthError(f"'{text}' has the unit '{name}'; the units are {', '.join(table)}")
    amount = parse_number(match["number"]) if match["number"] else 0.0
    if match["top"]:
        amount += _fraction(text, match, unit)
    return (-amount if match["sign"] == "-" else amount) * table[unit]


def _fraction_unit(match: re.Match[str], default: str, table: dict[str, float]) -> str:
    """A bare fraction is in inches: nobody divides a millimetre into eighths."""
    return "in" if match["top"] and "in" in table else default


def _fraction(text: str, match: re.Match[str], unit: str) -> float:
    top, bottom = int(match["top"]), int(match["bottom"])
    if unit in ("mm", "cm", "m", "g", "kg"):
        raise LengthError(f"'{text}' is a fraction in {unit}; write a decimal number, or inches")
    if bottom == 0 or (match["number"] and top >= bottom):
        raise LengthError(f"'{text}' has the fraction {top}/{bottom}; write one below 1, like 3 3/8")
    if match["number"] and (match["gap"] is None or not match["number"].isdigit()):
        raise LengthError(f"'{text}' could be read in two ways; write it like 3 3/8")
    return top / bottom
