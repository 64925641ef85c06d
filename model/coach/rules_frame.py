"""Findings about the frame: what hangs together, and what can be built."""

from collections import defaultdict
from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding
from model.coach.remedies import frame as remedy
from model.coach.say import WHOLE, say
from model.coach.sentences import length, listed
from model.design import COMPARISON_SLACK
from model.frame.layout import BarPlace, JointPlace
from model.survey import Survey
from model.vectors import Vector, dot, scale, sub

SAME_PLACE = 6
"""Joints whose positions agree to this many digits of a metre lie together."""
NAMES_SHOWN = 3
"""How many joints a sentence names before it says "others"."""
SLIGHT = 1e-6
"""A step of a direction that is nothing but rounding."""
Line = tuple[tuple[int, ...], tuple[int, ...]]


def no_frame(survey: Survey) -> Iterator[Finding]:
    """A design without bars."""
    if not survey.frame.bars:
        yield say("frame.bars-none", "must", "layout", WHOLE)


def loose_ends(survey: Survey) -> Iterator[Finding]:
    """A bar end that meets no other bar and on which the team has put nothing."""
    picked = {joint.id for joint in survey.arrangement.joints if joint.fitting}
    for joint in survey.frame.joints.values():
        if len(joint.arms) == 1 and joint.id not in picked:
            bar = survey.frame.bars[joint.arms[0].bar]
            about = About("joint", joint.id)
            propose = partial(remedy.close_end, survey, joint)
            yield say("frame.end-loose", "must", "layout", about, propose, bar=bar.name, joint=joint.name)


def groups_apart(survey: Survey) -> Iterator[Finding]:
    """A frame that does not hang together."""
    groups = survey.frame.groups
    for group in groups[1:]:
        names = [joint.name for joint in survey.frame.joints.values() if joint.id in group]
        shown = names[:NAMES_SHOWN] + (["others"] if len(names) > NAMES_SHOWN else [])
        yield say(
            "frame.groups-apart",
            "must",
            "layout",
            About("joint", min(group)),
            partial(remedy.drop_group, survey, group),
            count=str(len(groups)),
            joints=listed(shown),
        )


def joints_close(survey: Survey) -> Iterator[Finding]:
    """Two joints too close for their fittings, or in the same place."""
    unit = survey.design.units
    for bar in survey.frame.bars.values():
        a, b = (survey.frame.joints[joint].name for joint in bar.joints)
        about = About("bar", bar.id)
        if bar.spacing < COMPARISON_SLACK:
            yield say("frame.joints-together", "must", "layout", about, a=a, b=b)
        elif bar.exposed < -COMPARISON_SLACK:
            yield say(
                "frame.joints-close",
                "must",
                "layout",
                about,
                partial(remedy.spread_joints, survey, bar),
                a=a,
                b=b,
                spacing=length(bar.spacing, unit),
                least=length(sum(bar.faces), unit),
                short=length(-bar.exposed, unit),
            )


def joints_together(survey: Survey) -> Iterator[Finding]:
    """Two joints in the same place that no bar joins: two of their planes lie together."""
    first: dict[tuple[float, ...], JointPlace] = {}
    joined = {frozenset(bar.joints) for bar in survey.frame.bars.values()}
    for joint in survey.frame.joints.values():
        other = first.setdefault(tuple(round(at, SAME_PLACE) for at in joint.at), joint)
        if other is not joint and {other.id, joint.id} not in joined:
            values = {"a": other.name, "b": joint.name}
            yield say("frame.joints-together", "must", "layout", About("joint", joint.id), **values)


def crooked_bars(survey: Survey) -> Iterator[Finding]:
    """A bar in a direction that no fitting serves."""
    for joint in survey.frame.joints.values():
        for arm in joint.arms:
            bar = survey.frame.bars[arm.bar]
            if arm.to is None and bar.spacing >= COMPARISON_SLACK and bar.joints[0] == joint.id:
                about, propose = About("bar", bar.id), partial(remedy.straighten, survey, bar)
                yield say("frame.bar-crooked", "must", "layout", about, propose, bar=bar.name)


def overlapping_bars(survey: Survey) -> Iterator[Finding]:
    """Two bars that lie in one line and share some of it."""
    lines: dict[Line, list[tuple[float, float, BarPlace]]] = defaultdict(list)
    for bar in survey.frame.bars.values():
        if bar.spacing > 0:
            line, along = _line(bar)
            low, high = sorted((dot(bar.start, along), dot(bar.end, along)))
            lines[line].append((low, high, bar))
    for spans in lines.values():
        spans.sort(key=lambda span: (_cell(span[0]), _cell(span[1])))  # alike in the order of the design
        _, reach, a = spans[0]
        for begin, end, b in spans[1:]:
            if begin < reach - COMPARISON_SLACK:
                yield say("frame.bars-overlap", "must", "layout", About("bar", b.id), a=a.name, b=b.name)
            if end > reach:
                reach, a = end, b


def _line(bar: BarPlace) -> tuple[Line, Vector]:
    """The line that a bar lies in, to a hundredth of a mm, and its direction, the same for all bars in it."""
    along = bar.along
    if next(step for step in along if abs(step) > SLIGHT) < 0:
        along = scale(along, -1)
    foot = sub(bar.start, scale(along, dot(bar.start, along)))
    return (tuple(_cell(step) for step in along), tuple(_cell(place) for place in foot)), along


def _cell(value: float) -> int:
    """A number in hundred-thousandths; the third keeps whole mm and inches off a cell's edge."""
    return round(value * 1e5 + 1 / 3)


def long_bars(survey: Survey) -> Iterator[Finding]:
    """A piece longer than the pipe on sale."""
    unit = survey.design.units
    for bar in survey.frame.bars.values():
        longest = max((stick.length for stick in bar.pipe.sticks), default=None)
        if longest is not None and bar.cut is not None and bar.cut > longest + COMPARISON_SLACK:
            values = {"cut": length(bar.cut, unit), "longest": length(longest, unit), "bar": bar.name}
            propose = partial(remedy.halve, survey, bar)
            yield say("stock.bar-long", "must", "layout", About("bar", bar.id), propose, **values)


def disallowed_materials(survey: Survey) -> Iterator[Finding]:
    """Pipe of a material that the brief does not allow."""
    allowed = survey.design.brief.materials
    folded = {name.casefold() for name in allowed}
    used = {bar.pipe.id: bar.pipe for bar in survey.frame.bars.values()}
    for pipe in used.values() if allowed else ():
        if pipe.material.casefold() not in folded:
            yield say(
                "material.pipe-disallowed",
                "must",
                "stock",
                About("pipe", pipe.id),
                partial(remedy.allowed_pipe, survey, pipe),
                pipe=pipe.name,
                material=pipe.material,
                allowed=listed(list(allowed)),
            )
