"""Editing on the drawing itself, with keys and with the mouse, in the whole session."""

import pytest

from tests.tui.fakes import box_design, screen_text, see, until
from tui.actions import ACTIONS
from tui.app import Poolwright
from tui.forms.pick import Pick
from tui.panels.editing import KEYS

SIZES = [(80, 24), (120, 40)]


async def drawing(pilot):
    """The drawing with the focus, on an open design."""
    await see(pilot, "Next:")
    await pilot.app.screen.action_draw()
    await see(pilot, "Enter begins a bar here")
    return pilot.app.screen.drawing


def bars(app):
    return [bar.name for bar in app.screen.session.design.arrangement.bars]


def planes(app, kind):
    return {plane.id: plane for plane in getattr(app.screen.session.design.arrangement, kind)}


@pytest.mark.parametrize("size", SIZES, ids=["small", "large"])
async def test_a_bar_is_taken_away_and_drawn_again_and_the_numbers_go_along(box_file, size):
    async with Poolwright(str(box_file)).run_test(size=size) as pilot:
        panel = await drawing(pilot)
        before, mass = bars(pilot.app), pilot.app.screen.session.report.survey.balance.mass
        left = (
            "left"
            if panel.at[1] == max(planes(pilot.app, "sides").values(), key=lambda p: p.at).id
            else "right"
        )
        await pilot.press("enter", left)
        await see(pilot, "away.")
        await pilot.press("enter")
        await until(pilot, lambda: len(bars(pilot.app)) == len(before) - 1, "a bar less")
        assert pilot.app.screen.session.report.survey.balance.mass < mass
        back = "right" if left == "left" else "left"
        await pilot.press(back)
        await see(pilot, "Enter draws a bar")
        await pilot.press("enter")
        await until(pilot, lambda: len(bars(pilot.app)) == len(before), "the bar again")
        assert pilot.app.screen.session.report.survey.balance.mass == pytest.approx(mass)
        await pilot.press("f2", "f2")
        await until(pilot, lambda: bars(pilot.app) == before, "all undone")
        assert panel.has_focus


async def test_results_stand_under_the_drawing_where_no_panel_shows_them(box_file):
    async with Poolwright(str(box_file)).run_test(size=SIZES[0]) as pilot:
        await drawing(pilot)
        text = screen_text(pilot.app)
        assert KEYS in text
        assert "13 9/16 x 11 1/8 x 14 1/8 in, 1266 g, 35.20 credits, 7 to put right" in text


async def test_planes_are_added_moved_and_removed_with_keys(box_file):
    async with Poolwright(str(box_file)).run_test(size=SIZES[0]) as pilot:
        panel = await drawing(pilot)
        known = set(planes(pilot.app, "levels"))
        await pilot.press("p")
        await until(pilot, lambda: isinstance(pilot.app.screen, Pick), "the question")
        await pilot.press("l", "enter")
        await see(pilot, "Done: level half-way")
        (new,) = set(planes(pilot.app, "levels")) - known
        assert panel.at[2] == new, "the cursor stands on the new plane"
        place = planes(pilot.app, "levels")[new].at
        await pilot.press("g")
        await see(pilot, "Moving planes")
        await pilot.press("up", "up")
        await until(
            pilot,
            lambda: planes(pilot.app, "levels")[new].at == pytest.approx(place + 0.0127),
            "half an inch higher",
        )
        await pilot.press("g", "r")
        await until(pilot, lambda: isinstance(pilot.app.screen, Pick), "the question")
        words = [words for words, _ in pilot.app.screen.options]
        assert [each.split()[0] for each in words] == ["station", "side", "level"]
        assert "bars" in words[0], "it says what goes with it"
        await pilot.press("l", "enter")
        await until(pilot, lambda: set(planes(pilot.app, "levels")) == known, "the plane gone")
        assert panel.at[2] in known


async def test_a_bar_is_split_where_a_plane_crosses_it(box_file):
    async with Poolwright(str(box_file)).run_test(size=SIZES[0]) as pilot:
        await drawing(pilot)
        count = len(bars(pilot.app))
        await pilot.press("s")
        await see(pilot, "! There is a joint here already")
        await pilot.press("p")
        await until(pilot, lambda: isinstance(pilot.app.screen, Pick), "the question")
        await pilot.press("enter")
        await see(pilot, "s splits it")
        await pilot.press("s")
        await until(pilot, lambda: len(bars(pilot.app)) == count + 1, "two bars of one")
        await see(pilot, "coupling. Enter begins")


async def test_what_cannot_be_drawn_is_said_under_the_drawing(box_file):
    async with Poolwright(str(box_file)).run_test(size=SIZES[0]) as pilot:
        panel = await drawing(pilot)
        before = bars(pilot.app)
        await pilot.press("enter", "comma", "full_stop", "left", "right", "up", "down")
        await pilot.press("left", "right", "v", "up", "down", "left", "right")
        assert panel.has_focus
        assert bars(pilot.app) == before
        await pilot.press("escape")
        await until(pilot, lambda: panel.pen is None, "the pen lifted")
        assert pilot.app.screen.look == "drawing", "the first Esc lifts the pen"
        await pilot.press("escape")
        await until(pilot, lambda: pilot.app.screen.look == "page", "the page")


async def test_in_the_oblique_view_the_cursor_is_seen_goes_along_and_draws(box_file):
    async with Poolwright(str(box_file)).run_test(size=SIZES[0]) as pilot:
        panel = await drawing(pilot)
        before, start = bars(pilot.app), panel.at
        panel.view = "oblique"
        await see(pilot, "Shift with them moves the cursor")
        assert "[" in "".join(text for row in panel.rows() for text, role in row if role == "picked")
        await pilot.press("right")
        assert panel.at == start
        await pilot.press("shift+right")
        assert [a == b for a, b in zip(panel.at, start, strict=True)] == [True, False, True]
        await pilot.press("shift+left", "enter", "shift+right", "enter")
        await until(pilot, lambda: len(bars(pilot.app)) == len(before) - 1, "a bar taken away")


async def test_clicks_go_to_a_crossing_put_the_pen_down_and_draw(box_file):
    async with Poolwright(str(box_file)).run_test(size=SIZES[0]) as pilot:
        panel = await drawing(pilot)
        before = bars(pilot.app)
        cells = spots(panel)
        start = panel.at
        end = next(at for at in cells if at[1] != start[1] and at[2] == start[2])
        await pilot.click(panel, offset=cells[end])
        await until(pilot, lambda: panel.at == end, "the cursor there")
        assert panel.pen is None
        await pilot.click(panel, offset=cells[end])
        await until(pilot, lambda: panel.pen == end, "the pen down")
        await pilot.click(panel, offset=cells[start])
        await until(pilot, lambda: len(bars(pilot.app)) == len(before) - 1, "the bar between them gone")


def spots(panel):
    """Where each crossing is on the panel, its border counted, found by its own click map."""
    from tui.raster.drawing import crossing

    found = {}
    width, height = panel.room
    for row in range(height):
        for column in range(width):
            near = crossing(panel._sheet, width, height, column, row)
            if near:
                found.setdefault(near[1], []).append((column, row))
    return {at: sorted(cells)[len(cells) // 2] for at, cells in shifted(found).items()}


def shifted(found):
    return {at: [(column + 1, row + 1) for column, row in cells] for at, cells in found.items()}


async def test_a_bar_is_copied_across_and_a_side_mirrored(box_file):
    async with Poolwright(str(box_file)).run_test(size=SIZES[0]) as pilot:
        panel = await drawing(pilot)
        count = len(bars(pilot.app))
        await pilot.press("c")
        await until(pilot, lambda: isinstance(pilot.app.screen, Pick), "which bar")
        await pilot.press("enter")
        await until(pilot, lambda: not isinstance(pilot.app.screen, Pick), "an answer")
        assert len(bars(pilot.app)) == count, "its twin is there already, which is said"
        await see(pilot, "! ")
        await pilot.press("m")
        await until(pilot, lambda: isinstance(pilot.app.screen, Pick), "which side")
        await pilot.press("enter")
        await until(pilot, lambda: panel.has_focus, "the drawing again")


async def test_from_no_planes_at_all_the_line_says_what_to_press(tmp_path):
    from model.files import save_design

    path = tmp_path / "bare.toml"
    design = box_design()
    empty = design.arrangement.but(
        stations=(),
        sides=(),
        levels=(),
        joints=(),
        bars=(),
        attachments=(),
        plugs=(),
        tether=None,
        power=None,
    )
    save_design(design.but(arrangements=(empty,)), path, None)
    async with Poolwright(str(path)).run_test(size=SIZES[0]) as pilot:
        await see(pilot, "Next:")
        await pilot.app.screen.action_draw()
        await see(pilot, "Press p to add planes")
        for _ in range(3):
            await pilot.press("p")
            await until(pilot, lambda: isinstance(pilot.app.screen, Pick), "which plane")
            words = [words for words, _ in pilot.app.screen.options]
            first = next((n for n, each in enumerate(words) if each.startswith("the first")), 0)
            await pilot.press(*["down"] * first, "enter")
            await until(pilot, lambda: not isinstance(pilot.app.screen, Pick), "an answer")
        await see(pilot, "empty. Enter begins a bar here.")


async def test_help_explains_the_drawing_while_it_has_the_focus(box_file):
    async with Poolwright(str(box_file)).run_test(size=SIZES[0]) as pilot:
        await drawing(pilot)
        await pilot.press("f1")
        await see(pilot, "The drawing is a sheet to draw on.")
        help_text = " ".join(str(each.render()) for each in pilot.app.screen.query("Static"))
        for words in ("third angle", "First angle", "In first angle", "comma", "Split the bar"):
            assert words.lower() in help_text.lower(), words


async def test_first_angle_can_be_reached_from_all_actions_and_is_named(box_file):
    assert any(action.call == "angle" for action in ACTIONS)
    async with Poolwright(str(box_file)).run_test(size=(160, 50)) as pilot:
        await see(pilot, "Next:")
        await pilot.press("f12")
        for letter in "first angle":
            await pilot.press("space" if letter == " " else letter)
        await pilot.press("enter")
        await see(pilot, "Drawing in first angle")
        await see(pilot, "First angle")


async def test_plain_ascii_draws_the_cursor_too(box_file, monkeypatch):
    monkeypatch.setenv("POOLWRIGHT_ASCII", "1")
    async with Poolwright(str(box_file)).run_test(size=SIZES[0]) as pilot:
        panel = await drawing(pilot)
        await pilot.press("enter")
        await until(pilot, lambda: panel.pen is not None, "the pen down")
        await pilot.pause()
        assert screen_text(pilot.app).isascii()
        assert "[&]" in screen_text(pilot.app)


@pytest.mark.parametrize("size", SIZES, ids=["small", "large"])
async def test_a_slanting_bar_is_drawn_on_a_plane_that_the_key_p_offers_for_it(box_file, size):
    """From a lower corner up across the side: the two ways differ, p makes them alike, Enter draws."""
    async with Poolwright(str(box_file)).run_test(size=size) as pilot:
        panel = await drawing(pilot)
        before = len(bars(pilot.app))
        await pilot.press("enter", "right", "left", "up", "right", "enter")
        await see(pilot, "p adds a plane for it.")
        assert len(bars(pilot.app)) == before
        await pilot.press("p", "enter")
        await see(pilot, "at 45 degrees from the pen")
        await see(pilot, "Enter draws a bar")
        begun = panel.pen
        await pilot.press("enter")
        await until(pilot, lambda: len(bars(pilot.app)) > before, "a bar more")
        run = pilot.app.screen.session.design.arrangement
        at = {plane.id: plane.at for group in (run.stations, run.sides, run.levels) for plane in group}
        ways = [abs(at[a] - at[b]) for a, b in zip(begun, panel.at, strict=True) if a != b]
        assert len(ways) == 2
        assert ways[0] == pytest.approx(ways[1])
