"""The air in the pipes against bores cut into cubes: generated frames with generated holes and plugs.

The cubes know nothing of convex pieces, closed forms or bottlenecks: they are air cells in a graph whose
best ways out are found by a spanning tree.  A cube of 1 mm misjudges heights by up to 1 mm, which is a few
per cent of the water surface in a pocket; 2 % of all the room is what finer cubes converge to.
"""

import numpy as np
import pytest

from model.design import Opening
from model.frame.layout import lay_out
from model.water.air.attitudes import ATTITUDES, Attitude
from model.water.air.network import network_of
from model.water.air.pockets import caught
from tests.model.air_designs import random_design
from tests.reference.pipe_rooms import voxels
from tests.worked import arrangement, design, stock

SIZES = (1.6, 1.0)
"""Edges of the cubes [mm], coarse and fine."""
WITHIN = 0.02
ODD = Attitude("odd", -17, 63)


def compared(drawn, attitudes):
    """By the model and by coarse and fine cubes: caught air in each attitude [ml], and all the room."""
    run = drawn.arrangement
    frame = lay_out(drawn, run)
    network = network_of(frame, run.openings, run.plugs)
    spare = [(joint.id, to) for joint in frame.joints.values() if joint.match for to in joint.match.spare]
    found = [[caught(network, attitude.up).total * 1e6 for attitude in attitudes]]
    for size in SIZES:
        cubes = voxels(drawn, size, spare)
        found.append([cubes.caught(attitude.up)[0] for attitude in attitudes])
    return np.array(found), network.volume * 1e6


def agree(drawn, attitudes):
    """Within 2 % of the room in each attitude by fine cubes, 3 % by coarse; 2 % of the air in all."""
    (ours, coarse, fine), room = compared(drawn, attitudes)
    assert np.abs(ours - coarse).max() < 1.5 * WITHIN * room
    assert np.abs(ours - fine).max() < WITHIN * room
    assert abs(ours.sum() - fine.sum()) < WITHIN * fine.sum() + 0.2


@pytest.mark.parametrize("seed", [1, 5, 13])
def test_generated_frames_with_holes_and_a_plug(seed):
    agree(
        random_design(seed, plugs=seed % 2), (ATTITUDES[seed % 3], ATTITUDES[3 + seed % 2], ATTITUDES[5], ODD)
    )


def test_empty_sockets_are_open_and_keep_air_in_their_wider_part():
    """Where the range has tees alone, the corners of a ring have an empty socket each."""
    corners = [(0, 0, 0), (1, 0, 0), (1, 1, 0), (0, 1, 0)]
    ring = list(zip(corners, corners[1:] + corners[:1], strict=True))
    drawn = design(arrangement((0.0, 0.11), (0.0, 0.09), (0.0,), ring), stock=stock("tee"))
    frame = lay_out(drawn, drawn.arrangement)
    assert all(joint.match and len(joint.match.spare) == 1 for joint in frame.joints.values())
    agree(drawn, (ATTITUDES[0], ATTITUDES[1], ATTITUDES[3], ODD))


def test_loose_ends_are_open():
    """Three bars that meet, and no fitting in the range: they count as joined, and open at their ends."""
    bars = [((0, 0, 0), (1, 0, 0)), ((1, 0, 0), (2, 0, 0)), ((1, 0, 0), (1, 0, 1))]
    drawn = design(arrangement((0.0, 0.1, 0.19), (0.0,), (0.0, 0.08), bars), stock=stock(fittings=()))
    frame = lay_out(drawn, drawn.arrangement)
    assert sum(joint.match is None for joint in frame.joints.values()) == 4
    agree(drawn, (ATTITUDES[0], ATTITUDES[2], ATTITUDES[5], ODD))


def test_a_slanting_bar():
    """Two 45-degree elbows: the cubes end flat there, where the model counts a mitre, within a millilitre."""
    bars = [((0, 0, 0), (1, 0, 0)), ((1, 0, 0), (2, 0, 1)), ((2, 0, 1), (3, 0, 1))]
    run = arrangement((0.0, 0.1, 0.17, 0.27), (0.0,), (0.0, 0.07), bars)
    hole = Opening(id="o", name="hole", bar="b1", at=0.5, face="+x-z")
    drawn = design(run.but(openings=(hole,)), stock=stock("elbow 45", "cap"))
    (ours, _, fine), room = compared(drawn, (*ATTITUDES, ODD))
    assert np.abs(ours - fine).max() < WITHIN * room + 1.0


def test_the_room_inside_is_that_of_the_cubes():
    drawn = random_design(21, plugs=0)
    run = drawn.arrangement
    network = network_of(lay_out(drawn, run), run.openings)
    assert network.volume * 1e6 == pytest.approx(voxels(drawn, 0.8).volume, rel=0.01)


def test_the_middle_of_the_air_is_that_of_the_cubes():
    """Weighed over all pockets; grooves in the sockets are not placed, and hold a few per cent."""
    drawn = random_design(10)
    run = drawn.arrangement
    network = network_of(lay_out(drawn, run), run.openings, run.plugs)
    cubes = voxels(drawn, 1.2)
    for attitude in (ATTITUDES[0], ATTITUDES[2]):
        pockets = caught(network, attitude.up).pockets
        weights = [pocket.volume for pocket in pockets]
        ours = np.average([pocket.at for pocket in pockets], axis=0, weights=weights) * 1000
        assert np.abs(ours - cubes.caught(attitude.up)[1]).max() < 3.0
