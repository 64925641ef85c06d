"""Wires and power: battery, fuses, plugs, the cable's cores, and what each motor's branch has of its own."""

from typing import Annotated, Literal

from pydantic import Field

from model.design.measures import Name, Once, Plausible, Run, Share, Text
from model.design.record import Record, untouched

Volts = Annotated[float, Field(gt=0, le=1000), Plausible(0.0, 60.0, above=True), Once()]
"""[V]; a person types low voltage: to 60 V of direct current (IEC 62368-1, from memory)."""
Amps = Annotated[float, Field(gt=0, le=1000), Once()]
"""[A]"""
Ohms = Annotated[float, Field(ge=0, le=1000), Once()]
"""[ohm]"""
Area = Annotated[float, Field(gt=0, le=100), Once()]
"""Cross-section of the copper of one core [mm2]."""
Hours = Annotated[float, Field(ge=0), Plausible(0.0, 1000.0), Once()]
"""[h]"""
Switching = Literal["reversing switch", "on-off switch", "controller"]


class Battery(Record):
    """The battery on the poolside."""

    name: Name = "sealed 12 V battery"
    volts: Volts = 12.0
    """Nominal voltage; a full 12 V lead battery reads 12.7 V at rest."""
    capacity: Annotated[float, Field(gt=0), Plausible(0.0, 1000.0, above=True)] = 7.0
    """Capacity [Ah], as printed on it."""
    usable: Share = 0.6
    """The share of the capacity that can be drawn before the voltage sags: about 0.6 of a sealed lead
    battery at these currents (common practice)."""
    resistance: Ohms = 0.03
    """Resistance inside the battery [ohm] (common practice: 0.02 to 0.05 for 7 Ah)."""


class Branch(Record):
    """The wires of one motor, from where the branches part to the motor and back."""

    fuse: Amps | None = None
    """Its own fuse [A]; empty where the main fuse has to do."""
    core_area: Area | None = None
    """Copper of its cores in the tether [mm2]; empty means as the rest."""
    colours: tuple[Name, Name] = ("red", "black")
    """Colours of its two cores."""
    switching: Switching = "reversing switch"
    """What turns it on, and astern: an on-off switch has no way to turn it round."""

    @property
    def reverses(self) -> bool:
        """Whether its switch can turn the motor round."""
        return self.switching != "on-off switch"


class Power(Record):
    """The wiring of one arrangement; low-voltage direct current only."""

    battery: Battery = untouched(Battery)
    main_fuse: Amps | None = None
    """Fuse in the positive lead [A]; empty where there is none."""
    fuse_distance: Run = 0.15
    """How far from the battery's positive terminal the first fuse sits; 175 mm is the most."""
    feed: Literal["pair each", "one pair"] = "pair each"
    """Whether each motor has a pair of cores of its own in the tether, or all share one pair."""
    core_area: Area = 0.75
    """Copper of one core of the tether [mm2]."""
    length: Run = 10.0
    """Length of the tether from the control box to the vehicle, one way."""
    lead_length: Run = 1.0
    """Length of the lead from the battery to the control box, one way."""
    lead_area: Area = 1.5
    """Copper of one core of that lead [mm2]."""
    plugs: Annotated[int, Field(ge=0, le=20)] = 2
    """Plug and socket pairs on the way to each motor, each with two contacts."""
    contact: Ohms = 0.005
    """Resistance of one contact [ohm] (common practice: 0.002 to 0.01)."""
    strain_relief: bool = False
    """Whether the tether is tied so that no pull reaches the joints of its wires, at both ends."""
    motor_seal: Text = ""
    """How water is kept out of the motors: grease and O-ring, wax, a sealed case."""
    soak_hours: Hours = 0.0
    """How long the sealed motors have lain under water in a test before the first run [h]."""
    notes: Text = ""
