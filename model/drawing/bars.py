"""The bars of a view: each place drawn once, by the bar that is nearest to the viewer."""

from collections import defaultdict
from typing import NamedTuple

from model.drawing.projection import MM, Projection
from model.drawing.scene import About, Circle, Label, Mark, Point, Role, Stroke
from model.frame.layout import BarPlace, Frame, JointPlace

Interval = tuple[float, float]
LEAST = 0.5
"""[mm] A piece of a line shorter than this is not drawn."""
END = 1e-6
"""A share of a line that is none."""


class Seen(NamedTuple):
    """Where a joint lies on the sheet, and how near [mm]."""

    at: Point
    depth: float


class Bars(NamedTuple):
    """What the bars of a view come to."""

    strokes: tuple[Stroke, ...]
    circles: tuple[Circle, ...]
    labels: tuple[Label, ...]
    joints: tuple[tuple[Point, About], ...]


def bars_in_view(frame: Frame, view: Projection, marked: About | None = None) -> Bars:
    """The centre lines of the bars, far to near, a letter on each that shows, lone bars end-on as circles.

    Where bars lie behind each other the nearest is drawn, but what is under the cursor comes first.
    """
    seen = {joint.id: Seen(view.point(joint.at), view.depth(joint.at)) for joint in frame.joints.values()}
    level: list[BarPlace] = []
    end_on: list[BarPlace] = []
    for bar in frame.bars.values():
        start, end = bar.joints
        (level if _length((seen[start].at, seen[end].at)) >= LEAST else end_on).append(bar)
    tops = _tops(end_on, seen)
    lines = [_line(bar, seen, tops) for bar in level]
    lines.sort(key=lambda line: (line.about == marked, sum(line.depths)), reverse=True)
    strokes, labels = _uncovered(lines, frame)
    met = {point for line in lines for point in line.points}
    circles = [
        Circle(here.at, bar.pipe.outside_diameter / 2 * MM, "end", ("bar", bar.id), tops[bar.joints[0]])
        for bar in end_on
        if (here := seen[bar.joints[0]]).at not in met
    ]
    joints = [(here.at, ("joint", id)) for id, here in sorted(seen.items(), key=lambda item: item[1].depth)]
    return Bars(tuple(reversed(strokes)), tuple(circles), tuple(labels), tuple(joints))


def joint_marks(frame: Frame, view: Projection, marked: About | None, named: bool) -> tuple[Mark, ...]:
    """The joints that need a mark: those that no fitting fits, the one under the cursor, or all by name.

    Of joints behind each other the nearest has the place, but what is under the cursor comes first.
    """
    picked = marked[1] if marked is not None and marked[0] == "joint" else None
    shown = [joint for joint in frame.joints.values() if named or joint.id == picked or _lacking(joint)]
    marks: dict[Point, Mark] = {}
    for joint in sorted(shown, key=lambda joint: (joint.id == picked, view.depth(joint.at))):
        here = joint.id == picked
        at = view.point(joint.at)
        role: Role = "unfitted" if _lacking(joint) and not here else "joint"
        marks[_rounded(at)] = Mark(at, role, ("joint", joint.id), text=joint.name if here or named else "")
    return tuple(marks.values())


def _lacking(joint: JointPlace) -> bool:
    return joint.match is None and bool(joint.arms)


def _line(bar: BarPlace, seen: dict[str, Seen], tops: dict[str, float]) -> Stroke:
    start, end = bar.joints
    first, last = seen[start], seen[end]
    joins = (tops.get(start, first.depth), tops.get(end, last.depth))
    return Stroke((first.at, last.at), "bar", ("bar", bar.id), (first.depth, last.depth), joins)


def _tops(end_on: list[BarPlace], seen: dict[str, Seen]) -> dict[str, float]:
    """For each joint of a bar that is seen end-on: how near the row of such bars that it belongs to comes."""
    rows: dict[str, list[str]] = {}
    for bar in end_on:
        start, end = (rows.setdefault(joint, [joint]) for joint in bar.joints)
        if start is not end:
            start += end
            rows.update(dict.fromkeys(end, start))
    return {joint: max(seen[other].depth for other in row) for joint, row in rows.items()}


def _uncovered(lines: list[Stroke], frame: Frame) -> tuple[list[Stroke], list[Label]]:
    """The parts of each line that no line before it covers, and a label on the longest part of each."""
    covered: dict[tuple[float, float, float], list[Interval]] = defaultdict(list)
    strokes, labels = [], []
    for line in lines:
        key, span = _carrier(line.points)
        taken = covered[key]
        pieces = [_cut(line, span, piece) for piece in _subtract(span, taken)] if taken else [line]
        taken.append(span)
        if pieces:
            strokes += pieces
            longest = max(pieces, key=_extent) if len(pieces) > 1 else pieces[0]
            labels.append(_letter(longest, frame.bars[line.about[1]].letter if line.about else ""))
    return strokes, labels


def _carrier(points: tuple[Point, Point]) -> tuple[tuple[float, float, float], Interval]:
    """The endless line that carries a segment, as a key, and the span of the segment on it."""
    (u0, v0), (u1, v1) = points
    if abs(u1 - u0) < LEAST:
        return (0.0, 1.0, round(u0, 2)), _ordered(v0, v1)
    slope = (v1 - v0) / (u1 - u0)
    return (1.0, round(slope, 4) + 0.0, round(v0 - slope * u0, 2) + 0.0), _ordered(u0, u1)


def _subtract(span: Interval, taken: list[Interval]) -> list[Interval]:
    """The parts of a span that lie outside some others."""
    pieces = [span]
    for low, high in taken:
        pieces = [
            part
            for start, end in pieces
            for part in ((start, min(end, low)), (max(start, high), end))
            if part[1] - part[0] >= LEAST
        ]
    return pieces


def _cut(line: Stroke, span: Interval, piece: Interval) -> Stroke:
    """The part of a stroke that belongs to a part of its span."""
    if piece == span:
        return line
    (u0, v0), (u1, v1) = line.points
    first = v0 if abs(u1 - u0) < LEAST else u0
    last = v1 if abs(u1 - u0) < LEAST else u1
    shares = sorted((end - first) / (last - first) for end in piece)
    points = [(u0 + (u1 - u0) * share, v0 + (v1 - v0) * share) for share in shares]
    depths = [line.depths[0] + (line.depths[1] - line.depths[0]) * share for share in shares]
    joins = (
        line.joins[0] if shares[0] < END else depths[0],
        line.joins[1] if shares[1] > 1 - END else depths[1],
    )
    return Stroke((points[0], points[1]), line.role, line.about, (depths[0], depths[1]), joins)


def _letter(piece: Stroke, letter: str) -> Label:
    (u0, v0), (u1, v1) = piece.points
    return Label(letter, ((u0 + u1) / 2, (v0 + v1) / 2), "bar", piece.about, piece.points)


def _rounded(point: Point) -> Point:
    return round(point[0], 1), round(point[1], 1)


def _extent(piece: Stroke) -> float:
    return _length(piece.points)


def _length(points: tuple[Point, Point]) -> float:
    (u0, v0), (u1, v1) = points
    across, up = abs(u1 - u0), abs(v1 - v0)
    return across if across > up else up


def _ordered(a: float, b: float) -> Interval:
    return (a, b) if a <= b else (b, a)
