"""Another range of pipe: what the team measured and counted of its own parts goes along where it fits."""

import pytest

from model.design import DryJoint, edits
from model.presets import find_preset, load_preset


def range_of(name):
    return load_preset(find_preset("stock", name))


def measured():
    """A furniture range of half-inch pipe, measured and counted in part."""
    design = edits.use_stock(
        load_preset(find_preset("starter", "first-afternoon")), range_of("half-inch-furniture")
    )
    design = edits.measure_pipe(design, "half", hub=0.0268, socket_depth=0.0176)
    design = edits.measure_pipe(
        design, "half", dry_joint=DryJoint(fitting="tee", first=0.1, second=0.1, overall=0.2296)
    )
    design = edits.measure_fitting(design, "tee", face_to_face=0.058)
    design = edits.measure_fitting(design, "corner", face_to_far_side=0.042)
    design = edits.set_held(design, "elbow", 3)
    design = edits.set_held(design, "five", 2)
    return edits.add_held_piece(design, "half", 0.4)


def test_what_fits_goes_along_and_what_does_not_is_named():
    before, plumbing = measured(), range_of("half-inch-plumbing")
    after = edits.use_stock(before, plumbing).stock
    assert after.own.pipes == before.stock.own.pipes
    assert [(item.fitting, item.face_to_face) for item in after.own.fittings] == [("tee", 0.058)]
    assert [(item.fitting, item.count) for item in after.on_hand.fittings] == [("elbow", 3)]
    assert [(item.pipe, item.length) for item in after.on_hand.pieces] == [("half", 0.4)]
    assert edits.left_behind(before.stock, plumbing) == ("three-way corner", "five-way")


def test_pipe_of_another_size_takes_nothing_along():
    before, cpvc = measured(), range_of("half-inch-cpvc")
    after = edits.use_stock(before, cpvc).stock
    assert after == cpvc
    names = {"half-inch pipe", "tee", "three-way corner", "elbow", "five-way"}
    assert set(edits.left_behind(before.stock, cpvc)) == names


def test_a_dry_joint_is_named_where_its_fitting_is_not_there():
    before = measured()
    no_tee = range_of("half-inch-plumbing")
    no_tee = no_tee.but(fittings=tuple(each for each in no_tee.fittings if each.id != "tee"))
    after = edits.use_stock(before, no_tee).stock
    assert after.own.pipes[0].hub == 0.0268
    assert after.own.pipes[0].dry_joint is None
    assert "the dry joint in tee" in edits.left_behind(before.stock, no_tee)


@pytest.mark.parametrize(
    "name", ["half-inch-furniture", "half-inch-plumbing", "two-sizes-plumbing", "metric-20"]
)
def test_there_and_back_loses_only_what_was_named(name):
    before = measured()
    there = edits.use_stock(before, range_of(name))
    back = edits.use_stock(there, range_of("half-inch-furniture"))
    lost = edits.left_behind(before.stock, range_of(name))
    assert (back.stock.own == before.stock.own) == (not lost)
    assert edits.use_stock(back, range_of("half-inch-furniture")) == back, "the same again changes nothing"
