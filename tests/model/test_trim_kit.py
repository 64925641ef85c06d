"""The trim kit: enough washers and foam for what nobody can know, and on the bill."""

from math import ceil, pi

import pytest

from model.design import Float, Washer
from model.survey import survey
from model.water.trim_kit import trim_kit
from tests import worked


def floated():
    return worked.design(worked.box(floats=(Float(id="f", name="f", foam="noodle", bar="b1", length=0.2),)))


def test_washers_sink_with_0_873_of_their_weight():
    # ballast factor of steel in water of 998.2 kg/m3: 1 - 998.2 / 7850 = 0.873
    design = floated()
    kit = trim_kit(design, design.arrangement, 0.0350, 998.2)
    assert kit.washers == ceil(35 / (10 * 0.873))


def test_foam_lifts_its_volume_less_its_weight():
    design = floated()
    kit = trim_kit(design, design.arrangement, 0.0350, 998.2)
    lift_per_metre = pi / 4 * (0.0635**2 - 0.01905**2) * (998.2 - 28)
    assert kit.foam == "noodle"
    assert kit.foam_length == pytest.approx(0.0350 / lift_per_metre)


def test_a_vehicle_without_foam_needs_washers_alone():
    design = worked.design(worked.box())
    kit = trim_kit(design, design.arrangement, 0.0350, 998.2)
    assert (kit.foam, kit.foam_length) == (None, 0.0)
    assert kit.washers == 5


def test_the_kit_stands_on_the_bill_with_its_price():
    design = floated()
    priced = design.but(supplies=design.supplies.but(washer=Washer(mass=0.005, price=0.25)))
    found = survey(priced)
    (line,) = [line for line in found.bill.lines if line.kind == "washer"]
    assert line.quantity == ceil(found.spread.spare / (0.005 * (1 - found.balance.density / 7850)))
    assert line.total == pytest.approx(line.quantity * 0.25)
