"""The screen around the pages, with pages of our own."""

import asyncio

import pytest
from textual.widgets import Input

from tests.tui.fakes import FakePage, screen_text, see, until
from tui.app import Poolwright
from tui.steps import STEPS, Step

SIZES = [(80, 24), (120, 40)]


@pytest.fixture(autouse=True)
def fake_pages(monkeypatch):
    monkeypatch.setattr(Step, "page_class", lambda step: FakePage)


@pytest.mark.parametrize("size", SIZES)
async def test_a_file_opens_and_the_next_thing_is_said(box_file, size):
    async with Poolwright(str(box_file)).run_test(size=size) as pilot:
        await see(pilot, "Next: F9 opens the next step, Stock.")
        text = screen_text(pilot.app)
        assert "Bare box" in text
        assert "F10 Quit" in text
        assert "of " in text.splitlines()[0], "what is spent is always in sight"


@pytest.mark.parametrize("size", SIZES)
async def test_the_foot_of_the_screen_holds_seven_keys_at_most_and_all_of_them_whole(box_file, size):
    from tui.actions import FOOTER

    assert len(FOOTER) <= 7
    async with Poolwright(str(box_file)).run_test(size=size) as pilot:
        await see(pilot, "F12 More")
        for _ in range(4):
            assert "F12 More" in screen_text(pilot.app).splitlines()[-1]
            await pilot.press("f4")


async def test_a_refused_edit_is_said_in_one_sentence_and_changes_nothing(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        session = pilot.app.screen.session
        before = session.design
        pilot.app.screen.query_one(Input).value = ""
        await pilot.press("enter")
        await see(pilot, "Title must not be empty")
        assert session.design is before
        assert pilot.app.screen.query_one(Input).value == "Bare box", "the field is put right again"


async def test_an_edit_is_undone_and_done_again(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        await pilot.press("end", "x", "enter")
        await see(pilot, "Poolwright: Bare boxx")
        await pilot.press("f2")
        await see(pilot, "Taken back: title Bare boxx.")
        assert pilot.app.screen.session.design.title == "Bare box"
        await pilot.press("f14")
        await see(pilot, "Done again: title Bare boxx.")
        await until(pilot, lambda: 'title = "Bare boxx"' in box_file.read_text(), "the saved file")


async def test_what_cannot_be_done_is_dimmed(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        assert {"undo", "redo", "step_before"} <= pilot.app.screen.dimmed()
        await pilot.press("f2")
        assert pilot.app.screen.session.history.past == ()
        await pilot.press("end", "x", "enter")
        assert "undo" not in pilot.app.screen.keys.dimmed


async def test_every_step_can_be_reached_with_one_key_each_way(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        for step in STEPS[1:]:
            await pilot.press("f9")
            await see(pilot, f"The page page-{step.key}")
        for step in reversed(STEPS[:-1]):
            await pilot.press("f8")
            await see(pilot, f"The page page-{step.key}")


async def test_a_click_on_a_step_opens_it(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        bar = screen_text(pilot.app).splitlines()[1]
        await pilot.click(offset=(bar.index("Fitt") + 2, 1))
        await see(pilot, "The page page-fittings")


async def test_a_click_on_a_key_does_what_the_key_does(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        await pilot.click(offset=(screen_text(pilot.app).splitlines()[-1].index("Next step"), 23))
        await see(pilot, "The page page-stock")


async def test_on_a_small_screen_one_key_brings_each_panel(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "The page page-brief")
        for panel, text in (
            ("drawing", "Front:"),
            ("findings", "Findings of this step"),
            ("numbers", "Trim"),
        ):
            await pilot.press("f4")
            await see(pilot, text)
            assert pilot.app.screen.look == panel
            assert "The page page-brief" not in screen_text(pilot.app)
        await pilot.press("f4")
        await see(pilot, "The page page-brief")


@pytest.fixture
def coach_may_begin(monkeypatch):
    """The coach, who works in a thread, waits for this."""
    gate = asyncio.Event()

    async def later(work, *given):
        await gate.wait()
        return await asyncio.to_thread(work, *given)

    monkeypatch.setattr("tui.screens.session.to_thread", later)
    return gate


@pytest.mark.parametrize(
    ("keys", "text"),
    [
        (("f4",), "Front:"),
        (("f4", "f4"), "Findings of this step"),
        (("f1",), "What the fake page is for."),
        (("f3",), "The page page-thrusters"),
        (("f5",), "Nothing to fix on this step"),
        (("f12",), "Type a part of the name"),
    ],
)
async def test_a_key_pressed_before_the_panels_are_there_is_done_when_they_are(
    box_file, coach_may_begin, keys, text
):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "The page page-brief")
        await pilot.press(*keys)
        assert text not in screen_text(pilot.app)
        coach_may_begin.set()
        await see(pilot, text)


async def test_on_a_large_screen_everything_stands_side_by_side(box_file):
    async with Poolwright(str(box_file)).run_test(size=(120, 40)) as pilot:
        for text in ("The page page-brief", "Front:", "Findings of this step", "Trim", "Next:"):
            await see(pilot, text)
        await pilot.press("f4")
        await see(pilot, "Top:")


async def test_a_window_that_is_too_small_says_so_and_recovers(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        for size in ((59, 24), (80, 19)):
            await pilot.resize_terminal(*size)
            await see(pilot, "too small")
        await pilot.resize_terminal(60, 20)
        await see(pilot, "Next:")
        await pilot.resize_terminal(120, 40)
        await see(pilot, "Findings of this step")


async def test_the_page_scrolls_with_the_keyboard(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "line 3")
        await pilot.press("pagedown")
        await see(pilot, "line 20")
        await pilot.press("pageup")
        await see(pilot, "The page page-brief")


async def test_the_remedy_of_a_finding_takes_one_key_and_one_undo(box_file):
    async with Poolwright(str(box_file)).run_test(size=(120, 40)) as pilot:
        await see(pilot, "Next:")
        pilot.app.screen.action_everywhere()
        await see(pilot, " remedy: ")
        session = pilot.app.screen.session
        finding = next(f for f in pilot.app.screen.findings.findings if pilot.app.screen.state.remedy(f))
        pilot.app.screen.findings.highlighted = pilot.app.screen.findings.findings.index(finding)
        await pilot.press("f5")
        await see(pilot, "Done:")
        assert finding.key not in {other.key for other in session.report.findings}
        assert len(session.history.past) == 1
        await pilot.press("f2")
        assert finding.key in {other.key for other in session.report.findings}


async def test_the_place_of_a_finding_is_shown(box_file):
    async with Poolwright(str(box_file)).run_test(size=(120, 40)) as pilot:
        await see(pilot, "Next:")
        pilot.app.screen.action_everywhere()
        await see(pilot, "Findings of every step")
        finding = pilot.app.screen.findings.chosen
        await pilot.press("enter")
        await see(pilot, f"The page page-{finding.step}")
        assert pilot.app.screen.page.about == finding.about
        assert pilot.app.screen.drawing.marked == finding.about


async def test_help_tells_what_the_page_is_for_and_every_key(box_file):
    async with Poolwright(str(box_file)).run_test(size=(120, 40)) as pilot:
        await see(pilot, "Next:")
        await pilot.press("f1")
        await see(pilot, "What the fake page is for.")
        await see(pilot, "Take the last change back.")
        await pilot.press("escape")
        await see(pilot, "The page page-brief")


async def test_any_action_is_found_by_a_part_of_its_name(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        await pilot.press("f12")
        await see(pilot, "Type a part of the name")
        await pilot.press(*"go to mon", "enter")
        await see(pilot, "The page page-money")


async def test_ascii_mode_leaves_nothing_but_ascii(box_file, monkeypatch):
    monkeypatch.setenv("POOLWRIGHT_ASCII", "1")
    async with Poolwright(str(box_file)).run_test(size=(120, 40)) as pilot:
        await see(pilot, "Next:")
        assert screen_text(pilot.app).isascii()
        assert "[BriefY]" in screen_text(pilot.app)


async def test_without_colour_the_states_are_still_there(box_file, monkeypatch):
    monkeypatch.setenv("NO_COLOR", "1")
    async with Poolwright(str(box_file)).run_test(size=(120, 40)) as pilot:
        await see(pilot, "MUST" if "MUST" in screen_text(pilot.app) else "Next:")
        assert "!" in screen_text(pilot.app).splitlines()[1]


async def test_text_from_people_is_not_taken_for_markup(box_file):
    async with Poolwright(str(box_file)).run_test(size=(120, 40)) as pilot:
        await see(pilot, "Next:")
        pilot.app.screen.change("[bold]x[/y]", lambda design: design.but(title="3 [mm] [/x]"))
        await see(pilot, "Poolwright: 3 [mm] [/x]")
        await see(pilot, "Done: [bold]x[/y].")


async def test_what_must_be_fixed_on_the_open_page_comes_first(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next: F9 opens the next step, Stock.")
        await pilot.app.screen.action_go("holes")
        await see(pilot, "F5 takes this remedy")
        before = len(pilot.app.screen.session.report.musts)
        await pilot.press("f5")
        await see(pilot, "Done:")
        assert len(pilot.app.screen.session.report.musts) < before
        await see(pilot, "Next: F3 opens a step not seen yet, Stock.")
