"""What is around each propeller, however far away, beside what the coach asks for."""

from collections.abc import Sequence

from msgspec import Struct

from model.design import COMPARISON_SLACK, Arrangement, Thresholds, Thruster
from model.frame.layout import Frame
from model.parts import Part
from model.thrust.clear import Clearance, Near, clearances, disc_of, nearest_part
from model.thrust.depth import propeller_depths
from model.water.balance import Balance

FAR = 1.0
"""[m] How far away things are still told of."""


class Around(Struct, frozen=True):
    """What is around one propeller, and what the coach asks for [m].

    Attributes:
        name: of the thruster.
        clear: the nearest part and the tether as far as 1 m away, and what stands in the stream.
        asked: room to any part.
        tether_asked: room to the tether; None where there is none, or where a guard keeps it off.
        hook: the nearest hook, None where none is within 1 m.
        guard: whether the propeller has one.
        depth: how far its upper edge lies under the surface at rest; None where the vehicle does not float.
        depth_asked: how far it should.
    """

    name: str
    clear: Clearance
    asked: float
    tether_asked: float | None
    hook: Near | None
    guard: bool
    depth: float | None
    depth_asked: float

    @property
    def lacks(self) -> tuple[str, ...]:
        """What is less than is asked for: "part", "tether", "depth"."""
        near, tether = self.clear.near, self.clear.tether
        pairs = (
            ("part", None if near is None else near.room, self.asked),
            ("tether", tether, self.tether_asked),
            ("depth", self.depth, self.depth_asked),
        )
        return tuple(
            name
            for name, room, asked in pairs
            if room is not None and asked is not None and room < asked - COMPARISON_SLACK
        )


def around(
    limits: Thresholds, arrangement: Arrangement, frame: Frame, parts: Sequence[Part], balance: Balance
) -> tuple[Around, ...]:
    """What is around each propeller, in the order of the thrusters."""
    items = {item.id: item for item in arrangement.thrusters}
    motors = {part.id: part for part in parts if part.kind == "thruster"}
    hooks = {item.id for item in arrangement.attachments if item.kind == "hook"}
    hung = [
        (part, solid, solid.box)
        for part in parts
        if part.kind == "attachment" and part.id in hooks
        for solid in part.solids
    ]
    depths = propeller_depths(parts, balance)
    found = []
    for clear in clearances(arrangement, frame, parts, FAR, FAR):
        item, disc = items[clear.thruster], disc_of(motors[clear.thruster])
        found.append(
            Around(
                name=item.name,
                clear=clear,
                asked=disc_asked(limits, 2 * disc.radius),
                tether_asked=tether_asked(limits, arrangement, item),
                hook=nearest_part(disc, hung, FAR),
                guard=item.guard,
                depth=depths.get(item.id),
                depth_asked=depth_asked(limits, 2 * disc.radius),
            )
        )
    return tuple(found)


def disc_asked(limits: Thresholds, diameter: float) -> float:
    """Room [m] between a propeller's disc and any part."""
    return max(limits.disc_should, limits.disc_share / 100 * diameter)


def tether_asked(limits: Thresholds, arrangement: Arrangement, thruster: Thruster) -> float | None:
    """Room [m] between a propeller's disc and the tether; None without a tether, or behind a guard."""
    return None if arrangement.tether is None or thruster.guard else limits.disc_tether


def depth_asked(limits: Thresholds, diameter: float) -> float:
    """How far [m] a propeller's upper edge should lie under the surface at rest."""
    return limits.depth_least * diameter
