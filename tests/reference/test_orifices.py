"""Flow through holes against worked examples, textbooks and handbook tables."""

from math import pi, sqrt

import pytest
from scipy.integrate import quad

from model.water.air.flow import SHARE, filling_time
from model.water.air.orifice import (
    AIR_DENSITY,
    DRILLED,
    SHARP_EDGED,
    drain_time,
    hold_up,
    hole_area,
    jet_speed,
    orifice_flow,
    paired_flow,
)
from model.water.air.seal import pressure, shrunk

INCH = 0.0254


def test_a_tank_that_drains_to_the_hole():
    """Worked example, calculatorlib.com/water-flow-from-tank-time-calculator: prints 103.0 s."""
    exact = 1.0 / (0.62 * 0.01) * sqrt(2 / 9.81) * sqrt(2.0)
    assert drain_time(1.0, 0.01, 2.0, discharge=0.62, gravity=9.81) == pytest.approx(exact)
    assert drain_time(1.0, 0.01, 2.0, gravity=9.81) == pytest.approx(102.99, abs=0.05)


def test_a_tank_that_drains_part_way():
    """Worked example, calculatorcollection.org, tank drain time: 3 m to 0.5 m, prints 298 s."""
    assert drain_time(2.0, 0.005, 3.0, 0.5, gravity=9.81) == pytest.approx(298.57, abs=0.05)


def test_flow_from_a_hole_five_metres_down():
    """College Physics (OpenStax m42208), Torricelli: 10 cm2, ideal, g 9.8, prints 0.0099 m3/s."""
    assert orifice_flow(10e-4, 5.0, 1.0, gravity=9.8) == pytest.approx(0.0099, abs=5e-5)
    assert jet_speed(5.0, gravity=9.8) == pytest.approx(sqrt(2 * 9.8 * 5))


def test_the_coefficient_of_a_sharp_edged_hole():
    """Encyclopaedia Britannica 11th ed., vol. 14: velocity 0.97, contraction 0.64; 0.62 to two figures."""
    assert pytest.approx(0.97 * 0.64, abs=0.005) == SHARP_EDGED
    assert SHARP_EDGED <= DRILLED <= 0.75  # a thicker wall passes a little more (from memory: 0.62 to 0.80)


@pytest.mark.parametrize(("inches", "seconds"), [(0.25, 5.2), (0.189, 9.1)])
def test_a_foot_of_half_inch_pipe_floods(inches, seconds):
    """300 mm of Schedule 40 half-inch, bore 55.1 ml, two holes 15 mm apart, C_d 0.62, water at 27 deg C."""
    volume = pi / 4 * (0.602 * INCH) ** 2 * 0.3
    area = hole_area(inches * INCH)
    flow = paired_flow(area, area, 0.015, 996.5, 1.177, SHARP_EDGED)
    assert volume * 1e6 == pytest.approx(55.1, abs=0.05)
    assert volume / flow == pytest.approx(seconds, abs=0.06)


def test_air_passes_twenty_nine_times_as_easily():
    """sqrt(998.2 / 1.1843) = 29.03 with air at 25 deg C (CoolProp)."""
    water, air = 998.2, 1.1843
    with_big_low_hole = paired_flow(1.0, 1e-6, 0.1, water, air)
    with_big_high_hole = paired_flow(1e-6, 1.0, 0.1, water, air)
    assert with_big_low_hole / with_big_high_hole == pytest.approx(29.0, abs=0.05)
    assert pytest.approx(air, rel=0.001) == AIR_DENSITY


@pytest.mark.parametrize(
    ("diameter", "depth"), [(2.0, 14.9), (3.175, 9.3), (4.7625, 6.2), (6.35, 4.7), (8.0, 3.7)]
)
def test_what_the_skin_of_the_water_holds_back(diameter, depth):
    """4 sigma / (rho g d), sigma 0.07282 N/m at 20 deg C (CoolProp); in mm."""
    assert hold_up(diameter / 1000, 998.2) * 1000 == pytest.approx(depth, abs=0.1)


def test_the_general_time_is_that_of_the_two_holes_while_the_surface_is_below_the_low_one():
    """Half of a tall room lies below the low hole: there nothing but the formula in series governs."""
    area = hole_area(0.006)
    steps = [(-1.0, 0.0), (-0.5, 1e-3)]
    series = paired_flow(area, area, 0.2, 996.5, AIR_DENSITY)
    seconds = filling_time(steps, [(0.0, area), (0.2, area)], 996.5, AIR_DENSITY)
    assert seconds == pytest.approx(SHARE * 1e-3 / series, rel=0.002)


def test_the_general_time_is_that_of_an_open_tank():
    """Upside down, air enters by a wide top and water leaves by a hole: the tank of the textbooks."""
    count, tank, hole, full = 400, 0.05, 1e-4, 0.8
    steps = [(full * k / count, tank * full * k / count) for k in range(count + 1)]
    seconds = filling_time(steps, [(0.0, 10.0), (full, hole)], 1.2, 1000.0)
    left = full * (1 - SHARE)
    exact = drain_time(tank, hole, full, left, DRILLED) / sqrt(1 - 1.2 / 1000)
    assert seconds == pytest.approx(exact, rel=0.003)


def test_the_general_time_with_a_rising_surface_by_quadrature():
    """Water in at the foot against its own rising surface; the vent is so wide that it costs nothing."""
    area, height, column = hole_area(0.008), 0.3, 2e-4
    count = 400
    steps = [(height * k / count, column * height * k / count) for k in range(count + 1)]
    seconds = filling_time(steps, [(0.0, area), (height, 1.0)], 997.0, 1.18)

    def pace(z):
        return column / (DRILLED * area * sqrt(2 * 9.80665 * (height - z) * (1 - 1.18 / 997.0)))

    assert seconds == pytest.approx(quad(pace, 0, SHARE * height)[0], rel=0.005)


def test_holes_at_one_height_give_no_flow():
    area = hole_area(0.006)
    steps = [(-0.01, 0.0), (0.0, 1e-5), (0.01, 2e-5)]
    assert filling_time(steps, [(0.0, area), (0.0, area)], 997.0, 1.2) == float("inf")


def test_pressure_under_water():
    """Hydrostatics: 10.197 m of water at 4 deg C press with 1 kgf/cm2 (conventional metre of water)."""
    assert pressure(10.0, 1000.0).per_cm2 == pytest.approx(1.0)
    assert pressure(10.0, 1000.0).pascals == pytest.approx(98066.5)


@pytest.mark.parametrize(("depth", "share"), [(3.0, 0.7756), (3.6576, 0.7391)])
def test_air_shrinks_with_depth(depth, share):
    """Boyle's law from 1 atm in fresh water at 27 deg C: 3 m and 12 ft."""
    assert shrunk(depth, 996.5) == pytest.approx(share, abs=0.0005)
