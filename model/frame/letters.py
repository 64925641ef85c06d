"""The letters of the cut list: equal pieces share one, the longest is A."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from model.design import Pipe
from model.units import snap

if TYPE_CHECKING:
    from model.frame.layout import BarPlace

SAME_CUT = 4
"""Pieces whose lengths agree to this many digits of a metre (0.1 mm) share a letter."""


class CutGroup(Struct, frozen=True):
    """Equal pieces of pipe: their letter, length to saw [m], pipe, and bars."""

    letter: str
    cut: float
    pipe: Pipe
    bars: tuple[BarPlace, ...]


def letter(number: int) -> str:
    """The letter of the piece at a place in the cut list, counted from 0.

    >>> letter(0), letter(25), letter(26)
    ('A', 'Z', 'AA')
    """
    text = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, 26)
        text = chr(ord("A") + rest) + text
    return text


def lettered(bars: list[BarPlace]) -> list[BarPlace]:
    """The same bars with their letters; a bar whose cut is not known gets "?"."""
    groups = sorted({_key(bar) for bar in bars if bar.cut is not None})
    letters = {key: letter(number) for number, key in enumerate(groups)}
    return [replace(bar, letter=letters[_key(bar)] if bar.cut is not None else "?") for bar in bars]


def cut_list(bars: Iterable[BarPlace]) -> tuple[CutGroup, ...]:
    """What to saw, the longest first."""
    groups: dict[tuple[float, str], list[BarPlace]] = {}
    for bar in bars:
        if bar.cut is not None:
            groups.setdefault(_key(bar), []).append(bar)
    return tuple(
        CutGroup(letter(number), groups[key][0].cut or 0.0, groups[key][0].pipe, tuple(groups[key]))
        for number, key in enumerate(sorted(groups))
    )


def _key(bar: BarPlace) -> tuple[float, str]:
    return -round(snap(bar.cut or 0.0), SAME_CUT), bar.pipe.id
