"""Flow through drilled holes, and what the skin of the water holds back.

1. Encyclopaedia Britannica, 11th ed. (1911), vol. 14, "Hydraulics": sharp-edged holes, C_d 0.62.
2. Vargaftik, Volkov and Voljak, J. Phys. Chem. Ref. Data 12 (1983) 817: surface tension of water.
3. Torricelli's theorem, as in any textbook of physics.
"""

from math import inf, pi, sqrt

from model.water.balance import GRAVITY

SHARP_EDGED = 0.62
"""Discharge coefficient of a sharp-edged hole in a thin wall [1]."""
DRILLED = 0.65
"""The same of a 3 to 6 mm hole through a 3 mm wall, give or take 0.1 (from memory)."""
AIR_DENSITY = 1.184
"""[kg/m3] air at 25 deg C and 1 atm (CoolProp)."""
SURFACE_TENSION = 0.0728
"""[N/m] water at 20 deg C [2]; at 30 deg C 2 % less."""


def jet_speed(head: float, *, gravity: float = GRAVITY) -> float:
    """Speed of an ideal jet [m/s] under a head [m] [3].

    >>> round(jet_speed(2.0, gravity=9.81), 2)
    6.26
    """
    return sqrt(2 * gravity * max(0.0, head))


def orifice_flow(area: float, head: float, discharge: float = DRILLED, *, gravity: float = GRAVITY) -> float:
    """Flow [m3/s] through a hole of an area [m2] under a head [m] [1].

    >>> round(orifice_flow(10e-4, 5.0, 1.0, gravity=9.8), 4)
    0.0099
    """
    return discharge * area * jet_speed(head, gravity=gravity)


def drain_time(
    tank: float,
    hole: float,
    full: float,
    empty: float = 0.0,
    discharge: float = SHARP_EDGED,
    *,
    gravity: float = GRAVITY,
) -> float:
    """Time [s] for an open tank to fall from one height of water to another, through a hole at its foot.

    Args:
        tank, hole: areas [m2].
        full, empty: heights of the water over the hole [m].

    >>> round(drain_time(1.0, 0.01, 2.0, gravity=9.81), 2)
    102.99
    """
    return tank / (discharge * hole) * sqrt(2 / gravity) * (sqrt(full) - sqrt(empty))


def paired_flow(
    low: float, high: float, apart: float, water: float, air: float = AIR_DENSITY, discharge: float = DRILLED
) -> float:
    """Flow [m3/s] into an empty pipe: water in by a low hole, air out by a high one.

    Args:
        low, high: their areas [m2].
        apart: how far the high one's middle is above the low one's [m].
        water, air: densities [kg/m3].

    The same pressure drives sqrt(water / air), 29 times, as much air as water, so the low hole governs.
    """
    drop = water / (discharge * low) ** 2 + air / (discharge * high) ** 2
    return sqrt(2 * water * GRAVITY * max(0.0, apart) / drop)


def hold_up(diameter: float, density: float) -> float:
    """Depth of air [m] that the skin of the water holds back at a hole of a diameter [m].

    A bubble must overcome 4 sigma / d (Young and Laplace); at most, for a clean, wetted, round hole.

    >>> round(hold_up(0.00635, 998.2) * 1000, 1)
    4.7
    """
    return 4 * SURFACE_TENSION / (density * GRAVITY * diameter) if diameter > 0 else inf


def hole_area(diameter: float) -> float:
    """Area [m2] of a round hole of a diameter [m]."""
    return pi / 4 * diameter * diameter
