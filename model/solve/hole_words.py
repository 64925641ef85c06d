"""Air, holes and tilts in words, for the coach, the page Holes and the pool card."""

from model.design import Opening
from model.solve.holes import Drilling
from model.survey import Survey
from model.units import format_length
from model.vectors import dot, sub
from model.water.air.air import Air
from model.water.air.attitudes import tilt_words
from model.water.air.pockets import Pocket
from model.water.air.sockets import is_cap

NEAR_END = 0.3
"""Nearer to an end of its bar than this share, a pocket is said to be there."""
FACE_WORDS = {"x": ("front", "back"), "y": ("port side", "starboard side"), "z": ("top", "underside")}


def millilitres(volume: float) -> str:
    """A volume [m3] in millilitres.

    >>> millilitres(12.34e-6), millilitres(0.86e-6)
    ('12 ml', '0.9 ml')
    """
    amount = volume * 1e6
    return f"{amount:.0f} ml" if amount >= 9.5 else f"{amount:.1f} ml"


def pocket_words(found: Survey, pocket: Pocket) -> str:
    """Where most of a pocket lies: a bar, and the joint that it is near."""
    most = pocket.stretches[0]
    if not most.bar:
        return f"the empty socket at {found.frame.joints[most.joint].name}"
    bar = found.frame.bars[most.bar]
    share = dot(sub(pocket.at, bar.start), bar.along) / bar.spacing if len(pocket.stretches) == 1 else 0.5
    if NEAR_END <= share <= 1 - NEAR_END:
        more = len({stretch.bar for stretch in pocket.stretches}) - 1
        others = f" and {more} other {'bar' if more == 1 else 'bars'}" if more else ""
        return f"{bar.name}{others}"
    return f"{bar.name} near {found.frame.joints[bar.joints[share > 0.5]].name}"


def face_words(face: str) -> str:
    """The side of a pipe that is drilled.

    >>> face_words("+z"), face_words("+y-z")
    ('top', 'half-way between port side and underside')
    """
    sides = [FACE_WORDS[face[k + 1]][face[k] == "-"] for k in range(0, len(face), 2)]
    return sides[0] if len(sides) == 1 else f"half-way between {sides[0]} and {sides[1]}"


def where_words(found: Survey, hole: Opening) -> str:
    """Where to mark and drill a hole."""
    bar = found.frame.bars[hole.bar]
    end = int(hole.at > 0.5)
    joint = found.frame.joints[bar.joints[end]]
    from_joint = bar.spacing * min(hole.at, 1 - hole.at)
    side = f"{face_words(hole.face)}, {'through both walls' if hole.through else 'one wall'}"
    if from_joint < bar.faces[end] - bar.insertions[end]:
        part = "the cap, beyond the end of the pipe" if is_cap(joint) else "the fitting, on its centre line"
        return f"{side}, in {part}, at {joint.name}"
    from_face = format_length(from_joint - bar.faces[end], found.design.units)
    return f"{side}, {from_face} from the face at {joint.name}"


def drilling_words(found: Survey, drilling: Drilling) -> list[str]:
    """A proposal, a line for each hole and one for what it leaves."""
    lines = [f"{hole.name}: {where_words(found, hole)}" for hole in drilling.openings]
    fewest = "the fewest that do" if drilling.least else "fewer may do"
    count = len(drilling.openings)
    holes = (
        "no new hole is needed" if not count else f"{count} new {'hole' if count == 1 else 'holes'}, {fewest}"
    )
    return [*lines, f"{holes}; at most {millilitres(drilling.most)} of air stay in any attitude"]


def tilt_line(air: Air) -> str | None:
    """A line for the pool card: how to hold it before a start so that most air comes out."""
    tilt = air.tilt
    if tilt is None:
        return None
    upper = (
        f" (up to {millilitres(tilt.held)} more where the skin of the water holds it)"
        if tilt.held > 1e-6
        else ""
    )
    return (
        f"Under water, hold it {tilt_words(tilt.attitude)} until no more bubbles come: "
        f"then {millilitres(tilt.volume)} of air stay{upper}."
    )


def flow_words(seconds: float | None, doing: str) -> str:
    """A time to flood or drain; ``doing`` is "fills" or "drains".

    >>> flow_words(7.4, "fills")
    'fills in about 7 seconds'
    """
    if seconds is None:
        return f"hardly {doing}: its holes all lie at one height, so tilt it"
    return f"{doing} in about {max(1, round(seconds))} {'second' if seconds < 1.5 else 'seconds'}"
