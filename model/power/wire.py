"""Copper wire: gauges, resistance, and the current that a fuse must keep it below.

1. ASTM B258: AWG diameters, d = 0.005 in x 92^((36 - n)/39).
2. IEC 60028: resistivity of annealed copper at 20 deg C, 1/58 ohm mm2/m.
3. Industrial Power Engineering and Applications Handbook, table 30.1: 3.93e-3 per deg C.
4. IEC 60228: cross-sections of conductors, and their greatest resistance in a cable.
"""

from bisect import bisect_left
from math import log, pi

RESISTIVITY = 1 / 58
"""[ohm mm2/m] at 20 deg C [2]."""
TEMPERATURE_COEFFICIENT = 0.00393
"""[1/deg C] at 20 deg C [3]."""
STRANDED = 1.03
"""Stranded wire over solid wire of the same size (common practice: 2 to 5 % more)."""
INCH = 25.4  # mm
AWG_SIZES = (26, 24, 22, 20, 18, 16, 14, 12, 10)
METRIC_SIZES = (0.22, 0.5, 0.75, 1.0, 1.5, 2.5, 4.0, 6.0)
"""[mm2] Cross-sections of cable on sale [4]."""
AMPACITY = (
    (0.205, 3.0), (0.326, 5.0), (0.518, 7.0), (0.823, 10.0), (1.309, 15.0), (2.081, 20.0), (3.309, 30.0)
)  # fmt: skip
"""Copper [mm2] and the largest fuse that it may have [A]: school-size starting values, less where cables
are bundled (common practice, no source)."""
Gauge = tuple[str, float]
"""A size by its name, and its copper [mm2]."""


def awg_area(number: int) -> float:
    """Copper of a solid wire [mm2] from its American gauge number [1].

    >>> round(awg_area(18), 3)
    0.823
    """
    diameter: float = 0.005 * INCH * 92 ** ((36 - number) / 39)
    return pi / 4 * diameter**2


def resistance_per_m(area: float, temperature: float = 20.0) -> float:
    """Resistance of one metre of stranded copper [ohm/m].

    Args:
        area: copper [mm2], above 0.
        temperature: of the wire [deg C], from 0 to 60 [3].

    >>> round(1000 * resistance_per_m(0.8231), 1)
    21.6
    """
    return STRANDED * RESISTIVITY / area * (1 + TEMPERATURE_COEFFICIENT * (temperature - 20))


def pair_resistance(area: float, length: float, temperature: float = 20.0) -> float:
    """Resistance out and back [ohm] of a pair of cores of a length one way [m]."""
    return 2 * length * resistance_per_m(area, temperature)


def ampacity(area: float) -> float:
    """The largest fuse [A] for a wire [mm2]: straight lines between the table's sizes on log scales.

    >>> round(ampacity(0.823), 1), round(ampacity(0.75), 1)
    (10.0, 9.3)
    """
    sizes = [size for size, _ in AMPACITY]
    if area <= sizes[0]:
        return AMPACITY[0][1] * area / sizes[0]
    place = min(bisect_left(sizes, area), len(sizes) - 1)
    (low, a), (high, b) = AMPACITY[place - 1], AMPACITY[place]
    return float(a * (b / a) ** (log(area / low) / log(high / low)))


def gauges(*, inches: bool) -> tuple[Gauge, ...]:
    """The sizes of wire on sale, the thinnest first: American gauge numbers, or mm2."""
    if inches:
        return tuple((f"{number} AWG", awg_area(number)) for number in AWG_SIZES)
    return tuple((f"{area:g} mm2", area) for area in METRIC_SIZES)


def gauge_name(area: float, *, inches: bool) -> str:
    """The name of a size: its American gauge number where it is one of those, else mm2.

    >>> gauge_name(0.8231, inches=True), gauge_name(0.75, inches=False)
    ('18 AWG', '0.75 mm2')
    """
    if inches:
        for name, known in gauges(inches=True):
            if abs(known - area) < 0.02 * known:
                return name
    return f"{area:.3g} mm2"
