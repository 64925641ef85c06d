"""The brief: the rules and the task.  Each rule is off until the team fills it in."""

from typing import Annotated, Literal

from pydantic import Field

from model.design.measures import MASS_USUAL, Density, Length, Money, Name, Plausible, Run, Size, Text, Weight
from model.design.record import Record, untouched
from model.design.thresholds import Thresholds
from model.design.wiring import Volts

AttitudeName = Literal[
    "level", "nose up 30", "nose down 30", "port side up 45", "starboard side up 45", "upside down"
]
Move = Literal["ahead", "astern", "up", "down", "turn", "sideways"]


class Water(Record):
    """The water that the vehicle runs in."""

    name: Name = "fresh pool"
    temperature: Annotated[float, Field(ge=0, le=40)] = 27.0
    """Water temperature [deg C], 0 to 40."""
    salinity: Annotated[float, Field(ge=0, le=42)] = 0.5
    """Dissolved salts [g/kg]: fresh pool about 0.5, salt pool about 3, sea about 35."""


class Load(Record):
    """The heaviest thing that the task asks the vehicle to lift."""

    name: Name = "load"
    mass: Annotated[Weight, Plausible(0.0, MASS_USUAL, above=True)]
    """Its weight."""
    weighed: Literal["air", "water"] = "water"
    """Whether that is its weight in air or hung in water."""
    density: Density = 7850.0
    """Density of its material [kg/m3], for a weight in air; steel is 7850."""

    def in_water(self, water: float) -> float:
        """Its weight [kg] hung in water of a density [kg/m3]; below zero if it floats."""
        return self.mass if self.weighed == "water" else self.mass * (1 - water / self.density)


class Leg(Record):
    """One piece of a course, begun and ended at rest."""

    ahead: Run = 0.0
    """How far it goes straight ahead."""
    turn: Annotated[float, Field(ge=0, le=3600)] = 0.0
    """How far it turns on the spot, either way [deg]; 90 is a quarter turn."""
    climb: Annotated[Length, Plausible(-200.0, 200.0)] = 0.0
    """How far it climbs; with a minus sign it dives."""
    loaded: bool = False
    """Whether the load hangs on the hook."""
    wait: Annotated[float, Field(ge=0), Plausible(most=3600.0)] = 0.0
    """How long it waits at its end, to pick something up or let it go [s]."""


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
    spending_limit: Annotated[Money, Plausible(0.0, above=True)] | None = None
    """The most that may be spent on what counts."""
    receipts_required: bool = False
    """Whether every line of the ledger needs a receipt."""
    given_counts: bool = False
    """Whether what was given counts against the limit, at what it would have cost."""
    same_frame: bool = False
    """Whether all arrangements must be built of the same pieces of frame."""
    currency: Annotated[str, Field(min_length=1, max_length=12)] = "units"
    """The name of the money."""
    materials: tuple[Name, ...] = ()
    """The pipe materials that are allowed; empty means that any is."""
    moves: tuple[Move, ...] = ()
    """The directions that the task needs a thruster for."""
    attitudes: tuple[AttitudeName, ...] = ()
    """The ways it may lie in the water in which its pipes must lose their air; empty means all of them."""
    foam_squeeze: Annotated[float, Field(ge=0, le=50)] = 0.0
    """How much of its room soft foam loses at the deepest point of the run [%]; a few at 3 to 4 m."""
    load: Load | None = None
    """The heaviest thing to lift."""
    supply_limit: Volts | None = None
    """The highest nominal voltage that is allowed."""
    course: tuple[Leg, ...] = ()
    """A simple run on paper: straight lengths, turns and climbs, in order."""
    water: Water = untouched(Water)
    thresholds: Thresholds = untouched(Thresholds)
    """When the coach speaks; only what differs from the usual values stands here."""
    notes: Text = ""
    """Anything to remember about the rules."""
