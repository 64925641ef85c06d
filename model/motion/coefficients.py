"""Published drag coefficients, and how far the real thing may be from them.

1. Aeronautical Engineer's Data Book, fig. 5.13: finite cylinders across and along the flow, below the drag
   crisis.
2. DNV-RP-C205: ends that butt against other members keep the two-dimensional value (from memory).
3. Standard curve for cylinders at Reynolds numbers of 2e3 to 5e4: 0.95 to 1.2; 1.1 +- 0.1.
4. College Physics (open textbook), table of drag: disc 1.12, sphere 0.45.
5. DNV-RP-H103 table B-2: square plate 1.16, square rods end-on 0.87 to 1.15.
"""

from bisect import bisect_right
from typing import Literal

Group = Literal[0, 1, 2, 3]
PIPES, BODIES, BLOCKS, TETHER = 0, 1, 2, 3
LOW = (0.75, 0.80, 0.80, 0.50)
"""Least drag of each group over the usual value.  Pipes: 1.0 for 1.1 [3], and up to a fifth less where
one stands behind another.  Tether: its upper end hardly moves."""
HIGH = (1.10, 1.20, 1.20, 1.20)
"""Most drag of each group over the usual value.  Tether: it strums, which adds 10 to 25 % (from memory)."""

LONG_CYLINDER = 1.1
"""C_D of a long cylinder across the flow [2][3]."""
FREE_CYLINDER = (
    (0.0, 0.63), (1.0, 0.63), (2.0, 0.68), (5.0, 0.74), (10.0, 0.82), (20.0, 0.89), (40.0, 0.98), (80.0, 1.1)
)  # fmt: skip
"""Length over diameter, and C_D of a cylinder across the flow with free ends [1]."""
END_ON = ((0.0, 1.12), (1.0, 0.91), (2.0, 0.85), (4.0, 0.87), (7.0, 0.99))
"""Length over diameter, and C_D of a cylinder along the flow on the area of its end [1][4]."""
SKIN = 0.005
"""C_f of a pipe along the flow on its wetted area, 0.004 to 0.01 (from memory)."""
BLOCK = 1.1
"""C_D of a block on the area of each face [5]."""
CABLE = 1.2
"""C_D of a tether across the flow (from memory)."""
SPHERE = 0.45
"""C_D of a small float on the tether [4]."""

Table = tuple[tuple[float, float], ...]


def between_rows(table: Table, at: float) -> float:
    """A value between the rows of a table by straight lines; the end rows hold beyond.

    >>> between_rows(FREE_CYLINDER, 7.5)
    0.78
    """
    if at <= table[0][0]:
        return table[0][1]
    if at >= table[-1][0]:
        return table[-1][1]
    place = bisect_right(table, (at, float("inf")))
    (low, a), (high, b) = table[place - 1], table[place]
    return a + (b - a) * (at - low) / (high - low)
