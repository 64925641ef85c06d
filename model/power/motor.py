"""A small brushed motor with its propeller: current, turning speed and pull at any voltage.

V = I R + E, with E the back voltage, which goes with the turning speed; torque = Kt (I - I0), and a
propeller held still takes torque with the square of its speed, so I = I0 + c E^2 and pull goes with
E^2 (small brushed motors: textbook; propellers at rest: K_T and K_Q are constant).
"""

from math import sqrt

from msgspec import Struct

from model.design import Motor, Pull
from model.thrust.propeller import shaft_watts_for

IDLE_SHARE = 0.1
"""Current without load over the running current, where it is not known (common practice, no source)."""
STALL_FACTOR = 4.0
"""Stalled over running current where it was not measured (common practice: 3 to 5)."""
MOTOR_EFFICIENCY = 0.45
"""Shaft power over electrical power of a small brushed motor (from memory: 0.3 to 0.6)."""


class Curve(Struct, frozen=True):
    """A motor's curve with its propeller in the water, held still.

    Attributes:
        volts: at the motor in the test [V].
        amps: running current at those volts [A].
        resistance: of its winding and brushes [ohm].
        idle: current that makes no pull, I0 [A].
        load: c in I = I0 + c E^2 [A/V2].
        measured: whether the current was measured; else it is worked out from the pull.
    """

    volts: float
    amps: float
    resistance: float
    idle: float
    load: float
    measured: bool

    @property
    def back_volts(self) -> float:
        """E in the test [V]."""
        return self.volts - self.amps * self.resistance

    def current(self, volts: float, outside: float = 0.0) -> float:
        """Current [A] at a voltage [V] that comes through a resistance outside the motor [ohm].

        The positive root of c R E^2 + E + I0 R - V = 0, with R all the resistance.
        """
        ohms = self.resistance + outside
        rest = volts - self.idle * ohms
        if rest <= 0:
            return volts / ohms if ohms else 0.0
        back = 2 * rest / (1 + sqrt(1 + 4 * self.load * ohms * rest))
        return self.idle + self.load * back**2

    def stalled(self, volts: float, outside: float = 0.0) -> float:
        """Current with the propeller held fast [A]."""
        return volts / (self.resistance + outside)

    def pull_share(self, volts: float) -> float:
        """Pull at some volts at the motor over the pull in the test: E^2 over that in the test."""
        back = max(0.0, volts - self.current(volts) * self.resistance)
        return (back / self.back_volts) ** 2


def curve_of(motor: Motor, pull: Pull | None, ahead: float, density: float) -> Curve:
    """The curve of a motor, from what was measured and else from its pull.

    Args:
        pull: the team's own test of it, if there is one.
        ahead: pull in the test [N], for the current where none was measured.
        density: of the water [kg/m3].
    """
    volts = pull.volts if pull else motor.volts
    measured = (pull.amps if pull else None) or (_scaled(motor, volts) if motor.amps else None)
    amps = measured or _estimated(motor, ahead, volts, density)
    stalled = motor.stalled_amps * volts / motor.volts if motor.stalled_amps else 0.0
    if stalled <= amps * 1.05:  # not measured, or it does not go with the running current
        stalled = STALL_FACTOR * amps
    resistance = volts / stalled
    idle = IDLE_SHARE * amps
    load = (amps - idle) / (volts - amps * resistance) ** 2
    return Curve(volts, amps, resistance, idle, load, measured is not None)


def _scaled(motor: Motor, volts: float) -> float | None:
    """The measured current of its kind, brought to other volts: in proportion, as near enough."""
    return motor.amps * volts / motor.volts if motor.amps else None


def _estimated(motor: Motor, ahead: float, volts: float, density: float) -> float:
    watts = motor.shaft_watts or shaft_watts_for(ahead, motor.propeller_diameter, density)
    return max(0.05, watts / MOTOR_EFFICIENCY / volts)
