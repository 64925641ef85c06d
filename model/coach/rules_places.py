"""Findings about two things in the same place."""

from collections import defaultdict
from collections.abc import Iterator
from functools import partial

from model.clashes import Clash, Kind, clashes
from model.coach.finding import About, Finding, Severity, Step
from model.coach.remedies import places as remedy
from model.coach.say import say
from model.coach.sentences import length, listed
from model.parts import Part, PartKind
from model.survey import Survey

NAMES_SHOWN = 3
CODES: dict[Kind, tuple[str, Severity]] = {
    "solid": ("place.solids-shared", "must"),
    "foam": ("place.foam-squeezed", "should"),
    "part": ("place.part-shared", "should"),
}
STEPS: dict[PartKind, Step] = {
    "bar": "layout",
    "fitting": "layout",
    "thruster": "thrusters",
    "float": "floats",
    "ballast": "floats",
    "attachment": "gear",
}


def shared_places(survey: Survey) -> Iterator[Finding]:
    """Parts that share room, told once for each part that is fixed on last."""
    limits = survey.design.brief.thresholds
    found: dict[tuple[str, str, str], list[Clash]] = defaultdict(list)
    for clash in clashes(survey.arrangement, survey.frame, survey.parts, limits):
        found[clash.kind, clash.second.kind, clash.second.id].append(clash)
    for shared in found.values():
        part = shared[0].second
        code, severity = CODES[shared[0].kind]
        values = {"a": part.name, "b": listed(_names(shared))}
        if shared[0].kind == "foam":
            values["most"] = length(limits.squeeze_most, survey.design.units)
        propose = partial(remedy.apart, survey, part, tuple(shared))
        yield say(code, severity, STEPS[part.kind], about_part(part), propose, **values)


def about_part(part: Part) -> About:
    """What a finding about a part is about; a fitting is known by its joint."""
    return About("joint" if part.kind == "fitting" else part.kind, part.id)


def _names(shared: list[Clash]) -> list[str]:
    names = [clash.first.name for clash in shared]
    return names[:NAMES_SHOWN] + (["others"] if len(names) > NAMES_SHOWN else [])
