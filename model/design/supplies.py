"""Bought parts that are not pipe: motors, mounts and foam."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from model.design.measures import (
    Density,
    Depth,
    Id,
    Mass,
    Money,
    Name,
    Size,
    Text,
    Weight,
    below,
    not_above,
)
from model.design.record import Record, untouched
from model.design.wiring import Amps


class Bought(Record):
    """Something bought, known by its weight in air and in water: easier than its volume."""

    id: Id
    name: Name
    mass: Weight
    """Weight of one in air."""
    mass_in_water: Annotated[Mass, not_above("mass")]
    """Weight of one hung in water, on a scale that reads mass; below zero if it floats."""
    price: Money = 0.0
    counts: bool = True
    """Whether its price counts against the spending limit."""
    source: Text = ""


class Motor(Bought):
    """A sealed motor with its propeller."""

    body_diameter: Size
    """Diameter of the body."""
    body_length: Size
    """Length of the body."""
    propeller_diameter: Size
    """Diameter of the propeller."""
    thrust_ahead: Annotated[float, Field(ge=0, le=1e6)]
    """Pull ahead, vehicle held still [N]; 0 where it was not measured."""
    thrust_astern: Annotated[float, Field(ge=0, le=1e6)] | None = None
    """Pull astern, vehicle held still [N]; empty where it was not measured."""
    volts: Annotated[float, Field(gt=0)] = 12.0
    """Volts at the motor when the pull was measured."""
    amps: Amps | None = None
    """Current during the pull [A]; empty where it was not measured."""
    stalled_amps: Amps | None = None
    """Current with the propeller held fast, at the same volts [A]; empty where it was not measured."""
    shaft_watts: Annotated[float, Field(gt=0)] | None = None
    """Power at the shaft during the pull [W]; from it the pull is worked out where none was measured."""

    @model_validator(mode="after")
    def _currents(self) -> Self:
        if self.amps is not None and self.stalled_amps is not None and self.stalled_amps <= self.amps:
            raise ValueError(
                f"found {self.stalled_amps:g} A stalled and {self.amps:g} A running; "
                "a stalled motor draws more than a running one: measure again"
            )
        return self


class Mount(Bought):
    """How a thruster is held to its bar."""

    method: Literal["ties", "clamp", "stub"] = "ties"
    """Ties through drilled holes, a strap or clamp round the pipe, or a stub in a spare socket."""


class Foam(Record):
    """Foam tube that lifts."""

    id: Id
    name: Name
    outside_diameter: Size
    """Outside diameter of the tube."""
    hole: Annotated[Depth, below("outside_diameter")] = 0.0
    """Diameter of its hole."""
    density: Density = 28.0
    """Density of the foam [kg/m3]. Weigh and measure a piece of yours."""
    scatter: Annotated[float, Field(ge=0)] = 8.0
    """How far its density may be off [kg/m3]: 8 where nobody weighed it (tables: 20 to 40), 1 if weighed."""
    sold_length: Size
    """Length of one tube as it is sold."""
    price: Money = 0.0
    """Price of one tube."""
    counts: bool = True
    """Whether its price counts against the spending limit."""
    source: Text = ""


class Washer(Record):
    """Small weights to trim with at the pool, added and taken away one by one."""

    name: Name = "coated steel washers"
    mass: Annotated[Mass, Field(gt=0)] = 0.010
    """Weight of one."""
    price: Money = 0.0
    """Price of one."""
    counts: bool = True
    """Whether its price counts against the spending limit."""


class Supplies(Record):
    """What the team has or will buy besides pipe."""

    motors: tuple[Motor, ...] = ()
    mounts: tuple[Mount, ...] = ()
    foams: tuple[Foam, ...] = ()
    washer: Washer = untouched(Washer)
