"""A result that can say how it was made."""

from msgspec import Struct


class Quantity(Struct, frozen=True):
    """A number on the screen, and where it comes from.

    Attributes:
        name: what it is called.
        text: the number as it is shown, with its unit.
        formula: how it is worked out, in words.
        inputs: what went in: names and values as they are shown.
        source: the standard, book or habit behind the formula.
        spread: how sure it is, in words; empty where it is exact.
    """

    name: str
    text: str
    formula: str
    inputs: tuple[tuple[str, str], ...]
    source: str
    spread: str = ""
