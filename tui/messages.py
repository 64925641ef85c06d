"""What a page or a panel may ask of the session: small messages, named for what is asked.

Nothing on a page changes a design.  It posts one of these, the session answers with a new report.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from textual.message import Message

if TYPE_CHECKING:
    from model.coach.finding import Finding
    from model.design import Design


class EditRequested(Message):
    """Change the design.

    Args:
        label: what the change is called in undo, such as "Size limit 500 x 400 x 300 mm".
        edit: makes the new design from the one on screen; may raise EditError or ValidationError.
    """

    def __init__(self, label: str, edit: Callable[[Design], Design]) -> None:
        self.label, self.edit = label, edit
        super().__init__()


class StepRequested(Message):
    """Open the page of a step.

    Args:
        step: its key, such as "layout".
    """

    def __init__(self, step: str) -> None:
        self.step = step
        super().__init__()


class MarkRequested(Message):
    """Mark one thing in the drawing; an empty kind marks nothing.

    Args:
        kind: what it is, as in a finding: "bar", "joint", "thruster", "float", ...
        id: its id in the design.
    """

    def __init__(self, kind: str, id: str) -> None:
        self.kind, self.id = kind, id
        super().__init__()


class DrawRequested(Message):
    """Put the cursor on the drawing, to edit the frame there."""


class SheetsRequested(Message):
    """Make the sheets to print."""


class PlaceRequested(Message):
    """Go to what a finding is about: open its page, put the focus there, mark it in the drawing."""

    def __init__(self, finding: Finding) -> None:
        self.finding = finding
        super().__init__()


class RemedyRequested(Message):
    """Take the remedy of a finding."""

    def __init__(self, finding: Finding) -> None:
        self.finding = finding
        super().__init__()


class WriteRequested(Message):
    """Write a picture or a table beside the design's file.

    Args:
        name: what its name ends in, such as "wiring.svg".
        text: what is written.
    """

    def __init__(self, name: str, text: str) -> None:
        self.name, self.text = name, text
        super().__init__()
