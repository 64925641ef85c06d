"""Solving for floats: what is offered floats level, can be cut, and stays out of the way."""

from itertools import product
from math import atan2, degrees, hypot

import pytest

from model.design import Brief, Design, Float
from model.preset_files import read_preset
from model.presets import built_in_folder
from model.review import review
from model.solve.floats import Wish, propose_floats
from model.solve.holes import fewest
from model.survey import survey
from tests import worked

DESIGNS = sorted([*built_in_folder().glob("starters/*.toml"), *built_in_folder().glob("demo/*.toml")])
FOAM_STEP = {"mm": 0.005, "in": 0.25 * 0.0254}


def load(path) -> Design:
    payload = read_preset(path).payload
    assert isinstance(payload, Design)
    return payload


def float_bars(design):
    return tuple(dict.fromkeys(piece.bar for piece in design.arrangement.floats))


def first_foam(design):
    return design.arrangement.floats[0].foam if design.arrangement.floats else design.supplies.foams[0].id


FINE = [path for path in DESIGNS if path.stem != "wide-and-low"]


@pytest.mark.parametrize("path", FINE, ids=[path.stem for path in FINE])
def test_floats_on_the_bars_of_a_preset_give_lift_and_level_trim(path):
    design = load(path)
    wish = Wish(float_bars(design), first_foam(design), beside=design.arrangement.floats[0].beside)
    offer = propose_floats(survey(design), wish)
    after = survey(offer.design).balance
    assert offer.reached, offer.words
    assert 0.010 <= after.spare <= 0.0405
    assert abs(after.pitch) <= 2.0
    assert abs(after.roll) <= 2.0
    assert not review(offer.design).musts
    step = FOAM_STEP[design.units]
    for piece in offer.design.arrangement.floats:
        assert piece.bar in wish.float_bars
        assert piece.length / step == pytest.approx(round(piece.length / step), abs=1e-4)


READY = ("newt", "first-afternoon", "tall-and-steady", "open-fronted-catcher")


@pytest.mark.parametrize("path", [p for p in DESIGNS if p.stem in READY], ids=lambda path: path.stem)
def test_floats_and_holes_worked_out_anew_leave_a_level_vehicle_without_air(path):
    """Bare of floats and holes; then surveyed: lift, trim, and under a millilitre of air in each attitude."""
    design = load(path)
    wish = Wish(float_bars(design), first_foam(design), beside=design.arrangement.floats[0].beside)
    bare = design.arranged(floats=(), openings=())
    floated = propose_floats(survey(bare), wish).design
    drilling = fewest(survey(floated), keep=False)
    assert drilling is not None
    after = survey(drilling.apply(floated))
    assert 0.010 <= after.balance.spare <= 0.0405
    assert max(abs(after.balance.pitch), abs(after.balance.roll)) <= 2.0
    assert len(after.air.attitudes) == 6
    for state in after.air.attitudes:
        assert state.caught.volume + state.caught.closed < 1e-6, state.attitude
        assert state.held >= 0  # what the water's skin may keep is told apart
    assert after.air.tilt.held <= after.air.level.held + 1e-9
    assert not review(after.design).musts


def test_foam_that_is_too_thick_to_level_with_is_said_and_thinner_foam_does():
    design = load(built_in_folder() / "starters" / "wide-and-low.toml")
    thick = propose_floats(survey(design), Wish(float_bars(design), "fat-tube", beside="+z"))
    assert not thick.reached
    assert "thinner foam cuts finer" in thick.words
    top = tuple(bar.id for bar in top_bars(survey(design)))
    thin = propose_floats(survey(design), Wish(top, "slim-tube", beside="+z"))
    assert thin.reached, thin.words


def boxed(**changes):
    return worked.design(worked.box(**changes))


def top_bars(found):
    top = max(bar.start[2] for bar in found.frame.bars.values())
    return [b for b in found.frame.bars.values() if min(b.start[2], b.end[2]) == top]


def fore_and_aft(found):
    return tuple(bar.id for bar in top_bars(found) if abs(bar.along[0]) > 0.9)


def test_no_pair_of_whole_steps_beats_it():
    """Two bars, foam in their middles: every pair of lengths tried, with sums done here."""
    design = boxed()
    found = survey(design)
    bars = [found.frame.bars[name] for name in fore_and_aft(found)]
    foam = design.supplies.foams[0]
    offer = propose_floats(found, Wish(tuple(bar.id for bar in bars), foam.id))
    area = 3.141592653589793 / 4 * (foam.outside_diameter**2 - foam.hole**2)
    water = found.balance.density
    reachable = []
    for steps in product(range(int(bars[0].exposed / 0.005) + 1), repeat=2):
        volumes = [count * 0.005 * area for count in steps]
        spare = found.balance.spare + sum(v * (water - foam.density) for v in volumes)
        mass = found.balance.mass + sum(v * foam.density for v in volumes)
        whole = found.balance.displaced + sum(volumes)
        places = [bar.point(0.5) for bar in bars]
        lever = [
            (
                found.balance.displaced * found.balance.b[k]
                + sum(v * p[k] for v, p in zip(volumes, places, strict=True))
            )
            / whole
            - (
                found.balance.mass * found.balance.g[k]
                + sum(v * foam.density * p[k] for v, p in zip(volumes, places, strict=True))
            )
            / mass
            for k in range(3)
        ]
        tilt = degrees(atan2(hypot(lever[0], lever[1]), lever[2]))
        most = min(0.040, 0.03 * 0.98 * whole * water)
        if 0.010 <= spare <= most and tilt <= 2.0 and lever[2] >= 0.020:
            reachable.append(spare)
    assert not reachable or offer.reached


def test_the_floats_that_there_were_are_replaced():
    old = Float(id="old", name="old", foam="noodle", bar="b0", length=0.05)
    found = survey(boxed(floats=(old,)))
    offer = propose_floats(found, Wish(fore_and_aft(found), "noodle"))
    assert "old" not in {piece.id for piece in offer.design.arrangement.floats}


def test_too_little_foam_is_said():
    found = survey(boxed())
    offer = propose_floats(found, Wish(fore_and_aft(found), "noodle", foam_length=0.02))
    assert not offer.reached
    assert sum(piece.length for piece in offer.design.arrangement.floats) <= 0.02 + 1e-9
    assert "closest" in offer.words


def test_foam_that_sinks_is_said():
    design = boxed()
    heavy = design.supplies.foams[0].but(density=1200.0)
    design = design.but(supplies=design.supplies.but(foams=(heavy,)))
    offer = propose_floats(survey(design), Wish(fore_and_aft(survey(design)), heavy.id))
    assert not offer.reached
    assert offer.words.startswith("This foam is heavier than the water, and sinks")


def test_no_bars_is_said():
    offer = propose_floats(survey(boxed()), Wish((), "noodle"))
    assert not offer.reached
    assert "No bar is named that foam may go on" in offer.words


def test_a_frame_that_floats_already_needs_weights():
    found = survey(boxed(bores="sealed"))
    assert found.balance.spare > 0.1
    offer = propose_floats(found, Wish(fore_and_aft(found), "noodle"))
    assert not offer.reached
    assert "needs weights" in offer.words


def test_weights_are_hung_where_they_are_needed():
    found = survey(boxed(bores="sealed"))
    low = min(bar.start[2] for bar in found.frame.bars.values())
    bottom = tuple(b.id for b in found.frame.bars.values() if max(b.start[2], b.end[2]) == low)
    wish = Wish(fore_and_aft(found), "noodle", weight_bars=bottom, weight=0.02, weights=60)
    offer = propose_floats(found, wish)
    assert offer.reached, offer.words
    assert sum(piece.mass for piece in offer.design.arrangement.ballasts) <= 60 * 0.02 + 1e-9


def test_foam_stays_inside_the_size_limit():
    design = boxed()
    size = survey(design).extents.size
    tight = design.but(brief=Brief(size_limit=size))
    offer = propose_floats(survey(tight), Wish(fore_and_aft(survey(tight)), "noodle"))
    assert not any(offer.after.extents.over)
