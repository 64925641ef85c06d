"""The ways in which each thing is read off, so that nobody has to write a bare sign."""

from typing import Literal

from msgspec import Struct

from model.design import TrialKind

WASHER = 0.87
"""What a steel washer weighs in water, as a share of its weight in air: 1 - 1000 / 7850."""


class Way(Struct, frozen=True):
    """One way to read a thing off.

    Attributes:
        key: tells the ways of one kind apart.
        label: what is read.
        measure: what kind of number it is.
        factor: value in SI = what is read, in SI, times this.
    """

    key: str
    label: str
    measure: Literal["mass", "angle", "force", "time", "minutes", "length"]
    factor: float = 1.0

    def value(self, reading: float) -> float:
        """What a reading says of the vehicle.

        >>> way = WAYS["spare"][0]
        >>> way.value(0.1)
        0.087
        """
        return reading * self.factor

    def reading(self, value: float) -> float | None:
        """What was read where a value was found; None where it was read the other way."""
        return value / self.factor if value == 0 or (value > 0) == (self.factor > 0) else None


WAYS: dict[TrialKind, tuple[Way, ...]] = {
    "weight": (Way("scale", "Scale reads", "mass"),),
    "spare": (
        Way("washers", "It floats: washers", "mass", WASHER),
        Way("scale", "It sinks: scale reads", "mass", -1.0),
    ),
    "pitch": (Way("up", "Bow up by", "angle"), Way("down", "Bow down by", "angle", -1.0)),
    "roll": (Way("port", "Port side up by", "angle"), Way("starboard", "Starboard up by", "angle", -1.0)),
    "pull ahead": (Way("scale", "Scale reads", "force"),),
    "pull astern": (Way("scale", "Scale reads", "force"),),
    "pull up": (Way("scale", "Scale reads", "force"),),
    "course": (Way("watch", "Watch reads", "time"),),
    "quarter turn": (Way("watch", "Watch reads", "time"),),
    "battery": (Way("watch", "It ran for", "minutes"),),
    "showing": (Way("ruler", "Pipe still showing", "length"),),
    "foam": (Way("scale", "Scale reads", "mass"),),
}
"""The first is the usual one."""
