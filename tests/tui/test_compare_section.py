"""Speed against handling on the page Thrusters: other sizes and designs, as a table, plots and a picture."""

from xml.etree import ElementTree

import pytest

from model.compare import compared, standing_of_design
from model.drawing.trade import letter_of, trade_svg, trades
from model.presets import find_preset, load_preset
from tests.tui.fakes import see
from tui.app import Poolwright
from tui.raster.scatter import scatter

WIDTH, HEIGHT = 40, 12


@pytest.fixture(scope="module")
def found():
    """Four starters side by side."""
    names = ("first-afternoon", "flat-and-quick", "long-and-narrow", "tall-and-steady")
    return compared([standing_of_design(load_preset(find_preset("starter", name))) for name in names])


def test_each_design_stands_on_the_plot_where_its_numbers_say(found):
    plot, _ = trades(found)
    lines = scatter(plot, WIDTH, HEIGHT)
    margin = lines[1].index("|") + 1
    for number, standing in enumerate(found.standings):
        left, right = plot.across.marks[0], plot.across.marks[-1]
        low, high = plot.up.marks[0], plot.up.marks[-1]
        column = round((standing.ahead.value - left) / (right - left) * (WIDTH - 1))
        row = HEIGHT - 1 - round((standing.steadiness - low) / (high - low) * (HEIGHT - 1))
        assert lines[1 + row][margin + column].upper() in (letter_of(number), "+")


def test_the_axes_hold_every_design_between_round_numbers(found):
    for plot in trades(found):
        for axis, values in (
            (plot.across, [dot.across for dot in plot.dots]),
            (plot.up, [dot.up for dot in plot.dots]),
        ):
            assert axis.marks[0] <= min(values) <= max(values) <= axis.marks[-1]
            steps = {round(b - a, 9) for a, b in zip(axis.marks, axis.marks[1:], strict=False)}
            (step,) = steps
            assert f"{step:e}"[0] in "125"


def test_designs_without_a_motor_have_no_plot():
    bare = load_preset(find_preset("starter", "flat-and-quick"))
    bare = bare.but(arrangements=(bare.arrangement.but(thrusters=()),))
    assert trades(compared([standing_of_design(bare)])) == ()


def test_the_picture_is_svg_with_a_dot_for_each_design_and_names_cannot_break_it(found):
    named = compared([*found.standings[:-1], standing_of_design(_renamed("a <b> & \x07c"))])
    root = ElementTree.fromstring(trade_svg(trades(named), "speed < & handling"))
    space = "{http://www.w3.org/2000/svg}"
    circles = root.findall(f"{space}circle")
    assert len(circles) == 2 * len(named.standings)
    assert any("a <b> & c" in (text.text or "") for text in root.findall(f"{space}text"))


def _renamed(title):
    design = load_preset(find_preset("starter", "tall-and-steady"))
    return design.but(title=title)


@pytest.mark.parametrize("size", [(80, 24), (120, 40)], ids=["small", "large"])
async def test_sizes_another_design_and_the_picture_by_keyboard(size, tmp_path, monkeypatch):
    monkeypatch.setenv("POOLWRIGHT_STATE", str(tmp_path))
    async with Poolwright("demo").run_test(size=size) as pilot:
        await see(pilot, "Next:")
        screen = pilot.app.screen
        await screen.action_go("thrusters")
        section = await screen.page.open_section(3)
        section.focus_first()
        await pilot.pause()
        await pilot.press("enter")
        await see(pilot, "turn s")
        assert "100 %" in section.offer.words
        table = section.offer.words.split("\n\n")[0].splitlines()
        assert max(map(len, table)) <= 56, "it fits the page of a screen of 120 columns"
        await pilot.press("tab", "enter")
        await see(pilot, "Compare with which design?")
        await pilot.press("f", "enter")
        await see(pilot, "can be built")
        assert "B First afternoon" in section.offer.words
        section.query_one("#act-picture").press()
        await see(pilot, "Written:")
        (picture,) = tmp_path.glob("**/*trade.svg")
        ElementTree.fromstring(picture.read_text())
