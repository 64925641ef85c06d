"""What is fixed to the frame: thrusters, floats, ballast, attachments, the tether, drilled openings.

Everything sits on a bar, at a share of the way from the joint where the bar starts to the joint
where it ends, so that it moves with the frame.
"""

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field, PlainSerializer

from model.design.measures import (
    Density,
    Direction,
    Id,
    Length,
    Mass,
    Money,
    Name,
    Plausible,
    Run,
    Share,
    Size,
    Text,
    Weight,
    not_above,
)
from model.design.record import Record, untouched
from model.design.wiring import Amps, Branch, Volts

Offset = tuple[Length, Length, Length]
STEEL_DENSITY = 7850.0
"""[kg/m3] steel, from memory (textbook tables print 7800)."""


class OnBar(Record):
    """Something fixed to a bar."""

    id: Id
    name: Name
    bar: Id
    at: Share = 0.5
    """Where on the bar: 0 at its start, 0.5 in the middle, 1 at its end."""
    notes: Text = ""


class Pull(Record):
    """A team's own pull test of one motor: a spring scale, and a meter at the motor."""

    ahead: Annotated[float, Field(ge=0), Plausible(0.0, 1000.0)]
    """Pull ahead, held still [N]."""
    astern: Annotated[float, Field(ge=0), Plausible(0.0, 1000.0)] | None = None
    """Pull astern, held still [N]; empty where it was not measured."""
    volts: Volts = 12.0
    """Volts at the motor during the test."""
    amps: Amps | None = None
    """Current during the test [A]; empty where it was not measured."""


class TieHole(Record):
    """A hole through the pipe for a tie that holds a thruster."""

    along: Length
    """From the thruster's place on its bar, towards the end of the bar above zero."""
    face: Direction
    """The side of the pipe that it is drilled in, right through."""
    diameter: Size = 0.006


class Thruster(OnBar):
    """A motor in its place."""

    motor: Id
    mount: Id | None = None
    """How it is held; empty until it is planned."""
    to: Direction = "+x"
    """Where it pushes the vehicle when it runs ahead."""
    offset: Offset = (0.0, 0.0, 0.0)
    """From the bar's centre line to the middle of the motor: ahead, to port, up."""
    pull: Pull | None = None
    """Its own pull test, which goes before what the stock says of its kind."""
    hand: Literal["right", "left"] | None = None
    """Which way its propeller turns when it pushes ahead, seen from behind: right is clockwise."""
    guard: bool = False
    """Whether a guard keeps fingers and the tether out of the propeller."""
    tie_holes: tuple[TieHole, ...] = ()
    """The holes for the ties that hold it; empty until they are planned, or where none are drilled."""
    branch: Branch = untouched(Branch)
    """The wires of this motor."""


class Float(OnBar):
    """A piece of foam tube."""

    foam: Id
    length: Size
    """Length of the piece."""
    beside: Direction | None = None
    """The side of the bar that it is strapped to; empty where the bar runs through its hole."""


class Ballast(OnBar):
    """A weight: a rod strapped beside the bar, or washers threaded on it."""

    mass: Weight
    """Its weight in air, on a kitchen scale."""
    density: Density = STEEL_DENSITY
    """Density of the material [kg/m3]; steel is 7850."""
    diameter: Size = 0.012
    """Diameter of the rod, or outside diameter of the washers."""
    beside: Annotated[
        Direction | None,
        BeforeValidator(lambda side: None if side == "" else side),
        PlainSerializer(lambda side: side or ""),  # a file has no word for None, and leaving it out means -z
    ] = "-z"
    """The side of the bar that it is strapped to; empty where the bar runs through it."""
    price: Money = 0.0
    counts: bool = True
    """Whether its price counts against the spending limit."""


class Attachment(OnBar):
    """Anything fixed to the frame that is not frame: a hook, a camera, a probe."""

    kind: Literal["hook", "camera", "other"] = "other"
    offset: Offset = (0.0, 0.0, 0.0)
    """From the bar's centre line to the middle of the part: ahead, to port, up."""
    size: tuple[Size, Size, Size]
    """Length, width and height of the part."""
    mass: Weight
    """Its weight in air, dry, on a kitchen scale."""
    mass_in_water: Annotated[Mass, not_above("mass")]
    """Its weight hung in water from a thread; below zero if it floats."""
    price: Money = 0.0
    counts: bool = True
    """Whether its price counts against the spending limit."""


class Tether(OnBar):
    """The cable to the surface, as far as the vehicle has to carry it."""

    diameter: Size
    hanging: Run
    """Length that hangs from the vehicle in the water; the rest is held by the tether handler."""
    mass_per_m: Weight
    """Weight of one metre in air."""
    mass_in_water_per_m: Annotated[Mass, not_above("mass_per_m")]
    """Weight of one metre hung in water; below zero if it floats."""
    floats: Annotated[int, Field(ge=0), Plausible(0, 100)] = 0
    """How many small floats there are along the hanging length."""
    float_lift: Weight = 0.0
    """What one small float lifts in water."""
    price: Money = 0.0
    counts: bool = True
    """Whether its price counts against the spending limit."""


class Opening(OnBar):
    """A drilled hole: a vent lets air out, a drain lets water in and out."""

    face: Direction = "+z"
    """The side of the pipe that it is drilled in; on top lets air out, below lets water out."""
    diameter: Size = 0.006
    through: bool = False
    """Whether it goes through both walls."""


class Plug(OnBar):
    """A stopper glued into the bore, that lets neither water nor air past."""

    length: Size = 0.01
    """How much of the bore it fills."""
