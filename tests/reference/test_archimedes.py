"""Buoyancy against textbook cases and tables worked out from densities."""

from math import pi

import pytest

from model.coach.remedies.balance import lift_per_metre
from model.design import Ballast, Design, Float, Foam, Tether
from model.parts import Part
from model.survey import survey
from model.vehicle.fixed import ballast_part, displaced, float_part, tether_part
from model.vehicle.pipework import bar_part
from model.water.balance import balance
from tests import worked

POUND, FOOT, INCH = 0.45359237, 0.3048, 0.0254
FRESH = 998.2
"""[kg/m3] fresh water at 20 deg C."""


def two_bars() -> Design:
    """Two bars of half-inch pipe."""
    return worked.design(
        worked.arrangement((0, 2.0), (0.0, 2.0), (0.0,), [((0, 0, 0), (1, 0, 0)), ((0, 0, 0), (0, 1, 0))])
    )


def a_bar():
    return survey(two_bars()).frame.bars["b0"]


def steel(mass: float, density: float) -> Part:
    return ballast_part(
        Ballast(id="w", name="w", bar="b0", mass=mass, density=density, diameter=1.0), a_bar()
    )


def test_a_steel_ship_turned_into_a_block():
    """College Physics (open textbook), Archimedes' principle, example 1: 1.00e7 kg of steel of 7.8e3 kg/m3.

    It displaces 1.28e3 m3; the water's force is 1.3e7 N and its weight 9.80e7 N, with g = 9.80.
    Here a hundredth of it, since no weight beyond 1000 tonnes is taken.
    """
    block = steel(1.00e5, 7.8e3)
    assert block.volume == pytest.approx(1.28e1, abs=0.05)
    results = balance([block], 1000.0)
    assert results.displaced * results.density * 9.80 == pytest.approx(1.2564e5, rel=1e-4)
    assert results.net == pytest.approx((1.2564e5 - 9.80e5) * 9.80665 / 9.80, rel=1e-4)


def test_the_most_that_the_ship_can_displace():
    """The same example, second part: 1.00e5 m3 of water weigh 9.80e8 N."""
    hull = Part("attachment", "h", "hull", 1.00e7, 1.00e5, (0, 0, 0), (0, 0, 0), ())
    assert balance([hull], 1000.0).spare + 1.00e7 == pytest.approx(9.80e8 / 9.80)


def test_a_coin_is_weighed_in_air_and_in_water():
    """College Physics, Archimedes' principle, density by weighing: 8.630 g and 7.800 g give 10.4 g/cm3."""
    volume = displaced(8.630e-3, 7.800e-3)
    assert volume == pytest.approx(0.830e-6, rel=2e-3)  # the book takes water of 1.000 g/cm3
    assert round(8.630e-3 / volume / 1000, 1) == 10.4


def test_a_floating_body_shows_three_per_cent():
    """College Physics, Archimedes' principle, floating: 60.0 kg, 97.0 % under water, hence 970 kg/m3."""
    body = Part("attachment", "w", "body", 60.0, 60.0 / 970, (0, 0, 0), (0, 0, 0), ())
    assert balance([body], 1000.0).spare_percent == pytest.approx(3.0)


def test_foam_tube_lift():
    """A public boat-building forum works it out: 2.25 in tube, 1/2 in hole, 60 in long, 2 lb/ft3 foam.

    In water of 62 lb/ft3 it lifts 7.87 lbf (printed: 7.8); its volume is 0.1312 ft3.
    """
    cubic = POUND / FOOT**3
    foam = Foam(
        id="f",
        name="f",
        outside_diameter=2.25 * INCH,
        hole=0.5 * INCH,
        density=2 * cubic,
        sold_length=60 * INCH,
    )
    piece = float_part(Float(id="p", name="p", foam="f", bar="b0", length=60 * INCH), a_bar(), foam)
    assert piece.volume / FOOT**3 == pytest.approx(0.1312, abs=1e-4)
    assert balance([piece], 62 * cubic).spare / POUND == pytest.approx(7.87, abs=0.01)
    assert lift_per_metre(foam, 62 * cubic) * 60 * INCH / POUND == pytest.approx(7.87, abs=0.01)


@pytest.mark.parametrize(
    ("outside", "hole", "lift"), [(2.25, 0.5, 2.366), (2.375, 0.75, 2.496), (2.5, 0.75, 2.796), (3, 1, 3.933)]
)
def test_lift_of_a_metre_of_foam_tube(outside: float, hole: float, lift: float):
    """pi/4 (D^2 - d^2) (998.2 - 28), by hand from the sizes on sale (common practice, no source)."""
    foam = Foam(id="f", name="f", outside_diameter=outside * INCH, hole=hole * INCH, sold_length=1.5)
    piece = float_part(Float(id="p", name="p", foam="f", bar="b0", length=1.0), a_bar(), foam)
    assert balance([piece], FRESH).spare == pytest.approx(lift, abs=1e-3)
    assert lift_per_metre(foam, FRESH) == pytest.approx(lift, abs=1e-3)


@pytest.mark.parametrize(
    ("density", "factor"), [(7850, 0.873), (8000, 0.875), (7134, 0.860), (11300, 0.912), (1400, 0.287)]
)
def test_what_a_kilogram_of_ballast_weighs_in_water(density: float, factor: float):
    """1 - rho_water/rho with densities of College Physics' table 11.1 (steel and stainless from memory)."""
    assert -balance([steel(1.0, density)], FRESH).spare == pytest.approx(factor, abs=5e-4)


def test_a_metre_of_half_inch_pipe_flooded_and_sealed():
    """0.840 in outside, average bore 0.602 in (ASTM D1785), 1400 kg/m3: sinks 69.9 g/m, or lifts 113.4."""
    bar = a_bar()
    assert bar.cut is not None
    for sealed, lift in ((False, -69.9e-3), (True, 113.4e-3)):
        part = bar_part(bar, sealed=sealed)
        assert balance([part], FRESH).spare / bar.cut == pytest.approx(lift, abs=2e-4)
    metal = pi / 4 * ((0.84 * INCH) ** 2 - (0.602 * INCH) ** 2)
    assert metal == pytest.approx(173.9e-6, abs=1e-7)
    assert bar_part(bar, sealed=False).mass == pytest.approx(metal * 1400 * bar.cut)


def test_a_tether_with_small_floats():
    """2 m of 60 g/m that weigh 5 g/m in water, and four floats of 10 g lift: 30 g of lift in all."""
    cable = Tether(
        id="c",
        name="c",
        bar="b0",
        diameter=0.008,
        hanging=2.0,
        mass_per_m=0.06,
        mass_in_water_per_m=0.005,
        floats=4,
        float_lift=0.01,
    )
    part = tether_part(cable, a_bar())
    assert part.mass == pytest.approx(0.12)
    assert balance([part], FRESH).spare == pytest.approx(4 * 0.01 - 2 * 0.005)
