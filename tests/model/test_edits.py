"""Edits: what they change, what they leave alone, and the one sentence where they cannot be done."""

import pytest

from model.design import Brief, Supplies, edits
from model.design.edits import Ref
from model.errors import EditError
from tests.model.edits_designs import EMPTY, PIPE, STOCK, SUPPLIES, rectangle

LOW = ("x0", "y0", "z0")
UP = ("x0", "y0", "z1")


def test_a_bar_brings_the_joint_that_is_missing_and_is_called_after_its_planes():
    design = edits.add_bar(rectangle(), LOW, UP)
    joint = edits.joint_at(design.arrangement, UP)
    assert joint is not None
    bar = design.arrangement.bars[-1]
    assert (bar.start, bar.end, bar.name) == ("k0", joint.id, "x-0 y-0 bar")


def test_add_then_remove_gives_back_the_same_design():
    before = rectangle()
    assert edits.remove_bar(edits.add_bar(before, LOW, UP), "b1") == before
    for add, kind, identity in (
        (edits.add_thruster, "thruster", "t1"),
        (edits.add_float, "float", "f1"),
        (edits.add_ballast, "ballast", "w1"),
        (edits.add_attachment, "attachment", "a1"),
        (edits.add_opening, "opening", "o1"),
        (edits.add_tether, "tether", "c1"),
    ):
        assert edits.remove_item(add(before), Ref(kind, identity)) == before
    for kind in edits.PLANE_KINDS:
        added = edits.add_plane(before, kind)
        new = edits.ordered_planes(added, kind)[-1]
        assert edits.remove_plane(added, kind, new.id) == before


def test_a_bar_that_runs_through_a_new_crossing_is_split_and_its_equipment_stays_in_place():
    design = edits.add_plane(rectangle(), "station", at=0.1)
    design = edits.add_float(design, bar="r0")  # rail 0 runs from x = 0 to x = 300 mm
    design = edits.place_along(design, Ref("float", "f1"), 0.25)
    design = edits.add_bar(design, ("x2", "y0", "z0"), ("x2", "y1", "z0"))
    names = [bar.name for bar in design.arrangement.bars]
    assert names == ["rail 0", "rail 4", "rail 1", "rail 2", "rail 5", "rail 3", "station 3 z-0 bar"]
    piece = design.arrangement.floats[0]
    assert piece.bar != "r0"
    assert edits.distance_along(design, Ref("float", "f1")) == pytest.approx(0.25 - 0.1)
    assert edits.bar_length(design, "r0") == pytest.approx(0.1)


@pytest.mark.parametrize(
    ("ends", "words"),
    [
        ((LOW, LOW), "two different crossings"),
        ((LOW, ("x1", "y1", "z0")), "45 degrees only"),
        ((LOW, ("x1", "y1", "z1")), "not all three"),
        ((LOW, ("x1", "y0", "z0")), "'rail 0' already runs there"),
    ],
)
def test_a_bar_that_cannot_be_is_refused(ends, words):
    with pytest.raises(EditError, match=words):
        edits.add_bar(rectangle(), *ends)


def test_a_bar_through_a_joint_is_refused():
    design = edits.add_plane(rectangle(), "station", at=0.6)
    with pytest.raises(EditError, match="run through the joint 'corner 1'"):
        edits.add_bar(design, LOW, ("x2", "y0", "z0"))


def test_removing_a_bar_takes_what_is_fixed_to_it_and_its_lonely_joints():
    design = edits.add_tether(edits.add_thruster(edits.add_bar(rectangle(), LOW, UP), bar="b1"), bar="b1")
    assert {item.name for item in edits.fixed_to(design, "b1")} == {"thruster 1", "tether"}
    assert edits.remove_bar(design, "b1") == rectangle()


def test_removing_a_plane_takes_its_bars_and_joints():
    design = edits.remove_plane(edits.add_float(rectangle(), bar="r1"), "station", "x1")
    assert [bar.id for bar in design.arrangement.bars] == ["r3"]
    assert {joint.id for joint in design.arrangement.joints} == {"k0", "k3"}
    assert design.arrangement.floats == ()


def test_spacing_moves_the_next_plane_and_all_beyond():
    design = edits.add_plane(rectangle(), "station", at=0.7)
    design = edits.set_spacing(design, "station", "x0", 0.2)
    assert [plane.at for plane in edits.ordered_planes(design, "station")] == pytest.approx([0.0, 0.2, 0.6])
    assert edits.spacing_to_next(design, "station", "x1") == pytest.approx(0.4)
    with pytest.raises(EditError, match="more than 0"):
        edits.set_spacing(design, "station", "x0", 0.0)
    with pytest.raises(EditError, match="last station"):
        edits.set_spacing(design, "station", "x2", 0.1)


def test_planes_do_not_share_a_place():
    with pytest.raises(EditError, match="'x-1' is already at 300 mm"):
        edits.move_plane(rectangle(), "station", "x0", 0.3)
    assert edits.move_plane(rectangle(), "station", "x1", 0.3) == rectangle()


def test_a_plane_does_not_carry_a_joint_into_a_bar():
    design = edits.add_plane(rectangle(), "station", at=0.6)
    design = edits.add_bar(design, ("x2", "y0", "z0"), ("x2", "y1", "z0"))
    with pytest.raises(EditError, match="would lie inside the bar 'rail 0'"):
        edits.move_plane(design, "station", "x2", 0.1)
    assert edits.move_plane(design, "station", "x2", -0.1).arrangement.bars == design.arrangement.bars


def test_another_stock_clears_the_choices_that_it_lacks():
    design = edits.set_field(rectangle(), Ref("joint", "k0"), "fitting", "corner")
    design = edits.set_field(design, Ref("joint", "k1"), "fitting", "elbow")
    design = edits.set_field(design, Ref("bar", "r0"), "pipe", "wide")
    smaller = STOCK.but(pipes=(PIPE,), fittings=STOCK.fittings[:2])
    design = edits.use_stock(design, smaller)
    assert [joint.fitting for joint in design.arrangement.joints[:2]] == [None, "elbow"]
    assert design.arrangement.bars[0].pipe is None


def test_supplies_are_added_once_and_never_written_over():
    assert edits.add_supplies(EMPTY, SUPPLIES) == EMPTY
    stronger = SUPPLIES.motors[0].but(name="other motor", thrust_ahead=5.0)
    design = edits.add_supplies(EMPTY, Supplies(motors=(stronger,)))
    assert [motor.name for motor in design.supplies.motors] == ["motor", "other motor"]
    assert len({motor.id for motor in design.supplies.motors}) == 2


def test_what_is_in_use_cannot_be_thrown_away():
    design = edits.add_thruster(rectangle())
    with pytest.raises(EditError, match="'motor' is in use by 'thruster 1'"):
        edits.remove_supply(design, Ref("motor", "m1"))
    with pytest.raises(EditError, match="in use by 'elbow', 'tee', 'corner'"):
        edits.remove_supply(design, Ref("pipe", "half"))
    assert edits.remove_supply(design, Ref("mount", "mt1")).arrangement.thrusters[0].mount is None


def test_sockets_on_the_run_and_branches_are_measured_apart():
    tee = edits.find(EMPTY, Ref("fitting", "tee"))
    assert [edits.on_the_run(tee, socket) for socket in tee.sockets] == [True, True, False]
    design = edits.set_sockets(EMPTY, "tee", ("+y",), laying_length=0.015)
    tee = edits.find(design, Ref("fitting", "tee"))
    assert [socket.laying_length for socket in tee.sockets] == [0.0127, 0.0127, 0.015]


def test_sticks_on_sale():
    design = edits.set_stick(edits.add_stick(EMPTY, "half"), "half", 1, length=1.5, price=2.5)
    assert [(s.length, s.price) for s in design.stock.pipes[0].sticks] == [(3.0, 4.0), (1.5, 2.5)]
    assert edits.remove_stick(design, "half", 1) == EMPTY
    with pytest.raises(EditError, match="not on sale"):
        edits.remove_stick(design, "half", 7)


@pytest.mark.parametrize(
    ("ref", "field", "value", "words"),
    [
        (Ref("pipe", "half"), "bore", 0.0, "bore must be more than 0"),
        (Ref("pipe", "half"), "name", "", "name must not be empty"),
        (Ref("brief"), "spending_limit", -1.0, "must be 0 or more"),
        (Ref("water"), "temperature", 90.0, "must be 40 or less"),
        (Ref("joint", "k0"), "fitting", "nonesuch", "nonesuch"),
        (Ref("bar", "gone"), "name", "x", "not in this design any more"),
        (Ref("tether"), "name", "x", "no tether"),
    ],
)
def test_a_value_that_is_not_allowed_is_one_sentence(ref, field, value, words):
    with pytest.raises(EditError, match=words) as caught:
        edits.set_field(rectangle(), ref, field, value)
    assert "\n" not in str(caught.value)


def test_nothing_to_fix_it_to():
    with pytest.raises(EditError, match="no bar"):
        edits.add_thruster(EMPTY)
    with pytest.raises(EditError, match="no motor"):
        edits.add_thruster(rectangle().but(supplies=Supplies()))
    with pytest.raises(EditError, match="tether already"):
        edits.add_tether(edits.add_tether(rectangle()))


def test_a_copy_has_its_own_id_and_name():
    design = edits.copy_item(edits.add_float(rectangle()), Ref("float", "f1"))
    assert [(piece.id, piece.name) for piece in design.arrangement.floats] == [
        ("f1", "float 1"),
        ("f2", "float 2"),
    ]


def test_nudging_stops_at_the_ends_of_the_bar():
    design = edits.nudge(edits.add_opening(rectangle(), bar="r0"), Ref("opening", "o1"), 0.005)
    assert edits.distance_along(design, Ref("opening", "o1")) == pytest.approx(0.155)
    design = edits.nudge(design, Ref("opening", "o1"), 9.0)
    assert design.arrangement.openings[0].at == 1.0
    with pytest.raises(EditError, match="not on the bar"):
        edits.place_along(design, Ref("opening", "o1"), 0.31)


def test_brief_and_units():
    design = edits.use_brief(edits.use_units(EMPTY, "in"), Brief(title="short swim", spending_limit=50))
    assert (design.units, design.brief.title) == ("in", "short swim")
    assert edits.set_part(
        edits.add_thruster(rectangle()), Ref("thruster", "t1"), "offset", 2, 0.03
    ).arrangement.thrusters[0].offset == (0.0, 0.0, 0.03)


def test_a_record_inside_a_record_of_the_arrangement_is_found_and_set():
    with pytest.raises(EditError, match="no battery"):
        edits.find(rectangle(), Ref("battery"))
    design = edits.set_field(rectangle(), Ref("arrangement"), "power", {"battery": {"volts": 12}})
    design = edits.set_field(design, Ref("battery"), "volts", 9.0)
    assert design.arrangement.power is not None
    assert design.arrangement.power.battery.volts == 9.0
    assert edits.set_field(design, Ref("arrangement"), "power", None) == rectangle()
