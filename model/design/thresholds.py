"""When the coach speaks, and how loudly: the one place for these values.

A brief may override each of them.  CP means common practice, no source; D means derived from the
physics of a vehicle of about 2.5 kg whose B is 40 mm above G.
"""

from typing import Annotated

from pydantic import Field

from model.design.measures import Depth, Once, Plausible
from model.design.record import Record

Positive = Annotated[float, Field(gt=0), Plausible(0.0, 1000.0, above=True), Once()]
Tilt = Annotated[Positive, Plausible(0.0, 180.0, above=True), Once()]
"""[deg]"""
Percent = Annotated[Positive, Plausible(0.0, 100.0, above=True), Once()]
"""[%]"""

COMPARISON_SLACK = 1e-6
"""[m, or the unit at hand] A value this little over a limit still meets it: 300.0 passes 300."""


class Thresholds(Record):
    """The values at which findings begin to speak."""

    trim_tip: Tilt = 5.0
    """Trim at rest that is worth a tip [deg] (D, CP)."""
    trim_should: Tilt = 10.0
    """Trim at rest that should be put right [deg] (D, CP)."""
    spare_least: Percent = 0.3
    """Least spare buoyancy [% of displacement] (D: water from 20 to 30 deg C alone is 0.26 %)."""
    spare_most: Percent = 3.0
    """Most spare buoyancy [% of displacement] (D)."""
    spare_of_thrust: Percent = 25.0
    """Most spare buoyancy [% of the down thrust] (CP)."""
    bg_least: Depth = 0.020
    """Least height of B above G [m] (CP, D)."""
    tip_most: Positive = 10.0
    """Tilt from 50 g hung at 150 mm from the middle that should be put right [deg] (D)."""
    load_tip: Positive = 10.0
    """Tilt with the heaviest load on the hook that is worth a tip [deg] (CP)."""
    load_should: Positive = 20.0
    """Tilt with the heaviest load on the hook that should be put right [deg] (CP)."""
    lift_tip: Positive = 1.5
    """Up thrust over what the load needs, below which a tip speaks (CP)."""
    lift_should: Positive = 1.2
    """Up thrust over what the load needs, below which something should be done (CP)."""
    hole_least: Depth = 0.006
    """Smallest vent or drain hole that lets air pass [m] (CP)."""
    cut_error: Depth = 0.0016
    """Error of one saw cut [m] (CP: 1/16 in)."""
    insertion_scatter: Depth = 0.003
    """Scatter of the push-in depth of one dry end [m] (CP: 3 mm, 1 mm with a push-to mark)."""
    hold_least: Depth = 0.150
    """Shortest stick that can be held for the saw [m] (CP: 150 mm by hand, 100 mm clamped)."""
    plan_error: Depth = 0.003
    """How far a sawn piece may be off the plan before something should be done [m] (CP)."""
    squeeze_most: Depth = 0.003
    """How far foam may be squeezed by what lies beside it [m] (CP)."""
    hole_most: Positive = 40.0
    """Widest hole that leaves its pipe strong [% of the outside diameter] (CP: about 35)."""
    face_tip: Positive = 1.0
    """Pipe between a hole and a socket face that is worth a tip below this [outside diameters] (CP)."""
    face_should: Positive = 0.5
    """The same, that should be put right below this [outside diameters] (CP)."""
    air_tip: Positive = 5.0
    """Air caught in the pipes that is worth a tip [ml] (D)."""
    air_should: Positive = 10.0
    """Air caught in the pipes that should be let out [ml] (D)."""
    air_share: Positive = 50.0
    """Air caught in the pipes that should be let out [% of the spare buoyancy] (D)."""
    air_trim: Positive = 3.0
    """Trim by air caught in the pipes that should be put right [deg] (D)."""
    water_left: Positive = 20.0
    """Water that stays in one valley of the pipes after the lift-out, worth a tip above this [ml] (CP)."""
    thrust_pitch_tip: Positive = 10.0
    """Pitch under full thrust that is worth a tip [deg] (CP)."""
    thrust_pitch_should: Positive = 20.0
    """Pitch under full thrust that should be put right [deg] (CP)."""
    hand_roll: Positive = 3.0
    """Roll from propellers that all turn the same way, worth a tip [deg] (D)."""
    veer_tip: Positive = 25.0
    """Pull to one side under full thrust, worth a tip above this [% of what turns the vehicle] (D)."""
    veer_should: Positive = 50.0
    """The same, that should be put right above this [% of what turns the vehicle] (D)."""
    disc_should: Depth = 0.010
    """Room between a propeller's disc and a part that is too little [m] (CP)."""
    disc_share: Positive = 15.0
    """The same, in % of the propeller's diameter; the larger counts (CP)."""
    disc_must: Depth = 0.003
    """Room between a propeller's disc and a part that is dangerous [m] (CP)."""
    disc_tether: Depth = 0.050
    """Room between an unguarded propeller's disc and the tether [m] (CP)."""
    stream_tip: Positive = 10.0
    """Thrust lost to what stands in a propeller's stream, worth a tip [%] (D)."""
    stream_should: Positive = 20.0
    """The same, that should be put right [%] (D)."""
    depth_least: Positive = 1.0
    """Propeller's edge under the resting waterline, least [propeller diameters] (CP)."""
    volts_tip: Positive = 20.0
    """Volts lost on the way to a motor, worth a tip [%] (CP)."""
    volts_should: Positive = 35.0
    """The same, that should be put right [%] (CP)."""
    fuse_least: Positive = 1.25
    """Fuse over the running current, least (CP)."""
    astern_share: Annotated[float, Field(gt=0, le=1)] = 0.6
    """Thrust astern where it was not measured, as a share of ahead (CP, 0.4 to 0.8)."""
    trial_mass_tip: Positive = 5.0
    """Measured weight off the model, worth a tip above this [%] (CP)."""
    trial_mass_should: Positive = 10.0
    """The same, that should be looked into above this [%] (CP)."""
    trial_trim: Positive = 5.0
    """Measured trim off the model, worth a tip above this [deg] (CP)."""
    trial_spare: Positive = 2.0
    """Measured spare buoyancy off the model, to be looked into above this [% of displacement] (CP)."""
