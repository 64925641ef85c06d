"""What is said of a value that makes no sense: what was found, and what is expected."""

from __future__ import annotations

from math import inf
from typing import TYPE_CHECKING, Any

from model.units import METRES, Unit
from tui.forms.kinds import Typed, number_text

if TYPE_CHECKING:
    from collections.abc import Callable

    from model.design.limits import Limits

LARGE = 1.0
"""[m], [kg] From here on a limit is said in metres or kilograms."""


def found_words(typed: str, unit: str) -> str:
    """What was typed, with the unit that stands behind the field where none was written.

    >>> found_words("-5", "mm"), found_words("9 m", "mm"), found_words(" ", "")
    ('-5 mm', '9 m', 'nothing')
    """
    words = " ".join(typed.split())
    return f"{words} {unit}" if unit and words[-1:].isdigit() else words or "nothing"


def refusal(limits: Limits, value: Any, found: str, say: Callable[[float], str]) -> str:
    """One sentence on a value beyond its limits.

    Args:
        found: what was typed.
        say: a bound with its unit.
    """
    why = f" ({limits.why})" if limits.why else ""
    if isinstance(value, str):
        fewest, longest = limits.letters
        if len(value) < fewest:
            return "found nothing; expected at least one letter"
        return f"found {len(value)} letters; expected {longest} at the most{why}"
    return f"found {found}; expected {_expected(limits, say)}{why}"


def _expected(limits: Limits, say: Callable[[float], str]) -> str:
    """
    >>> from model.design.limits import Limits
    >>> _expected(Limits(0.0, 40.0), str), _expected(Limits(0.0, above=True), str)
    ('0.0 to 40.0', 'more than 0.0')
    """
    if limits.least == -inf:
        return f"{say(limits.most)} at the most"
    if limits.most == inf:
        return f"more than {say(limits.least)}" if limits.above else f"{say(limits.least)} or more"
    if limits.above:
        return f"more than {say(limits.least)}, {say(limits.most)} at the most"
    return f"{say(limits.least)} to {say(limits.most)}"


def bound_words(kind: Typed, value: float, unit: Unit, shown: str) -> str:
    """A limit in the unit of its field.

    Args:
        value: in SI.
        unit: of lengths.
        shown: what stands behind the field.
    """
    if kind.unit == "length":
        return _length(value, unit)
    if kind.unit in ("g", "g/m"):
        kilo = abs(value) >= LARGE
        return f"{number_text(value if kilo else value * 1000, 3)} {'k' * kilo}{kind.unit}"
    return f"{number_text(value)} {shown}".rstrip()


def _length(metres: float, unit: Unit) -> str:
    """
    >>> _length(10.0, "mm"), _length(0.2, "mm"), _length(10.0, "in")
    ('10 m', '200 mm', '393.7 in')
    """
    if unit == "mm" and abs(metres) >= LARGE:
        return f"{number_text(metres, 3)} m"
    return f"{number_text(metres / METRES[unit], 1)} {unit}"
