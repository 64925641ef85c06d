"""The fittings of the stock: what is measured of them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from model.design import Fitting, edits
from model.design.edits import Ref
from model.vectors import grid
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import LENGTH, MASS, MONEY, TEXT, YES_NO, number
from tui.pages.words import bare, direction_words, steps_words

if TYPE_CHECKING:
    from model.review import Report
    from tui.forms.listing import ListSection

FITTING_COLUMNS = (
    Column("Fitting"),
    Column("To stop", 7, right=True),
    Column("Socket", 6, right=True, least=50),
    Column("Hub", 6, right=True, least=60),
    Column("Weight", 6, right=True),
    Column("Price", 6, right=True),
)


def fitting_rows(report: Report) -> list[Row]:
    """Each kind of fitting, with the socket that differs least from the others: its first."""
    return [
        Row(
            fitting.id,
            (
                fitting.name,
                bare(report, fitting.sockets[0].laying_length),
                bare(report, fitting.sockets[0].depth),
                bare(report, fitting.hub),
                f"{fitting.mass * 1000:.0f} g",
                f"{fitting.price:g}",
            ),
        )
        for fitting in report.design.stock.fittings
    ]


def fitting_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """What is measured of a fitting."""
    ref = Ref("fitting", key)
    fitting: Fitting = edits.find(report.design, ref)
    about = fitting.name
    return (
        *_socket_entries(fitting),
        field(ref, "hub", "Hub diameter", LENGTH, about=about),
        field(ref, "mass", "Weight", MASS, about=about),
        field(ref, "price", "Price", MONEY, help="Price of one.", about=about),
        field(ref, "counts", "Counts on the bill", YES_NO, about=about),
        field(ref, "name", "Name", TEXT, help="What this fitting is called.", about=about),
        field(ref, "density", "Plastic weighs", number("kg/m3"), about=about),
        field(ref, "source", "Figures are from", TEXT, help="Where these figures come from.", about=about),
    )


def add_fitting(section: ListSection) -> None:
    """A kind of fitting that the range lacks, from the other ranges."""
    from model.fittings.more import addable  # reads every range

    report = section.report
    if report is None:
        return
    found = addable(report.design.stock)
    if not found:
        section.say("! The range has every kind of fitting there is.")
        return

    def use(fitting: Fitting) -> None:
        section.ask(f"{fitting.name} added", lambda design: edits.add_fitting(design, fitting))

    section.pick(
        "Which fitting have you got beside these? Look where its sockets point.",
        tuple((f"{fitting.name}: {_points(fitting)}", fitting) for fitting in found),
        use,
    )


def _points(fitting: Fitting) -> str:
    """Where the sockets of a fitting point."""
    return ", ".join(steps_words(grid(socket.to)) for socket in fitting.sockets)


def _socket_entries(fitting: Fitting) -> list[Entry]:
    """Centre to stop and depth of the sockets; alike ones, on the run or branching off, go together."""
    groups: dict[tuple[Any, ...], list[str]] = {}
    for socket in fitting.sockets:
        run = edits.on_the_run(fitting, socket)
        groups.setdefault((run, socket.laying_length, socket.depth, socket.pipe), []).append(socket.to)
    entries = []
    for (run, *_), directions in groups.items():
        where = "" if len(groups) == 1 else (" run" if run else " branch")
        if sum(each[0] == run for each in groups) > 1:
            where = f" {direction_words(directions[0])}"
        for name, label in (("laying_length", "Centre to stop"), ("depth", "Socket depth")):
            entries.append(_socket_entry(fitting, tuple(directions), name, f"{label}{where}"))
    return entries


def _socket_entry(fitting: Fitting, directions: tuple[str, ...], name: str, label: str) -> Entry:
    def get(report: Report) -> Any:
        sockets = edits.find(report.design, Ref("fitting", fitting.id)).sockets
        return getattr(next(socket for socket in sockets if socket.to in directions), name)

    help_ = {
        "laying_length": "From the centre of the fitting to the stop at the bottom of its socket.",
        "depth": "From the face of the socket to the stop at its bottom.",
    }[name]
    return Entry(
        key=f"{name}-{''.join(directions)}",
        label=label,
        kind=LENGTH,
        get=get,
        edit=lambda value: lambda design: edits.set_sockets(design, fitting.id, directions, **{name: value}),
        help=help_,
        about=fitting.name,
    )
