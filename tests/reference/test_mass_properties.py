"""Mass, volume, centres and size box of whole vehicles against watertight meshes.

The meshes are built with trimesh and manifold3d from the raw numbers of the design's file.  They
must agree within 0.1 mm and 0.1 %.
"""

import numpy as np
import pytest
import trimesh

from model.design import Attachment, Ballast, Design, Float, Tether, Thruster
from model.survey import survey
from tests import worked
from tests.reference.meshes import vehicle
from tests.reference.raw_frame import Raw

TENT = [
    *[((0, 1, 1), (1, 1, 1)), ((1, 1, 1), (2, 1, 1))],
    *[((0, 1, 1), (0, 0, 0)), ((0, 1, 1), (0, 2, 0)), ((1, 1, 1), (1, 0, 0))],
    *[((0, 0, 0), (1, 0, 0)), ((2, 1, 1), (2, 0, 0)), ((1, 0, 0), (2, 0, 0))],
    ((2, 1, 1), (2, 2, 0)),
    ((0, 2, 0), (2, 2, 0)),
]
"""A tent: a ridge pole, legs that slope down at 45 degrees to both sides, and rails along their feet."""
HEXAGON = [
    ((0, 0, 0), (1, 0, 0)),
    ((1, 0, 0), (2, 1, 0)),
    ((2, 1, 0), (1, 2, 0)),
    ((1, 2, 0), (0, 2, 0)),
    ((0, 2, 0), (0, 0, 0)),
]


def flat_and_busy() -> Design:
    """A flat flooded rectangle with a cross bar and one of everything that can be strapped on."""
    run = worked.arrangement(
        (-0.2, 0.01, 0.25),
        (-0.15, 0.15),
        (0.0,),
        [*worked.FLAT, ((1, 0, 0), (1, 1, 0))],
        thrusters=(
            Thruster(
                id="t", name="t", bar="b6", at=0.4, motor="motor", mount="ties", offset=(0.02, 0.05, 0.07)
            ),
        ),
        floats=(Float(id="f", name="f", foam="noodle", bar="b0", at=0.6, length=0.07),),
        ballasts=(Ballast(id="w", name="w", bar="b4", mass=0.3, at=0.3),),
        attachments=(
            Attachment(
                id="h",
                name="h",
                bar="b2",
                offset=(0.06, 0, 0),
                size=(0.08, 0.01, 0.03),
                mass=0.06,
                mass_in_water=0.04,
            ),
        ),
    )
    return worked.design(run)


def sealed_box() -> Design:
    """A sealed box of corners, weighted with washers threaded on a low bar."""
    washers = Ballast(id="w", name="w", bar="b4", mass=0.25, diameter=0.03, beside=None)
    return worked.design(worked.box(bores="sealed", ballasts=(washers,)))


def tent() -> Design:
    """A flooded tent whose tees, corners and elbows lie at 45 degrees, written in inches."""
    run = worked.arrangement(
        (-0.25, 0.0, 0.3),
        (-0.2, 0.0, 0.2),
        (0.0, 0.2),
        TENT,
        floats=(Float(id="f", name="f", foam="noodle", bar="b0", at=0.5, length=0.1, beside="+z"),),
        tether=Tether(
            id="c",
            name="c",
            bar="b1",
            diameter=0.008,
            hanging=2.5,
            mass_per_m=0.06,
            mass_in_water_per_m=0.005,
            floats=3,
            float_lift=0.01,
        ),
    )
    return worked.design(run, units="in")


def hexagon() -> Design:
    """A sealed flat ring with 45-degree elbows."""
    ring = worked.arrangement((-0.1, 0.1, 0.25), (-0.15, 0.0, 0.15), (0.0,), HEXAGON, bores="sealed")
    return worked.design(ring)


@pytest.mark.parametrize("build", [flat_and_busy, sealed_box, tent, hexagon])
def test_a_whole_vehicle_agrees_with_its_meshes(build):
    design = build()
    lumps = vehicle(Raw(design))
    found = survey(design)
    assert all(joint.match and not joint.match.spare for joint in found.frame.joints.values())
    mass = sum(lump.mass for lump in lumps)
    volume = sum(lump.volume for lump in lumps)
    assert found.balance.mass * 1e3 == pytest.approx(mass, rel=1e-3)
    assert found.balance.displaced * 1e9 == pytest.approx(volume, rel=1e-3)
    g = sum(lump.mass * lump.mass_centre for lump in lumps) / mass
    b = sum(lump.volume * lump.volume_centre for lump in lumps) / volume
    np.testing.assert_allclose(np.array(found.balance.g) * 1e3, g, atol=0.1)
    np.testing.assert_allclose(np.array(found.balance.b) * 1e3, b, atol=0.1)
    outside = trimesh.util.concatenate([mesh for lump in lumps for mesh in lump.outside]).bounds
    assert found.extents.box is not None
    np.testing.assert_allclose(np.array(found.extents.box.low) * 1e3, outside[0], atol=0.1)
    np.testing.assert_allclose(np.array(found.extents.box.high) * 1e3, outside[1], atol=0.1)


def test_each_part_agrees_with_its_own_mesh():
    design = flat_and_busy()
    parts = survey(design).parts
    lumps = vehicle(Raw(design))
    assert len(parts) == len(lumps)
    for part, lump in zip(parts, lumps, strict=True):
        assert part.mass * 1e3 == pytest.approx(lump.mass, rel=1e-3), part.name
        assert part.volume * 1e9 == pytest.approx(lump.volume, rel=1e-3), part.name
        np.testing.assert_allclose(np.array(part.mass_centre) * 1e3, lump.mass_centre, atol=0.1)
