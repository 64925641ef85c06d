"""Words for directions, and numbers as they stand in tables."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.units import format_length
from model.vectors import Grid, direction_text
from tui.forms.kinds import Chosen, Options, number_text

if TYPE_CHECKING:
    from model.review import Report

DIRECTIONS = {
    "+x": "ahead",
    "-x": "astern",
    "+y": "port",
    "-y": "starboard",
    "+z": "up",
    "-z": "down",
}
JOININGS = (
    ("dry: pushed in", "dry"),
    ("pinned: screw or tie", "pinned"),
    ("cemented for good", "cemented"),
)
"""How pipe is held in its sockets."""
SLANTED = ("+x+y", "+x-y", "-x+y", "-x-y")
FACES = {
    "+z": "on top",
    "-z": "below",
    "+x": "bow side",
    "-x": "stern side",
    "+y": "port side",
    "-y": "starboard side",
}


def in_unit(report: Report, metric: str, inches: str) -> str:
    """An example of a length, written as this design writes lengths."""
    return inches if report.design.units == "in" else metric


def direction_words(direction: str) -> str:
    """A direction in words.

    >>> direction_words("+x-y")
    'ahead and starboard'
    """
    steps = [direction[n : n + 2] for n in range(0, len(direction), 2)]
    return " and ".join(DIRECTIONS.get(step, step) for step in steps)


def steps_words(steps: Grid | None) -> str:
    """A direction as whole numbers in words for a list; a slanted bar that no fitting takes is "askew".

    >>> steps_words((1, 0, -1)), steps_words(None)
    ('ahead-down', 'askew')
    """
    return direction_words(direction_text(steps)).replace(" and ", "-") if steps else "askew"


def pushes() -> Chosen:
    """Where a thruster pushes."""
    options: Options = tuple((direction_words(to), to) for to in (*DIRECTIONS, *SLANTED))
    return Chosen(lambda _: options)


def faces(off: str = "") -> Chosen:
    """A side of a pipe; ``off`` says what none of them means."""
    options: Options = tuple((words, to) for to, words in FACES.items())
    return Chosen(lambda _: ((off, None), *options) if off else options)


def shown(report: Report, metres: float | None) -> str:
    """A length [m] in the team's unit, or a dash where it is not known."""
    return "-" if metres is None else format_length(metres, report.design.units)


def bare(report: Report, metres: float | None) -> str:
    """The same without its unit, for a column that says it."""
    return "-" if metres is None else format_length(metres, report.design.units, with_unit=False)


def sizes(report: Report, lengths: tuple[float, float, float]) -> str:
    """Length, width and height in the team's unit."""
    return f"{' x '.join(bare(report, each) for each in lengths)} {report.design.units}"


def money(report: Report, amount: float | None) -> str:
    """An amount in the brief's currency."""
    return "-" if amount is None else f"{number_text(amount, 2)} {report.design.brief.currency}"


def percent(share: float) -> str:
    """A chance as a person says it.

    >>> percent(0.234), percent(0.00004), percent(1.0)
    ('23 %', 'under 0.1 %', '100 %')
    """
    if share < 0.001:
        return "under 0.1 %"
    return f"{100 * share:.{0 if share >= 0.1 else 1}f} %"


def area(square_metres: float) -> str:
    """An area in square centimetres."""
    return f"{square_metres * 1e4:.0f} cm2"
