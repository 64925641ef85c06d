"""An arrangement: the frame on its planes, and what is fixed to it for one run."""

from typing import Annotated, Literal

from pydantic import Field

from model.design.equipment import Attachment, Ballast, Float, Opening, Plug, Tether, Thruster
from model.design.joining import Joining
from model.design.measures import Id, Length, Name, Size, Text
from model.design.record import Record
from model.design.wiring import Power


class Plane(Record):
    """One of the parallel planes that carry the frame: a station (x), a side (y) or a level (z)."""

    id: Id
    name: Name
    at: Length
    """Where it is: ahead, to port or up from the zero point."""


class Joint(Record):
    """Where bars meet: the crossing of three planes."""

    id: Id
    name: Name
    station: Id
    side: Id
    level: Id
    fitting: Id | None = None
    """The fitting that the team picked; empty lets the cheapest that fits be used."""
    joining: Joining | None = None
    """How its pipes are held; empty means as in the rest of the frame."""

    @property
    def planes(self) -> tuple[str, str, str]:
        """The ids of its station, side and level."""
        return self.station, self.side, self.level


class Bar(Record):
    """One straight piece of pipe between two joints."""

    id: Id
    name: Name
    start: Id
    end: Id
    pipe: Id | None = None
    """The pipe size; empty means the first of the stock."""
    sawn: Size | None = None
    """Its length if it is already sawn; the planes at its ends then follow it."""


class Arrangement(Record):
    """A frame and what is fixed to it."""

    id: Id
    name: Name
    bores: Literal["flooded", "sealed"] = "flooded"
    """Whether water is let into the pipes, or they are glued shut for good."""
    joining: Joining = "dry"
    """How pipes are held in their sockets: dry, pinned or cemented."""
    stations: tuple[Plane, ...] = ()
    """Planes across the vehicle; x grows ahead."""
    sides: tuple[Plane, ...] = ()
    """Planes along the vehicle; y grows to port."""
    levels: tuple[Plane, ...] = ()
    """Level planes; z grows upwards."""
    joints: tuple[Joint, ...] = ()
    bars: tuple[Bar, ...] = ()
    thrusters: tuple[Thruster, ...] = ()
    floats: tuple[Float, ...] = ()
    ballasts: tuple[Ballast, ...] = ()
    attachments: tuple[Attachment, ...] = ()
    tether: Tether | None = None
    openings: tuple[Opening, ...] = ()
    plugs: tuple[Plug, ...] = ()
    drag_factor: Annotated[float, Field(ge=0.1, le=10)] = 1.0
    """Drag as measured over drag as worked out; 1 until a trial over a measured length says otherwise."""
    power: Power | None = None
    """Battery, fuses and wires; empty until they are planned."""
    notes: Text = ""
