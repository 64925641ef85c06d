"""Where the numbers of the frame come from: build errors, areas, the hoop, the team's own parts."""

from collections.abc import Iterator

from model.design import DryJoint, MeasuredPipe, Pipe, in_hand
from model.hoop import smallest_gate, smallest_hoop
from model.quantity import Quantity
from model.silhouette import silhouettes
from model.survey import Survey
from model.tolerance import SizeError, chance_over, rectangles, size_errors
from model.units import format_length

SIZES = ("length", "width", "height")
BARS_SHOWN = 4
CM2 = 1e4
STACK = "tolerance stacking, worst case and root-sum-square (common practice)"
THREE = "the errors are taken as three standard deviations of normal ones; measure ten cuts of your own"
VIEWS = (("front", "head on"), ("side", "side on"), ("top", "from above"))


def frame_quantities(survey: Survey) -> tuple[Quantity, ...]:
    """Numbers about the frame that take a moment to work out; for when they are asked for."""
    if not survey.parts:
        return ()
    return (*_errors(survey), *_diagonals(survey), *_areas(survey), *_passage(survey), *_own(survey))


def _errors(survey: Survey) -> Iterator[Quantity]:
    limits = survey.design.brief.thresholds
    found = size_errors(survey.arrangement, survey.frame, survey.parts, survey.extents, limits)
    for error in found:
        if error.bars:
            yield _error(error, survey)
    chance = chance_over(found)
    if chance is not None and survey.extents.limit is not None:
        rooms = zip(SIZES, survey.extents.limit, survey.extents.size, strict=True)
        yield Quantity(
            "chance that the size limit is broken",
            f"{100 * chance:.1f} %",
            "for each size the chance that its error is more than its room, taken together",
            tuple((f"room in the {name}", _signed(most - size, survey)) for name, most, size in rooms),
            "the normal distribution; " + STACK,
            THREE,
        )


def _error(error: SizeError, survey: Survey) -> Quantity:
    limits, unit = survey.design.brief.thresholds, survey.design.units
    names = [survey.frame.bars[bar].name for bar in error.bars]
    shown = ", ".join(names[:BARS_SHOWN]) + (" and more" if len(names) > BARS_SHOWN else "")
    rss, worst = format_length(error.errors.rss, unit), format_length(error.errors.worst, unit)
    return Quantity(
        f"error of the {SIZES[error.axis]}",
        f"{rss} either way, {worst} at worst",
        "for bars in a row: cut errors and twice the push-in scatter of each; squares added, or all at worst",
        (
            ("bars in a row", shown),
            ("cut error", format_length(limits.cut_error, unit)),
            ("push-in scatter of a dry end", format_length(limits.insertion_scatter, unit)),
        ),
        STACK,
        THREE,
    )


def _signed(room: float, survey: Survey) -> str:
    text = format_length(abs(room), survey.design.units)
    return text if room >= 0 else f"{text} too little"


def _diagonals(survey: Survey) -> Iterator[Quantity]:
    unit = survey.design.units
    found = rectangles(survey.frame, survey.design.brief.thresholds)
    worst = max(found, key=lambda shape: shape.diagonals.rss, default=None)
    if worst is None:
        return
    corners = " - ".join(survey.frame.joints[joint].name for joint in worst.joints)
    yield Quantity(
        "difference of the diagonals, at most",
        f"{format_length(worst.diagonals.rss, unit)}, {format_length(worst.diagonals.worst, unit)} at worst",
        "each side times how far opposite sides may differ, added, divided by the diagonal",
        (
            ("rectangle", corners),
            ("sides", " x ".join(format_length(side, unit) for side in worst.sides)),
        ),
        "geometry, to first order; " + STACK,
        "measure both diagonals of the dry frame: equal means square",
    )


def _areas(survey: Survey) -> Iterator[Quantity]:
    areas = silhouettes(survey.parts)
    for view, words in VIEWS:
        yield Quantity(
            f"area {words}",
            f"{getattr(areas, view) * CM2:.0f} cm2",
            "what pipes, fittings, thrusters, floats and gear cover together, each spot once",
            (("parts seen", str(sum(bool(part.solids) for part in survey.parts))),),
            "geometry",
            "the tether and ties are left out; an attachment counts as its box",
        )


def _passage(survey: Survey) -> Iterator[Quantity]:
    hoop, gate = smallest_hoop(survey.parts), smallest_gate(survey.parts)
    brief, unit = survey.design.brief, survey.design.units
    if hoop is not None:
        limit = format_length(brief.hoop, unit) if brief.hoop else "none"
        yield Quantity(
            "smallest hoop",
            format_length(hoop.diameter, unit),
            "the smallest circle round everything that is seen from ahead, driven straight through",
            (("hoop of the brief", limit),),
            "smallest enclosing circle: Welzl 1991",
            "leave some room for steering",
        )
    if gate is not None:
        limit = " x ".join(format_length(side, unit) for side in brief.gate) if brief.gate else "none"
        yield Quantity(
            "smallest gate",
            " x ".join(format_length(side, unit) for side in gate),
            "width and height of everything that is seen from ahead",
            (("gate of the brief", limit),),
            "geometry",
            "leave some room for steering",
        )


def _own(survey: Survey) -> Iterator[Quantity]:
    stock = in_hand(survey.design.stock)
    pipes = {pipe.id: pipe for pipe in stock.pipes}
    for measured in survey.design.stock.own.pipes:
        if measured.dry_joint:
            yield _push_in(survey, measured, measured.dry_joint, pipes[measured.pipe])


def _push_in(survey: Survey, measured: MeasuredPipe, joint: DryJoint, pipe: Pipe) -> Quantity:
    unit, stock = survey.design.units, survey.design.stock
    published = next(item for item in stock.pipes if item.id == measured.pipe)
    name = next(item.name for item in stock.fittings if item.id == joint.fitting)
    return Quantity(
        f"push-in depth of {pipe.name}",
        format_length(pipe.insertion, unit),
        "face to face of the fitting and both pieces, less the whole, divided by two",
        (
            ("fitting", name),
            ("pieces", f"{format_length(joint.first, unit)} and {format_length(joint.second, unit)}"),
            ("the whole", format_length(joint.overall, unit)),
            ("in the stock as published", format_length(published.insertion, unit)),
        ),
        "your own ruler",
        "one joint: measure a few, they differ by millimetres",
    )
