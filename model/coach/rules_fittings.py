"""Findings about the fittings at the joints."""

from collections import Counter
from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding
from model.coach.remedies import frame as remedy
from model.coach.remedies.rebuild import rebuild
from model.coach.say import say
from model.coach.sentences import ways_words
from model.frame.layout import JointPlace, ways
from model.survey import Survey
from model.thrust.mounts import stub_joint
from model.water.air.serving import serving_sockets
from model.water.air.sockets import length_one


def unmatched_joints(survey: Survey) -> Iterator[Finding]:
    """A joint that no fitting of the stock fits, or not the one that the team picked."""
    picks = {joint.id: joint.fitting for joint in survey.arrangement.joints}
    names = {fitting.id: fitting.name for fitting in survey.design.stock.fittings}
    for joint in survey.frame.joints.values():
        pick = picks[joint.id]
        if (
            joint.match
            or ways(joint.arms) is None
            or _is_crooked(joint)
            or (len(joint.arms) == 1 and not pick)
        ):
            continue  # nothing is wrong, or another finding says it
        about = About("joint", joint.id)
        where = ways_words([arm.to for arm in joint.arms if arm.to])
        if pick:
            propose = partial(remedy.clear_pick, survey, joint)
            values = {"fitting": names[pick], "joint": joint.name, "ways": where}
            yield say("fitting.pick-wrong", "must", "fittings", about, propose, **values)
        else:
            propose = partial(rebuild, survey, joint)
            yield say(
                "fitting.joint-unmatched", "must", "fittings", about, propose, joint=joint.name, ways=where
            )


def spare_sockets(survey: Survey) -> Iterator[Finding]:
    """A socket that no bar uses is said aloud, unless it holds a mount or serves as an opening.

    In a sealed frame it lets water in.
    """
    empty = [
        (joint, joint.match) for joint in survey.frame.joints.values() if joint.match and joint.match.spare
    ]
    if not empty:
        return
    serving = serving_sockets(survey.air)
    stubs = _stubs(survey)
    for joint, match in empty:
        idle = [to for to in match.spare if (joint.id, length_one(to)) not in serving]
        about = About("joint", joint.id)
        values = {"fitting": match.fitting.name, "joint": joint.name, "ways": ways_words(idle)}
        propose = partial(remedy.fewer_sockets, survey, joint)
        if len(idle) > stubs[joint.id]:
            yield say("fitting.socket-spare", "tip", "fittings", about, propose, **values)
        if survey.arrangement.bores == "sealed":
            yield say("opening.socket-open", "must", "holes", about, propose, joint=joint.name)


def _stubs(survey: Survey) -> Counter[str | None]:
    """How many stubs that hold thrusters the sockets of each joint take."""
    mounts = {mount.id for mount in survey.design.supplies.mounts if mount.method == "stub"}
    return Counter(
        stub_joint(item, survey.frame.bars[item.bar], survey.frame)
        for item in survey.arrangement.thrusters
        if item.mount in mounts
    )


def _is_crooked(joint: JointPlace) -> bool:
    return any(arm.to is None for arm in joint.arms)
