"""What is worked out on request: floats that lie level and holes that let the air out, by keyboard."""

import asyncio

import pytest
from textual.widgets import Input, Static

from model.design import Opening
from model.survey import survey
from tests.tui.fakes import until
from tests.tui.pages_app import SIZES, PageApp, demo, typed
from tui.forms.ticks import Ticks


async def worked_out(app, pilot):
    """Wait until the open section has something to say."""
    note = app.page.section.query_one(".note", Static)
    await until(
        pilot, lambda: note.display and not str(note.content).startswith("Working"), "what was worked out"
    )
    return str(note.content)


async def press(app, pilot, button):
    app.page.section.query_one(f"#act-{button}").focus()
    await pilot.press("enter")


@pytest.mark.parametrize("size", SIZES)
async def test_floats_are_worked_out_taken_and_undone(size):
    app = PageApp("floats", demo())
    before = app.design
    async with app.run_test(size=size) as pilot:
        await app.page.open_section(2)
        await press(app, pilot, "solve")
        words = await worked_out(app, pilot)
        assert "It floats up with" in words
        await press(app, pilot, "take")
        await pilot.pause()
        balance = survey(app.design).balance
        assert app.design != before
        assert 0.010 <= balance.spare <= 0.0405
        assert max(abs(balance.pitch), abs(balance.roll)) <= 2.0
        await pilot.press("f2")
        assert app.design == before


async def test_only_ticked_bars_get_foam():
    app = PageApp("floats", demo())
    async with app.run_test(size=SIZES[1]) as pilot:
        await app.page.open_section(2)
        await pilot.pause()
        ticks = app.page.section.query_one("#foam-bars", Ticks)
        for bar in sorted(ticks.ticked):
            ticks.highlighted = ticks.get_option_index(bar)
            ticks.focus()
            await pilot.press("space")
        assert not ticks.ticked
        assert "[x]" not in "".join(str(ticks.get_option(bar).prompt) for bar in ticks.names)
        await press(app, pilot, "solve")
        assert "No proposal: no bar is named that foam may go on" in await worked_out(app, pilot)


async def test_too_little_foam_is_said_and_a_bad_length_is_one_sentence():
    app = PageApp("floats", demo())
    async with app.run_test(size=SIZES[1]) as pilot:
        await app.page.open_section(2)
        field = app.page.section.query_one("#foam-length", Input)
        await typed(pilot, field, "furlong")
        await press(app, pilot, "solve")
        await pilot.pause()
        assert "'furlong' cannot be read" in app.text()
        await typed(pilot, field, "2 cm")
        await press(app, pilot, "solve")
        assert "No proposal: the foam that there is lifts at most" in await worked_out(app, pilot)
        assert app.page.section.query_one("#act-take").disabled


async def test_the_first_focus_is_the_button_that_works_it_out():
    app = PageApp("floats", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await app.page.open_section(2)
        section.focus_first()
        await pilot.pause()
        assert app.focused is section.query_one("#act-solve")
        assert app.focused.label == "Work it out"
        await pilot.press("enter")
        assert "It floats up with" in await worked_out(app, pilot)


async def test_steadiness_tells_lift_swings_and_what_tips_it():
    app = PageApp("floats", demo())
    async with app.run_test(size=(76, 60)) as pilot:
        await app.page.open_section(3)
        await pilot.pause()
        shown = app.text()
        for words in ("give or take", "Trim kit", "One swing in roll", "100 g on the hook", "180°"):
            assert words in shown


@pytest.mark.parametrize("size", SIZES)
async def test_holes_are_worked_out_and_let_the_air_out(size):
    bare = demo().arranged(openings=())
    app = PageApp("holes", bare)
    async with app.run_test(size=size) as pilot:
        await app.page.open_section(1)
        await press(app, pilot, "more")
        assert "new holes" in await worked_out(app, pilot)
        await press(app, pilot, "take")
        await pilot.pause()
        air = survey(app.design).air
        assert app.design.arrangement.openings
        assert max(each.caught.volume for each in air.attitudes) <= 1e-6
        await pilot.press("f2")
        assert app.design == bare


async def test_what_was_worked_out_for_another_design_is_forgotten():
    app = PageApp("holes", demo().arranged(openings=()))
    async with app.run_test(size=SIZES[1]) as pilot:
        await app.page.open_section(1)
        await press(app, pilot, "more")
        await worked_out(app, pilot)
        bar = app.design.arrangement.bars[0].id
        app.present(app.design.arranged(openings=(Opening(id="o", name="o", bar=bar),)))
        await pilot.pause()
        assert app.page.section.query_one("#act-take").disabled


async def test_a_sealed_frame_tells_what_a_leak_does():
    app = PageApp("holes", demo().arranged(openings=(), bores="sealed"))
    async with app.run_test(size=SIZES[1]) as pilot:
        await app.page.open_section(1)
        await asyncio.sleep(0)
        await pilot.pause()
        assert "Sealed for good" in app.text()
        assert "after a leak" in " ".join(app.text().split())
