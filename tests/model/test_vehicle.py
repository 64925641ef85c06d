"""Parts by hand: where they are, how big, what sticks out."""

from math import pi, sqrt

import pytest

from model.design import Attachment, Ballast, Design, Float, Foam, Motor, Opening, Supplies, Thruster
from model.extents import extents
from model.parts import Block, Box, Cylinder, Part, box_around
from model.survey import survey
from model.vehicle.fixed import stretched
from tests import worked

OD = 0.84 * 0.0254
HUB = 1.1 * 0.0254
"""Half-inch: the outside diameter of pipe and hub [m]."""


def part(design: Design, identity: str, kind: str | None = None) -> Part:
    return next(p for p in survey(design).parts if p.id == identity and kind in (None, p.kind))


def with_item(**items: object) -> Design:
    """A box of 400 x 300 x 200 mm between joint centres; b3 is its top bar to port."""
    return worked.design(worked.box(**items))


def close(found, expected) -> bool:
    return found == pytest.approx(expected, abs=1e-9)


def test_the_box_of_an_upright_and_of_a_sloping_cylinder():
    """A disc reaches r sqrt(1 - u^2) along an axis that its own axis makes a cosine u with."""
    upright = Cylinder((0, 0, 0), (0, 0, 1.0), 0.1).box
    assert close(upright.low, (-0.1, -0.1, 0))
    assert close(upright.high, (0.1, 0.1, 1))
    sloping = Cylinder((0, 0, 0), (1.0, 1.0, 0), 0.1).box
    assert close(sloping.high, (1 + 0.1 * sqrt(0.5), 1 + 0.1 * sqrt(0.5), 0.1))
    assert close(sloping.low, (-0.1 * sqrt(0.5), -0.1 * sqrt(0.5), -0.1))


def test_boxes_add_up_and_nothing_has_none():
    a, b = Block((0, 0, 0), (1, 2, 3)).box, Box((0.4, 0.4, 0.4), (0.6, 0.6, 4))
    both = box_around([a, b])
    assert both is not None
    assert close(both.size, (1.1, 2, 5.5))
    assert close(both.centre, (0.05, 0, 1.25))
    assert box_around([]) is None


def test_a_bare_box_is_as_large_as_its_hubs():
    results = survey(with_item()).extents
    assert close(results.size, (0.4 + HUB, 0.3 + HUB, 0.2 + HUB))


def test_a_thruster_reaches_to_its_nose_and_to_the_propeller_behind():
    """Motor 60 x 30 mm, propeller 50 mm across and 10 mm thick behind it, pushing to port and ahead at 45."""
    item = Thruster(id="t", name="t", bar="b3", at=0.25, motor="motor", offset=(0.01, 0.02, 0.05))
    box = part(with_item(thrusters=(item,)), "t").box
    x, y, z = -0.2 + 0.1 + 0.01, 0.15 + 0.02, 0.1 + 0.05
    assert close(box.low, (x - 0.03 - 0.01, y - 0.025, z - 0.025))
    assert close(box.high, (x + 0.03, y + 0.025, z + 0.025))
    aslant = part(with_item(thrusters=(item.but(to="+x+y"),)), "t").box
    nose = 0.03 * sqrt(0.5)
    assert close(aslant.high[0], x + max(nose + 0.015 * sqrt(0.5), -nose + 0.025 * sqrt(0.5)))


def test_a_mount_hangs_half_way_between_bar_and_motor_and_takes_no_room():
    item = Thruster(id="t", name="port", bar="b3", motor="motor", mount="ties", offset=(0, 0, 0.05))
    mount = part(with_item(thrusters=(item,)), "t", "mount")
    assert close(mount.mass_centre, (0, 0.15, 0.1 + 0.025))
    assert mount.box is None
    assert mount.name == "two ties of port"


def test_foam_threaded_on_a_pipe_is_stretched_and_foam_beside_it_touches_it():
    """Tube 63.5 mm with a hole of 19.05 mm over a 21.336 mm pipe: D^2 - 19.05^2 + 21.336^2, square root."""
    piece = Float(id="f", name="f", foam="noodle", bar="b3", at=0.75, length=0.1)
    wide = sqrt(63.5**2 - 19.05**2 + 21.336**2) / 1000
    box = part(with_item(floats=(piece,)), "f").box
    assert close(box.size, (0.1, wide, wide))
    assert close(box.centre, (0.1, 0.15, 0.1))
    beside = part(with_item(floats=(piece.but(beside="-z"),)), "f")
    assert close(beside.box.size, (0.1, 0.0635, 0.0635))
    assert close(beside.volume_centre, (0.1, 0.15, 0.1 - (OD + 0.0635) / 2))


def test_foam_with_a_wide_hole_is_not_stretched_and_keeps_its_volume_either_way():
    loose = Foam(id="l", name="l", outside_diameter=0.06, hole=0.03, sold_length=1.0)
    assert stretched(loose, OD) == 0.06
    piece = Float(id="f", name="f", foam="noodle", bar="b3", length=0.1)
    volume = pi / 4 * (0.0635**2 - 0.01905**2) * 0.1
    for beside in (None, "+y", "+x+y"):
        found = part(with_item(floats=(piece.but(beside=beside),)), "f")
        assert found.volume == pytest.approx(volume)
        assert found.mass == pytest.approx(28 * volume)


def test_a_rod_of_steel_is_as_long_as_its_mass_asks_and_washers_ring_the_pipe():
    """0.2 kg of steel, 7850 kg/m3, 12 mm rod: 0.2 / 7850 / (pi/4 0.012^2) = 225 mm."""
    rod = Ballast(id="w", name="w", bar="b0", mass=0.2)
    found = part(with_item(ballasts=(rod,)), "w")
    assert close(found.box.size, (0.2 / 7850 / (pi / 4 * 0.012**2), 0.012, 0.012))
    assert found.box.size[0] == pytest.approx(0.225, abs=5e-4)
    assert close(found.mass_centre, (0, -0.15, -0.1 - (OD + 0.012) / 2))
    washers = part(with_item(ballasts=(rod.but(beside=None, diameter=0.04),)), "w")
    assert close(washers.box.size, (0.2 / 7850 / (pi / 4 * (0.04**2 - OD**2)), 0.04, 0.04))
    assert close(washers.mass_centre, (0, -0.15, -0.1))


def test_a_hook_is_an_upright_block_at_its_offset():
    hook = Attachment(
        id="h", name="h", bar="b2", at=1.0, offset=(0.03, 0, -0.02), size=(0.06, 0.01, 0.04),
        mass=0.05, mass_in_water=0.03,
    )  # fmt: skip
    found = part(with_item(attachments=(hook,)), "h")
    assert close(found.box.centre, (0.23, 0.15, -0.12))
    assert close(found.box.size, (0.06, 0.01, 0.04))
    assert found.volume == pytest.approx((0.05 - 0.03) / 998.2)


def test_a_sealed_frame_displaces_its_bores_too_and_weighs_the_same():
    flooded, sealed = survey(with_item()), survey(with_item(bores="sealed"))
    assert sealed.balance.mass == pytest.approx(flooded.balance.mass)
    bores = sum(bar.cut for bar in sealed.frame.bars.values()) * pi / 4 * (0.602 * 0.0254) ** 2
    extra = sealed.balance.displaced - flooded.balance.displaced
    rooms = extra - bores
    corner = 3 * 0.562 * pi / 4 * 0.602**2 - (4 - (2 - sqrt(2))) * 0.301**3 + 3 * 0.188 * pi / 4 * 0.84**2
    assert rooms == pytest.approx(8 * corner * 0.0254**3, rel=1e-6)  # eight corners, 11 ml each


def test_openings_weigh_nothing_and_take_no_room():
    plain = with_item()
    drilled = with_item(openings=(Opening(id="o", name="o", bar="b0"),))
    assert survey(drilled).parts == survey(plain).parts


def test_a_spare_socket_sticks_out_by_its_centre_to_face():
    """A tee whose branch is empty reaches 1.25 in from its centre, whichever way it points."""
    run = worked.arrangement((-0.2, 0.0, 0.2), (0.0,), (0.0,), worked.FLAT[:2])
    results = survey(worked.design(run, stock=worked.stock("tee", "cap"))).extents
    across = sorted(size / 0.0254 for size in results.size[1:])
    assert across == pytest.approx([1.1, 0.55 + 1.25])


def test_a_part_in_the_size_limit_is_not_over_and_a_micron_over_is_no_matter():
    block = Part("attachment", "a", "a", 1, 1, (0, 0, 0), (0, 0, 0), (Block((0, 0, 0), (0.3, 0.3, 0.3)),))
    assert extents([block], (0.3, 0.3, 0.3)).over == (0, 0, 0)
    assert extents([block], (0.3 - 5e-7, 0.3, 0.3)).over == (0, 0, 0)
    assert extents([block], (0.298, 0.3, 0.3)).over == pytest.approx((0.002, 0, 0))
    assert extents([], (0.3, 0.3, 0.3)).size == (0, 0, 0)
    assert extents([block], None).over == (0, 0, 0)


def test_a_part_known_by_its_weight_in_air_and_in_water_floats_where_the_scale_says_so():
    motor = Motor(
        id="motor", name="m", mass=0.05, mass_in_water=-0.02, body_diameter=0.03, body_length=0.06,
        propeller_diameter=0.05, thrust_ahead=1.0,
    )  # fmt: skip
    item = Thruster(id="t", name="t", bar="b3", motor="motor")
    design = worked.design(worked.box(thrusters=(item,)), supplies=Supplies(motors=(motor,)))
    without = worked.design(worked.box())
    a, b = survey(design).balance, survey(without).balance
    assert a.mass - b.mass == pytest.approx(0.05)
    assert a.spare - b.spare == pytest.approx(0.02, rel=0.01)  # a little less in warmer water
