"""What a frame file carries beside its planes: sawn pieces, the box, rulers, pins, hoop and gate."""

import pytest

from model.design import (
    Brief,
    Design,
    DryJoint,
    HeldFittings,
    HeldPipe,
    MeasuredFitting,
    MeasuredPipe,
    OnHand,
    OwnParts,
    Pin,
    Thresholds,
)
from model.errors import FileProblem
from model.files import design_text, parse_design
from tests import worked


def full(unit: str) -> Design:
    """A box with a bit of everything, in mm or inches."""
    run = worked.box(joining="pinned")
    bars = tuple(bar.but(sawn=0.0762 if bar.id == "b8" else None) for bar in run.bars)
    joints = tuple(j.but(joining="cemented" if j.id == "j000" else None) for j in run.joints)
    own = OwnParts(
        pipes=(
            MeasuredPipe(
                pipe="half",
                hub=0.028,
                socket_depth=0.018,
                dry_joint=DryJoint(fitting="tee", first=0.1, second=0.12, overall=0.2635),
            ),
        ),
        fittings=(MeasuredFitting(fitting="corner", face_to_far_side=0.0457),),
    )
    held = OnHand(
        fittings=(HeldFittings(fitting="corner", count=5),),
        pieces=(HeldPipe(pipe="half", length=0.0762, count=8), HeldPipe(pipe="half", length=0.6096)),
        only=True,
    )
    pin = Pin(name="tie", each_end=2, mass=0.0005, density=1140, price=0.02, counts=False)
    limits = Thresholds(cut_error=0.001, insertion_scatter=0.001, hold_least=0.1)
    brief = Brief(hoop=0.5, gate=(0.6, 0.4), thresholds=limits)
    goods = worked.stock(own=own, on_hand=held, pin=pin)
    return worked.design(run.but(bars=bars, joints=joints), stock=goods, brief=brief, units=unit)


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_a_file_gives_back_what_was_saved(unit):
    design = full(unit)
    loaded = parse_design(design_text(design), "full.toml")
    assert loaded.design == design
    assert loaded.warnings == ()


def test_lengths_stand_in_the_unit_of_the_file():
    """3 in of pipe, eight times; a hoop of 500 mm is 19.68503937 in."""
    text = design_text(full("in"))
    assert "sawn = 3\n" in text or "sawn = 3 }" in text
    assert "count = 8" in text
    assert "hoop = 19.68503937" in text


@pytest.mark.parametrize(
    ("found", "instead", "words"),
    [
        ('fitting = "corner", count = 5', 'fitting = "korner", count = 5', "korner"),
        ("count = 5", "count = -5", "count"),
        ("count = 5", "count = 2.5", "count"),
        ('joining = "pinned"', 'joining = "welded"', "welded"),
        ("hoop = 500", "hoop = 0", "hoop"),
        ("gate = [600, 400]", "gate = [600]", "gate"),
    ],
)
def test_what_cannot_be_is_named_with_its_place(found, instead, words):
    text = design_text(full("mm"))
    assert found in text
    with pytest.raises(FileProblem, match=words) as caught:
        parse_design(text.replace(found, instead), "full.toml")
    assert str(caught.value).startswith("full.toml")
    assert "\n" not in str(caught.value)


def test_a_frame_without_any_of_it_stays_as_short_as_it_was():
    text = design_text(worked.design(worked.box()))
    for word in ("sawn", "joining", "on_hand", "own", "hoop", "gate", "pin"):
        assert f"{word} =" not in text
        assert f".{word}]" not in text
