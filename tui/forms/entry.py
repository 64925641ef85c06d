"""An entry: one thing that can be typed or chosen on a page, and the edit that it makes."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from msgspec import Struct

from model import design as document
from model.design import edits
from model.design.edits import Edit, Ref
from model.design.record import field_texts
from tui.forms.kinds import Kind

if TYPE_CHECKING:
    from model.design.limits import Limits
    from model.review import Report

_UNIT = re.compile(r"\s*\[[^\]]*\]")
"""The unit in a text of the document; on a page it stands behind the field."""
RECORDS: dict[str, type[document.Record]] = {
    "design": document.Design,
    "brief": document.Brief,
    "water": document.Water,
    "thresholds": document.Thresholds,
    "stock": document.Stock,
    "pin": document.Pin,
    "washer": document.Washer,
    "plug": document.Plug,
    "pipe": document.Pipe,
    "fitting": document.Fitting,
    "motor": document.Motor,
    "mount": document.Mount,
    "foam": document.Foam,
    "arrangement": document.Arrangement,
    "station": document.Plane,
    "side": document.Plane,
    "level": document.Plane,
    "joint": document.Joint,
    "bar": document.Bar,
    "thruster": document.Thruster,
    "float": document.Float,
    "ballast": document.Ballast,
    "attachment": document.Attachment,
    "tether": document.Tether,
    "power": document.Power,
    "battery": document.Battery,
    "opening": document.Opening,
    "branch": document.Branch,
    "pull": document.Pull,
    "tie_hole": document.TieHole,
    "leg": document.Leg,
    "load": document.Load,
    "stick": document.Stick,
    "ledger": document.Expense,
    "cuts": document.MeasuredCut,
    "trials": document.Trial,
    "log": document.Decision,
}


class Entry(Struct, frozen=True, dict=True):
    """One field of a form.

    Attributes:
        key: tells the fields of a form apart.
        label: what stands before it.
        kind: how it is typed or chosen.
        get: its value in a report.
        edit: from the new value to the edit that sets it.
        help: a sentence or two for the line at the foot of the page; "" where the document has them.
        optional: whether the empty field means that it is off.
        about: the name of what it belongs to, for the history.
        field: the kind of record and the name of its field in the document.
        limits: what may be typed, from a report; where it is not given, the document says it of its field.
    """

    key: str
    label: str
    kind: Kind
    get: Callable[[Report], Any]
    edit: Callable[[Any], Edit]
    help: str = ""
    optional: bool = False
    about: str = ""
    field: tuple[str, str] | None = None
    limits: Callable[[Report], Limits] | None = None

    @property
    def told(self) -> str:
        """What it is for: its help, or the text under its field in the document, read only now."""
        return self.help or (_UNIT.sub("", help_of(*self.field)) if self.field else "")

    def allowed(self, report: Report) -> Limits | None:
        """What may be typed: its own limits, or those of its field in the document, read only now."""
        if self.limits:
            return self.limits(report)
        if not self.field:
            return None
        from model.design.limits import field_limits  # the first page is shown without it

        kind, name = self.field
        return field_limits(RECORDS[kind], name)


def help_of(kind: str, field: str) -> str:
    """The text under a field of the document."""
    return field_texts(RECORDS[kind]).get(field, "")


def field(
    ref: Ref, name: str, label: str, kind: Kind, *, help: str = "", optional: bool = False, about: str = ""
) -> Entry:
    """An entry for one field of one record of the design."""
    return Entry(
        key=f"{ref.kind}-{name}",
        label=label,
        kind=kind,
        get=lambda report: getattr(edits.find(report.design, ref), name),
        edit=lambda value: lambda design: edits.set_field(design, ref, name, value),
        help=help,
        field=(ref.kind, name),
        optional=optional,
        about=about,
    )


def part(
    ref: Ref, name: str, number: int, label: str, kind: Kind, *, help: str = "", about: str = ""
) -> Entry:
    """An entry for one of the three numbers of a field."""
    return Entry(
        key=f"{ref.kind}-{name}-{number}",
        label=label,
        kind=kind,
        get=lambda report: getattr(edits.find(report.design, ref), name)[number],
        edit=lambda value: lambda design: edits.set_part(design, ref, name, number, value),
        help=help,
        field=(ref.kind, name),
        about=about,
    )


def inner(
    ref: Ref,
    holder: str,
    name: str,
    label: str,
    kind: Kind,
    *,
    help: str = "",
    optional: bool = False,
    about: str = "",
) -> Entry:
    """An entry for one field of a record inside another, such as the branch of a thruster."""
    return Entry(
        key=f"{holder}-{name}",
        label=label,
        kind=kind,
        get=lambda report: getattr(getattr(edits.find(report.design, ref), holder), name),
        edit=lambda value: lambda design: edits.set_inner(design, ref, holder, name, value),
        help=help,
        field=(holder, name),
        optional=optional,
        about=about,
    )
