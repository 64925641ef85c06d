"""The section Measure: what the ruler says of the team's own parts, beside the published values."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Any

from model.design import DryJoint, edits
from model.design.edits import Ref
from model.design.readings import Reading, joint_fittings, readings
from model.errors import LengthError
from tui.forms.acts import Act
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import LENGTH, Typed, choice, read_sizes, show_sizes
from tui.forms.listing import Listing, ListSection
from tui.pages.stock_rulers import how_to
from tui.pages.words import JOININGS, bare, in_unit, shown

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.design import Design
    from model.design.edits import Edit
    from model.review import Report
    from model.units import Unit

FIELD = {
    "hub": "hub",
    "socket depth": "socket_depth",
    "face to face": "face_to_face",
    "face to far side": "face_to_far_side",
}
"""The field of the document that a reading goes into."""
HELP = {
    "hub": "Over the outside of a socket. It must be wider than the pipe.",
    "socket depth": "From the face of a socket to the stop at its bottom.",
    "face to face": "Over the two sockets in one line. Half of it, less a socket, is centre to stop.",
    "face to far side": "From a face to the far side. Less half a hub and a socket, it is centre to stop.",
}
FAR_SIDE = {
    "elbow 45": "From a face to the far side: the other rim. Centre to stop follows by the angle.",
    "cap": "From the face to the far side: the closed end. Less the socket, it is the end wall.",
}
"""The help for shapes whose far side is another one."""


def read_joint(text: str, unit: Unit) -> tuple[float, float, float]:
    """Two pieces and the whole [m], as they are typed.

    Raises:
        LengthError: there are not three lengths.
    """
    try:
        return read_sizes(text, unit)
    except LengthError as problem:
        if "length x width" not in str(problem):
            raise
        example = "4 x 4 x 9 1/2" if unit == "in" else "100 x 100 x 238"
        raise LengthError(
            f"'{text}' is not three lengths; write first piece x second piece x the whole, like {example}"
        ) from problem


JOINT = Typed(show_sizes, read_joint, "length")


class Measuring:
    """What the section Measure shows; it remembers in which fitting a dry joint is about to be made."""

    def __init__(self) -> None:
        self.joint_in: dict[str, str] = {}

    def listing(self) -> Listing:
        """The section as a list of readings."""
        return Listing(
            title="Measure",
            columns=(
                Column("Measure"),
                Column("Ruler", 7, right=True),
                Column("gives", 14, least=68),
                Column("Yours", 7, right=True),
                Column("Printed", 7, right=True),
            ),
            rows=self.rows,
            entries=self.entries,
            marks=lambda report, key: self._marks(report, key),
            empty="The stock has no fittings yet: choose a range first.",
            remove=self.forget,
            removing="Forget",
            acts=(Act("joint-in", "Joint in another fitting", self.pick_fitting),),
            facts=standing,
            note=self.note,
            locate=locate,
        )

    def note(self, report: Report, key: str) -> str:
        """How to hold the ruler."""
        reading = self.reading(report, key)
        return how_to(reading.what, reading.shape)

    def rows(self, report: Report) -> list[Row]:
        """Each thing to measure, in the order to measure it."""
        names = {fitting.id: fitting.name for fitting in report.design.stock.fittings}
        return [self._row(report, reading, names) for reading in readings(report.design.stock, self.joint_in)]

    def _row(self, report: Report, reading: Reading, names: dict[str, str]) -> Row:
        where = f"{reading.name}: {reading.what}"
        if reading.what == "dry joint":
            where = f"dry joint in {names.get(reading.fitting, reading.fitting)}, {reading.name}"
        elif reading.kind == "pipe":
            where = f"{reading.what} for {reading.name}"
        ruler = "done" if reading.joint else bare(report, reading.ruler)
        lengths = (bare(report, reading.ours), bare(report, reading.published))
        return Row(key_of(reading), (where, ruler, reading.makes, *lengths))

    def reading(self, report: Report, key: str) -> Reading:
        """The reading of a row."""
        return next(each for each in readings(report.design.stock, self.joint_in) if key_of(each) == key)

    def entries(self, report: Report, key: str) -> tuple[Entry, ...]:
        """What the ruler said."""
        reading = self.reading(report, key)
        if reading.what != "dry joint":
            return (_length_entry(reading),)
        example = in_unit(report, "100 x 100 x 238", "4 x 4 x 9 1/2")
        joining = field(Ref("arrangement"), "joining", "The joints are", choice(*JOININGS))
        return (self._joint_entry(key, reading, example), joining)

    def _joint_entry(self, key: str, reading: Reading, example: str) -> Entry:
        def get(report: Report) -> tuple[float, float, float] | None:
            joint = self.reading(report, key).joint
            return (joint.first, joint.second, joint.overall) if joint else None

        def edit(lengths: tuple[float, float, float] | None) -> Edit:
            return partial(_set_joint, pipe=reading.id, fitting=reading.fitting, lengths=lengths)

        return Entry(
            key="measured-joint",
            label="Piece x piece x whole",
            kind=JOINT,
            get=get,
            edit=edit,
            help=f"First piece, second piece, then the whole from end to end, like {example}. "
            "The push-in depth follows.",
            optional=True,
            about=f"dry joint of {reading.name}",
        )

    def _marks(self, report: Report, key: str) -> tuple[str, str]:
        reading = self.reading(report, key)
        return reading.kind, reading.id

    def forget(self, report: Report, key: str) -> tuple[str, Edit]:
        """Take one measurement off; the printed value holds again."""
        reading = self.reading(report, key)
        name = f"{reading.what} of {reading.name} forgotten"
        if reading.what == "dry joint":
            return name, partial(_set_joint, pipe=reading.id, fitting=reading.fitting, lengths=None)
        return name, _length_entry(reading).edit(None)

    def pick_fitting(self, section: ListSection) -> None:
        """Choose the fitting that the dry joint is made in."""
        report, key = section.report, section.table.chosen
        if report is None or key is None:
            return
        reading = self.reading(report, key)
        if reading.what != "dry joint":
            section.say("! Go to the line of the dry joint first; it is the last one.")
            return
        able = joint_fittings(report.design.stock, reading.id)
        options = tuple((fitting.name, fitting.id) for fitting in able)

        def then(fitting: str) -> None:
            self.joint_in[reading.id] = fitting
            if reading.joint:
                joint = reading.joint
                lengths = (joint.first, joint.second, joint.overall)
                section.ask(
                    "fitting of the dry joint",
                    partial(_set_joint, pipe=reading.id, fitting=fitting, lengths=lengths),
                )
            else:
                section.show(report)

        section.pick(
            "Which fitting is the dry joint in? It needs two sockets in one line.",
            options,
            then,
            reading.fitting,
        )


def key_of(reading: Reading) -> str:
    """The key of a reading's row."""
    return f"{reading.kind}:{reading.id}:{reading.what}"


def _set_joint(design: Design, pipe: str, fitting: str, lengths: tuple[float, float, float] | None) -> Design:
    joint = None
    if lengths is not None:
        first, second, overall = lengths
        joint = DryJoint(fitting=fitting, first=first, second=second, overall=overall)
    return edits.measure_pipe(design, pipe, dry_joint=joint)


def _length_entry(reading: Reading) -> Entry:
    name = FIELD[reading.what]
    measure: Any = edits.measure_pipe if reading.kind == "pipe" else edits.measure_fitting

    def get(report: Report) -> float | None:
        found = (each for each in readings(report.design.stock) if key_of(each) == key_of(reading))
        return next((each.ruler for each in found), None)

    return Entry(
        key="measured-length",
        label=reading.what.capitalize(),
        kind=LENGTH,
        get=get,
        edit=lambda value: lambda design: measure(design, reading.id, **{name: value}),
        help=f"{_help(reading)} Empty: not measured.",
        optional=True,
        about=reading.name,
    )


def _help(reading: Reading) -> str:
    far = FAR_SIDE.get(reading.shape or "") if reading.what == "face to far side" else None
    return far or HELP[reading.what]


def standing(report: Report) -> str:
    """How much of it is done."""
    found = readings(report.design.stock)
    done = sum(each.done for each in found)
    if not done:
        return f"A ruler, a pencil, one of each: begin at the top ({report.design.units}). Cuts follow."
    first = report.design.stock.pipes[0]
    return f"{done} measured, {len(found) - done} as printed. {_push_in(report, first.id)}"


def _push_in(report: Report, pipe: str) -> str:
    found = [each for each in readings(report.design.stock) if each.what == "dry joint" and each.id == pipe]
    return "".join(
        f"Push-in depth {shown(report, each.ours)}, printed {shown(report, each.published)}."
        for each in found
    )


def locate(report: Report, about: About) -> str | None:
    """The row of what was measured on a pipe or a fitting."""
    found = [each for each in readings(report.design.stock) if (each.kind, each.id) == (about.kind, about.id)]
    measured = [each for each in found if each.done]
    return key_of(measured[0]) if measured else None


def measure_section() -> ListSection:
    """The section Measure."""
    return ListSection(Measuring().listing())
