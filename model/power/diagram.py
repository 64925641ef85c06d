"""The wiring in words and in plain signs, from the battery to the motors, as it is wired and checked."""

from collections.abc import Iterator

from model.design import Arrangement, Power, Thruster
from model.power.circuit import branch_area
from model.power.stall import stall_of, stall_words
from model.power.wire import gauge_name
from model.power.wiring import Wiring
from model.units import METRES, Unit, format_length


def wiring_lines(arrangement: Arrangement, wires: Wiring, unit: Unit) -> tuple[str, ...]:
    """The wiring of an arrangement, a line for each thing, the battery first."""
    return (*_trunk(wires.power, unit), *_branches(arrangement, wires, unit), *_checks(wires.power))


def wiring_tree(arrangement: Arrangement, wires: Wiring, unit: Unit) -> tuple[str, ...]:
    """The wiring drawn in plain signs, the battery on top and each motor on a branch of its own.

    A line is at most 78 signs long where names are usual.
    """
    power, battery = wires.power, wires.power.battery
    loads = {load.thruster: load for load in wires.loads}
    lines = [
        f"[battery {battery.volts:g} V, {battery.capacity:g} Ah]",
        " |",
        f"[{fuse_words(power.main_fuse)}]",
        " |",
        f" | lead {cable_words(power.lead_area, power.lead_length, unit)}",
    ]
    if power.feed == "one pair":
        lines.append(f" | tether {cable_words(power.core_area, power.length, unit)}")
    lines += [" |", f"[{box_words(power)}]"]
    for thruster in arrangement.thrusters:
        branch, load = thruster.branch, loads[thruster.id]
        fuse = f"[{fuse_words(branch.fuse)}]--" if branch.fuse or not power.main_fuse else ""
        cores = [" and ".join(branch.colours)]
        if power.feed == "pair each":
            cores.append(cable_words(branch_area(power, branch), power.length, unit))
        lines += [
            " |",
            f" +--{fuse}[{branch.switching}]--> {thruster.name}",
            f" |    {', '.join(cores)}: {load.volts:.1f} V, {load.amps:.1f} A",
        ]
    last = len(lines) - 1
    return tuple(line.replace("|", " ", 1) if number == last else line for number, line in enumerate(lines))


def fuse_words(amps: float | None) -> str:
    """A fuse in words.

    >>> fuse_words(7.5), fuse_words(None)
    ('fuse 7.5 A', 'NO FUSE')
    """
    return f"fuse {amps:g} A" if amps else "NO FUSE"


def cable_words(area: float, length: float, unit: Unit) -> str:
    """A pair of cores in words: size and length one way."""
    return f"2 x {gauge_name(area, inches=unit == 'in')}, {run_words(length, unit)} long"


def run_words(length: float, unit: Unit) -> str:
    """The length of a cable [m] in metres or feet.

    >>> run_words(10.0, "mm"), run_words(3.048, "in")
    ('10 m', '10 ft')
    """
    return f"{length:.3g} m" if unit == "mm" else f"{length / METRES['ft']:.3g} ft"


def box_words(power: Power) -> str:
    """Where the branches part: a pair that all motors share ends in a box on the vehicle."""
    return "control box on the vehicle" if power.feed == "one pair" else "control box"


def branch_words(thruster: Thruster, power: Power, unit: Unit) -> str:
    """What lies between the control box and a motor, in words."""
    branch = thruster.branch
    colours = f"{branch.colours[0]} and {branch.colours[1]}"
    area = branch_area(power, branch)
    cores = cable_words(area, power.length, unit) if power.feed == "pair each" else "the shared pair"
    own = (
        fuse_words(branch.fuse) if branch.fuse else "fused by the main fuse" if power.main_fuse else "NO FUSE"
    )
    switch = branch.switching if branch.reverses else f"{branch.switching} (ahead only)"
    return f"{own}, {switch}, {power.plugs} plugs, {colours} ({cores})"


def _trunk(power: Power, unit: Unit) -> Iterator[str]:
    battery = power.battery
    yield f"{battery.name}: {battery.volts:g} V, {battery.capacity:g} Ah, on dry ground two metres back"
    near = format_length(power.fuse_distance, unit)
    if power.main_fuse:
        yield f"+ {fuse_words(power.main_fuse)} in the positive lead, {near} from the battery"
    else:
        yield "+ NO MAIN FUSE in the positive lead"
    lead, box = cable_words(power.lead_area, power.lead_length, unit), box_words(power)
    if power.feed == "one pair":
        yield f"lead {lead}, to the tether"
        pair = cable_words(power.core_area, power.length, unit)
        yield f"one pair for all motors in the tether: {pair}, to the {box}"
    else:
        yield f"lead {lead}, to the {box}"


def _branches(arrangement: Arrangement, wires: Wiring, unit: Unit) -> Iterator[str]:
    loads = {load.thruster: load for load in wires.loads}
    for thruster in arrangement.thrusters:
        load = loads[thruster.id]
        gets = f"{load.volts:.1f} V and {load.amps:.1f} A with all motors on"
        yield f"{thruster.name}: {branch_words(thruster, wires.power, unit)}: {gets}"
        yield f"{thruster.name} held fast: {stall_words(stall_of(arrangement, wires, thruster.id))}"


def _checks(power: Power) -> Iterator[str]:
    yield (
        "Strain relief: the tether is tied at both ends, so that no pull reaches a wire."
        if power.strain_relief
        else "Strain relief: NOT PLANNED. Tie the tether at both ends, so that no pull reaches a wire."
    )
    yield f"Motor seal: {power.motor_seal or 'NOT PLANNED'}."
    hours = power.soak_hours
    yield f"Soak test: {f'{hours:g} h under water' if hours else 'NOT DONE'}, before the first run."
    yield "Low-voltage direct current only; no mains at the poolside. Unplug before touching a propeller."
