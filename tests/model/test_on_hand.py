"""The box: what it gives, what must be bought, what is left over; counted by hand."""

import pytest

from model.design import HeldFittings, HeldPipe, OnHand, Stick, edits
from model.errors import EditError
from model.survey import survey
from tests import worked


def boxed(*pieces, kerf=0.0, **held):
    """The box of 400 x 300 x 200 mm, cut 4 x 361.9, 4 x 261.9 and 4 x 161.9 mm, with something on hand."""
    on_hand = OnHand(pieces=tuple(HeldPipe(pipe="half", length=a, count=n) for a, n in pieces), **held)
    return worked.design(worked.box(), stock=worked.stock(kerf=kerf, on_hand=on_hand))


def found(design):
    return survey(design).in_box


def test_an_empty_box_gives_nothing():
    box = found(boxed())
    assert sorted(box.to_buy["half"]) == pytest.approx(sorted(4 * [0.3619] + 4 * [0.2619] + 4 * [0.1619]))
    assert [(item.id, item.needed, item.held, item.missing) for item in box.fittings] == [("corner", 8, 0, 8)]
    assert box.short


def test_fittings_in_the_box_are_used_first_and_the_rest_is_bought():
    design = boxed(fittings=(HeldFittings(fitting="corner", count=5), HeldFittings(fitting="tee", count=2)))
    items = {item.id: (item.missing, item.left) for item in found(design).fittings}
    assert items == {"corner": (3, 0), "tee": (0, 2)}
    assert next(line for line in survey(design).bill.lines if line.kind == "fitting").quantity == 3


def test_pieces_that_fit_are_taken_before_longer_ones():
    """Four of 361.9 mm are used whole, and the one of 500 mm gives 261.9 + 161.9."""
    box = found(boxed((0.5, 1), (0.3619, 4)))
    assert [(stick.length, stick.cuts) for stick in box.sticks] == [
        (0.5, pytest.approx((0.2619, 0.1619))),
        *[(0.3619, pytest.approx((0.3619,)))] * 4,
    ]
    assert len(box.to_buy["half"]) == 6


def test_the_saw_eats_between_pieces_but_not_behind_the_last():
    """161.9 + 2 + 161.9 = 325.8 mm: two come out of such a stick, one out of one a little shorter."""
    for stick, pieces in ((0.3258, 2), (0.3257, 1)):
        cube = worked.box(0.2, 0.2, 0.2)
        held = OnHand(pieces=(HeldPipe(pipe="half", length=stick),))
        box = found(worked.design(cube, stock=worked.stock(kerf=0.002, on_hand=held)))
        assert len(box.sticks[0].cuts) == pieces


def test_what_is_left_over():
    """Of eight pieces of 800 mm those that are opened give all cuts, and the others stay as they are."""
    box = found(boxed((0.8, 8)))
    used = sum(cut for stick in box.sticks for cut in stick.cuts)
    rest = sum(stick.rest for stick in box.sticks)
    assert used == pytest.approx(4 * (0.3619 + 0.2619 + 0.1619))
    assert used + rest == pytest.approx(0.8 * len(box.sticks))
    assert box.unused == (("half", 0.8, 8 - len(box.sticks)),)
    assert not any(box.to_buy.values())


def test_only_what_is_bought_costs():
    """3.143 m come out of a stick of 3.2 m at 5.00; with the long cuts held, 1.695 m out of 2 m at 3.00."""
    pipe = worked.pipe(sticks=(Stick(length=3.2, price=5.0), Stick(length=2.0, price=3.0)))
    goods = worked.stock(pipes=(pipe,))
    design = worked.design(worked.box(), stock=goods)
    assert survey(design).bill.spent == 5.0
    held = OnHand(pieces=(HeldPipe(pipe="half", length=0.3619, count=4),))
    assert survey(design.but(stock=goods.but(on_hand=held))).bill.spent == 3.0


def test_a_sawn_piece_of_the_box_goes_to_its_bar():
    design = boxed((0.35, 1))
    bars = tuple(bar.but(sawn=0.35 if bar.id == "b0" else None) for bar in design.arrangement.bars)
    box = found(design.arranged(bars=bars))
    assert [(stick.cuts, stick.rest) for stick in box.sticks] == [((0.35,), 0.0)]


@pytest.mark.parametrize(("units", "inch"), [("mm", 1.0), ("in", 25.4)])
def test_what_is_new_begins_with_a_round_length_in_the_unit_of_the_design(units, inch):
    design = worked.design(worked.box(), units=units)
    design = design.arranged(stations=(), sides=(), levels=(), joints=(), bars=())
    design = edits.add_plane(edits.add_plane(edits.add_held_piece(design), "side"), "side")
    pipe = design.stock.pipes[0].but(sticks=())
    design = edits.add_stick(design.but(stock=design.stock.but(pipes=(pipe,))), pipe.id)
    first, second = edits.ordered_planes(design, "side")
    found = (
        design.stock.on_hand.pieces[0].length,
        second.at - first.at,
        design.stock.pipes[0].sticks[0].length,
    )
    assert [1000 * length / inch for length in found] == pytest.approx(
        [300, 200, 2000] if units == "mm" else [12, 8, 120]
    )


def test_joints_that_no_fitting_fits_and_their_bars_are_not_counted_but_said():
    """Without a corner none of the eight joints has a fitting, and none of the twelve bars a cut."""
    design = boxed((0.8, 2))
    couplings = tuple(each for each in design.stock.fittings if each.shape == "coupling")
    bare = design.but(stock=design.stock.but(fittings=couplings))
    box = found(bare)
    assert (box.joints_open, box.bars_open, box.to_buy["half"]) == (8, 12, ())
    assert (found(design).joints_open, found(design).bars_open) == (0, 0)


def test_the_box_is_edited_by_hand():
    design = edits.set_held(boxed(), "corner", 3)
    design = edits.add_held_piece(design, "half", 0.076)
    design = edits.set_held_piece(design, 0, count=8)
    assert design.stock.on_hand.pieces == (HeldPipe(pipe="half", length=0.076, count=8),)
    assert edits.set_held(design, "corner", 0).stock.on_hand.fittings == ()
    assert edits.remove_held_piece(design, 0).stock.on_hand.pieces == ()
    assert edits.box_is_all(design, True).stock.on_hand.only
    for edit, words in (
        (lambda: edits.set_held(design, "gone", 1), "not in this design"),
        (lambda: edits.set_held(design, "corner", -1), "0 or more"),
        (lambda: edits.set_held_piece(design, 5, count=1), "not in the box"),
        (lambda: edits.add_held_piece(design, "half", -0.1), "more than 0"),
    ):
        with pytest.raises(EditError, match=words):
            edit()
