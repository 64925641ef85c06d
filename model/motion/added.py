"""Added mass: the water that has to be moved along with the vehicle, in a straight line.

1. DNV-RP-C205 (N103 table A-2): cylinder across its axis, from memory; see ``inertia``.
2. A boundary-element computation of a cylinder along its axis: 1.39 to 1.57 of the disc's 8/3 rho a^3.
3. DNV-RP-H103 table A-2: thin rectangular plate face-on, C_A rho pi/4 a^2 b; a body of height h behind it
   carries 1 + sqrt((1 - l^2)/(2 (1 + l^2))) as much, with l = sqrt(A)/(h + sqrt(A)).
"""

from collections.abc import Iterable
from math import pi, sqrt

from model.design import Tether
from model.motion.coefficients import between_rows
from model.motion.inertia import added_share
from model.motion.shapes import Wet
from model.motion.tensor import Tensor, axial, total
from model.parts import Block
from model.vehicle.pipework import disc

ALONG = ((0.0, 1.0), (1.0, 1.39), (2.0, 1.459), (5.0, 1.516), (10.0, 1.541), (20.0, 1.566))
"""Length over diameter, and added mass along the axis over that of the disc alone [2]."""
PLATE = (
    (1.0, 0.579), (1.25, 0.642), (1.5, 0.690), (2.0, 0.757), (2.5, 0.801), (3.0, 0.830), (4.0, 0.872),
    (5.0, 0.897), (6.25, 0.917), (8.0, 0.934), (10.0, 0.947), (1000.0, 1.0),
)  # fmt: skip
"""Side over shorter side, and C_A of a thin plate face-on [3]."""


def added_mass(shapes: Iterable[Wet], tether: Tether | None, density: float) -> Tensor:
    """Of the water around the parts and the tether [kg]: along a direction e it is e . A e."""
    around = total(_added(shape, density) for shape in shapes)
    if tether:
        across = density * disc(tether.diameter) * tether.hanging
        return around + Tensor(across, across, 0.0)
    return around


def _added(shape: Wet, density: float) -> Tensor:
    solid = shape.solid
    if isinstance(solid, Block):
        return block_added(solid, density)
    if not solid.length:
        return Tensor()
    across = added_share(shape) * density * disc(2 * solid.radius) * solid.length
    slender = solid.length / (2 * solid.radius)
    ends = 0.0 if shape.butted else between_rows(ALONG, slender) * 8 / 3 * density * solid.radius**3
    return axial(solid.axis, ends, across)


def block_added(block: Block, density: float) -> Tensor:
    """Of a block [kg], along its edges [3].

    >>> cube = block_added(Block((0.0, 0.0, 0.0), (1.0, 1.0, 1.0)), 1.0)
    >>> round(cube.xx, 2)  # computed 0.64, table 0.68
    0.7
    """
    x, y, z = block.size
    return Tensor(*(_face(density, *sides) for sides in ((y, z, x), (x, z, y), (x, y, z))))


def _face(density: float, one: float, other: float, height: float) -> float:
    short, long = sorted((one, other))
    plate = between_rows(PLATE, long / short) * density * pi / 4 * short**2 * long
    root = sqrt(one * other)
    share = root / (height + root)
    return float(plate * (1 + sqrt((1 - share**2) / (2 * (1 + share**2)))))
