"""Each thruster as a push on the vehicle: where, which way, how hard at the volts that arrive."""

from collections.abc import Sequence
from math import hypot

from msgspec import Struct

from model.design import Arrangement, Design
from model.frame.layout import Frame
from model.power.wiring import Wiring
from model.thrust.clear import Clearance
from model.thrust.propeller import zero_thrust_speed
from model.thrust.rated import Rated, rated
from model.thrust.senses import Sense, senses
from model.vectors import Vector, unit

STREAM_SPREAD = 0.5
"""Half the width of the spread of what a stream loses, as a share of it (stated rule)."""


class Drive(Struct, frozen=True):
    """A thruster at work.

    Attributes:
        at: the middle of the motor [m]; the pull acts in a line through it.
        along: the way that it pushes when it runs ahead, length 1.
        ahead, astern: pull held still, at the volts that arrive, less what its stream loses [N]; 0 for a way
            that it cannot run.
        ahead_gone, astern_gone: speeds at which that pull is gone [m/s].
        spread, astern_spread: half the width of the spread of the pulls, as a share.
        rated: the pull at the volts of its test, whatever its switch.
        senses: the ways that it can run.
        volts: at the motor with all running [V]; the volts of the test where no wiring is planned.
        hand: "right", "left" or None where it is not known.
    """

    thruster: str
    name: str
    at: Vector
    along: Vector
    diameter: float
    ahead: float
    astern: float
    ahead_gone: float
    astern_gone: float
    spread: float
    astern_spread: float
    rated: Rated
    senses: tuple[Sense, ...]
    volts: float
    hand: str | None

    @property
    def one_way(self) -> str:
        """Why it never runs astern, in words; "" where it does."""
        if "astern" in self.senses:
            return ""
        known = self.rated.astern > 0
        return "its switch only turns it on and off" if known else "its propeller pulls nothing"


def drives_of(
    design: Design,
    arrangement: Arrangement,
    frame: Frame,
    clear: Sequence[Clearance],
    density: float,
    wires: Wiring | None,
) -> tuple[Drive, ...]:
    """The thrusters of an arrangement, in its order.

    Args:
        clear: what stands in their streams.
        density: of the water [kg/m3].
        wires: the volts that arrive; None where no wiring is planned, then those of the test.
    """
    motors = {motor.id: motor for motor in design.supplies.motors}
    streams = {room.thruster: room for room in clear}
    astern_share = design.brief.thresholds.astern_share
    share = wires.share if wires else {}
    volts = {load.thruster: load.volts for load in wires.loads} if wires else {}
    found = []
    for item in arrangement.thrusters:
        motor, room = motors[item.motor], streams[item.id]
        own = rated(item, motor, astern_share, density)
        left = share.get(item.id, 1.0)
        ways = senses(item, motor, arrangement.power)
        ahead = own.ahead * left
        astern = own.astern * left if "astern" in ways else 0.0
        size = motor.propeller_diameter
        drive = Drive(
            thruster=item.id,
            name=item.name,
            at=frame.bars[item.bar].centre_of(item),
            along=unit(item.to),
            diameter=size,
            ahead=ahead * (1 - room.ahead.lost),
            astern=astern * (1 - room.astern.lost),
            ahead_gone=zero_thrust_speed(ahead, size, density),
            astern_gone=zero_thrust_speed(astern, size, density),
            spread=hypot(own.spread, STREAM_SPREAD * room.ahead.lost),
            astern_spread=hypot(own.astern_spread, STREAM_SPREAD * room.astern.lost),
            rated=own,
            senses=ways,
            volts=volts.get(item.id, own.volts),
            hand=item.hand,
        )
        found.append(drive)
    return tuple(found)
