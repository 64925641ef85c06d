"""What a field of the document takes: read from its declaration, so that a limit stands in one place."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from math import inf
from typing import Any, get_args

from annotated_types import Ge, Gt, Le, Lt, MaxLen, MinLen
from msgspec import Struct
from pydantic import StringConstraints
from pydantic.fields import FieldInfo

from model.design.measures import Plausible
from model.design.record import Record


class Limits(Struct, frozen=True):
    """What a value may be.

    Attributes:
        least, most: the smallest and the largest number, in SI.
        above: whether it must be more than the smallest.
        letters: the fewest and the most letters of a text.
        why: where the limit comes from, in a few words; "" where that is plain.
    """

    least: float = -inf
    most: float = inf
    above: bool = False
    letters: tuple[int, float] = (0, inf)
    why: str = ""

    def hold(self, value: Any) -> bool:
        """Whether a number, each of several numbers, or a text is within them; anything else is.

        >>> Limits(0.0, 10.0, above=True).hold((1.0, 0.0))
        False
        """
        if isinstance(value, str):
            return self.letters[0] <= len(value) <= self.letters[1]
        if isinstance(value, tuple):
            return all(self.hold(each) for each in value)
        if not isinstance(value, int | float):
            return True
        return self.least <= value <= self.most and not (self.above and value == self.least)


@cache
def field_limits(kind: type[Record], name: str) -> Limits:
    """The limits of one field: those of the document, and of what a person may type."""
    field = kind.model_fields[name]
    least, most, above = -inf, inf, False
    fewest, longest = 0, inf
    marks = list(_marks((*field.metadata, field.annotation)))
    usual = [mark for mark in marks if isinstance(mark, Plausible)][-1:]  # a field's own before its kind's
    for mark in (*(mark for mark in marks if not isinstance(mark, Plausible)), *usual):
        low, open_, high = _bounds(mark)
        if low > least or (low == least and open_):
            least, above = low, open_
        most = min(most, high)
        if isinstance(mark, StringConstraints):
            fewest, longest = mark.min_length or 0, mark.max_length or inf
        elif isinstance(mark, MinLen):
            fewest = mark.min_length
        elif isinstance(mark, MaxLen):
            longest = mark.max_length
    return Limits(least, most, above, (fewest, longest))


def _bounds(mark: Any) -> tuple[float, bool, float]:
    """The smallest number that a mark allows, whether it must be more than that, and the largest."""
    if isinstance(mark, Gt):
        return _number(mark.gt), True, inf
    if isinstance(mark, Ge):
        return _number(mark.ge), False, inf
    if isinstance(mark, Le):
        return -inf, False, _number(mark.le)
    if isinstance(mark, Lt):
        return -inf, False, _number(mark.lt)
    if isinstance(mark, Plausible):
        return mark.least, mark.above, mark.most
    return -inf, False, inf


def _number(bound: Any) -> float:
    return float(bound)


def _marks(parts: tuple[Any, ...]) -> Iterator[Any]:
    """Every mark in a declaration, through unions, tuples and kinds that are made of others."""
    for part in parts:
        if isinstance(part, FieldInfo):
            yield from _marks(tuple(part.metadata))
        elif hasattr(part, "__metadata__"):
            yield from _marks(part.__metadata__)
        elif get_args(part):
            yield from _marks(get_args(part))
        else:
            yield part
