"""A ruler on the team's own parts: expected values worked out by hand in inches and mm.

A half-inch elbow measures 1.8 in from a face to its far side, a tee 2.5 in from face to face and a hub
1.1 in across (common practice, no source).
"""

import numpy as np
import pytest

from model.design import DryJoint, MeasuredFitting, MeasuredPipe, OwnParts, edits, in_hand, slips
from model.design.readings import readings
from model.errors import EditError
from model.frame.layout import lay_out
from model.presets import find_preset, load_preset, presets
from model.survey import survey
from tests import worked

INCH = worked.INCH


def with_own(design, **own):
    return design.but(stock=design.stock.but(own=OwnParts(**own)))


def box():
    return worked.design(worked.box())


def fitting(stock, name):
    return next(item for item in stock.fittings if item.id == name)


def test_an_elbow_gives_its_centre_to_face_less_half_a_hub():
    """1.9 in to the far side, hub 1.12 in, socket 0.75 in: 1.34 in to the face, 0.59 in to the stop."""
    design = with_own(
        box(),
        pipes=(MeasuredPipe(pipe="half", hub=1.12 * INCH, socket_depth=0.75 * INCH),),
        fittings=(MeasuredFitting(fitting="elbow", face_to_far_side=1.9 * INCH),),
    )
    elbow = fitting(in_hand(design.stock), "elbow")
    assert elbow.hub == pytest.approx(1.12 * INCH)
    for socket in elbow.sockets:
        assert socket.centre_to_face == pytest.approx(1.34 * INCH, abs=1e-9)
        assert socket.laying_length == pytest.approx(0.59 * INCH, abs=1e-9)
        assert socket.depth == pytest.approx(0.75 * INCH)


def test_a_tee_gives_its_run_from_face_to_face_and_its_branch_to_the_far_side():
    design = with_own(
        box(),
        fittings=(MeasuredFitting(fitting="tee", face_to_face=2.6 * INCH, face_to_far_side=1.95 * INCH),),
    )
    faces = {s.to: s.centre_to_face / INCH for s in fitting(in_hand(design.stock), "tee").sockets}
    assert faces == pytest.approx({"+x": 1.3, "-x": 1.3, "+y": 1.4}, abs=1e-6)


def test_a_dry_joint_gives_the_push_in_depth_and_every_cut_follows():
    """Pieces of 100 and 120 mm in a tee of 63.5 mm measure 263.5 mm: 20 mm are inside, 10 mm at each end."""
    joint = DryJoint(fitting="tee", first=0.1, second=0.12, overall=0.2635)
    design = with_own(box(), pipes=(MeasuredPipe(pipe="half", dry_joint=joint),))
    assert in_hand(design.stock).pipes[0].insertion == pytest.approx(0.01)
    before, after = (lay_out(d, d.arrangement).bars["b0"].cut for d in (box(), design))
    assert after - before == pytest.approx(2 * (0.01 - 0.0127))


def test_a_measured_tee_counts_in_the_dry_joint():
    """The same joint in a tee that measures 66.04 mm: 2.54 mm more is inside, 1.27 mm at each end."""
    joint = DryJoint(fitting="tee", first=0.1, second=0.12, overall=0.2635)
    measured = MeasuredFitting(fitting="tee", face_to_face=2.6 * INCH)
    design = with_own(box(), pipes=(MeasuredPipe(pipe="half", dry_joint=joint),), fittings=(measured,))
    assert in_hand(design.stock).pipes[0].insertion == pytest.approx(0.01127)


def plumbing():
    """A box with fittings of half an inch, the 45-degree elbow and the cap among them."""
    return worked.design(worked.box(), stock=load_preset(find_preset("stock", "half-inch-plumbing")))


def rims(face, ways, hub):
    """Points on the rims of hubs that leave a centre along unit vectors in the x-z plane [m]."""
    turns = np.linspace(0, 2 * np.pi, 721)
    for x, z in ways:
        square, aside = np.array([-z, 0, x]), np.array([0, 1, 0])
        ring = hub / 2 * (np.outer(np.cos(turns), square) + np.outer(np.sin(turns), aside))
        yield ring + face * np.array([x, 0, z])


def test_a_45_degree_elbow_gives_its_centre_to_face_from_its_height_on_a_table():
    """Stood on one face its highest point is the rim of the other hub, searched for among points."""
    face, hub, depth = 0.0251, 0.0285, 0.0175
    height = face - np.vstack(list(rims(face, [(1, 0), (-(0.5**0.5), 0.5**0.5)], hub)))[:, 0].min()
    design = with_own(
        plumbing(),
        pipes=(MeasuredPipe(pipe="half", hub=hub, socket_depth=depth),),
        fittings=(MeasuredFitting(fitting="elbow45", face_to_far_side=height),),
    )
    assert height > face + hub / 2 + 0.005, "half a hub is not all that lies behind the centre"
    for socket in fitting(in_hand(design.stock), "elbow45").sockets:
        assert socket.centre_to_face == pytest.approx(face, abs=1e-6)
        assert socket.laying_length == pytest.approx(face - depth, abs=1e-6)


def test_a_cap_gives_its_end_wall_from_its_height_on_a_table():
    """A joint on a cap lies on the outside of its closed end: 24.1 mm high, 17.5 mm deep, 6.6 mm of wall."""
    design = with_own(
        plumbing(),
        pipes=(MeasuredPipe(pipe="half", hub=0.0285, socket_depth=0.0175),),
        fittings=(MeasuredFitting(fitting="cap", face_to_far_side=0.0241),),
    )
    (socket,) = fitting(in_hand(design.stock), "cap").sockets
    assert socket.laying_length == pytest.approx(0.0066, abs=1e-9)


@pytest.mark.parametrize("preset", presets("stock"), ids=lambda preset: preset.name)
def test_every_fitting_of_every_range_can_be_put_under_the_ruler(preset):
    measured = {reading.id for reading in readings(preset.payload) if reading.kind == "fitting"}
    assert measured == {fitting.id for fitting in preset.payload.fittings}


def test_a_depth_measured_alone_leaves_the_face_and_the_cuts_of_dry_joints():
    design = with_own(box(), pipes=(MeasuredPipe(pipe="half", socket_depth=0.02),))
    assert fitting(in_hand(design.stock), "corner").sockets[0].centre_to_face == pytest.approx(1.25 * INCH)
    assert lay_out(design, design.arrangement).bars["b0"].cut == pytest.approx(0.3619)


def test_the_published_values_stay_readable():
    design = with_own(box(), fittings=(MeasuredFitting(fitting="corner", face_to_far_side=0.05),))
    assert fitting(design.stock, "corner") == fitting(box().stock, "corner")
    assert design.stock.origin == box().stock.origin


def test_nothing_measured_is_the_stock_as_it_is():
    stock = box().stock
    assert in_hand(stock) == stock
    assert list(slips(stock)) == []


def dry(fitting, overall, **more):
    """A dry joint of two pieces of 100 mm."""
    joint = DryJoint(fitting=fitting, first=0.1, second=0.1, overall=overall)
    return MeasuredPipe(pipe="half", dry_joint=joint, **more)


WRONG = [
    ({"fittings": (MeasuredFitting(fitting="elbow", face_to_far_side=0.02),)}, "elbow leave less"),
    ({"pipes": (MeasuredPipe(pipe="half", hub=0.02),)}, "wider than the pipe"),
    ({"pipes": (MeasuredPipe(pipe="half", hub=0.05),)}, "half as wide again"),
    ({"pipes": (MeasuredPipe(pipe="half", socket_depth=0.05),)}, "than its socket is deep"),
    (
        {
            "pipes": (
                MeasuredPipe(
                    pipe="half", dry_joint=DryJoint(fitting="tee", first=0.1, second=0.1, overall=0.3)
                ),
            )
        },
        "longer than its pieces",
    ),
    (
        {
            "pipes": (
                MeasuredPipe(
                    pipe="half", dry_joint=DryJoint(fitting="tee", first=0.1, second=0.1, overall=0.21)
                ),
            )
        },
        "pass the stop",
    ),
    (
        {
            "pipes": (
                MeasuredPipe(
                    pipe="half", dry_joint=DryJoint(fitting="elbow", first=0.1, second=0.1, overall=0.2)
                ),
            )
        },
        "no two sockets in one line",
    ),
]


@pytest.mark.parametrize(("own", "words"), WRONG, ids=[words for _, words in WRONG])
def test_a_slip_of_the_ruler_is_named_and_changes_nothing(own, words):
    design = with_own(box(), **own)
    assert any(words in why for _, _, why in slips(design.stock))
    assert survey(design).frame.bars["b0"].cut == pytest.approx(0.3619)
    assert in_hand(design.stock).pipes[0].insertion == pytest.approx(0.0127)


def test_the_edits_refuse_a_slip_and_keep_what_is_right():
    design = edits.measure_pipe(box(), "half", hub=0.0285, socket_depth=0.018)
    design = edits.measure_pipe(
        design, "half", dry_joint=DryJoint(fitting="tee", first=0.1, second=0.1, overall=0.24)
    )
    design = edits.measure_fitting(design, "corner", face_to_far_side=0.047)
    assert design.stock.own.pipes[0].hub == 0.0285
    with pytest.raises(EditError, match="corner leave less"):
        edits.measure_fitting(design, "corner", face_to_far_side=0.02)
    with pytest.raises(EditError, match="wider than the pipe"):
        edits.measure_pipe(design, "half", hub=0.01)
    with pytest.raises(EditError, match="not in this design"):
        edits.measure_fitting(design, "gone", face_to_face=0.06)
    bare = edits.forget_measurements(edits.forget_measurements(design, "pipe", "half"), "fitting", "corner")
    assert bare == box()
    assert edits.measure_fitting(design, "corner", face_to_far_side=None).stock.own.fittings == ()


def test_a_fitting_or_pipe_that_goes_takes_its_measurements_along():
    design = edits.measure_fitting(box(), "tee", face_to_face=0.0635)
    joint = DryJoint(fitting="tee", first=0.1, second=0.1, overall=0.24)
    design = edits.set_held(edits.measure_pipe(design, "half", dry_joint=joint, hub=0.028), "tee", 3)
    after = edits.remove_supply(design, edits.Ref("fitting", "tee"))
    assert after.stock.own.fittings == ()
    assert after.stock.on_hand.fittings == ()
    assert after.stock.own.pipes[0].dry_joint is None
    assert after.stock.own.pipes[0].hub == 0.028


def test_cement_lets_the_pipe_slide_to_the_stop():
    """Socket 17.4752 mm deep, dry 12.7 mm: a cemented bar is 2 x 4.7752 mm longer."""
    run = worked.box()
    dry, glued = (worked.design(run.but(joining=how)) for how in ("dry", "cemented"))
    cuts = [lay_out(d, d.arrangement).bars["b0"].cut for d in (dry, glued)]
    assert cuts[1] - cuts[0] == pytest.approx(2 * 0.0047752)


def test_one_joint_may_be_cemented_alone():
    run = worked.box()
    joints = tuple(j.but(joining="cemented" if j.id == run.bars[0].start else None) for j in run.joints)
    design = worked.design(run.but(joints=joints))
    bar = lay_out(design, design.arrangement).bars["b0"]
    assert bar.insertions == pytest.approx((0.0174752, 0.0127))


def test_pins_weigh_sink_and_cost_what_their_screws_do():
    """24 bar ends with two screws of 1.5 g each: 72 g, 9.114 ml at 7900 kg/m3, 48 x 0.05."""
    run = worked.box()
    pin = worked.stock().pin.but(each_end=2, mass=0.0015, price=0.05, density=7900)
    plain, pinned = (
        survey(worked.design(run.but(joining=how), stock=worked.stock(pin=pin))) for how in ("dry", "pinned")
    )
    assert pinned.balance.mass - plain.balance.mass == pytest.approx(48 * 0.0015)
    assert pinned.balance.displaced - plain.balance.displaced == pytest.approx(0.072 / 7900)
    assert pinned.balance.g == pytest.approx(plain.balance.g, abs=1e-12)
    assert pinned.bill.spent - plain.bill.spent == pytest.approx(2.4)
    assert next(line for line in pinned.bill.lines if line.kind == "pin").quantity == 48
