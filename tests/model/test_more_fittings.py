"""Fittings that a range lacks, added from the others: dimensions from the TOML of the ranges themselves."""

import tomllib

import pytest

from model.design import edits
from model.errors import EditError
from model.fittings.more import addable
from model.presets import built_in_folder, find_preset, load_preset
from model.review import review
from tests import worked


def tables(name):
    path = built_in_folder() / "stocks" / f"{name}.toml"
    return tomllib.loads(path.read_text(encoding="utf-8"))["stock"]


def raw(name, fitting):
    return next(each for each in tables(name)["fittings"] if each["id"] == fitting)


def stock(name):
    return load_preset(find_preset("stock", name))


def test_a_bag_of_half_inch_plumbing_takes_the_corner_of_another_shop_as_it_is():
    (corner,) = [each for each in addable(stock("half-inch-plumbing")) if each.shape == "corner"]
    theirs = raw("half-inch-furniture", "corner")
    assert (corner.name, corner.price) == (theirs["name"], theirs["price"])
    assert corner.mass == pytest.approx(theirs["mass"] / 1000)
    for socket, its in zip(corner.sockets, theirs["sockets"], strict=True):
        assert socket.to == its["to"]
        assert socket.depth == pytest.approx(its["depth"] * 0.0254)
        assert socket.laying_length == pytest.approx(its["laying_length"] * 0.0254)


def test_for_metric_pipe_it_is_scaled_by_the_width_of_the_pipe_and_says_so():
    goods = stock("metric-25")
    (corner,) = [each for each in addable(goods) if each.shape == "corner"]
    wide = tables("metric-25")["pipes"][0]["outside_diameter"]
    ranges = ("half-inch-furniture", "three-quarter-furniture")
    near = min(ranges, key=lambda n: abs(tables(n)["pipes"][0]["outside_diameter"] * 25.4 - wide))
    theirs = raw(near, "corner")
    ratio = wide / (tables(near)["pipes"][0]["outside_diameter"] * 25.4)
    assert corner.sockets[0].depth * 1000 == pytest.approx(theirs["sockets"][0]["depth"] * 25.4 * ratio)
    assert corner.mass * 1000 == pytest.approx(theirs["mass"] * ratio**2, abs=1e-6)
    assert corner.price == 0
    assert corner.source.startswith("Scaled by the width of the pipe")
    assert {socket.pipe for socket in corner.sockets} == {goods.pipes[0].id}


def test_two_sizes_of_pipe_take_a_reducing_tee_with_the_wide_one_on_its_run():
    goods = stock("half-inch-plumbing")
    wide = stock("three-quarter-plumbing").pipes[0]
    both = goods.but(pipes=(*goods.pipes, wide))
    (tee,) = [each for each in addable(both) if len({socket.pipe for socket in each.sockets}) == 2]
    theirs = raw("two-sizes-plumbing", "reducing-tee")
    assert [socket.pipe for socket in tee.sockets] == [wide.id, wide.id, "half"]
    assert tee.sockets[2].laying_length == pytest.approx(theirs["sockets"][2]["laying_length"] * 0.0254)


@pytest.mark.parametrize(
    "name", ["half-inch-plumbing", "half-inch-furniture", "metric-20", "two-sizes-plumbing"]
)
def test_what_is_added_is_not_offered_again_and_ids_stay_apart(name):
    design = worked.design(worked.box(), stock=stock(name))
    design = design.arranged(bars=(), joints=())
    before = {each.id for each in design.stock.fittings}
    count = len(addable(design.stock))
    assert count
    for left in range(count, 0, -1):
        found = addable(design.stock)
        assert len(found) == left
        design = edits.add_fitting(design, found[0])
    assert addable(design.stock) == ()
    ids = [each.id for each in design.stock.fittings]
    names = [each.name for each in design.stock.fittings]
    assert len(set(ids)) == len(ids)
    assert len(set(names)) == len(names)
    assert before < set(ids)


def test_a_box_of_plumbing_pipe_fits_once_the_corners_of_another_shop_are_in_the_bag():
    design = worked.design(worked.box(), stock=stock("half-inch-plumbing"))
    assert any(finding.code == "fitting.joint-unmatched" for finding in review(design).findings)
    (corner,) = [each for each in addable(design.stock) if each.shape == "corner"]
    after = review(edits.add_fitting(design, corner))
    assert not any(finding.code == "fitting.joint-unmatched" for finding in after.findings)


def test_a_fitting_for_a_pipe_that_is_not_there_is_refused():
    design = worked.design(worked.box())
    odd = design.stock.fittings[0]
    odd = odd.but(sockets=tuple(socket.but(pipe="gone") for socket in odd.sockets))
    with pytest.raises(EditError, match="gone"):
        edits.add_fitting(design, odd)
