"""How pipe is held in its sockets."""

from typing import Annotated, Literal

from pydantic import Field

from model.design.measures import Density, Money, Name, Weight
from model.design.record import Record

Joining = Literal["dry", "pinned", "cemented"]
"""Pushed in by hand; pushed in and held by a screw or a tie through a hole; cemented to the stop for good."""


class Pin(Record):
    """The screw or tie that holds a pipe in its socket."""

    name: Name = "stainless screw 3.5 x 9.5 mm"
    each_end: Annotated[int, Field(ge=1, le=8)] = 1
    """How many hold one end of a pipe."""
    mass: Weight = 0.001
    """Weight of one (common practice, no source). Weigh ten."""
    density: Density = 7900.0
    """Density of the material [kg/m3]; stainless steel is 7900 (from memory), nylon 1140."""
    price: Money = 0.0
    """Price of one."""
    counts: bool = True
    """Whether its price counts against the spending limit."""
