"""Two arrangements of one design, for two runs: what differs, and whether the frame is of the same pieces."""

from collections import Counter
from collections.abc import Mapping

from msgspec import Struct

from model.design import Arrangement, Design, equipment
from model.frame.layout import Frame, lay_out
from model.units import format_length


class Difference(Struct, frozen=True):
    """How another arrangement differs from the first, in counted words.

    Attributes:
        more, less: pieces of frame that the other needs more or fewer of.
        added, gone, moved: equipment by name.
    """

    name: str
    more: tuple[str, ...]
    less: tuple[str, ...]
    added: tuple[str, ...]
    gone: tuple[str, ...]
    moved: tuple[str, ...]

    @property
    def same_frame(self) -> bool:
        """Whether both are built of the same pieces of frame."""
        return not self.more and not self.less


def differences(design: Design) -> tuple[Difference, ...]:
    """Each further arrangement against the first."""
    first = design.arrangement
    pieces = _pieces(design, lay_out(design, first))
    return tuple(
        _difference(first, other, pieces, _pieces(design, lay_out(design, other)))
        for other in design.arrangements[1:]
    )


def _pieces(design: Design, frame: Frame) -> Mapping[str, int]:
    """Fittings and pieces of pipe, counted; pipes that are cut alike to 0.1 mm are the same piece."""
    found: Counter[str] = Counter()
    for joint in frame.joints.values():
        if joint.match:
            found[joint.match.fitting.name] += 1
    for bar in frame.bars.values():
        if bar.cut is not None:
            found[f"{bar.pipe.name} cut to {format_length(round(bar.cut, 4), design.units)}"] += 1
    return found


def _difference(
    first: Arrangement, other: Arrangement, pieces: Mapping[str, int], others: Mapping[str, int]
) -> Difference:
    here = {item.name: item for item in equipment(first)}
    there = {item.name: item for item in equipment(other)}
    bars = [{bar.id: bar.name for bar in run.bars} for run in (first, other)]
    moved = [
        name
        for name, item in there.items()
        if name in here and (bars[0][here[name].bar], here[name].at) != (bars[1][item.bar], item.at)
    ]
    return Difference(
        name=other.name,
        more=_counted(Counter(others) - Counter(pieces)),
        less=_counted(Counter(pieces) - Counter(others)),
        added=tuple(name for name in there if name not in here),
        gone=tuple(name for name in here if name not in there),
        moved=tuple(moved),
    )


def _counted(pieces: Mapping[str, int]) -> tuple[str, ...]:
    return tuple(f"{count} {name}" for name, count in pieces.items())


def difference_lines(found: Difference) -> tuple[str, ...]:
    """A difference in words, a line for each kind."""
    groups = (
        ("more pieces of frame", found.more),
        ("fewer pieces of frame", found.less),
        ("added", found.added),
        ("left out", found.gone),
        ("in another place", found.moved),
    )
    lines = [f"{words}: {', '.join(items)}" for words, items in groups if items]
    frame = "the same pieces of frame" if found.same_frame else "not the same pieces of frame"
    return (f"{found.name}: {frame}", *lines)
