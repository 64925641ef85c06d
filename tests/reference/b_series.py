"""How the pull of a propeller falls with its speed, from the polynomials of the B-series.

K_T = sum of c J^s (P/D)^t (A_E/A_0)^u Z^v: Oosterveld and van Oossanen 1975, coefficients as printed in
Bernitsas, Ray and Kinley, report 237, University of Michigan, 1981.
"""

import numpy as np
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

K_T = """
0.00880496 0 0 0 0|-0.204554 1 0 0 0|0.166351 0 1 0 0|0.158114 0 2 0 0|-0.147581 2 0 1 0
-0.481497 1 1 1 0|0.415437 0 2 1 0|0.0144043 0 0 0 1|-0.0530054 2 0 0 1|0.0143481 0 1 0 1
0.0606826 1 1 0 1|-0.0125894 0 0 1 1|0.0109689 1 0 1 1|-0.133698 0 3 0 0|0.00638407 0 6 0 0
-0.00132718 2 6 0 0|0.168496 3 0 1 0|-0.0507214 0 0 2 0|0.0854559 2 0 2 0|-0.0504475 3 0 2 0
0.010465 1 6 2 0|-0.00648272 2 6 2 0|-0.00841728 0 3 0 1|0.0168424 1 3 0 1|-0.00102296 3 3 0 1
-0.0317791 0 3 1 1|0.018604 1 0 2 1|-0.00410798 0 2 2 1|-0.000606848 0 0 0 2|-0.0049819 1 0 0 2
0.0025983 2 0 0 2|-0.000560528 3 0 0 2|-0.00163652 1 2 0 2|-0.000328787 1 6 0 2|0.000116502 2 6 0 2
0.000690904 0 0 1 2|0.00421749 0 3 1 2|0.0000565229 3 6 1 2|-0.00146564 0 3 2 2
"""
TERMS = [tuple(map(float, term.split())) for line in K_T.split("\n") for term in line.split("|") if term]
PROPELLERS = [(pitch, *blades) for blades in ((0.3, 2), (0.5, 3)) for pitch in (0.6, 0.8, 1.0)]
"""P/D, blade area, blades."""
SHARES = np.linspace(0, 1, 41)


def thrust_coefficient(advance: float, pitch: float, area: float, blades: float) -> float:
    """K_T of one propeller."""
    return sum(c * advance**s * pitch**t * area**u * blades**v for c, s, t, u, v in TERMS)


def zero_thrust_advance(*propeller: float) -> float:
    """J at which a propeller no longer pulls."""
    return brentq(lambda advance: thrust_coefficient(advance, *propeller), 0.2, 2.0)


def falling(*propeller: float) -> np.ndarray:
    """Pull over that at rest at shares of the zero-thrust advance."""
    gone, rest = zero_thrust_advance(*propeller), thrust_coefficient(0.0, *propeller)
    return np.array([thrust_coefficient(share * gone, *propeller) / rest for share in SHARES])


CURVE = CubicSpline(SHARES, np.mean([falling(*propeller) for propeller in PROPELLERS], axis=0))
ENDS = [(float(CURVE(share)), float(CURVE(share, 1))) for share in (0, 1)]


def pull_over_advance(share: float) -> float:
    """Pull over that at rest, the mean of six propellers; beyond what was measured it goes straight on."""
    if share < 0:
        return ENDS[0][0] + ENDS[0][1] * share
    return float(CURVE(share)) if share <= 1 else ENDS[1][0] + ENDS[1][1] * (share - 1)
