"""Drag and added mass against published tables and worked examples."""

from math import cos, pi, radians, sin, sqrt

import numpy as np
import pytest

from model.design import Tether
from model.motion.added import added_mass, block_added
from model.motion.coefficients import HIGH, LOW, PIPES
from model.motion.drag import drag, resistances, summed
from model.motion.shapes import Wet
from model.motion.speed import Push
from model.motion.strips import Strips, across_coefficient, cylinder_strips, slab_of, tether_strip
from model.parts import Block, Cylinder
from model.vectors import ORIGIN

FINITE = ((1, 0.63), (2, 0.68), (5, 0.74), (10, 0.82), (40, 0.98))
"""L/d and C_D of a free cylinder across the flow (Aeronautical Engineer's Data Book, fig. 5.13)."""
END_ON = ((1, 0.91), (2, 0.85), (4, 0.87), (7, 0.99))
"""L/d and C_D of a cylinder along the flow (the same)."""
DNV_CYLINDER = ((1.2, 0.62), (2.5, 0.78), (5, 0.90), (9, 0.96))
"""L/d and C_A across the axis (DNV-RP-C205, from memory)."""
DNV_PLATE = ((1, 0.579), (1.5, 0.690), (2, 0.757), (4, 0.872), (10, 0.947))
"""b/a and C_A of a thin plate face-on, C_A rho pi/4 a^2 b (DNV-RP-H103 table A-2)."""
DNV_PRISM = ((1, 0.68), (2, 0.36), (3, 0.24), (5, 0.15))
"""b/a and C_A of a square prism a x a x b moved along b, C_A rho a^2 b (the same)."""


def swept(solid, velocity, *, butted, density=1000.0):
    """The drag on one cylinder, moved without turning."""
    strips = Strips(tuple(cylinder_strips(Wet(solid, butted), solid, density / 2)), ())
    return summed(drag(strips, velocity, ORIGIN, ORIGIN))[0]


def test_a_pipe_across_a_river():
    """Cengel and Cimbala, Fluid Mechanics: 2.2 cm pipe, 30 m, 4 m/s, 999.1 kg/m3, C_D 1.0: 5275 N."""
    pipe = Cylinder((0.0, 0.0, 0.0), (0.0, 30.0, 0.0), 0.011)
    force = swept(pipe, (-4.0, 0.0, 0.0), butted=True, density=999.1)
    assert force[0] / across_coefficient(30, 0.022, butted=True) == pytest.approx(5275, rel=1e-3)
    assert LOW[PIPES] * 1.1 < 1.0 < HIGH[PIPES] * 1.1  # the book's C_D lies in our spread


@pytest.mark.parametrize(("slender", "drag_coefficient"), FINITE)
def test_free_cylinders_across_the_flow(slender, drag_coefficient):
    assert across_coefficient(slender * 0.05, 0.05, butted=False) == pytest.approx(drag_coefficient)


@pytest.mark.parametrize(("slender", "drag_coefficient"), END_ON)
def test_free_cylinders_along_the_flow(slender, drag_coefficient):
    """On the area of the end; skin friction comes on top, a few per cent."""
    body = Cylinder((0.0, 0.0, 0.0), (slender * 0.05, 0.0, 0.0), 0.025)
    force = -swept(body, (1.0, 0.0, 0.0), butted=False)[0]
    assert force / (500 * pi / 4 * 0.05**2) == pytest.approx(drag_coefficient + 0.005 * 4 * slender, rel=1e-6)


@pytest.mark.parametrize("angle", [0, 15, 30, 45, 60, 90])
def test_force_goes_with_sine_squared_and_drag_with_sine_cubed(angle):
    """Cross-flow principle (after Hoerner): normal force sin^2, its drag sin^3, skin friction cos^2."""
    a, d, length, speed, rho = radians(angle), 0.0213, 0.4, 0.7, 1000.0
    pipe = Cylinder((0.0, 0.0, 0.0), (length * cos(a), length * sin(a), 0.0), d / 2)
    force = np.array(swept(pipe, (speed, 0.0, 0.0), butted=True))
    across = rho / 2 * 1.1 * d * length * speed**2
    along = rho / 2 * 0.005 * pi * d * length * speed**2
    normal, axis = np.array([-sin(a), cos(a), 0]), np.array([cos(a), sin(a), 0])
    assert force @ normal == pytest.approx(across * sin(a) ** 2, abs=1e-9)
    assert force @ axis == pytest.approx(-along * cos(a) ** 2, abs=1e-9)
    assert -force[0] == pytest.approx(across * sin(a) ** 3 + along * cos(a) ** 3, abs=1e-9)


def test_three_metres_of_tether_drag_about_two_newtons():
    """3 m of 8 mm cable broadside at 0.4 m/s: 1/2 x 998 x 1.2 x 0.008 x 3 x 0.16 = 2.3 N."""
    tether = Tether(
        id="c", name="c", bar="b", diameter=0.008, hanging=3.0, mass_per_m=0.06, mass_in_water_per_m=0.01
    )
    strips = Strips((tether_strip(tether, ORIGIN, 998.0),), ())
    force = summed(drag(strips, (0.4, 0.0, 0.0), ORIGIN, ORIGIN))[0]
    assert -force[0] == pytest.approx(0.5 * 998 * 1.2 * 0.008 * 3 * 0.16)
    assert abs(summed(drag(strips, (0.0, 0.0, 0.4), ORIGIN, ORIGIN))[0][2]) < 0.1 * abs(force[0])


def test_small_floats_on_the_tether_drag_like_spheres():
    """Three that lift 20 g each: C_D 0.45 on pi r^2 (College Physics, table of drag)."""
    values = {"id": "c", "name": "c", "bar": "b", "diameter": 0.008, "hanging": 1.0}
    tether = Tether(**values, mass_per_m=0.06, mass_in_water_per_m=0.01, floats=3, float_lift=0.020)
    bare = tether.but(floats=0)
    radius = (3 * 20e-6 / (4 * pi)) ** (1 / 3)
    more = tether_strip(tether, ORIGIN, 1000.0).across - tether_strip(bare, ORIGIN, 1000.0).across
    assert more == pytest.approx(3 * 500 * 0.45 * pi * radius**2)


def test_a_drag_balance():
    """College Physics: 85 kg, 0.70 m2, C 1.0, 1.21 kg/m3, g 9.80 falls at 44 m/s (44.35)."""
    push = Push(mass=85.0, still=85 * 9.80, slope=0.0, square=0.5 * 1.21 * 1.0 * 0.70)
    assert push.top == pytest.approx(sqrt(2 * 85 * 9.80 / (1.21 * 0.70)))
    assert push.top == pytest.approx(44.35, abs=0.01)


def test_a_block_has_the_drag_of_each_of_its_faces():
    """C_D 1.1: square plate 1.16, square rods end-on 0.87 to 1.15 (DNV-RP-H103 table B-2)."""
    strips = Strips((), (slab_of(Block(ORIGIN, (0.2, 0.1, 0.05)), 500.0),))
    for way, area in (((1, 0, 0), 0.005), ((0, 1, 0), 0.01), ((0, 0, 1), 0.02)):
        k = sum(resistances(strips, way))
        assert k == pytest.approx(500 * 1.1 * area)
        assert 0.87 * 500 * area <= k <= 1.16 * 500 * area


@pytest.mark.parametrize("butted", [True, False])
def test_turning_moment_is_the_integral_over_the_length(butted):
    """Turned about its middle: M = 2 int 1/2 rho C_D d (r x)^2 x dx = rho C_D d r^2 l^4 / 64."""
    length, d, rate = 0.5, 0.02, 1.3
    bar = Cylinder((-length / 2, 0.0, 0.0), (length / 2, 0.0, 0.0), d / 2)
    strips = Strips(tuple(cylinder_strips(Wet(bar, butted), bar, 500.0)), ())
    moment = summed(drag(strips, ORIGIN, (0.0, 0.0, rate), ORIGIN))[1][2]
    coefficient = across_coefficient(length, d, butted=butted)
    assert -moment == pytest.approx(1000 * coefficient * d * rate**2 * length**4 / 64, rel=1e-9)


@pytest.mark.parametrize(("slender", "share"), DNV_CYLINDER)
def test_added_mass_of_cylinders_across_their_axis(slender, share):
    body = Cylinder((0.0, 0.0, 0.0), (0.0, slender * 0.1, 0.0), 0.05)
    found = added_mass([Wet(body, butted=False)], None, 1000.0)
    assert found.xx == pytest.approx(share * 1000 * pi / 4 * 0.1**2 * slender * 0.1)


@pytest.mark.parametrize(("slender", "share"), [(1, 0.59), (2, 0.31), (5, 0.129), (10, 0.065)])
def test_added_mass_of_cylinders_along_their_axis(slender, share):
    """Computed by a boundary-element solver in unbounded water; a thin disc alone is 8/3 rho a^3, exact."""
    body = Cylinder((0.0, 0.0, 0.0), (0.0, slender * 0.1, 0.0), 0.05)
    found = added_mass([Wet(body, butted=False)], None, 1000.0)
    assert found.yy == pytest.approx(share * 1000 * pi / 4 * 0.1**2 * slender * 0.1, rel=0.02)


@pytest.mark.parametrize(("sides", "share"), DNV_PLATE)
def test_added_mass_of_thin_plates(sides, share):
    plate = Block(ORIGIN, (1e-7, 0.1, 0.1 * sides))
    assert block_added(plate, 1000.0).xx == pytest.approx(
        share * 1000 * pi / 4 * 0.1**2 * 0.1 * sides, rel=2e-3
    )


@pytest.mark.parametrize(("sides", "share"), DNV_PRISM)
def test_added_mass_of_square_prisms(sides, share):
    """The height formula comes within an eighth of the table."""
    prism = Block(ORIGIN, (0.1 * sides, 0.1, 0.1))
    assert block_added(prism, 1000.0).xx == pytest.approx(share * 1000 * 0.1**3 * sides, rel=0.13)


def test_a_butted_pipe_carries_no_water_along_its_axis():
    pipe = Cylinder((0.0, 0.0, 0.0), (0.4, 0.0, 0.0), 0.01)
    found = added_mass([Wet(pipe, butted=True)], None, 1000.0)
    assert found.xx == pytest.approx(0.0, abs=1e-12)
    assert found.zz == pytest.approx(1000 * pi / 4 * 0.02**2 * 0.4)
