"""What a round body in a propeller's stream costs it, on a dense grid; nothing of the model is used.

The stated rule: water through the disc at w, on the axis at w (1 + x/sqrt(x^2 + R^2)), in a stream as narrow
as that makes it; followed from one diameter before the disc to three behind it.  A body loses 1.1 S/A
(v/w)^2/4 of the pull, S the frontal area of its side, at the depth of its axis, and of the end that faces
the stream, as far as they lie in it.
"""

from math import pi

import numpy as np

DENSE = 101
EDGE = 1e-9  # m


def weights(points: np.ndarray, way: np.ndarray, radius: float) -> np.ndarray:
    """(v/w)^2/4 at points from the middle of the disc, 0 outside the stream."""
    behind = points @ way
    speed = 1 + behind / np.sqrt(behind**2 + radius**2)
    aside = (points**2).sum(axis=-1) - behind**2
    reached = (behind > -2 * radius - EDGE) & (behind < 6 * radius + EDGE)  # its ends belong to it
    inside = reached & (aside * speed < radius**2)
    return np.where(inside, speed**2 / 4, 0.0)


def lost(
    centre: np.ndarray, way: np.ndarray, radius: float, a: np.ndarray, b: np.ndarray, wide: float
) -> float:
    """The share of the pull that a cylinder from a to b costs [m]."""
    axis = b - a
    length = np.linalg.norm(axis)
    nearest = np.clip((centre - a) @ axis / length**2, 0, 1)
    if np.linalg.norm(a + nearest * axis - centre) > 6.1 * radius + wide:
        return 0.0
    shares = (np.arange(4 * DENSE) + 0.5) / (4 * DENSE)
    steps = (np.arange(DENSE) + 0.5) / DENSE * 2 - 1
    level = np.cross(axis / length, way)
    slant, facing = np.linalg.norm(level), axis @ way / length
    seen = 0.0
    if slant > 1e-9:
        side = a - centre + shares[:, None, None] * axis + steps[None, :, None] * wide / 2 * level / slant
        seen += weights(side, way, radius).mean() * wide * length * slant
    if abs(facing) > 1e-9:
        one = np.cross(axis / length, (0, 0, 1) if abs(axis[2]) < 0.9 * length else (1, 0, 0))
        one /= np.linalg.norm(one)
        x, y = np.meshgrid(steps, steps)
        disc = np.stack([x[x**2 + y**2 < 1], y[x**2 + y**2 < 1]], axis=1) * wide / 2
        face = (a if facing > 0 else b) - centre + disc @ np.stack([one, np.cross(axis / length, one)])
        seen += weights(face, way, radius).mean() * pi / 4 * wide**2 * abs(facing)
    return 1.1 * seen / (pi * radius**2)
