"""How each thruster is held: where the holes go, which tie, what is bought, and whether a hand can reach."""

from collections.abc import Iterator, Sequence
from math import pi

from msgspec import Struct

from model.design import COMPARISON_SLACK, Arrangement, Design, Motor, Mount, Thruster, TieHole
from model.design.measures import Direction
from model.frame.layout import BarPlace, Frame
from model.parts import Cylinder, Part
from model.thrust.nearest import gap, nearest
from model.thrust.tie_holes import from_sawn_end, proposed_holes
from model.units import Unit, format_length
from model.vectors import Vector, add, dot, scale, sub, unit
from model.vehicle.fixed import motor_solids

TIE_TAIL = 0.06
"""[m] What has to stick out of a tie to be pulled (common practice)."""
TIE_LENGTHS = (0.1, 0.15, 0.2, 0.25, 0.3, 0.37, 0.45)
"""[m] Lengths on sale (common practice)."""
STRAP_WIDTH = 0.012
"""[m] Width of a strap or hose clamp (common practice: 9 to 13 mm)."""
BLOCK_LEAST = 0.003
"""[m] Room between pipe and motor that a tie closes by itself (common practice)."""
FINGER = 0.016
"""[m] Width of the way that a drill or two fingers need."""
HAND, TOOL = 0.040, 0.150
"""[m] Room in front of a hole for fingers with a tie, and for a drill (stated rule, common practice)."""
Item = tuple[int, str]
"""How many, and of what."""


class HolePlace(Struct, frozen=True):
    """A hole on the drill sheet: from the sawn end of its pipe at the joint where the bar starts [m]."""

    bar: str
    bar_name: str
    end: str
    from_end: float
    face: Direction
    diameter: float
    hand: bool
    tool: bool


class MountPlan(Struct, frozen=True):
    """How one thruster is held.

    Attributes:
        holes: as the team planned them, else as proposed; empty where none are drilled.
        planned: whether nothing is left to plan.
        gap: room between the pipe and the motor's body, to be filled with a block [m].
        parts: what is needed.
        mass, price: of the mount, as bought [kg, currency].
        hub: the joint whose fitting is in the way, or None.
        socket: for a stub, whether a fitting at an end of the bar has a spare socket.
    """

    thruster: str
    name: str
    mount: Mount
    holes: tuple[HolePlace, ...]
    planned: bool
    gap: float
    parts: tuple[Item, ...]
    mass: float
    price: float
    hub: str | None
    socket: bool


def mount_plans(
    design: Design, arrangement: Arrangement, frame: Frame, parts: Sequence[Part]
) -> tuple[MountPlan, ...]:
    """How each thruster with a mount is held, in the order of the thrusters."""
    motors = {motor.id: motor for motor in design.supplies.motors}
    mounts = {mount.id: mount for mount in design.supplies.mounts}
    return tuple(
        _plan(item, motors[item.motor], mounts[item.mount], frame, parts, design.units)
        for item in arrangement.thrusters
        if item.mount is not None
    )


def tied(design: Design, arrangement: Arrangement) -> tuple[Thruster, ...]:
    """The thrusters that are held by ties."""
    ties = {mount.id for mount in design.supplies.mounts if mount.method == "ties"}
    return tuple(item for item in arrangement.thrusters if item.mount in ties)


def _plan(
    item: Thruster, motor: Motor, mount: Mount, frame: Frame, parts: Sequence[Part], unit_name: Unit
) -> MountPlan:
    bar = frame.bars[item.bar]
    ties = mount.method == "ties"
    wanted = (item.tie_holes or proposed_holes(item, motor, bar)) if ties else ()
    body = motor_solids(bar.centre_of(item), unit(item.to), motor)[0]
    room = gap(body, Cylinder(*bar.pipe_ends, bar.pipe.outside_diameter / 2))
    return MountPlan(
        thruster=item.id,
        name=item.name,
        mount=mount,
        holes=tuple(_hole(hole, item, bar, frame, parts) for hole in wanted),
        planned=bool(item.tie_holes) or not ties,
        gap=room,
        parts=tuple(_parts(mount, motor, bar, room, unit_name)),
        mass=mount.mass,
        price=mount.price,
        hub=_hub_in_way(item, mount, wanted, bar),
        socket=stub_joint(item, bar, frame) is not None,
    )


def _parts(mount: Mount, motor: Motor, bar: BarPlace, room: float, unit_name: Unit) -> Iterator[Item]:
    """What a mount is made of; ties long enough to go round the motor and through the pipe."""
    if room > BLOCK_LEAST:
        yield 1, f"block {format_length(room, unit_name)} thick, between the pipe and the motor"
    if mount.method == "ties":
        round_both = pi * (motor.body_diameter + bar.pipe.outside_diameter) / 2 + 2 * room
        needed = round_both + bar.pipe.outside_diameter + TIE_TAIL
        size = next((length for length in TIE_LENGTHS if length >= needed), TIE_LENGTHS[-1])
        yield 2, f"cable tie 4.8 mm wide, {format_length(size, unit_name)} long"
    elif mount.method == "clamp":
        yield 1, f"strap or clamp for a pipe of {format_length(bar.pipe.outside_diameter, unit_name)}"
        yield 1, f"strap or clamp for a motor of {format_length(motor.body_diameter, unit_name)}"
    else:
        yield 1, f"stub of {bar.pipe.name}"
        yield 1, "pin through the socket and the stub"


def _hole(hole: TieHole, item: Thruster, bar: BarPlace, frame: Frame, parts: Sequence[Part]) -> HolePlace:
    place = item.at * bar.spacing + hole.along
    mouth = add(
        add(bar.start, scale(bar.along, place)), scale(unit(hole.face), bar.pipe.outside_diameter / 2)
    )
    free = _free(mouth, unit(hole.face), bar, item, parts)
    return HolePlace(
        bar=bar.id,
        bar_name=bar.name,
        end=frame.joints[bar.joints[0]].name,
        from_end=from_sawn_end(hole, item, bar),
        face=hole.face,
        diameter=hole.diameter,
        hand=free >= HAND,
        tool=free >= TOOL,
    )


def _free(mouth: Vector, out: Vector, bar: BarPlace, item: Thruster, parts: Sequence[Part]) -> float:
    """Room [m] straight out from a hole, up to that of a drill; the thruster itself is not on yet."""
    line = Cylinder(mouth, add(mouth, scale(out, TOOL)), FINGER / 2)
    rooms = [TOOL]
    for part in parts:
        if part.id not in (bar.id, item.id, *bar.joints):
            for solid in part.solids:
                if line.box.meets(solid.box) and gap(line, solid) <= 0:
                    rooms.append(max(0.0, dot(sub(nearest(solid, mouth), mouth), out)))
    return min(rooms)


def _hub_in_way(item: Thruster, mount: Mount, holes: Sequence[TieHole], bar: BarPlace) -> str | None:
    """The joint whose hub a mount would have to sit on; None where it sits on bare pipe."""
    if mount.method == "stub":
        return None
    foot = item.at * bar.spacing
    reach = [hole.along + side * hole.diameter / 2 for hole in holes for side in (-1, 1)]
    if not holes:
        foot += dot(item.offset, bar.along)
        reach = [-STRAP_WIDTH / 2, STRAP_WIDTH / 2]
    if foot + min(reach) < bar.faces[0] - COMPARISON_SLACK:
        return bar.joints[0]
    if foot + max(reach) > bar.spacing - bar.faces[1] + COMPARISON_SLACK:
        return bar.joints[1]
    return None


def stub_joint(item: Thruster, bar: BarPlace, frame: Frame) -> str | None:
    """The joint whose empty socket takes a thruster's stub: the nearer end of its bar that has one."""
    ends = bar.joints if item.at <= 0.5 else bar.joints[::-1]
    matches = ((joint, frame.joints[joint].match) for joint in ends)
    return next((joint for joint, match in matches if match and match.spare), None)
