"""Density of fresh, pool and sea water.

1. Tanaka, Girard, Davis, Peuto and Bignell, Metrologia 38 (2001) 301-309: air-free water, 0 to 40 deg C.
2. UNESCO Technical Papers in Marine Science 38 and 44 (EOS-80), the salinity terms at 1 atm.
"""

from model.design import Water

TANAKA = (-3.983035, 301.797, 522528.9, 69.34881, 999.97495)
EOS80_LINEAR = (0.824493, -0.0040899, 7.6438e-05, -8.2467e-07, 5.3875e-09)
EOS80_POWER = (-0.00572466, 0.00010227, -1.6546e-06)
EOS80_SQUARE = 0.00048314


def fresh_density(temperature: float) -> float:
    """Density of pure water [kg/m3] at a temperature [deg C] from 0 to 40, at 101325 Pa [1].

    >>> round(fresh_density(20), 4)
    998.2067
    """
    a1, a2, a3, a4, a5 = TANAKA
    t = temperature
    return a5 * (1 - (t + a1) ** 2 * (t + a2) / (a3 * (t + a4)))


def density(temperature: float, salinity: float) -> float:
    """Density of water [kg/m3] with dissolved salts [g/kg], 0 to 42, at 1 atm.

    [1] for pure water, with the salt terms of [2].

    >>> round(density(15, 35), 2)
    1025.97
    """
    t, s = temperature, salinity
    linear = sum(b * t**power for power, b in enumerate(EOS80_LINEAR))
    power = sum(c * t**power for power, c in enumerate(EOS80_POWER))
    return float(fresh_density(t) + linear * s + power * s**1.5 + EOS80_SQUARE * s * s)


def water_density(water: Water) -> float:
    """Density [kg/m3] of the water of a brief."""
    return density(water.temperature, water.salinity)
