"""What is typed, and the sentence that refuses it, are on the screen: every field of every page."""

import pytest
from textual.widget import Widget

from model.errors import PoolwrightError
from tests.tui.pages_app import PAGES, SIZES, PageApp, demo, opened
from tui.forms.entry import Entry
from tui.forms.items import ItemTable
from tui.forms.kinds import Typed
from tui.pages.page import FieldHelp

WRONG = ("1 x 2 x", "-5", "")


def wrong_for(entry: Entry, report) -> str | None:
    """A text that the field refuses; None where it takes any."""
    for text in WRONG if isinstance(entry.kind, Typed) and not entry.kind.long else ():
        if entry.optional and not text:
            continue
        try:
            value = entry.kind.read(text, report.design.units)
            limits = entry.allowed(report)
            if limits and not limits.hold(value):
                return text
            entry.edit(value)(report.design)
        except PoolwrightError:
            return text
    return None


def in_sight(app: PageApp, widget: Widget, below: int = 0) -> bool:
    """Whether a widget and some lines below it stand between the top of the page and its foot."""
    top, foot = app.page.region.y, app.page.query_one("#foot").region.y
    return top <= widget.region.y and widget.region.bottom + below <= foot


async def each_form(app: PageApp, pilot):
    """Each section is opened, and each row of its table that brings other fields is chosen."""
    for number in range(len(app.page.makers())):
        section = await app.page.open_section(number)
        await pilot.pause()
        known = set()
        tables = [table for table in section.query(ItemTable) if table.shown]
        for place, row in enumerate(tables[0].shown if tables else ("",)):
            if tables:
                fields = tuple(each.label for each in section.listing.entries(app.report, row.key))
                if fields in known:
                    continue
                known.add(fields)
                tables[0].focus()
                tables[0].move_cursor(row=place)
                await pilot.pause()
            yield


@pytest.mark.parametrize("key", PAGES)
async def test_the_field_and_its_refusal_are_in_sight(key):
    app = PageApp(key, demo())
    tried = 0
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        async for _ in each_form(app, pilot):
            for row in app.rows:
                text = wrong_for(row.entry, app.report)
                if text is None:
                    continue
                row.editor.focus()
                await pilot.pause()
                help_ = app.page.query_one(FieldHelp)
                told = " ".join(str(help_.render()).split())
                assert help_.region.height == 2
                assert told == row.help or (len(row.help) > 150 and told.endswith("F1: all")), app.text()
                row.editor.value = text
                await pilot.press("enter")
                await pilot.pause()
                tried += 1
                lines = row.editor.styles.margin.bottom
                assert lines, row.entry.label
                assert in_sight(app, row.editor, lines), f"{row.entry.label}\n{app.text()}"
                assert row.refusal.split()[-1] in app.text(), app.text()
    assert tried


@pytest.mark.parametrize("text", ["58mm", "abc", ""])
async def test_what_the_ruler_said_stays_in_sight_whatever_was_typed(text):
    app = PageApp("stock", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, "Measure")
        table = app.page.section.query_one(ItemTable)
        table.focus()
        wanted = next(n for n, row in enumerate(table.shown) if row.cells[0] == "tee: face to face")
        await pilot.press(*["down"] * wanted, "enter")
        await pilot.pause()
        for letter in text:
            await pilot.press(letter)
            assert in_sight(app, app.field("measured-length")), app.text()
        await pilot.press("enter")
        await pilot.pause()
        assert in_sight(app, app.field("measured-length"), bool(app.row("measured-length").refusal)), (
            app.text()
        )
        assert ("58" in app.text()) == (text == "58mm")
