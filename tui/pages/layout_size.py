"""The section Size: outside size, centres and cuts beside each other; change any one, the others follow."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from model.design import edits
from model.design.edits import PLANE_KINDS, Ref
from model.sizing import AxisSize, PlanePair, axis_sizes, set_cut, set_outside, set_spacing_between
from model.vectors import AXES
from tui.forms.entry import Entry
from tui.forms.items import Column, Row
from tui.forms.kinds import DERIVED_LENGTH
from tui.forms.listing import Listing
from tui.pages.words import bare, shown, sizes

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.frame.layout import BarPlace
    from model.review import Report

SIZE_NAMES = ("length", "width", "height")


def overall(report: Report) -> str:
    """The size of the whole vehicle against the limit."""
    extents = report.survey.extents
    words = f"Overall {sizes(report, extents.size)}"
    if extents.limit is None:
        return f"{words}, everything included. The brief sets no size limit."
    limit = f"{words}; the limit is {sizes(report, extents.limit)}"
    over = [
        f"{shown(report, excess)} too much in {name}"
        for name, excess in zip(SIZE_NAMES, extents.over, strict=True)
        if excess
    ]
    return f"{limit}: {', '.join(over) if over else 'it fits'}."


def key_of(axis: int, pair: PlanePair) -> str:
    """The key of a pair of planes."""
    return f"{axis}:{pair.low}:{pair.high}"


def size_rows(report: Report) -> list[Row]:
    """Each pair of neighbouring or joined planes: their centres, and the cuts between them."""
    return [
        Row(key_of(size.axis, pair), _cells(report, size, pair))
        for size in axis_sizes(report.survey)
        for pair in size.pairs
    ]


def _cells(report: Report, size: AxisSize, pair: PlanePair) -> tuple[str, ...]:
    cuts = ", ".join(f"{bar.letter} {bare(report, bar.cut)}" for bar, _ in _alike(pair))
    return (
        _between(report, size.axis, pair),
        SIZE_NAMES[size.axis],
        bare(report, size.outside),
        bare(report, pair.spacing),
        cuts or "-",
    )


def _between(report: Report, axis: int, pair: PlanePair) -> str:
    low, high = (
        edits.find(report.design, Ref(PLANE_KINDS[axis], plane)).name for plane in (pair.low, pair.high)
    )
    return f"{low} - {high}"


def _alike(pair: PlanePair) -> Iterator[tuple[BarPlace, int]]:
    """One bar of each letter between two planes, and how many there are."""
    letters = sorted({bar.letter for bar in pair.bars})
    for letter in letters:
        bars = [bar for bar in pair.bars if bar.letter == letter]
        yield bars[0], len(bars)


def _pair(report: Report, key: str) -> tuple[AxisSize, PlanePair]:
    axis = int(key.partition(":")[0])
    size = axis_sizes(report.survey)[axis]
    return size, next(pair for pair in size.pairs if key_of(axis, pair) == key)


def size_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """All three ways to size along the axis of the chosen pair."""
    size, pair = _pair(report, key)
    about = _between(report, size.axis, pair)
    return (
        _outside_entry(size.axis),
        _centres_entry(size.axis, pair, about),
        *(_cut_entry(bar, count) for bar, count in _alike(pair) if bar.cut is not None),
    )


def _outside_entry(axis: int) -> Entry:
    name = SIZE_NAMES[axis]
    return Entry(
        key="size-outside",
        label=f"Overall {name}",
        kind=DERIVED_LENGTH,
        get=lambda report: report.survey.extents.size[axis],
        edit=lambda wanted: lambda design: set_outside(design, axis, wanted),
        help="Over everything: hubs, thrusters, floats. Change it and the pipe between the fittings gets "
        "shorter or longer, bars alike by the same.",
    )


def _centres_entry(axis: int, pair: PlanePair, about: str) -> Entry:
    kind = PLANE_KINDS[axis]

    def get(report: Report) -> float | None:
        planes = report.survey.frame.planes
        return planes[pair.high] - planes[pair.low]

    return Entry(
        key="size-centres",
        label="Centre to centre",
        kind=DERIVED_LENGTH,
        get=get,
        edit=lambda wanted: lambda design: set_spacing_between(design, kind, pair.low, pair.high, wanted),
        help="From the middle of one pipe to the middle of the other. Cuts and overall size follow.",
        about=about,
    )


def _cut_entry(bar: BarPlace, count: int) -> Entry:
    pieces = "1 piece" if count == 1 else f"{count} pieces"
    return Entry(
        key=f"size-cut-{bar.letter}",
        label=f"Cut of {bar.letter}, {pieces}",
        kind=DERIVED_LENGTH,
        get=lambda report: report.survey.frame.bars[bar.id].cut,
        edit=lambda wanted: lambda design: set_cut(design, bar.id, wanted),
        help="The length to saw, push-in depths included. All pieces of this letter that lie the same way "
        "change together, and the planes move.",
        about=bar.name,
    )


def marked(report: Report, key: str) -> tuple[str, str]:
    """A bar between the planes, or the higher plane where there is none."""
    size, pair = _pair(report, key)
    return ("bar", pair.bars[0].id) if pair.bars else (PLANE_KINDS[size.axis], pair.high)


def locate_size(report: Report, about: About) -> str | None:
    """The first pair along the axis of a size that is too large, or of anything about the whole."""
    if about.kind not in ("axis", "vehicle", "design", "size", "hoop", "gate", ""):
        return None
    over = report.survey.extents.over
    worst = (
        AXES.index(about.id) if about.kind in ("axis", "gate") else max(range(3), key=lambda axis: over[axis])
    )
    rows = size_rows(report)
    return next((row.key for row in rows if row.key.startswith(f"{worst}:")), rows[0].key if rows else None)


SIZE = Listing(
    title="Size",
    columns=(
        Column("From - to"),
        Column("Way", 6, least=66),
        Column("Overall", 7, right=True, least=50),
        Column("Centres", 7, right=True),
        Column("Cuts", 15, right=True),
    ),
    rows=size_rows,
    entries=size_entries,
    marks=marked,
    empty="No two planes carry joints yet: add bars first.",
    facts=overall,
    locate=locate_size,
)
