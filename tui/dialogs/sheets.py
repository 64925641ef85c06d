"""Making the sheets: paper and folder are chosen, progress is shown, and where they are is said."""

from __future__ import annotations

from asyncio import to_thread
from pathlib import Path
from typing import TYPE_CHECKING

from textual import on, work
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import HorizontalGroup, Vertical
from textual.widgets import Button, Input, Static

from model.errors import FileProblem
from tui import stamp
from tui.dialogs.dialog import Dialog
from tui.dialogs.field import Field
from tui.forms.choice import Choice

if TYPE_CHECKING:
    from model.design import Design
    from model.review import Report
    from model.sheets.blocks import PaperName

PAPERS: tuple[PaperName, ...] = ("A4", "Letter")
WHAT = (
    "One PDF to print: shopping list, drawings, cut sheet, cutting plan, drill templates, build list, "
    "wiring, inspection, pool card. With it the notebook as a page for a browser, each drawing as SVG, "
    "cut list, shopping list and ledger as CSV."
)
PROBE = "Making the sheets ..."


def sheets_folder(design: Path) -> Path:
    """The folder of the sheets of a design: beside its file."""
    return design.with_name(f"{design.stem}-sheets")


class SheetsDialog(Dialog[None]):
    """Makes the sheets of a design.

    Args:
        report: the design as it is.
        file: where it is saved.
        others: designs that the notebook compares it with.
    """

    DEFAULT_CSS = """
    SheetsDialog Choice { width: 20; }
    SheetsDialog #what, SheetsDialog #progress { height: auto; margin: 1 0; }
    """
    BINDINGS: list[BindingType] = [("escape", "dismiss(None)", "Back")]

    def __init__(self, report: Report, file: Path, others: tuple[Design, ...] = ()) -> None:
        self.report, self.folder, self.others = report, sheets_folder(file), others
        super().__init__()

    def compose(self) -> ComposeResult:
        """What is made, the paper, the folder, progress, the buttons."""
        with Vertical(classes="box"):
            yield Static("Make the sheets", classes="title")
            yield Static(WHAT, markup=False, id="what")
            yield Static("Paper (left and right change it):", classes="hint")
            yield Choice("Paper")
            yield Static("Into the folder:", classes="hint")
            yield Field(str(self.folder), id="folder")
            yield Static("", markup=False, id="progress")
            with HorizontalGroup(classes="answers"):
                yield Button("Make them", id="go", compact=True)
                yield Button("Back (Esc)", id="back", compact=True)

    def on_mount(self) -> None:
        """One press of Enter makes them as they are proposed."""
        paper = self.query_one(Choice)
        paper.options = tuple((each, each) for each in PAPERS)
        paper.value = "Letter" if self.report.design.units == "in" else "A4"
        self.query_one("#go").focus()

    @on(Input.Submitted)
    @on(Button.Pressed, "#go")
    def _go(self) -> None:
        typed = self.query_one("#folder", Input).value.strip().strip("\"'")
        folder = Path(typed).expanduser() if typed else self.folder
        self.query_one("#go").disabled = True
        self.make(self.folder.parent / folder, self.query_one(Choice).value)

    @on(Button.Pressed, "#back")
    def _back(self) -> None:
        self.dismiss(None)

    @work(group="sheets", exclusive=True, exit_on_error=False)
    async def make(self, folder: Path, paper: PaperName) -> None:
        """Make and write them in a thread."""
        self._say(PROBE)
        try:
            self._say(await to_thread(self._write, folder, paper))
        except FileProblem as problem:
            self._say(f"! Nothing was written: {problem}")
        finally:
            self.query_one("#go").disabled = False
        self.query_one("#back").focus()

    def _write(self, folder: Path, paper: PaperName) -> str:
        from model.sheets.write import write_sheets

        written = write_sheets(self.report, folder, paper, stamp.today(), self.others, told=self._tell)
        musts = len(self.report.musts)
        note = f"\nMind: {musts} things must still be put right." if musts else ""
        return f"{len(written)} files are written. Print {written[0].name}, {paper}, in:\n{folder}{note}"

    def _tell(self, what: str, number: int, count: int) -> None:
        """Progress, from the thread."""
        self.app.call_from_thread(self._say, f"{number} of {count}: {what} ...")

    def _say(self, words: str) -> None:
        if self.is_mounted:
            self.query_one("#progress", Static).update(words)
