"""The room inside a fitting against closed forms and unions of meshes (trimesh, manifold3d)."""

from math import pi, sqrt

import numpy as np
import pytest
import trimesh

from model.design import Fitting, Socket
from model.frame.layout import lay_out
from model.vectors import unit
from model.vehicle.pipework import hidden_room, overlap
from tests import worked
from tests.generators import SHAPES
from tests.reference.meshes import FACETS, rod

INCH = 25.4
ROUND = FACETS / (2 * pi) * np.sin(2 * pi / FACETS)
"""What a circle of facets has of the area of a round one."""


def test_two_cylinders_that_cross():
    """Archimedes, The Method: two cylinders of radius r at right angles share 16/3 r^3."""
    ways = [unit(to) for to in ("+x", "-x", "+y", "-y")]
    assert overlap(ways) == pytest.approx(16 / 3)


def test_three_cylinders_that_cross():
    """Three cylinders share 8 (2 - sqrt 2) r^3 (Steinmetz solid, any table of solids).

    The union of three is the sum, less three pairs, plus the triple.
    """
    ways = [unit(to) for to in ("+x", "-x", "+y", "-y", "+z", "-z")]
    assert overlap(ways) == pytest.approx(3 * 16 / 3 - 8 * (2 - sqrt(2)))


@pytest.mark.parametrize("shape", [shape for shape in SHAPES if shape != "elbow 45"])
def test_bores_that_meet_in_a_fitting_as_a_union_of_meshes(shape: str):
    ways = [np.array(unit(to)) for to in SHAPES[shape]]
    bores = [rod(np.zeros(3), 3.0 * to, 2.0) for to in ways]
    together = trimesh.boolean.union(bores).volume / ROUND
    assert len(ways) * 3.0 * pi - overlap([unit(to) for to in SHAPES[shape]]) == pytest.approx(
        together, rel=1e-3
    )


def test_an_elbow_and_an_empty_tee_socket_by_hand():
    """Half-inch: bore 0.602 in, outside 0.84 in, pushed in 0.5 of 0.688 in, 0.562 in from centre to stop.

    Elbow: two bores of 0.562 in less 4/3 r^3, and two gaps of 0.188 in at the pipe's outside diameter.
    Tee with a spare branch: three bores less 8/3 r^3, two gaps, and one whole empty socket.
    """
    run = worked.arrangement((-0.2, 0.0, 0.2), (0.0, 0.2), (0.0,), worked.FLAT)
    design = worked.design(run, stock=worked.stock("elbow", "tee"))
    frame = lay_out(design, design.arrangement)
    bore, pipe, r3 = pi / 4 * 0.602**2, pi / 4 * 0.84**2, 0.301**3
    elbow = 2 * bore * 0.562 - 4 / 3 * r3 + 2 * pipe * 0.188
    tee = 3 * bore * 0.562 - 8 / 3 * r3 + 2 * pipe * 0.188 + pipe * 0.688
    cubic = (INCH / 1000) ** 3
    assert hidden_room(frame.joints["j000"], frame.bars) == pytest.approx(elbow * cubic, rel=1e-6)
    assert hidden_room(frame.joints["j100"], frame.bars) == pytest.approx(tee * cubic, rel=1e-6)


def test_a_pipe_pushed_to_the_stop_leaves_no_gap():
    deep = worked.pipe(insertion=0.05)
    sockets = tuple(Socket(to=to, laying_length=0.0127, depth=0.02, pipe="half") for to in ("+x", "-x"))
    coupling = Fitting(id="c", name="c", shape="coupling", sockets=sockets, hub=0.028, mass=0.01)
    run = worked.arrangement((-0.2, 0.0, 0.2), (0.0,), (0.0,), worked.FLAT[:2])
    design = worked.design(run, stock=worked.stock(pipes=(deep,), fittings=(coupling,)))
    frame = lay_out(design, design.arrangement)
    middle = frame.joints["j100"]
    assert middle.match is not None
    assert hidden_room(middle, frame.bars) == pytest.approx(2 * 0.0127 * pi / 4 * (0.602 * 0.0254) ** 2)
