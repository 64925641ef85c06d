"""What the wiring does with all motors running: volts, currents, minutes, what is lost on the way."""

from collections.abc import Mapping

from msgspec import Struct

from model.design import Arrangement, Design, Power
from model.power.circuit import Load, Supply, solve, supply_of


class Wiring(Struct, frozen=True):
    """The results of a wiring, all motors on and held still.

    Attributes:
        supply: the circuit as resistances and curves.
        loads: volts and current of each motor.
        lost: share of the battery's nominal volts that does not arrive, by thruster.
        share: pull over that of the motor's test, by thruster.
        amps: from the battery [A].
        minutes: that the battery lasts so [min]; None where nothing draws current.
    """

    power: Power
    supply: Supply
    loads: tuple[Load, ...]
    lost: Mapping[str, float]
    share: Mapping[str, float]
    amps: float
    minutes: float | None

    @property
    def motor_volts(self) -> float | None:
        """The least volts at any motor [V], or None without motors."""
        return min((load.volts for load in self.loads), default=None)

    def measured(self, thruster: str = "") -> bool:
        """Whether the current of a motor was measured, or of all of them."""
        return all(
            branch.curve.measured for branch in self.supply.branches if thruster in ("", branch.thruster)
        )

    def stalled(self, thruster: str) -> tuple[Load, ...]:
        """The same with the propeller of one thruster held fast."""
        return solve(self.supply, stalled=thruster)


def wiring(design: Design, arrangement: Arrangement, density: float) -> Wiring | None:
    """The results of the wiring of an arrangement in water of a density [kg/m3]; None if none is planned."""
    power = arrangement.power
    return wired(design, arrangement, power, density) if power else None


def wired(design: Design, arrangement: Arrangement, power: Power, density: float) -> Wiring:
    """The results of a wiring, also of one that is only tried out."""
    supply = supply_of(design, arrangement, power, density)
    loads = solve(supply)
    curves = {branch.thruster: branch.curve for branch in supply.branches}
    amps = sum(load.amps for load in loads)
    hours = power.battery.capacity * power.battery.usable / amps if amps else None
    return Wiring(
        power=power,
        supply=supply,
        loads=loads,
        lost={load.thruster: 1 - load.volts / supply.volts for load in loads},
        share={load.thruster: curves[load.thruster].pull_share(load.volts) for load in loads},
        amps=amps,
        minutes=None if hours is None else 60 * hours,
    )
