"""The parts that are fixed to the frame: thrusters, floats, ballast, attachments, the tether."""

from math import sqrt

from model.design import Attachment, Ballast, Bought, Float, Foam, Motor, Mount, Tether, Thruster
from model.frame.layout import BarPlace
from model.parts import Block, Cylinder, Part, PartKind, Solid
from model.vectors import Vector, add, between, scale, unit
from model.vehicle.pipework import disc

WEIGHING_WATER = 998.2
"""[kg/m3] Fresh water at 20 deg C (Tanaka et al. 2001), in which bought parts are weighed."""
PROPELLER_THICKNESS = 0.010
"""[m] Room that a small propeller takes along its shaft (common practice, no source)."""


def displaced(mass: float, mass_in_water: float) -> float:
    """Volume [m3] of a part from its weight in air and in water [kg]: Archimedes' density by weighing."""
    return (mass - mass_in_water) / WEIGHING_WATER


def thruster_parts(thruster: Thruster, bar: BarPlace, motor: Motor, mount: Mount | None) -> list[Part]:
    """A motor with its propeller behind it, and what holds it."""
    foot, centre = bar.point(thruster.at), bar.centre_of(thruster)
    solids = motor_solids(centre, unit(thruster.to), motor)
    parts = [_bought("thruster", thruster.id, thruster.name, motor, centre, solids)]
    if mount is not None:
        name = f"{mount.name} of {thruster.name}"
        parts.append(_bought("mount", thruster.id, name, mount, between(foot, centre, 0.5), ()))
    return parts


def motor_solids(centre: Vector, along: Vector, motor: Motor) -> tuple[Cylinder, Cylinder]:
    """The motor's body about its centre, and the disc that its propeller sweeps behind it."""
    reach = scale(along, motor.body_length / 2)
    nose, tail = add(centre, reach), add(centre, scale(reach, -1))
    wake = add(tail, scale(along, -PROPELLER_THICKNESS))
    return Cylinder(tail, nose, motor.body_diameter / 2), Cylinder(wake, tail, motor.propeller_diameter / 2)


def float_part(piece: Float, bar: BarPlace, foam: Foam) -> Part:
    """A piece of foam tube, threaded on its bar or strapped beside it with its hole flooded."""
    pipe = bar.pipe.outside_diameter
    threaded = piece.beside is None
    outside = stretched(foam, pipe) if threaded else foam.outside_diameter
    volume = (disc(foam.outside_diameter) - disc(foam.hole)) * piece.length
    centre = _beside(bar, piece.at, piece.beside, outside)
    solid = _along(centre, bar.along, piece.length, outside)
    hollow = (max(foam.hole, pipe) if threaded else foam.hole) / 2
    mass = volume * foam.density
    return Part("float", piece.id, piece.name, mass, volume, centre, centre, (solid,), hollow)


def stretched(foam: Foam, pipe: float) -> float:
    """Outside diameter [m] of foam whose hole is stretched over a pipe; the foam keeps its volume."""
    wider = max(foam.hole, pipe)
    return sqrt(foam.outside_diameter**2 - foam.hole**2 + wider**2)


def ballast_part(ballast: Ballast, bar: BarPlace) -> Part:
    """A rod beside its bar, or washers threaded on it."""
    volume = ballast.mass / ballast.density
    pipe = bar.pipe.outside_diameter
    threaded = ballast.beside is None and ballast.diameter > pipe
    area = disc(ballast.diameter) - (disc(pipe) if threaded else 0.0)
    centre = _beside(bar, ballast.at, ballast.beside, ballast.diameter)
    solid = _along(centre, bar.along, volume / area, ballast.diameter)
    return Part("ballast", ballast.id, ballast.name, ballast.mass, volume, centre, centre, (solid,))


def attachment_part(item: Attachment, bar: BarPlace) -> Part:
    """A hook, a camera or another thing, as an upright block."""
    centre = bar.centre_of(item)
    volume = displaced(item.mass, item.mass_in_water)
    return Part(
        "attachment", item.id, item.name, item.mass, volume, centre, centre, (Block(centre, item.size),)
    )


def tether_part(tether: Tether, bar: BarPlace) -> Part:
    """The hanging length with its floats, acting where it is tied; it takes no room in the size box."""
    at = bar.point(tether.at)
    cable = displaced(tether.mass_per_m, tether.mass_in_water_per_m) * tether.hanging
    volume = cable + displaced(0.0, -tether.float_lift) * tether.floats
    return Part("tether", tether.id, tether.name, tether.mass_per_m * tether.hanging, volume, at, at, ())


def _bought(
    kind: PartKind, id: str, name: str, bought: Bought, centre: Vector, solids: tuple[Solid, ...]
) -> Part:
    volume = displaced(bought.mass, bought.mass_in_water)
    return Part(kind, id, name, bought.mass, volume, centre, centre, solids)


def _beside(bar: BarPlace, at: float, side: str | None, diameter: float) -> Vector:
    """The middle of a round thing on the bar, or touching it on one side."""
    on_bar = bar.point(at)
    if side is None:
        return on_bar
    return add(on_bar, scale(unit(side), (bar.pipe.outside_diameter + diameter) / 2))


def _along(centre: Vector, along: Vector, length: float, diameter: float) -> Cylinder:
    reach = scale(along, length / 2)
    return Cylinder(add(centre, scale(reach, -1)), add(centre, reach), diameter / 2)
