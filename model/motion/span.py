"""A number with the size of its uncertainty."""

from collections.abc import Iterable
from math import hypot

from msgspec import Struct


class Span(Struct, frozen=True):
    """A value, and how low and how high the real thing may come out."""

    value: float
    low: float
    high: float

    def text(self, unit: str, digits: int = 2) -> str:
        """In words.

        >>> Span(0.42, 0.36, 0.48).text("m/s")
        '0.42 m/s, 0.36 to 0.48'
        """
        value, low, high = (f"{number:.{digits}f}" for number in (self.value, self.low, self.high))
        return f"{value} {unit}" if low == value == high else f"{value} {unit}, {low} to {high}"

    def sides(self, above: str, below: str, unit: str, digits: int = 0) -> str:
        """How far the real thing may come out to one side or the other, in words.

        >>> Span(4.0, 2.2, 6.1).sides("bow up", "stern up", "degrees")
        '2 to 6 degrees bow up'
        >>> Span(0.2, -8.0, 7.0).sides("to port", "to starboard", "degrees")
        '8 degrees to starboard to 7 degrees to port'
        """
        low, high = (f"{abs(number):.{digits}f}" for number in (self.low, self.high))
        mark = unit if unit == "°" else f" {unit}"
        if self.low < 0 < self.high:
            return f"{low}{mark} {below} to {high}{mark} {above}"
        return f"{low} to {high}{mark} {above}" if self.low >= 0 else f"{high} to {low}{mark} {below}"


def spanned(value: float, variants: Iterable[float]) -> Span:
    """A value with the spread that separate causes give it: each variant is the value with one cause moved.

    Causes are independent, so what they add on each side adds as the root of the sum of squares.

    >>> spanned(10.0, (13.0, 6.0, 14.0))
    Span(value=10.0, low=6.0, high=15.0)
    """
    offs = [variant - value for variant in variants]
    low = hypot(*(off for off in offs if off < 0))
    high = hypot(*(off for off in offs if off > 0))
    return Span(value, value - low, value + high)
