"""Design -> parts: the one list over which everything is summed."""

from model.design import Arrangement, Design
from model.frame.layout import Frame
from model.parts import Part
from model.vehicle.fixed import attachment_part, ballast_part, float_part, tether_part, thruster_parts
from model.vehicle.pipework import bar_part, fitting_part, pin_part


def parts_of(design: Design, arrangement: Arrangement, frame: Frame) -> tuple[Part, ...]:
    """Every part of one arrangement, in the order bars, fittings, equipment."""
    sealed = arrangement.bores == "sealed"
    parts = [bar_part(bar, sealed=sealed) for bar in frame.bars.values()]
    for joint in frame.joints.values():
        part = fitting_part(joint, frame.bars, sealed=sealed)
        parts += [part for part in (part, pin_part(joint, design.stock.pin)) if part is not None]
    return (*parts, *_equipment(design, arrangement, frame))


def _equipment(design: Design, arrangement: Arrangement, frame: Frame) -> list[Part]:
    motors = {motor.id: motor for motor in design.supplies.motors}
    mounts = {mount.id: mount for mount in design.supplies.mounts}
    foams = {foam.id: foam for foam in design.supplies.foams}
    bars = frame.bars
    parts: list[Part] = []
    for thruster in arrangement.thrusters:
        mount = mounts[thruster.mount] if thruster.mount else None
        parts += thruster_parts(thruster, bars[thruster.bar], motors[thruster.motor], mount)
    parts += [float_part(item, bars[item.bar], foams[item.foam]) for item in arrangement.floats]
    parts += [ballast_part(item, bars[item.bar]) for item in arrangement.ballasts]
    parts += [attachment_part(item, bars[item.bar]) for item in arrangement.attachments]
    if arrangement.tether:
        parts.append(tether_part(arrangement.tether, bars[arrangement.tether.bar]))
    return parts
