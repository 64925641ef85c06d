"""The fewest holes: against exhaustive search on small frames, and where a hole may be drilled."""

from itertools import combinations

import pytest

from model.design import Brief, Float, Plug, Thruster
from model.solve import holes
from model.solve.hole_places import opposite, spots
from model.solve.hole_search import Answer, Search
from model.solve.hole_words import drilling_words, face_words, where_words
from model.solve.holes import LIMIT, fewest, wanted_attitudes
from model.survey import survey
from model.water.air.attitudes import ATTITUDES
from model.water.air.network import network_of
from model.water.air.pockets import caught
from tests.model.air_designs import random_design
from tests.worked import arrangement, design

LEVEL_AND_TIPPED = ("level", "nose up 30", "port side up 45")


def small(seed, bars, **more):
    """A generated frame with room for holes on its bars, and none drilled."""
    return random_design(seed, bars=bars, holes=0, plugs=0, low=0.12, high=0.2, **more)


def left_with(found, attitudes, chosen):
    """The most that stays in any attitude [m3] with holes drilled at some spots."""
    openings = [spot.opening(f"h{n}", "hole", 0.006) for n, spot in enumerate(chosen)]
    network = network_of(found.frame, openings, found.arrangement.plugs)
    airs = [caught(network, attitude.up) for attitude in attitudes]
    return max(air.volume + air.closed for air in airs)


def least_by_trying(found, most):
    """The fewest spots that clear every attitude, by trying all sets of them; None above ``most``."""
    attitudes, everywhere = wanted_attitudes(found), spots(found)
    for count in range(1, most + 1):
        for chosen in combinations(everywhere, count):
            if all_clear(found, attitudes, chosen):
                return count
    return None


def all_clear(found, attitudes, chosen):
    """Whether less than a millilitre stays; attitudes are tried until one fails."""
    return all(left_with(found, (attitude,), chosen) < LIMIT for attitude in attitudes)


@pytest.mark.parametrize(("seed", "bars"), [(0, 2), (4, 2), (0, 3), (2, 3), (7, 3), (8, 3)])
def test_no_smaller_set_of_holes_would_do(seed, bars):
    brief = Brief(attitudes=LEVEL_AND_TIPPED)
    found = survey(small(seed, bars).but(brief=brief))
    proposal = fewest(found)
    assert proposal is not None
    assert proposal.least
    assert proposal.most < LIMIT
    assert least_by_trying(found, len(proposal.openings) - 1) is None


@pytest.mark.parametrize("seed", range(6))
def test_what_is_proposed_clears_every_attitude_when_surveyed(seed):
    drawn = small(seed, bars=6)
    proposal = fewest(survey(drawn))
    assert proposal is not None
    after = survey(proposal.apply(drawn)).air
    for one in after.attitudes:
        assert one.caught.volume + one.caught.closed == pytest.approx(
            dict(zip(*named(proposal), strict=True))[one.attitude.name], abs=1e-9
        )
    assert after.faults == {}
    if proposal.most < LIMIT:
        assert all(one.caught.volume < LIMIT for one in after.attitudes)
        assert after.water_left.volume < LIMIT


def named(proposal):
    """Names and volumes of the six attitudes of a proposal."""
    after = [(attitude.name, volume) for attitude, volume in proposal.after if attitude in ATTITUDES]
    return [name for name, _ in after], [volume for _, volume in after]


@pytest.mark.parametrize("seed", range(6))
def test_no_hole_of_a_proposal_is_idle(seed):
    """Leave any one out and an attitude is no longer clear."""
    drawn = small(seed, bars=5)
    found = survey(drawn)
    proposal = fewest(found)
    assert proposal is not None
    for spare in proposal.openings:
        kept = tuple(hole for hole in proposal.openings if hole is not spare)
        network = network_of(found.frame, kept)
        airs = [caught(network, attitude.up) for attitude in wanted_attitudes(found)]
        assert max(air.volume + air.closed for air in airs) >= min(LIMIT, proposal.most)


@pytest.mark.parametrize("seed", range(6))
def test_holes_keep_off_sockets_foam_and_mounts(seed):
    drawn = small(seed, bars=6)
    foam, motor = drawn.supplies.foams[0].id, drawn.supplies.motors[0].id
    bars = [bar for bar in survey(drawn).frame.bars.values() if bar.exposed > 0.1]
    floats = tuple(
        Float(id=f"f{n}", name=f"float {n}", bar=bar.id, at=0.5, foam=foam, length=0.05)
        for n, bar in enumerate(bars[:2])
    )
    motors = tuple(
        Thruster(id=f"t{n}", name=f"motor {n}", bar=bar.id, at=0.4, motor=motor)
        for n, bar in enumerate(bars[2:3])
    )
    found = survey(drawn.arranged(floats=floats, thrusters=motors))
    proposal = fewest(found)
    assert proposal is not None
    for hole in (*proposal.openings, *(spot.opening("o", "hole", 0.006) for spot in spots(found))):
        bar = found.frame.bars[hole.bar]
        place = hole.at * bar.spacing
        in_fitting = (
            min(
                place - (bar.faces[0] - bar.insertions[0]),
                bar.spacing - place - (bar.faces[1] - bar.insertions[1]),
            )
            < 0
        )
        clear = min(place - bar.faces[0], bar.spacing - bar.faces[1] - place)
        assert in_fitting or clear >= bar.pipe.outside_diameter - 1e-6
        for piece in floats:
            assert piece.bar != hole.bar or abs(piece.at * bar.spacing - place) > piece.length / 2 + 0.003
        for motor_on in motors:
            assert motor_on.bar != hole.bar or abs(motor_on.at * bar.spacing - place) > 0.015


def test_a_clear_frame_needs_no_hole_and_a_sealed_one_gets_none():
    drawn = small(4, bars=4)
    done = fewest(survey(drawn)).apply(drawn)
    again = fewest(survey(done))
    assert again is not None
    assert again.openings == ()
    assert fewest(survey(drawn.arranged(bores="sealed"))) is None


def test_holes_that_are_there_count_unless_all_are_drilled_anew():
    drawn = small(4, bars=4)
    first = fewest(survey(drawn))
    done = first.apply(drawn)
    anew = fewest(survey(done), keep=False)
    assert len(anew.openings) == len(first.openings)
    assert len(anew.apply(done).arrangement.openings) == len(first.openings)


def test_a_room_that_plugs_close_is_left_alone():
    """The team closed it on purpose: no hole is offered there, and its air does not count."""
    run = arrangement((0.0, 0.4), (0.0,), (0.0,), [((0, 0, 0), (1, 0, 0))])
    plugs = tuple(Plug(id=f"s{n}", name=f"plug {n}", bar="b0", at=at) for n, at in enumerate((0.4, 0.6)))
    drawn = design(run.but(plugs=plugs))
    middle = [hole for hole in fewest(survey(drawn)).openings if 0.4 < hole.at < 0.6]
    assert middle == []


def test_names_and_ids_are_new_and_words_say_where():
    drawn = small(2, bars=5)
    found = survey(drawn)
    proposal = fewest(found)
    assert len({hole.id for hole in proposal.openings}) == len({hole.name for hole in proposal.openings})
    lines = drilling_words(found, proposal)
    assert len(lines) == len(proposal.openings) + 1
    assert "the fewest that do" in lines[-1]
    for hole in proposal.openings:
        assert face_words(hole.face) in where_words(found, hole)


def test_opposite_sides():
    assert opposite("+y-z") == "-y+z"
    assert opposite(opposite("-x")) == "-x"


def test_a_large_frame_gets_holes_at_the_top_of_its_pockets(monkeypatch):
    """As for frames with too many bars to search: all is cleared that the search would clear."""
    drawn = small(6, bars=6)
    best = fewest(survey(drawn))
    monkeypatch.setattr(holes, "MANY_BORES", 1)
    monkeypatch.setattr(holes, "_remembered", holes.Recent(1))
    quick = fewest(survey(drawn))
    assert not quick.least
    assert len(quick.openings) >= len(best.openings)
    assert quick.most <= best.most + 2 * LIMIT


def test_the_search_beats_the_greedy_answer():
    """A set cover of seven places, {1, 2, 6}, {0, 1, 3} and {4, 5, 6}, where the best first needs four."""
    serves = ({1, 2, 6}, {1, 5, 6}, {1, 5, 6}, {0, 1, 4}, {1, 2, 6}, {0, 1, 3}, {4, 5, 6})
    rows = [tuple(0.0 if place in served else 1.0 for place in range(7)) for served in serves]

    def search(proof=lambda holes: True, holes=rows):
        return Search((1.0,) * 7, holes, list, [0.5] * 7, 1, proof)

    assert len(search()._greedy()) == 4
    assert search().best() == Answer((0, 5, 6), True)
    assert len(search(lambda holes: len(holes) != 3).best().holes) == 4
    assert search(holes=rows[:3]).best() is None
