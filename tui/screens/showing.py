"""The face of the session: it shows one state everywhere and changes nothing."""

from __future__ import annotations

from asyncio import Event, sleep
from typing import TYPE_CHECKING, Any

from msgspec.structs import replace
from textual import getters
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.reactive import reactive
from textual.screen import Screen
from textual.widgets import ContentSwitcher, Static

from tui.guide import Shown
from tui.panels.lines import KeyLine, NextLine, TitleLine
from tui.panels.steps import StepBar
from tui.steps import BY_KEY

if TYPE_CHECKING:
    from textual.events import ScreenResume
    from textual.widget import Widget

    from model.coach.finding import About
    from tui.panels.editing import EditingPanel
    from tui.panels.findings import FindingsPanel
    from tui.panels.numbers import NumbersPanel

LOOKS = ("page", "drawing", "findings", "numbers")
HOPS = 60
"""Turns of the event loop in which a message surely has come up from a field to the screen."""
TOO_SMALL = "This window is too small.\nMake it at least 60 letters wide\nand 20 lines high."


class Showing(Screen[None]):
    """Steps, page, drawing, numbers, findings and the next thing to do.

    Args:
        shown: the state to begin with.
        saving: in words, whether it is saved.
    """

    AUTO_FOCUS = ""  # the page takes the focus when it is there
    HORIZONTAL_BREAKPOINTS = [(0, "-tiny"), (60, "-narrow"), (110, "-wide")]
    VERTICAL_BREAKPOINTS = [(0, "-flat"), (20, "-short"), (36, "-tall")]

    shown: reactive[Shown | None] = reactive(None, repaint=False)
    saving: reactive[str] = reactive("", repaint=False)
    said: reactive[str] = reactive("", repaint=False)
    look: reactive[str] = reactive(LOOKS[0], repaint=False, init=False)

    focused: reactive[Widget | None] = reactive(None, repaint=False)
    """A change of focus paints the two widgets that look another way, not the whole screen."""

    pages = getters.query_one("#pages", ContentSwitcher)
    keys = getters.query_one(KeyLine)
    drawing: EditingPanel
    findings: FindingsPanel
    numbers: NumbersPanel

    def __init__(self, shown: Shown, saving: str) -> None:
        super().__init__()
        self.furnished = False
        """Whether drawing, numbers and findings are there yet."""
        self.complete = Event()
        """Set when they show what there is to show."""
        self._resumed = False
        self.set_reactive(Showing.shown, shown)
        self.set_reactive(Showing.saving, saving)

    def compose(self) -> ComposeResult:
        """Lines above and below; between them the page, and room for the panels beside it."""
        self._fit_size()
        yield TitleLine().data_bind(Showing.shown, Showing.saving)
        yield StepBar().data_bind(Showing.shown)
        with Horizontal(id="body"):
            yield ContentSwitcher(id="pages")
            yield Vertical(id="side")
        yield NextLine().data_bind(Showing.shown, Showing.said)
        yield KeyLine()
        yield Static(TOO_SMALL, id="too-small")

    def _fit_size(self) -> None:
        """Take the classes of the window's size and of the look before there is anything to style anew."""
        self.add_class(f"-look-{self.look}")
        for length, breaks in (
            (self.app.size.width, self.HORIZONTAL_BREAKPOINTS),
            (self.app.size.height, self.VERTICAL_BREAKPOINTS),
        ):
            self.add_class(max(each for each in breaks if each[0] <= length)[1])

    def on_screen_resume(self, event: ScreenResume) -> None:
        """All is styled already when this is shown for the first time; styling it anew costs time."""
        event.refresh_styles = self._resumed
        self._resumed = True

    async def furnish(self) -> None:
        """Put drawing, numbers and findings beside the page, which is painted before they are loaded."""
        from tui.panels.editing import EditingPanel
        from tui.panels.findings import FindingsPanel
        from tui.panels.numbers import NumbersPanel

        self.drawing, self.findings = EditingPanel(id="drawing"), FindingsPanel()
        self.numbers = NumbersPanel(id="numbers")
        self.drawing.view = "front"
        await self.query_one("#side").mount(self.drawing, self.numbers, self.findings)
        self.furnished = True

    def draw(self) -> None:
        """Draw, in the letters that the app keeps to."""
        if self.furnished:
            self.drawing.ascii = getattr(self.app, "ascii_mode", False)
            self.drawing.report = self.state.report

    @property
    def state(self) -> Shown:
        """What is shown just now."""
        assert self.shown is not None
        return self.shown

    @property
    def page(self) -> Any:
        """The page that is open; each page has a report, and can put the focus on a thing."""
        return self.pages.visible_content

    def present(self, shown: Shown) -> None:
        """Show a state everywhere."""
        self.shown = shown
        if self.furnished:
            self.numbers.shown = self.findings.shown = shown
            if self.drawing.report is not shown.report:
                self.drawing.report = shown.report
        if self.page is not None:
            self.page.report = shown.report
        self.show_keys()

    async def open_page(self, step: str) -> None:
        """Open the page of a step; it is made at the first visit."""
        name = f"page-{step}"
        if not self.pages.query_children(f"#{name}"):
            await self.pages.add_content(BY_KEY[step].page_class()(id=name, classes="page"))
            if not self.pages.query_children(f"#{name}"):
                return  # the app is being closed
        with self.app.batch_update():  # what follows from the focus belongs to the same frame
            self.pages.current = name
            self.look = "page"
            self.present(replace(self.state, step=step, seen=self.state.seen | {step}))
            self.focus_page()
            if self.furnished:  # the very first page is painted without waiting for that
                await self.settle()
        self.check_idle()  # which starts the painting that the batch held back

    async def show_place(self, step: str, about: About, section: str = "") -> None:
        """Open a page, or a section of it, put the focus on a thing there and mark it in the drawing."""
        await self.open_page(step)
        self.page.focus_about(about, section)
        self.drawing.marked = about

    def focus_page(self) -> None:
        """Put the focus where work on the page begins, and its top into view."""
        first = getattr(self.page, "focus_first", None)
        if first is not None:
            first()
        else:
            inside = (widget for widget in self.focus_chain if self.page in widget.ancestors)
            self.set_focus(next(inside, None), scroll_visible=False)
        self.page.scroll_home(animate=False, immediate=True)

    async def commit(self) -> None:
        """Take what is being typed on the page, before it is left."""
        take = getattr(self.page, "commit", None)
        if take is not None:
            take()
            await self.settle()

    async def settle(self) -> None:
        """Let messages come up from the page."""
        for _ in range(HOPS):
            await sleep(0)

    def watch_look(self, old: str, new: str) -> None:
        """On a small screen the panel that is looked at stands in front of the page."""
        self.remove_class(f"-look-{old}")
        self.add_class(f"-look-{new}")
        self.show_keys()

    def on_resize(self) -> None:
        """A large screen has other keys than a small one."""
        self.call_after_refresh(self.show_keys)

    def show_keys(self) -> None:
        """Say at the foot what the keys do just now."""
        self.keys.look = "Turn" if self.wide else following(LOOKS, self.look).capitalize()

    @property
    def wide(self) -> bool:
        """Whether everything stands side by side."""
        return self.has_class("-wide")


def following(choices: tuple[str, ...], now: str) -> str:
    """The choice after this one, round and round."""
    return choices[(choices.index(now) + 1) % len(choices)]
