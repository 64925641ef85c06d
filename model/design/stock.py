"""The stock: a pipe system, written into the design in whole so that it opens the same next year."""

from typing import Annotated, Literal

from pydantic import Field

from model.design.joining import Pin
from model.design.measures import (
    Density,
    Depth,
    Direction,
    Id,
    Money,
    Name,
    Size,
    Text,
    Weight,
    below,
)
from model.design.on_hand import OnHand
from model.design.own_parts import OwnParts
from model.design.record import Record, untouched

Shape = Literal[
    "cap", "coupling", "elbow", "elbow 45", "tee", "corner", "cross", "side-outlet tee", "five-way", "six-way"
]


class Stick(Record):
    """A length in which pipe is sold."""

    length: Size
    price: Money = 0.0


class Pipe(Record):
    """A size of pipe."""

    id: Id
    name: Name
    material: Name
    """What it is made of, as the brief would name it: PVC, CPVC, PEX."""
    outside_diameter: Size
    """Outside diameter."""
    bore: Annotated[Size, below("outside_diameter")]
    """Average inside diameter; the wall in the tables is the least wall, so it is below od - 2 x wall."""
    density: Density = 1400.0
    """Density of the plastic [kg/m3]."""
    insertion: Depth
    """Push-in depth: how far a dry pipe really goes into a socket. Measure one joint of your own."""
    sticks: tuple[Stick, ...] = ()
    """The lengths on sale, with their prices."""
    counts: bool = True
    """Whether its price counts against the spending limit."""
    source: Text = ""


class Socket(Record):
    """One socket of a fitting."""

    to: Direction
    """Where the socket points."""
    laying_length: Depth
    """Centre to stop: from the fitting's centre to the stop at the bottom of the socket."""
    depth: Size
    """Socket depth, from the face to the stop."""
    pipe: Id
    """The pipe size that goes in."""

    @property
    def centre_to_face(self) -> float:
        """[m] From the fitting's centre to the face of the socket."""
        return self.laying_length + self.depth


class Fitting(Record):
    """A kind of fitting on sale."""

    id: Id
    name: Name
    shape: Shape
    sockets: Annotated[tuple[Socket, ...], Field(min_length=1)]
    hub: Size
    """Outside diameter of the hub, over the socket."""
    mass: Weight
    """Weight of one. Weigh one on a kitchen scale."""
    density: Density = 1400.0
    """Density of the plastic [kg/m3]."""
    price: Money = 0.0
    counts: bool = True
    """Whether its price counts against the spending limit."""
    source: Text = ""


class Stock(Record):
    """A range of pipe and fittings, and the saw that cuts it."""

    name: Name
    origin: Text = ""
    """Where these dimensions come from, or "invented"."""
    pipes: Annotated[tuple[Pipe, ...], Field(min_length=1)]
    """The first is the one that a new bar is made of."""
    fittings: tuple[Fitting, ...] = ()
    kerf: Depth = 0.0
    """What the saw eats with every cut; a ratchet cutter eats nothing."""
    pin: Pin = untouched(Pin)
    """What holds a joint that is pinned."""
    own: OwnParts = untouched(OwnParts)
    """What the team measured itself; it goes before the values above, which stay as they were published."""
    on_hand: OnHand = untouched(OnHand)
    """What is in the box already."""
    notes: Text = ""
