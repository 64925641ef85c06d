"""What one motor pulls, held still, at the volts of its test: measured or worked out."""

from typing import Literal

from msgspec import Struct

from model.design import Motor, Thruster
from model.thrust.propeller import static_pull

Source = Literal["own pull test", "stock", "shaft power", "nothing"]
SPREADS: dict[Source, float] = {"own pull test": 0.05, "stock": 0.15, "shaft power": 0.35, "nothing": 0.0}
"""Half the width of the spread of the pull, as a share (CP; from shaft power: figure of merit)."""
ASTERN_SPREAD = 1 / 3
"""The same for astern where it is a share of ahead: 0.6, from 0.4 to 0.8 (common practice)."""


class Rated(Struct, frozen=True):
    """The pull of a motor held still.

    Attributes:
        ahead, astern: [N]
        volts: at the motor [V].
        source: where the pull ahead comes from.
        spread, astern_spread: half the width of their spread, as a share.
    """

    ahead: float
    astern: float
    volts: float
    source: Source
    spread: float
    astern_spread: float


def rated(thruster: Thruster, motor: Motor, astern_share: float, density: float) -> Rated:
    """The pull of a thruster: the team's own test, else the stock's value, else momentum theory.

    Args:
        astern_share: of ahead, where astern was not measured.
        density: of the water [kg/m3].
    """
    pull = thruster.pull
    volts = pull.volts if pull else motor.volts
    ahead, source = _ahead(thruster, motor, density)
    astern = pull.astern if pull else motor.thrust_astern
    if pull and astern is None and motor.thrust_astern is not None and motor.thrust_ahead > 0:
        astern_share = motor.thrust_astern / motor.thrust_ahead
    spread = SPREADS[source]
    if astern is not None:
        return Rated(ahead, astern, volts, source, spread, spread)
    return Rated(ahead, ahead * astern_share, volts, source, spread, max(spread, ASTERN_SPREAD))


def _ahead(thruster: Thruster, motor: Motor, density: float) -> tuple[float, Source]:
    if thruster.pull:
        return thruster.pull.ahead, "own pull test"
    if motor.thrust_ahead > 0:
        return motor.thrust_ahead, "stock"
    if motor.shaft_watts:
        return static_pull(motor.shaft_watts, motor.propeller_diameter, density), "shaft power"
    return 0.0, "nothing"
