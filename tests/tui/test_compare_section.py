"""Speed against handling on the page Thrusters: other sizes and designs, as a table, plots and a picture."""

from xml.etree import ElementTree

import pytest
from msgspec.structs import replace

from model.compare import compared, standing_of_design
from model.drawing.trade import letter_of, trade_svg, trades
from model.presets import find_preset, load_preset
from model.solve.sweep import size_sweep
from model.survey import survey
from tests.tui.fakes import see
from tui.app import Poolwright
from tui.pages.thrusters_compare import compared_offer, side_by_side, table
from tui.raster.canvas import text_of
from tui.raster.scatter import BEATEN, scatter

WIDTH, HEIGHT = 40, 12


@pytest.fixture(scope="module")
def found():
    """Four starters side by side."""
    names = ("first-afternoon", "flat-and-quick", "long-and-narrow", "tall-and-steady")
    return compared([standing_of_design(load_preset(find_preset("starter", name))) for name in names])


def test_each_design_stands_on_the_plot_where_its_numbers_say(found):
    plot, _ = trades(found)
    lines = text_of(scatter(plot, WIDTH, HEIGHT)).splitlines()
    margin = lines[1].index("|") + 1
    for number, standing in enumerate(found.standings):
        left, right = plot.across.marks[0], plot.across.marks[-1]
        low, high = plot.up.marks[0], plot.up.marks[-1]
        column = round((standing.ahead.value - left) / (right - left) * (WIDTH - 1))
        row = HEIGHT - 1 - round((standing.steadiness - low) / (high - low) * (HEIGHT - 1))
        assert lines[1 + row][margin + column].upper() in (letter_of(number), "+")


def _pair():
    """A starter, and the same one with dearer fittings: as good in everything, and worse in one thing."""
    design = load_preset(find_preset("starter", "flat-and-quick"))
    dear = tuple(fitting.but(price=fitting.price + 1.0) for fitting in design.stock.fittings)
    dearer = design.but(title="The dear one", stock=design.stock.but(fittings=dear))
    found = compared([standing_of_design(each) for each in (design, dearer)])
    assert found.beaten == (None, 0)
    return found


def test_what_is_beaten_is_a_small_letter_with_a_look_of_its_own():
    """Never by grey alone: the letter is small and the sentence names it, here and in the picture."""
    pair = _pair()
    for plot in trades(pair):
        dots = [cell for row in scatter(plot, WIDTH, HEIGHT)[1:-3] for cell in row[1:] if cell[0].strip()]
        assert dots == [("+", "")], "both stand in one place"
        apart = replace(plot, dots=(plot.dots[0], replace(plot.dots[1], up=plot.up.marks[-1])))
        dots = [cell for row in scatter(apart, WIDTH, HEIGHT)[1:-3] for cell in row[1:] if cell[0].strip()]
        assert dots == [("b", BEATEN), ("A", "")]
    rows = side_by_side(pair)
    for row in rows[:8]:
        assert [role for _, role in row] == ["", "", BEATEN]
    assert rows[0][2][0].startswith("b The dear one")
    assert "The dear one is beaten: " in text_of(rows)
    root = ElementTree.fromstring(trade_svg(trades(pair), "pair"))
    space = "{http://www.w3.org/2000/svg}"
    circles = [circle.get("class") for circle in root.findall(f"{space}circle")]
    named = {text.text: text.get("class") for text in root.findall(f"{space}text")}
    assert (named["A"], named["b"]) == (None, "beaten")
    assert any(text.startswith("b The dear one (beaten by") for text in named)
    places = {text.text: float(text.get("x")) for text in root.findall(f"{space}text") if text.text in "Ab"}
    assert abs(places["A"] - places["b"]) >= 3, "both stand in one place; their letters do not"
    assert circles == ["beaten", None, "beaten", None], "what is not beaten lies on top"


def test_sizes_that_are_beaten_are_grey_with_their_letter_and_their_sentence():
    sweep = size_sweep(survey(load_preset(find_preset("demo", "newt"))))
    same = list(sweep.comparison.standings)
    same[4] = replace(same[5], name=same[4].name, cost=same[5].cost + 10)
    sweep = replace(sweep, comparison=compared(same))
    beaten = [number for number, other in enumerate(sweep.comparison.beaten) if other is not None]
    assert beaten == [4]
    rows = table(sweep)
    grey = [text for ((text, role),) in rows if role == BEATEN]
    plain = [text for ((text, role),) in rows if role != BEATEN]
    assert [line.split()[1] for line in grey if line[0] != " "] == [
        sweep.comparison.standings[number].name.split()[0] for number in beaten
    ]
    assert all(line[0].islower() for line in grey if line[0] != " ")
    assert sum("beats it" in line for line in grey) == len(beaten)
    assert not any("beats it" in line for line in plain)


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


def _number_of(page, title):
    """Where a section stands in its row."""
    return [each for each, _ in page.makers()].index(title)


@pytest.mark.parametrize("size", [(80, 24), (120, 40)], ids=["small", "large"])
async def test_sizes_another_design_and_the_picture_by_keyboard(size, tmp_path, monkeypatch):
    monkeypatch.setenv("POOLWRIGHT_STATE", str(tmp_path))
    async with Poolwright("demo").run_test(size=size) as pilot:
        await see(pilot, "Next:")
        screen = pilot.app.screen
        await screen.action_go("thrusters")
        section = await screen.page.open_section(_number_of(screen.page, "Compare"))
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
        section.query_one("#act-picture").action_press()
        await see(pilot, "Written:")
        (picture,) = tmp_path.glob("**/*trade.svg")
        ElementTree.fromstring(picture.read_text())


async def test_grey_is_another_colour_than_the_rest(tmp_path, monkeypatch):
    monkeypatch.setenv("POOLWRIGHT_STATE", str(tmp_path))
    async with Poolwright("demo").run_test(size=(120, 40)) as pilot:
        await see(pilot, "Next:")
        await pilot.app.screen.action_go("thrusters")
        page = pilot.app.screen.page
        section = await page.open_section(_number_of(page, "Compare"))
        pair = _pair()
        rows = side_by_side(pair)
        assert max(map(len, text_of(rows[:10]).splitlines())) <= 56, "it fits the page"
        section._offered(compared_offer(rows, pair))
        await see(pilot, "The dear one is beaten")
        note = section.query_one(".note")
        pieces = [piece for piece in note.render_line(0) if piece.text.strip()]
        mine, grey = (
            next(sum(piece.style.color.triplet) for piece in pieces if name in piece.text)
            for name in ("A Flat", "b The dear")
        )
        assert grey < 0.75 * mine, "on the dark ground it is clearly darker"
        assert grey > 0.5 * mine, "and still legible"
