"""Findings about the fittings at the joints."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding
from model.coach.remedies import frame as remedy
from model.coach.remedies.rebuild import rebuild
from model.coach.say import say
from model.coach.sentences import ways_words
from model.frame.layout import JointPlace, ways
from model.survey import Survey


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
    """A socket that no bar uses, said aloud; in a sealed frame it lets water in."""
    for joint in survey.frame.joints.values():
        if joint.match and joint.match.spare:
            about = About("joint", joint.id)
            values = {"fitting": joint.match.fitting.name, "ways": ways_words(list(joint.match.spare))}
            propose = partial(remedy.fewer_sockets, survey, joint)
            yield say("fitting.socket-spare", "tip", "fittings", about, propose, joint=joint.name, **values)
            if survey.arrangement.bores == "sealed":
                yield say("opening.socket-open", "must", "holes", about, propose, joint=joint.name)


def _is_crooked(joint: JointPlace) -> bool:
    return any(arm.to is None for arm in joint.arms)
