"""What all pages share: why it matters, cautions, sections that are mounted when first opened."""

from __future__ import annotations

from textwrap import wrap
from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.geometry import Size
from textual.reactive import reactive
from textual.widget import Widget
from textual.widgets import Static

from tui.forms.bar_of_sections import SectionBar
from tui.forms.form import Form
from tui.forms.section import Section
from tui.forms.sight import reveal

if TYPE_CHECKING:
    from collections.abc import Callable

    from textual.events import DescendantFocus

    from model.coach.finding import About
    from model.review import Report


REST = " ... F1: all"


def fitted(text: str, width: int, lines: int) -> list[str]:
    """The lines of a text; where it needs more than there are, the last one says where the rest is.

    >>> fitted("Saw ten pieces and measure them all.", 24, 1)
    ['Saw ten ... F1: all']
    """
    whole = wrap(text, max(width, len(REST) + 1)) or [""]
    if len(whole) <= lines:
        return whole
    kept = whole[lines - 1]
    while len(kept) + len(REST) > width and " " in kept:
        kept = kept.rpartition(" ")[0]
    return [*whole[: lines - 1], kept + REST]


class Caution(Widget, can_focus=True):
    """Safety: its beginning; all of it after a click or Enter, and under F1.

    Args:
        text: one line of it is shown on a small screen, two on a tall one.
    """

    DEFAULT_CSS = """
    Caution { height: auto; color: $text-warning; }
    Caution:focus { text-style: bold reverse; }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter,space", "open", "Open", id="caution.open", show=False, tooltip="All of the cautions")
    ]
    open: reactive[bool] = reactive(False, layout=True)

    def __init__(self, text: str) -> None:
        self.text = f"SAFETY {text}"
        super().__init__()

    def render(self) -> Content:
        """Its beginning, which says where the rest is, or everything."""
        return Content("\n".join(self._lines(self.size.width)))

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """As many lines as are shown."""
        return len(self._lines(width))

    def _lines(self, width: int) -> list[str]:
        few = 2 if self.screen.has_class("-tall") else 1
        return fitted(self.text, width, len(self.text) if self.open else few)

    def action_open(self) -> None:
        """All of it, or its beginning again."""
        self.open = not self.open

    def on_click(self) -> None:
        """A click shows all of it, or its beginning again."""
        self.action_open()


class FieldHelp(Widget):
    """What the field that has the focus is for, in the lines that there are."""

    words: reactive[str] = reactive("")

    def render(self) -> Content:
        """All of it, or as much as fits."""
        return Content("\n".join(fitted(self.words, self.size.width, max(1, self.size.height))))


class Page(VerticalScroll, can_focus=False):
    """A page of the session.

    Attributes:
        WHY: two or three plain sentences: why this step matters.
        SAFETY: cautions for the work that this page plans, or "".
        HELP: what F1 shows above the keys.
    """

    DEFAULT_CSS = """
    Page > .lead { height: auto; }
    Page > #sections { height: auto; }
    Page > #foot { dock: bottom; height: auto; background: $background; }
    Page #field-help { height: 2; color: $text-muted; }
    .-tall Page #field-help { height: 3; }
    Page SectionBar { margin-top: 0; }
    """
    WHY: ClassVar[str] = ""
    SAFETY: ClassVar[str] = ""
    HELP: ClassVar[str] = ""
    TIP: ClassVar[str] = "Tab goes on, Shift+Tab goes back, Enter takes what you typed."
    report: reactive[Report | None] = reactive(None, repaint=False)

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """The title of each section, and what makes it."""
        raise NotImplementedError

    def compose(self) -> ComposeResult:
        """Why, the row of sections, the open section; at the foot safety and the line of help."""
        self._makers = self.makers()
        self._made: dict[int, Section] = {}
        self._open = 0
        yield Static(self.WHY, markup=False, classes="lead")
        if len(self._makers) > 1:
            yield SectionBar(tuple(title for title, _ in self._makers))
        first = self._makers[0][1]()
        self._made[0] = first
        with Vertical(id="sections"):
            yield first
        with Vertical(id="foot"):
            if self.SAFETY:
                yield Caution(self.SAFETY)
            yield FieldHelp(id="field-help")

    @property
    def section(self) -> Section:
        """The open section."""
        return self._made[self._open]

    def watch_report(self, report: Report | None) -> None:
        """Show the report in the open section; the others are told when they are opened."""
        if report is not None and self.is_mounted:
            self.section.show(report)

    def on_mount(self) -> None:
        """Show what was assigned before."""
        if self.report is not None:
            self.section.show(self.report)

    def refresh_fields(self) -> None:
        """Put back what the design has, after an edit was refused."""
        self.section.repaint()

    def on_section_bar_turned(self, event: SectionBar.Turned) -> None:
        """Open another section."""
        event.stop()
        self.call_later(self.open_section, event.number)

    def on_section_bar_entered(self, event: SectionBar.Entered) -> None:
        """Go into the open section."""
        event.stop()
        self.section.focus_first()

    async def open_section(self, number: int) -> Section:
        """Open a section; it is made at the first visit."""
        for bar in self.query(SectionBar):
            bar.open = number
            bar.refresh(layout=True)
        if number not in self._made:
            self._made[number] = self._makers[number][1]()
            await self.query_one("#sections").mount(self._made[number])
        for each, section in self._made.items():
            section.display = each == number
        self._open = number
        if self.report is not None:
            self.section.show(self.report)
        return self.section

    def focus_first(self) -> None:
        """Put the focus on the first field."""
        self.section.focus_first()

    async def turn_to(self, title: str) -> None:
        """Open the section of a title and go into it."""
        titles = [each for each, _ in self._makers]
        if title in titles:
            (await self.open_section(titles.index(title))).focus_first()

    def focus_about(self, about: About, section: str = "") -> None:
        """Put the focus on what a finding is about, in the section of a title where one is named."""
        self.call_later(self._focus_about, about, section)

    async def _focus_about(self, about: About, title: str) -> None:
        report = self.report
        numbers = range(len(self._makers)) if report is not None else ()
        for number in numbers:
            named, maker = self._makers[number]
            if title and named != title:
                continue
            section = self._made.get(number) or maker()
            if title or (report is not None and section.finds(report, about)):
                section = await self.open_section(number)
                section.point_at(about)
                return
        self.focus_first()

    def commit(self) -> None:
        """Take what is being typed, as if the field had been left."""
        for form in self.query(Form):
            for row in form.rows:
                row.commit(leaving=True)

    def on_descendant_focus(self, event: DescendantFocus) -> None:
        """Say at the foot what the field is for, or what the keys of a table do."""
        self._tell(event.widget)
        self.scroll_to_widget(event.widget, animate=False)  # Textual takes what the foot hides for seen

    def on_form_shown(self, event: Form.Shown) -> None:
        """What the field is for may be something else now."""
        event.stop()
        focused = self.screen.focused
        if focused is not None and self in focused.ancestors:
            self._tell(focused)

    def _tell(self, widget: Widget) -> None:
        self.query_one(FieldHelp).words = self.help_of(widget)

    def help_of(self, widget: Widget | None) -> str:
        """What a field is for, or what the keys do there."""
        return (self.section.help_of(widget) if widget is not None else "") or self.TIP

    def watch_virtual_size(self, before: Size, now: Size) -> None:
        """What is worked on stays in sight when lines come or go above or below it."""
        if before.height != now.height:
            focused = self.screen.focused
            if focused is not None and self in focused.ancestors:
                reveal(focused)
