"""Small open propellers: pull from shaft power, how pull falls with speed, torque.

1. Momentum theory: T = (2 rho A (FM P)^2)^(1/3) held still (ship-propeller exercises; from memory).
2. B-series polynomials (Oosterveld and van Oossanen 1975; Univ. of Michigan report 237, 1981): K_T over
   that at rest is about 0.80, 0.56, 0.29 at 25, 50, 75 % of the speed at which the pull is gone.
3. Propellers of models at Reynolds numbers of 1e4 to 1e5 behind a motor: figure of merit 0.25 to 0.5
   (from memory).
"""

from math import pi, sqrt

FIGURE_OF_MERIT = 0.4
"""Ideal over real power, held still; 0.25 to 0.5 [3]."""
ZERO_THRUST = 2.05
"""Speed at which the pull is gone, over the speed of the water through the propeller held still: 1.77 to 2.38
over the B-series with 2 and 3 blades and a pitch of 0.6 to 1 diameters, worked out from [2]."""
FALL = 0.73
"""f in pull(x) = 1 - f x - (1 - f) x^2, a fit to the mean of [2] within 0.014."""
TORQUE_SHARE = 0.115
"""Torque over pull times diameter, K_Q / K_T: 0.09 to 0.14 over the B-series at rest [2]."""


def disc_area(diameter: float) -> float:
    """Area [m2] that a propeller of a diameter [m] sweeps."""
    return pi / 4 * diameter**2


def static_pull(watts: float, diameter: float, density: float, merit: float = FIGURE_OF_MERIT) -> float:
    """Pull held still [N] from shaft power [W], diameter [m] and density of the water [kg/m3] [1].

    >>> round(static_pull(10, 0.05, 998, 0.5), 1)
    4.6
    """
    return float((2 * density * disc_area(diameter) * (merit * watts) ** 2) ** (1 / 3))


def shaft_watts_for(pull: float, diameter: float, density: float, merit: float = FIGURE_OF_MERIT) -> float:
    """Shaft power [W] that a pull [N] held still takes: [1] turned round.

    >>> round(shaft_watts_for(4.6113, 0.05, 998, 0.5), 2)
    10.0
    """
    return float(pull**1.5 / (merit * sqrt(2 * density * disc_area(diameter))))


def ideal_efficiency(pull: float, speed: float, diameter: float, density: float) -> float:
    """Share of the power that moves the vehicle, at best, at a speed [m/s]: 2/(1 + sqrt(1 + C_Th)) [1].

    >>> round(ideal_efficiency(700e3, 12.3, 2.5, 1025), 3)
    0.745
    """
    loading = pull / (0.5 * density * speed**2 * disc_area(diameter))
    return 2 / (1 + sqrt(1 + loading))


def zero_thrust_speed(pull: float, diameter: float, density: float) -> float:
    """Speed [m/s] at which a propeller no longer pulls, from its pull held still [N].

    The speed of the water through the disc is sqrt(T/(2 rho A)) [1].
    """
    return ZERO_THRUST * sqrt(pull / (2 * density * disc_area(diameter)))


def pull_left(share: float) -> float:
    """Pull over that held still, at a share of the zero-thrust speed; below zero it brakes.

    >>> [round(pull_left(x), 2) for x in (0, 0.25, 0.5, 0.75, 1)]
    [1.0, 0.8, 0.57, 0.3, 0.0]
    """
    return 1 - FALL * share - (1 - FALL) * share * abs(share)


def torque(pull: float, diameter: float) -> float:
    """Torque that the propeller takes from the vehicle [N m], held still."""
    return TORQUE_SHARE * pull * diameter
