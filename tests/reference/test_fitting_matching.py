"""Fitting matching against a matcher that tries every rotation by numpy (Kabsch's algorithm, 1976)."""

import numpy as np
from hypothesis import HealthCheck, given, settings

from model.design import Design
from model.frame.layout import lay_out
from tests.generators import FULL, SUPPLIES, designs, frame, tidy_designs
from tests.reference.raw_frame import Raw

QUIET = settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))


def shared_direction(arms: list[tuple[str, np.ndarray]]) -> bool:
    """Whether two bars leave a joint the same way, which no fitting can take."""
    return any(np.dot(a, b) > 1 - 1e-9 for n, (_, a) in enumerate(arms) for _, b in arms[:n])


def is_main(to: np.ndarray) -> bool:
    """Whether a direction lies along an axis or at 45 degrees between two."""
    steps = np.sort(np.abs(to))
    return bool(np.allclose(steps, [0, 0, 1]) or np.allclose(steps, [0, 0.5**0.5, 0.5**0.5]))


def compare(design: Design) -> None:
    raw = Raw(design)
    picks = {joint.id: joint.fitting for joint in design.arrangement.joints}
    for joint in lay_out(design, design.arrangement).joints.values():
        arms = raw.arms(joint.id) if not coincident(raw, joint.id) else []
        fits = raw.candidates(joint.id) if arms and all(is_main(to) for _, to in arms) else []
        if shared_direction(arms):
            fits = []
        if picks[joint.id]:
            fits = [fit for fit in fits if fit[0]["id"] == picks[joint.id]]
        if not fits:
            assert joint.match is None
            continue
        fitting, ways = fits[0]
        assert joint.match is not None
        assert joint.match.fitting.id == fitting["id"]
        assert len(joint.match.spare) == len(fitting["sockets"]) - len(arms)
        numbers = {id(socket): k for k, socket in enumerate(joint.match.fitting.sockets)}
        taken = {arm.bar: numbers[id(joint.match.sockets[arm.to])] for arm in joint.arms if arm.to}
        assert tuple(taken[bar] for bar, _ in arms) in ways


def coincident(raw: Raw, joint: str) -> bool:
    ends = [(bar["start"], bar["end"]) for bar in raw.bars.values() if joint in (bar["start"], bar["end"])]
    return any(np.allclose(raw.at[a], raw.at[b]) for a, b in ends)


@QUIET
@given(tidy_designs())
def test_the_fitting_of_each_joint_is_the_one_that_a_search_over_all_rotations_finds(design: Design):
    compare(design)


@QUIET
@given(designs(odd=0))
def test_a_poor_stock_and_a_wrong_pick_give_what_the_search_gives(design: Design):
    compare(design)


def test_a_tee_lies_at_45_degrees_about_its_run_and_a_cap_on_a_sloping_bar():
    """The ridge of a tent: legs slope down to both sides from joints on a ridge pole."""
    planes = ((0.0, 0.2, 0.4), (-0.2, 0.0, 0.2), (0.0, 0.2))
    ridge = [((0, 1, 1), (1, 1, 1)), ((1, 1, 1), (2, 1, 1))]
    legs = [((1, 1, 1), (1, 0, 0)), ((0, 1, 1), (0, 0, 0)), ((0, 1, 1), (0, 2, 0))]
    design = Design(
        title="tent", stock=FULL[0], supplies=SUPPLIES, arrangements=(frame(planes, ridge + legs),)
    )
    shapes = {
        name: joint.match.fitting.shape if joint.match else None
        for name, joint in lay_out(design, design.arrangement).joints.items()
    }
    assert shapes["j1-1-1"] == "tee"
    assert shapes["j0-1-1"] == "corner"
    assert shapes["j0-0-0"] == "cap"
    compare(design)
