"""What a propeller that is held fast draws, and what its fuse does then.

A motor that stands still has no back voltage: the current is that of its winding alone.  A fuse below it is
wanted where possible (common practice, no source): it blows and spares the motor.
"""

from typing import Literal

from msgspec import Struct

from model.design import Arrangement
from model.power.wiring import Wiring

SURE = 1.35
"""A blade fuse blows within ten minutes at so many times its rating (ISO 8820-3, from memory)."""
Fate = Literal["blows", "slow", "holds"]


class Stall(Struct, frozen=True):
    """One motor whose propeller is held fast, all others running.

    Attributes:
        volts, amps: at it [V, A].
        fuse: the one that blows first [A], or None where there is none.
        main: whether that is the main fuse.
        fate: what it does; "slow" may take minutes.
    """

    thruster: str
    volts: float
    amps: float
    fuse: float | None
    main: bool
    fate: Fate


def stall_of(arrangement: Arrangement, wires: Wiring, thruster: str) -> Stall:
    """What one motor that is held fast draws, and what becomes of its fuse."""
    loads = wires.stalled(thruster)
    mine = next(load for load in loads if load.thruster == thruster)
    item = next(item for item in arrangement.thrusters if item.id == thruster)
    total = sum(load.amps for load in loads)
    ways = ((item.branch.fuse, mine.amps, False), (wires.power.main_fuse, total, True))
    first = max(
        ((amps / fuse, fuse, main) for fuse, amps, main in ways if fuse), key=lambda way: way[0], default=None
    )
    if first is None:
        return Stall(thruster, mine.volts, mine.amps, None, False, "holds")
    times, fuse, main = first
    fate: Fate = "blows" if times >= SURE else "slow" if times > 1 else "holds"
    return Stall(thruster, mine.volts, mine.amps, fuse, main, fate)


def worst_stall(arrangement: Arrangement, wires: Wiring) -> Stall | None:
    """The motor whose fuse does least when it is held fast, and of those the one that draws most."""
    found = [stall_of(arrangement, wires, load.thruster) for load in wires.loads]
    fates: tuple[Fate, ...] = ("blows", "slow", "holds")
    return max(found, key=lambda stall: (fates.index(stall.fate), stall.amps), default=None)


def fuse_words(stall: Stall) -> str:
    """The fuse that blows first, in words; there must be one."""
    return f"{'the main' if stall.main else 'its'} fuse of {stall.fuse:g} A"


def fate_words(stall: Stall) -> str:
    """What becomes of the fuse, in words."""
    if stall.fuse is None:
        return "no fuse is there to blow: switch off at once, or the motor burns out"
    name = fuse_words(stall)
    if stall.fate == "blows":
        return f"{name} blows and {'all motors stop' if stall.main else 'spares the motor'}"
    if stall.fate == "slow":
        return f"{name} may take minutes to blow: switch off at once"
    return f"{name} does not blow: switch off at once, or the motor burns out"


def stall_words(stall: Stall) -> str:
    """The same with volts and current."""
    return f"{stall.volts:.1f} V and {stall.amps:.1f} A, {fate_words(stall)}"
