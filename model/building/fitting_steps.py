"""Steps with the frame in the hands: foam that goes on first, dry fit, diagonals, holes."""

from collections.abc import Iterable, Iterator

from model.building.cautions import DRILL, KNIFE
from model.building.loops import bars_in_loops
from model.building.step import Step
from model.design import Ballast, Float, Opening
from model.frame.layout import BarPlace
from model.survey import Survey
from model.thrust.mounts import mount_plans
from model.tolerance import rectangles
from model.units import format_length
from model.vectors import add, dot, scale, sub

FOAM_FIRST = "foam-first"
DRY_FIT = "dry-fit"
SIDES = {
    "+x": "bow side",
    "-x": "stern side",
    "+y": "port side",
    "-y": "starboard side",
    "+z": "top",
    "-z": "bottom",
}


def side_words(face: str) -> str:
    """A direction as a side of the vehicle.

    >>> side_words("+z"), side_words("+x-z")
    ('top', 'bow side and bottom')
    """
    return " and ".join(SIDES[face[start : start + 2]] for start in range(0, len(face), 2))


def threaded(survey: Survey) -> tuple[Float | Ballast, ...]:
    """Foam and weights that the pipe runs through."""
    items: tuple[Float | Ballast, ...] = (*survey.arrangement.floats, *survey.arrangement.ballasts)
    return tuple(item for item in items if item.beside is None)


def fitting_steps(survey: Survey) -> Iterator[Step]:
    """From labelled pieces to a squared, drilled frame."""
    first = threaded(survey)
    if first:
        yield _foam_first(survey, first)
    yield from _dry_fits(survey)
    yield from _square(survey)
    yield from _drill(survey)


def _foam_first(survey: Survey, items: Iterable[Float | Ballast]) -> Step:
    loops = bars_in_loops(survey.frame)
    pieces = []
    for item in items:
        bar = survey.frame.bars[item.bar]
        when = "before its loop is closed" if bar.id in loops else "before the fitting on its second end"
        long = f", {_length(item.length, survey)} long" if isinstance(item, Float) else ""
        pieces.append(f"{item.name}{long}: on to {bar.letter} {bar.name}, {when}")
    return Step(
        FOAM_FIRST,
        "Slide on what the pipe runs through, before the frame is closed",
        tuple(pieces),
        "foam knife, cutting board, ruler; a little soapy water",
        KNIFE,
        "Nothing that has no slit is left on the bench when the frames are put together.",
    )


def _dry_fits(survey: Survey) -> Iterator[Step]:
    """Each side frame flat on the table, then the bars between them."""
    sides = {joint.id: joint.side for joint in survey.arrangement.joints}
    planes = sorted(survey.arrangement.sides, key=lambda plane: -survey.frame.planes[plane.id])
    inside: set[str] = set()
    for plane in planes:
        bars = [
            bar for bar in survey.frame.bars.values() if all(sides[joint] == plane.id for joint in bar.joints)
        ]
        if len(bars) < 2:
            continue
        inside |= {bar.id for bar in bars}
        yield _dry_fit(f"{DRY_FIT}-{plane.id}", f"the frame at '{plane.name}', flat on the table", bars)
    rest = [bar for bar in survey.frame.bars.values() if bar.id not in inside]
    if rest:
        yield _dry_fit(f"{DRY_FIT}-rest", "the rest" if inside else "the frame", rest)


def _dry_fit(id: str, what: str, bars: list[BarPlace]) -> Step:
    return Step(
        id,
        f"Push together dry: {what}",
        tuple(f"{bar.letter} {bar.name}" for bar in bars),
        "hands; a rubber mallet and a wood block",
        (),
        "Every pipe is in up to its push-to mark; every fitting points the way the drawing shows.",
    )


def _square(survey: Survey) -> Iterator[Step]:
    found = rectangles(survey.frame, survey.design.brief.thresholds)
    if not found:
        return
    names = {id: joint.name for id, joint in survey.frame.joints.items()}
    limit = survey.design.brief.thresholds.plan_error
    pieces = []
    for shape in found:
        corners = [names[joint] for joint in shape.joints]
        diagonal = (shape.sides[0] ** 2 + shape.sides[1] ** 2) ** 0.5
        pieces.append(
            f"{corners[0]} to {corners[2]} and {corners[1]} to {corners[3]}: "
            f"about {_length(diagonal, survey)} each, centre to centre"
        )
    yield Step(
        "square",
        "Measure both diagonals of every rectangle, and push it square",
        tuple(pieces),
        "tape measure, flat table",
        (),
        f"The two diagonals of a rectangle agree to {_length(limit, survey)}: then it is square.",
    )


def _drill(survey: Survey) -> Iterator[Step]:
    pieces = [
        f"{plan.name}: {_length(hole.diameter, survey)} through {hole.bar_name}, "
        f"{_length(hole.from_end, survey)} from its sawn end at {hole.end}, on the {side_words(hole.face)}"
        for plan in mount_plans(survey.design, survey.arrangement, survey.frame, survey.parts)
        for hole in plan.holes
    ]
    pieces += [_opening(survey, hole) for hole in survey.arrangement.openings]
    if pieces:
        yield Step(
            "drill",
            "Drill the holes, each part clamped",
            tuple(pieces),
            "drill, sharp bits, centre punch, V-block, clamp, scrap wood inside or behind",
            DRILL,
            "Wrap the template round the pipe and tape it; blow out the chips and scrape the rim.",
        )


def _opening(survey: Survey, hole: Opening) -> str:
    bar = survey.frame.bars[hole.bar]
    at = from_sawn_end(bar, hole.at)
    depth = "right through" if hole.through else "one wall only"
    side = side_words(hole.face)
    end = survey.frame.joints[bar.joints[0]].name
    return (
        f"{hole.name}: {_length(hole.diameter, survey)} in {bar.letter} {bar.name}, "
        f"{_length(at, survey)} from its sawn end at {end}, on the {side}, {depth}"
    )


def from_sawn_end(bar: BarPlace, share: float) -> float:
    """How far a place on a bar lies [m] from the sawn end at the joint where the bar starts."""
    return dot(sub(add(bar.start, scale(bar.along, share * bar.spacing)), bar.pipe_ends[0]), bar.along)


def _length(metres: float, survey: Survey) -> str:
    return format_length(metres, survey.design.units)
