"""Where foam and weights are proposed: on pipe that shows and that nothing else needs; and what is proved.

Pieces are filled with points, and no point may lie in another part: of the model only the list of parts
and the faces of the fittings are used, which are checked elsewhere.
"""

from itertools import islice
from math import pi

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from model.design import Attachment, Ballast, Brief, Opening, Tether, TieHole
from model.parts import Cylinder
from model.proved import proved_floats
from model.review import review
from model.solve.floats import Wish, proposals, propose_floats
from model.survey import survey
from tests import worked
from tests.generators import tidy_designs
from tests.model.coach_cases import thruster
from tests.model.mutations import mutations
from tests.model.test_solve_floats import DESIGNS, load

SIDES = {f"{sign}{axis}": int(f"{sign}1") * np.eye(3)[n] for sign in "+-" for n, axis in enumerate("xyz")}
STEEL = 7850.0
HAIR = 0.0006
"""[m] What only touches is let be."""
RINGS = [(r, a) for r in (0.0, 0.5, 1.0) for a in np.linspace(0, 2 * pi, 12, endpoint=False)]


class Stuck:
    """A new piece: where it lies along its bar [m], and points all over it."""

    def __init__(self, found, item, length, diameter, hole=0.0):
        self.item, self.bar = item, found.frame.bars[item.bar]
        start, end = np.array(self.bar.start), np.array(self.bar.end)
        self.spacing = float(np.linalg.norm(end - start))
        along = (end - start) / self.spacing
        middle = item.at * self.spacing
        self.low, self.high = middle - length / 2, middle + length / 2
        pipe = self.bar.pipe.outside_diameter
        radius, aside = diameter / 2, np.zeros(3)
        if item.beside is None:
            radius = (diameter**2 - hole**2 + max(hole, pipe) ** 2) ** 0.5 / 2
        else:
            aside = SIDES[item.beside]
            assert abs(aside @ along) < 0.11, "strapped to a side of its bar, not to an end"
            aside = aside * (pipe / 2 + radius)
        one = np.cross(along, (0, 0, 1) if abs(along[2]) < 0.9 else (1, 0, 0))
        one /= np.linalg.norm(one)
        two = np.cross(along, one)
        reach = (radius - HAIR) * np.array([r * (np.cos(a) * one + np.sin(a) * two) for r, a in RINGS])
        steps = start + aside + np.linspace(self.low + HAIR, self.high - HAIR, 25)[:, None] * along
        self.points = (steps[:, None, :] + reach[None, :, :]).reshape(-1, 3)


def inside(points, solid):
    """Which points lie in a solid."""
    if isinstance(solid, Cylinder):
        start, axis = np.array(solid.start), np.array(solid.end) - np.array(solid.start)
        length = np.linalg.norm(axis)
        if not length:
            return np.zeros(len(points), bool)
        along = (points - start) @ axis / length
        aside = np.linalg.norm(points - start - along[:, None] * axis / length, axis=1)
        return (along > 0) & (along < length) & (aside < solid.radius)
    return (np.abs(points - np.array(solid.centre)) < np.array(solid.size) / 2).all(axis=1)


def new_pieces(before, after):
    """What a proposal brings: each float and each weight that was not there."""
    found, foams = survey(after), {foam.id: foam for foam in after.supplies.foams}
    for item in after.arrangement.floats:
        foam = foams[item.foam]
        yield Stuck(found, item, item.length, foam.outside_diameter, foam.hole)
    for item in after.arrangement.ballasts:
        if item not in before.arrangement.ballasts:
            length = item.mass / STEEL / (pi / 4 * item.diameter**2)
            yield Stuck(found, item, length, item.diameter)


def held_places(design, found):
    """The bar, the place [m] and half the width of what is drilled for a tie, and of the tether's knot."""
    ties = {mount.id for mount in design.supplies.mounts if mount.method == "ties"}
    for item in design.arrangement.thrusters:
        for hole in item.tie_holes if item.mount in ties else ():
            yield item.bar, item.at * found.frame.bars[item.bar].spacing + hole.along, hole.diameter / 2
    tether = design.arrangement.tether
    if tether:
        yield tether.bar, tether.at * found.frame.bars[tether.bar].spacing, tether.diameter / 2


def check(before, after):
    """Every new piece lies on pipe that shows, through nothing, over no hole of its side."""
    found, pieces = survey(after), list(new_pieces(before, after))
    kept = [part for part in found.parts if part.id not in {piece.item.id for piece in pieces}]
    solids = [
        (part, solid)
        for part in kept
        if part.kind in ("bar", "fitting", "thruster", "ballast", "attachment")
        for solid in (part.solids[:1] if part.kind == "thruster" else part.solids)
    ]
    held = list(held_places(before, found))
    for piece in pieces:
        bar, name = piece.bar, piece.item.name
        assert piece.low >= bar.faces[0] - 1e-6, f"{name} sits in a fitting"
        assert piece.high <= piece.spacing - bar.faces[1] + 1e-6, f"{name} sits in a fitting"
        for part, solid in solids:
            if (part.kind, part.id) != ("bar", bar.id):
                assert not inside(piece.points, solid).any(), f"{name} goes through {part.name}"
        for where, at, half in held:
            assert where != bar.id or at + half <= piece.low + 1e-9 or piece.high <= at - half + 1e-9
        for hole in before.arrangement.openings:
            at = hole.at * piece.spacing
            covered = hole.bar == bar.id and piece.low + 1e-9 < at + hole.diameter / 2
            covered &= at - hole.diameter / 2 < piece.high - 1e-9
            assert not covered or (piece.item.beside is not None and piece.item.beside != hole.face), name
    for number, piece in enumerate(pieces):
        for other in pieces[:number]:
            away = [part.solids[0] for part in found.parts if part.id == other.item.id]
            assert not inside(piece.points, away[0]).any(), f"{piece.item.name} meets {other.item.name}"


def harmless(report, wish):
    """What is offered does no harm; what is not offered says why in one sentence."""
    offer = proved_floats(report, wish)
    if offer.design is None:
        assert offer.words.startswith("No proposal")
        assert offer.words.endswith(".")
        return False
    check(report.design, offer.design)
    after = review(offer.design)
    had = {finding.key: finding.severity for finding in report.findings}
    fresh = [f.message for f in after.findings if f.severity == "must" and had.get(f.key) != "must"]
    assert not fresh
    if not any(f.severity == "must" and f.code.startswith("balance.") for f in report.findings):
        assert not [
            f.message for f in after.findings if f.severity == "should" and had.get(f.key, "tip") == "tip"
        ]
    spare = after.survey.balance.spare
    assert spare >= 0 or spare >= report.survey.balance.spare - 1e-6
    return True


@st.composite
def wishes(draw, design):
    """Any bars, any foam, threaded or strapped; washers of any weight."""
    bars = [bar.id for bar in design.arrangement.bars]
    some = st.lists(st.sampled_from(bars), max_size=6, unique=True).map(tuple) if bars else st.just(())
    return Wish(
        draw(some),
        draw(st.sampled_from([foam.id for foam in design.supplies.foams])),
        foam_length=draw(st.sampled_from((None, None, 0.1, 0.4))),
        beside=draw(st.sampled_from((None, "+z", "-y", "+x"))),
        weight_bars=draw(some),
        weight=draw(st.sampled_from((0.005, 0.02, 0.1))),
        weights=draw(st.sampled_from((0, 5, 40))),
    )


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.data())
def test_on_generated_frames_pieces_lie_where_there_is_free_pipe_and_do_no_harm(data):
    design = data.draw(tidy_designs())
    wish = data.draw(wishes(design))
    for proposal in islice(proposals(survey(design), wish), 4):
        check(design, proposal.design)
    harmless(review(design), wish)


@pytest.mark.parametrize("path", DESIGNS, ids=[path.stem for path in DESIGNS])
def test_on_every_starter_and_its_mistakes(path):
    """Every 23rd mistake: foam on all bars, forty washers of 20 g on all bars; most find a proposal."""
    tried = offered = 0
    for _, design in islice(mutations(load(path)), 0, None, 23):
        report, bars = review(design), tuple(bar.id for bar in design.arrangement.bars)
        wish = Wish(bars, design.supplies.foams[0].id, weight_bars=bars, weight=0.02, weights=40)
        check(design, propose_floats(report.survey, wish).design)
        offered += harmless(report, wish)
        tried += 1
    assert tried >= 5
    assert offered >= 0.8 * tried


def test_a_starter_with_floats_of_its_own_is_offered_some():
    for path in DESIGNS:
        design = load(path)
        bars = tuple(dict.fromkeys(piece.bar for piece in design.arrangement.floats))
        first = design.arrangement.floats[0]
        assert harmless(review(design), Wish(bars, first.foam, beside=first.beside)), path.stem


def carried(**items):
    """A sealed box that floats, with a motor on the low bar b0 and two tie holes 40 mm apart."""
    return worked.design(worked.box(bores="sealed", **items))


def hung(design, bars=("b0",), weights=60):
    """What is hung on some bars, as stretches of bar in mm."""
    offer = propose_floats(survey(design), Wish((), "noodle", weight_bars=bars, weight=0.02, weights=weights))
    return [(piece.low * 1e3, piece.high * 1e3) for piece in new_pieces(design, offer.design)]


def test_weights_stay_out_of_fittings_and_off_tie_holes():
    """400 mm of bar, 31.75 mm from centre to face: 368.25 is the end; holes of 6 mm at 180 and 220 mm."""
    bare = hung(carried())
    assert bare
    assert all(low >= 31.75 - 0.01 and high <= 368.25 + 0.01 for low, high in bare)
    holes = tuple(TieHole(along=along, face="+y") for along in (-0.02, 0.02))
    held = hung(carried(thrusters=(thruster(at=0.5, offset=(0, 0.08, 0), tie_holes=holes),)))
    assert held
    assert all(high <= 177.01 or low >= 222.99 for low, high in held)


def test_a_hole_underneath_closes_its_place_and_one_on_top_does_not():
    for face, free in (("-z", False), ("+z", True), ("+y", True)):
        drain = Opening(id="o", name="o", bar="b0", at=0.5, face=face, diameter=0.008)
        over = [high > 196.01 and low < 203.99 for low, high in hung(carried(openings=(drain,)), weights=14)]
        assert any(over) == free, face


@pytest.mark.parametrize(
    "change",
    [
        {"thrusters": (thruster(at=0.5, offset=(0, 0, -0.03), mount=None),)},
        {"ballasts": (Ballast(id="old", name="old", bar="b0", at=0.5, mass=0.3, beside="-z"),)},
        {"attachments": (
            Attachment(id="h", name="hook", bar="b0", at=0.5, offset=(0, 0, -0.03), size=(0.04, 0.02, 0.05),
                       mass=0.01, mass_in_water=0.005),
        )},
        {"tether": Tether(id="c", name="cable", bar="b0", at=0.5, diameter=0.008, mass_per_m=0.06,
                          mass_in_water_per_m=0.005, hanging=1.0)},
    ],
    ids=["motor", "weight", "hook", "tether"],
)  # fmt: skip
def test_nothing_goes_through_what_is_on_the_bar(change):
    """Without it a weight in the middle of the bar is the first that is thought of."""
    assert any(low < 200 < high for low, high in hung(carried()))
    assert not any(low < 200 < high for low, high in hung(carried(**change)))


def test_beside_an_upright_bar_a_weight_hangs_on_its_inner_side():
    design = carried()
    upright = next(bar.id for bar in survey(design).frame.bars.values() if abs(bar.along[2]) > 0.9)
    offer = propose_floats(survey(design), Wish((), "noodle", weight_bars=(upright,), weight=0.02, weights=9))
    (piece,) = new_pieces(design, offer.design)
    inner = piece.points.mean(axis=0) - np.array(piece.bar.point(0.5))
    assert inner @ (np.array(survey(design).balance.g) - np.array(piece.bar.point(0.5))) > 0
    assert np.hypot(*inner[:2]) == pytest.approx((21.336 + 12) / 2000, abs=1e-4)


def test_weights_that_would_make_it_too_high_are_not_proposed():
    """They hang 12 mm under the lowest pipe, whose hubs reach 3.3 mm under it."""
    design = carried()
    size = survey(design).extents.size
    for more, fits in ((0.008, False), (0.012, True)):
        limit = Brief(size_limit=(1.0, 1.0, size[2] + more))
        assert bool(hung(design.but(brief=limit))) == fits


def test_foam_without_a_hole_is_strapped_and_never_threaded():
    design = worked.design(worked.box())
    rod = design.supplies.foams[0].but(hole=0.0)
    design = design.but(supplies=design.supplies.but(foams=(rod,)))
    floats = propose_floats(survey(design), Wish(("b1", "b3"), rod.id)).design.arrangement.floats
    assert floats
    assert all(piece.beside is not None for piece in floats)


def test_a_proposal_that_would_bring_a_new_must_is_refused():
    """Two tubes of foam at 2.00 each where money is left for one: over the spending limit."""
    design = worked.design(worked.box())
    bars = ("b1", "b3")
    foam = design.supplies.foams[0].but(sold_length=0.05, price=2.0)
    design = design.but(supplies=design.supplies.but(foams=(foam,)))
    report = review(design)
    free = proved_floats(report, Wish(bars, foam.id))
    assert free.design is not None
    spent = report.survey.bill.spent
    poor = review(design.but(brief=Brief(spending_limit=spent + 3.0)))
    assert not [finding for finding in poor.findings if finding.code == "money.limit-over"]
    offer = proved_floats(poor, Wish(bars, foam.id))
    assert offer.design is None
    assert offer.words.startswith("No proposal, since the best that there is would bring this: The bill is ")
    assert "over the limit" in offer.words


def test_a_proposal_that_would_sink_more_than_before_is_refused():
    """The demo floats; with 20 mm of foam in all it would sink."""
    design = load(next(path for path in DESIGNS if path.stem == "newt"))
    bars = tuple(dict.fromkeys(piece.bar for piece in design.arrangement.floats))
    first = design.arrangement.floats[0]
    wish = Wish(bars, first.foam, foam_length=0.02, beside=first.beside)
    assert propose_floats(survey(design), wish).after.balance.spare < 0
    offer = proved_floats(review(design), wish)
    assert offer.design is None
    assert offer.words.startswith("No proposal: the foam that there is lifts at most ")


def test_what_sinks_less_than_before_is_offered_and_says_that_it_still_sinks():
    design = worked.design(worked.box())
    offer = proved_floats(review(design), Wish(("b1", "b3"), "noodle", foam_length=0.05))
    assert offer.design is not None
    assert "This comes closest: it sinks with" in offer.words
