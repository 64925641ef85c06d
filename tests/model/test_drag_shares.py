"""Which part drags how much: the box by hand, and all parts together against the whole vehicle.

The box of ``tests.worked``: 400 x 300 x 200 mm, 31.75 mm from centre to face, so pipes of 336.5, 236.5 and
136.5 mm show, four of each; pipes reach 12.7 mm into their sockets.
"""

from math import pi

import pytest
from hypothesis import given, settings

from model.explain import quantities
from model.explain_drag import drag_quantities, shares_by_kind
from model.motion.body import body_of
from model.motion.shares import AHEAD, UP, together
from model.survey import survey
from tests import worked
from tests.generators import designs
from tests.model.thrust_cases import cable, port, starboard, swimmer

D, BORE = 0.021336, 0.602 * 0.0254
SHOWN = (0.3365, 0.2365, 0.1365)
CUT = tuple(length + 2 * 0.0127 for length in SHOWN)


def kinds(design):
    """What each kind contributes, and the density of the water."""
    found = survey(design)
    return {share.kind: share for share in shares_by_kind(found)}, found.balance.density


def box(**items):
    """The bare box of twelve pipes."""
    return worked.design(worked.box(**items))


def test_pipes_drag_by_their_length_across_and_their_skin_along():
    """C_D 1.1 on d L across, C_f 0.005 on pi d L along; 1.1 alone where nothing lies along."""
    pipes, density = kinds(box())[0]["bar"], kinds(box())[1]
    for facing, along in ((pipes.ahead, 0), (pipes.up, 2)):
        across = 4 * (sum(SHOWN) - SHOWN[along])
        k = density / 2 * D * (1.1 * across + 0.005 * pi * 4 * SHOWN[along])
        assert facing.k == pytest.approx(k)
        assert facing.area == pytest.approx(D * across)
        assert facing.coefficient == pytest.approx(k / (density / 2 * D * across))
        assert 1.1 < facing.coefficient < 1.13
    assert pipes.count == 12


def test_the_spread_is_that_of_the_coefficients():
    """Pipes: 0.75 to 1.1 times; at 0.5 m/s a quarter of k."""
    drag = kinds(box())[0]["bar"].ahead
    assert drag.drag(0.5).value == pytest.approx(drag.k / 4)
    assert drag.drag(0.5).low == pytest.approx(0.75 * drag.k / 4)
    assert drag.drag(0.5).high == pytest.approx(1.1 * drag.k / 4)


def test_pipes_move_water_along_across_and_hold_water_inside():
    """The water that a pipe displaces, moved across only; and its bore from sawn end to sawn end."""
    made, density = kinds(box())
    pipes = made["bar"]
    for added, along in ((pipes.added.xx, 0), (pipes.added.yy, 1), (pipes.added.zz, 2)):
        assert added == pytest.approx(density * pi / 4 * D**2 * 4 * (sum(SHOWN) - SHOWN[along]))
    assert pipes.inside == pytest.approx(density * pi / 4 * BORE**2 * 4 * sum(CUT))
    sealed = kinds(box(bores="sealed"))[0]
    assert all(share.inside == 0 for share in sealed.values())


def test_a_motor_and_a_tether_stand_beside_the_frame():
    """Body of 30 x 60 mm along the flow: C_D 0.85 and 0.005 x 4 x 2 of skin, on its end.

    1.5 m of tether of 8 mm: C_D 1.2 across; ahead it shows 120 cm2, from above nothing.
    """
    made, density = kinds(swimmer(port(), starboard(), tether=cable()))
    motors, tether = made["thruster"], made["tether"]
    assert motors.count == 2
    assert motors.ahead.coefficient == pytest.approx(0.85 + 0.005 * 4 * 2)
    assert motors.ahead.area == pytest.approx(2 * pi * 0.015**2)
    assert tether.ahead.k == pytest.approx(density / 2 * 1.2 * 0.008 * 1.5)
    assert tether.ahead.area == pytest.approx(0.012)
    assert tether.up.coefficient is None
    assert tether.added.xx == pytest.approx(density * pi / 4 * 0.008**2 * 1.5)
    assert tether.added.zz == 0


@settings(max_examples=30, deadline=None)
@given(designs())
def test_all_parts_together_are_the_vehicle(design):
    """Drag by group, added mass and water, of any design, are those that its motion is worked out with."""
    found = survey(design)
    shares = found.shares
    body = body_of(found.arrangement, found.frame, found.parts, found.balance, found.drives)
    if not shares:
        assert sum(body.resistances(AHEAD)) == 0
        return
    whole = together("all", "all", shares)
    assert whole.ahead.groups == pytest.approx(body.resistances(AHEAD))
    assert whole.up.groups == pytest.approx(body.resistances(UP))
    for axis in ("xx", "yy", "zz", "xy", "xz", "yz"):
        assert getattr(whole.added, axis) == pytest.approx(getattr(body.added, axis), abs=1e-9)
    assert whole.inside == pytest.approx(body.carried - found.balance.mass, abs=1e-9)
    by_kind = together("all", "all", shares_by_kind(found))
    assert (by_kind.count, by_kind.ahead.k) == (whole.count, pytest.approx(whole.ahead.k))


def test_where_the_drag_comes_from_names_every_kind_with_its_source():
    told = {one.name: one for one in drag_quantities(survey(swimmer(port(), starboard(), tether=cable())))}
    drag = told["drag ahead at 0.5 m/s"]
    assert {name for name, _ in drag.inputs} == {
        "pipes", "fittings", "motors", "floats", "weights", "tether"
    }  # fmt: skip
    shares = [int(text.split("%")[0]) for _, text in drag.inputs]
    assert sum(shares) == pytest.approx(100, abs=3)
    assert all(one.formula and one.source and one.spread for one in told.values())
    assert "water inside the pipes" in told
    assert "water inside the pipes" not in {one.name for one in drag_quantities(survey(box(bores="sealed")))}
    assert set(told) <= {one.name for one in quantities(survey(swimmer(port(), starboard(), tether=cable())))}
    bare = survey(worked.design(worked.box().but(joints=(), bars=())))
    assert list(drag_quantities(bare)) == []
