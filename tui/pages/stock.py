"""The stock: what the team builds with, and what it really measures."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING, Any

from model.design import Fitting, Pipe, Stock, edits
from model.design.edits import Ref
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import LENGTH, MASS, MONEY, TEXT, YES_NO, choice, number
from tui.forms.listing import Listing, ListSection
from tui.forms.section import Act, FormSection, Section
from tui.pages.choosing import pick_preset
from tui.pages.page import Page
from tui.pages.words import bare, direction_words

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.presets import Preset
    from model.review import Report

STOCK = Ref("stock")
DRY_JOINT = (
    "Measure one dry joint of your own: push a pipe into a fitting as hard as you will on the day, "
    "pencil a mark at the face of the fitting, pull it out, and measure from the end of the pipe to the "
    "mark. That is the push-in depth; write it in the section Pipe.\n"
    "Centre to stop of a tee: half its length end to end, less the depth of one socket."
)
METHODS = choice(("ties", "ties"), ("clamp", "clamp"), ("stub in a socket", "stub"))


def range_entries(report: Report) -> tuple[Entry, ...]:
    """The range and the saw."""
    return (
        field(STOCK, "name", "Name of the range", TEXT, help="What this range of pipe is called."),
        field(STOCK, "kerf", "The saw eats", LENGTH),
        field(STOCK, "origin", "Dimensions are from", TEXT),
        field(STOCK, "notes", "Notes", TEXT, help="Anything to remember about this range."),
    )


def range_facts(report: Report) -> str:
    """What the range holds, and how to measure."""
    stock = report.design.stock
    pipes = len(stock.pipes)
    sizes = f"{pipes} pipe {'size' if pipes == 1 else 'sizes'}"
    return f"{sizes}, {len(stock.fittings)} kinds of fitting.\n{DRY_JOINT}"


def choose_stock(section: Section) -> None:
    """Pick a range from the presets."""

    def use(preset: Preset, stock: Stock) -> None:
        section.ask(f"stock {stock.name}", lambda design: edits.use_stock(design, stock))

    pick_preset(section, "stock", "Which range of pipe is in your box?", use)


def pipe_rows(report: Report) -> list[Row]:
    """Each pipe size."""
    return [
        Row(
            pipe.id,
            (
                pipe.name,
                bare(report, pipe.outside_diameter),
                bare(report, pipe.bore),
                bare(report, pipe.insertion),
                pipe.material,
            ),
        )
        for pipe in report.design.stock.pipes
    ]


def pipe_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """What is measured of a pipe, and the lengths on sale."""
    ref = Ref("pipe", key)
    pipe: Pipe = edits.find(report.design, ref)
    about = pipe.name
    fixed = (
        field(ref, "insertion", "Push-in depth", LENGTH, about=about),
        field(ref, "outside_diameter", "Outside diameter", LENGTH, about=about),
        field(ref, "bore", "Bore", LENGTH, about=about),
        field(ref, "name", "Name", TEXT, help="What this size is called.", about=about),
        field(ref, "material", "Material", TEXT, about=about),
        field(ref, "counts", "Counts on the bill", YES_NO, about=about),
    )
    sticks = tuple(entry for number in range(len(pipe.sticks)) for entry in _stick_entries(pipe, number))
    more = (
        field(ref, "density", "Plastic weighs", number("kg/m3"), about=about),
        field(ref, "source", "Figures are from", TEXT, help="Where these figures come from.", about=about),
    )
    return (*fixed, *sticks, *more)


def _stick_entries(pipe: Pipe, number_: int) -> tuple[Entry, Entry]:
    def entry(name: str, label: str, kind: Any, help_: str) -> Entry:
        return Entry(
            key=f"stick-{number_}-{name}",
            label=f"{label} {number_ + 1}",
            kind=kind,
            get=lambda report: getattr(edits.find(report.design, Ref("pipe", pipe.id)).sticks[number_], name),
            edit=lambda value: lambda design: edits.set_stick(design, pipe.id, number_, **{name: value}),
            help=help_,
            about=pipe.name,
        )

    return (
        entry("length", "Sold length", LENGTH, "A length in which this pipe is sold."),
        entry("price", "Price of length", MONEY, "The price of one such length."),
    )


def more_lengths(section: Any) -> None:
    """One more length on sale."""
    if key := section.table.chosen:
        section.ask("a length on sale added", lambda design: edits.add_stick(design, key))


def fewer_lengths(section: Any) -> None:
    """The last length on sale taken out."""
    if (key := section.table.chosen) and section.report:
        last = len(edits.find(section.report.design, Ref("pipe", key)).sticks) - 1
        section.ask("a length on sale removed", lambda design: edits.remove_stick(design, key, last))


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


def bought_rows(kind: str, report: Report) -> list[Row]:
    """Motors or mounts."""
    return [
        Row(
            piece.id,
            (
                piece.name,
                f"{piece.mass * 1000:.0f} g",
                f"{piece.mass_in_water * 1000:.0f} g",
                f"{piece.thrust_ahead:g} N" if kind == "motor" else piece.method,
                f"{piece.price:g}",
            ),
        )
        for piece in edits.pieces(report.design, kind)
    ]


def bought_entries(kind: str, report: Report, key: str) -> tuple[Entry, ...]:
    """What is measured of a motor or a mount."""
    ref = Ref(kind, key)
    about = edits.find(report.design, ref).name
    mine = (
        _motor_entries(ref, about)
        if kind == "motor"
        else (field(ref, "method", "Held by", METHODS, about=about),)
    )
    return (
        field(ref, "name", "Name", TEXT, help="What it is called.", about=about),
        field(ref, "mass", "Weight in air", MASS, about=about),
        field(ref, "mass_in_water", "Weight in water", MASS, about=about),
        *mine,
        field(ref, "price", "Price", MONEY, help="Price of one.", about=about),
        field(ref, "counts", "Counts on the bill", YES_NO, about=about),
    )


def _motor_entries(ref: Ref, about: str) -> tuple[Entry, ...]:
    return (
        field(ref, "thrust_ahead", "Pull ahead", number("N"), about=about),
        field(ref, "thrust_astern", "Pull astern", number("N"), optional=True, about=about),
        field(ref, "volts", "At", number("V"), about=about),
        field(ref, "body_diameter", "Body diameter", LENGTH, about=about),
        field(ref, "body_length", "Body length", LENGTH, about=about),
        field(ref, "propeller_diameter", "Propeller diameter", LENGTH, about=about),
    )


def foam_rows(report: Report) -> list[Row]:
    """Each kind of foam tube."""
    return [
        Row(
            foam.id,
            (
                foam.name,
                bare(report, foam.outside_diameter),
                bare(report, foam.hole),
                f"{foam.density:g}",
                f"{foam.price:g}",
            ),
        )
        for foam in report.design.supplies.foams
    ]


def foam_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """What is measured of a foam tube."""
    ref = Ref("foam", key)
    about = edits.find(report.design, ref).name
    return (
        field(ref, "name", "Name", TEXT, help="What it is called.", about=about),
        field(ref, "outside_diameter", "Outside diameter", LENGTH, about=about),
        field(ref, "hole", "Hole", LENGTH, about=about),
        field(ref, "density", "Foam weighs", number("kg/m3"), about=about),
        field(ref, "sold_length", "Sold length", LENGTH, about=about),
        field(ref, "price", "Price of one tube", MONEY, about=about),
        field(ref, "counts", "Counts on the bill", YES_NO, about=about),
    )


def add_from_preset(section: ListSection) -> None:
    """Motors, mounts and foams of a preset beside those of the team."""

    def use(preset: Preset, supplies: Any) -> None:
        section.ask(f"{preset.title} added", lambda design: edits.add_supplies(design, supplies))

    pick_preset(section, "motors", "Which motors, mounts and foam do you have?", use)


def stocked(
    title: str,
    kind: str,
    columns: tuple[Column, ...],
    rows: Callable[[Report], list[Row]],
    entries: Callable[[Report, str], tuple[Entry, ...]],
    acts: tuple[Act, ...] = (),
    *,
    add: bool = False,
) -> ListSection:
    """A section for one kind of thing in the box."""

    def name(report: Report, key: str) -> str:
        return str(edits.find(report.design, Ref(kind, key)).name)

    def locate(report: Report, about: About) -> str | None:
        known = {piece.id for piece in edits.pieces(report.design, kind)}
        return about.id if about.kind == kind and about.id in known else None

    return ListSection(
        Listing(
            title=title,
            columns=columns,
            rows=rows,
            entries=entries,
            marks=lambda report, key: (kind, key),
            empty=f"No {kind} yet. Press Add to take one from a preset, then write in your own figures.",
            add=add_from_preset if add else None,
            copy=lambda report, key: (
                f"{name(report, key)} copied",
                lambda design: edits.copy_item(design, Ref(kind, key)),
            ),
            remove=lambda report, key: (
                f"{name(report, key)} removed",
                lambda design: edits.remove_supply(design, Ref(kind, key)),
            ),
            acts=acts,
            locate=locate,
        )
    )


PIPE_COLUMNS = (
    Column("Pipe"),
    Column("Outside", 8, right=True),
    Column("Bore", 7, right=True),
    Column("Push-in", 7, right=True),
    Column("Of", 8, least=70),
)
FITTING_COLUMNS = (
    Column("Fitting"),
    Column("To stop", 7, right=True),
    Column("Socket", 6, right=True, least=50),
    Column("Hub", 6, right=True, least=60),
    Column("Weight", 6, right=True),
    Column("Price", 6, right=True),
)
BOUGHT_COLUMNS = (
    Column("Name"),
    Column("In air", 6, right=True),
    Column("Wet", 6, right=True),
    Column("Pull/by", 7),
    Column("Price", 6, right=True),
)
FOAM_COLUMNS = (
    Column("Foam tube"),
    Column("Outside", 8, right=True),
    Column("Hole", 6, right=True),
    Column("kg/m3", 6, right=True),
    Column("Price", 6, right=True),
)


class StockPage(Page):
    """What is in the box."""

    WHY = (
        "Your cuts are only as good as these figures. Choose the range that looks like yours, then "
        "measure one piece of each kind and write in what you found."
    )
    HELP = (
        "Choose the range of pipe and fittings that you can buy. Measure one piece of each kind and "
        "correct the figures: every cut follows.\n\n" + DRY_JOINT + "\n\nWeigh a fitting on a kitchen "
        "scale. Hang a motor in water from a luggage or kitchen scale to find its weight in water.\n\n"
        "In a table: a adds, c copies, d removes, Enter goes to the fields."
    )

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """The range, and the kinds of thing in the box."""
        lengths = (Act("more", "Sold length +", more_lengths), Act("fewer", "Sold length -", fewer_lengths))
        choose = (Act("stock", "Choose a range", choose_stock),)
        motors, mounts = (
            partial(
                stocked,
                title,
                kind,
                BOUGHT_COLUMNS,
                partial(bought_rows, kind),
                partial(bought_entries, kind),
                add=True,
            )
            for title, kind in (("Motors", "motor"), ("Mounts", "mount"))
        )
        return (
            ("Range", lambda: FormSection("Range", range_entries, range_facts, ("stock",), choose)),
            ("Pipe", lambda: stocked("Pipe", "pipe", PIPE_COLUMNS, pipe_rows, pipe_entries, lengths)),
            (
                "Fittings",
                lambda: stocked("Fittings", "fitting", FITTING_COLUMNS, fitting_rows, fitting_entries),
            ),
            ("Motors", motors),
            ("Mounts", mounts),
            ("Foam", lambda: stocked("Foam", "foam", FOAM_COLUMNS, foam_rows, foam_entries, add=True)),
        )
