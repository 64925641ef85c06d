"""The kinds of trial: what is measured, how, and how the number is written.

How to measure: common practice, no source.
"""

from collections.abc import Callable

from msgspec import Struct

from model.design import TrialKind
from model.design.limits import Limits
from model.units import Unit, format_length
from model.water.balance import GRAVITY


class Kind(Struct, frozen=True):
    """A kind of trial.

    Attributes:
        title: what is measured; unit: that the number is in, as people read it.
        how: how it is measured.
        words: a value in SI as people read it.
        reads: what its instrument can read, in SI; which way it goes is said by the field.
        about: whether it is of one bar or one foam; "" for the whole vehicle.
    """

    title: str
    unit: str
    how: str
    words: Callable[[float, Unit], str]
    reads: Limits
    about: str = ""


SCALE, FULL_SCALE = Limits(0.0, 100.0), Limits(0.0, 100.0, above=True)
"""[kg] What is hung on a scale; what is weighed dry weighs something."""
PROTRACTOR = Limits(0.0, 180.0)
SPRING_SCALE = Limits(0.0, 1000.0)
WATCH = Limits(0.0, 3600.0, above=True)
CLOCK = Limits(0.0, 6000.0, above=True)
"""[min]"""
RULER = Limits(0.0, 10.0)


def _grams(value: float, _: Unit) -> str:
    return f"{value * 1000:.0f} g"


def _spare(value: float, _: Unit) -> str:
    return f"{abs(value) * 1000:.0f} g, it {'floats' if value >= 0 else 'sinks'}"


def _pitch(value: float, _: Unit) -> str:
    return "level" if abs(value) < 0.05 else f"{abs(value):.1f} degrees bow {'up' if value > 0 else 'down'}"


def _roll(value: float, _: Unit) -> str:
    side = "port" if value > 0 else "starboard"
    return "level" if abs(value) < 0.05 else f"{abs(value):.1f} degrees, {side} side up"


def _pull(value: float, _: Unit) -> str:
    return f"{value:.2f} N ({value / GRAVITY * 1000:.0f} g)"


def _seconds(value: float, _: Unit) -> str:
    return f"{value:.1f} s"


def _minutes(value: float, _: Unit) -> str:
    return f"{value:.0f} min"


def _length(value: float, unit: Unit) -> str:
    return format_length(value, unit)


KINDS: dict[TrialKind, Kind] = {
    "weight": Kind(
        "dry weight",
        "g",
        "Hang it dry, pipes drained, from a luggage or kitchen scale.",
        _grams,
        FULL_SCALE,
    ),
    "spare": Kind(
        "spare buoyancy",
        "g",
        "All air out: hang dry steel washers on its middle until it hovers; their weight in air x 0.87 is "
        "the spare buoyancy. If it sinks, lift it with a scale under water: what that reads is below zero.",
        _spare,
        SCALE,
    ),
    "pitch": Kind(
        "pitch at rest",
        "deg",
        "Let go at half a metre of depth, motors off, tether slack, and read the angle within 3 s: the "
        "height of bow over stern against a mark on the wall, or a photo from the side.",
        _pitch,
        PROTRACTOR,
    ),
    "roll": Kind("roll at rest", "deg", "The same, seen from the bow or the stern.", _roll, PROTRACTOR),
    "pull ahead": Kind(
        "pull ahead",
        "N",
        "A spring scale on a line from the stern to the wall, at least a metre of line, full ahead; read the "
        "middle of the swing. 100 g on the scale are about 1 N.",
        _pull,
        SPRING_SCALE,
    ),
    "pull astern": Kind("pull astern", "N", "The same, from the bow, full astern.", _pull, SPRING_SCALE),
    "pull up": Kind(
        "pull up",
        "N",
        "A spring scale on a line from its middle straight down to a weight, full up.",
        _pull,
        SPRING_SCALE,
    ),
    "course": Kind(
        "time over a length",
        "s",
        "From rest to a line at a measured distance, full ahead, three times each way; take the middle one.",
        _seconds,
        WATCH,
    ),
    "quarter turn": Kind(
        "quarter turn",
        "s",
        "On the spot, from rest along a wall until it points straight at it; both ways, take the slower.",
        _seconds,
        WATCH,
    ),
    "battery": Kind(
        "battery",
        "min",
        "All motors on in the water from a full battery, until it falls to the voltage its maker allows.",
        _minutes,
        CLOCK,
    ),
    "showing": Kind(
        "pipe still showing",
        "mm",
        "Push one bar together as you will build it, and measure the pipe between its two fittings.",
        _length,
        RULER,
        "bar",
    ),
    "foam": Kind(
        "weight of a piece of foam",
        "g",
        "Weigh a dry piece of known length on a kitchen scale, the longer the better.",
        _grams,
        FULL_SCALE,
        "foam",
    ),
}
"""In the order of a pool day, and then what is measured at the bench."""
