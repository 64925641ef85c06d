"""The brief: the rules and the task.  Each rule is off until the team fills it in."""

from typing import Annotated, Literal

from pydantic import Field

from model.design.measures import Money, Name, Size, Text
from model.design.record import Record
from model.design.thresholds import Thresholds

Move = Literal["ahead", "astern", "up", "down", "turn", "sideways"]


class Water(Record):
    """The water that the vehicle runs in."""

    name: Name = "fresh pool"
    temperature: Annotated[float, Field(ge=0, le=40)] = 27.0
    """Water temperature [deg C], 0 to 40."""
    salinity: Annotated[float, Field(ge=0, le=42)] = 0.5
    """Dissolved salts [g/kg]: fresh pool about 0.5, salt pool about 3, sea about 35."""


class Brief(Record):
    """What the organiser asks for."""

    title: Name = "our own limits"
    """What the task is called."""
    origin: Text = ""
    """Where these rules come from, or "invented"."""
    task: Text = ""
    """What the vehicle has to do, in the team's own words."""
    size_limit: tuple[Size, Size, Size] | None = None
    """The box that the whole vehicle must fit in: length, width, height."""
    hoop: Size | None = None
    """Inside diameter of a hoop that it must pass through."""
    gate: tuple[Size, Size] | None = None
    """Inside width and height of a gate that it must pass through."""
    spending_limit: Money | None = None
    """The most that may be spent on what counts."""
    currency: Annotated[str, Field(min_length=1, max_length=12)] = "units"
    """The name of the money."""
    materials: tuple[Name, ...] = ()
    """The pipe materials that are allowed; empty means that any is."""
    moves: tuple[Move, ...] = ()
    """The directions that the task needs a thruster for."""
    water: Water = Water()
    thresholds: Thresholds = Thresholds()
    """When the coach speaks; only what differs from the usual values stands here."""
    notes: Text = ""
    """Anything to remember about the rules."""
