"""Form fields: every way to write a length, what is refused, what undo repaints."""

import pytest
from textual.widgets import Input

from model.design import edits
from model.design.edits import Ref
from model.errors import LengthError
from model.review import review
from tests.model.edits_designs import rectangle
from tests.tui.pages_app import PageApp, demo, opened, typed
from tui.ascii import plain_text
from tui.forms.choice import Choice
from tui.forms.kinds import length_text, read_count, read_sizes, show_sizes
from tui.forms.pick import Pick
from tui.pages.layout_planes import remove_plane

PUSH_IN = "pipe-insertion"


async def on_pipe(app: PageApp, pilot) -> Input:
    await opened(app, pilot, "Pipe")
    return app.field(PUSH_IN)


@pytest.mark.parametrize(
    ("units", "text", "metres"),
    [
        ("mm", "13", 0.013),
        ("mm", "13 mm", 0.013),
        ("mm", "1,3 cm", 0.013),
        ("mm", "1.3cm", 0.013),
        ("mm", "13,5", 0.0135),
        ("mm", "9/16", 9 / 16 * 0.0254),
        ("in", "9/16", 9 / 16 * 0.0254),
        ("in", '1-1/16"', 17 / 16 * 0.0254),
        ("in", "1 1/16", 17 / 16 * 0.0254),
        ("in", "14 mm", 0.014),
        ("in", "0.5", 0.0127),
    ],
)
async def test_a_length_is_taken_however_it_is_written(units, text, metres):
    app = PageApp("stock", edits.use_units(demo(), units))
    async with app.run_test(size=(78, 18)) as pilot:
        await typed(pilot, await on_pipe(app, pilot), text, "enter")
        assert app.design.stock.pipes[0].insertion == pytest.approx(metres, abs=1e-9)
        assert app.row(PUSH_IN).refusal == ""


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("abc", "'abc' cannot be read; write it like 86"),
        ("12 furlong", "the units are"),
        ("1,234", "could be"),
        ("-5", "Push-in depth: found -5 mm; expected 0 mm to 10 m"),
        ("3 9/8", "fraction"),
        ("", "There is nothing here"),
    ],
)
async def test_a_bad_length_gets_one_sentence_and_the_old_value_stays(text, words):
    before = demo()
    app = PageApp("stock", before)
    async with app.run_test(size=(78, 18)) as pilot:
        field = await on_pipe(app, pilot)
        old = field.value
        await typed(pilot, field, text, "enter")
        row = app.row(PUSH_IN)
        assert words in row.refusal
        assert words[:8] in app.text()
        assert field.value == text, "what was typed is lost before the field was left"
        assert app.design == before
        await pilot.press("tab")
        await pilot.pause()
        assert field.value == old
        assert row.refusal.endswith(f". It is still {old}.")
        await typed(pilot, field, "11", "enter")
        assert row.refusal == ""
        assert app.design.stock.pipes[0].insertion == 0.011


async def test_leaving_a_field_takes_what_was_typed():
    app = PageApp("stock", demo())
    async with app.run_test(size=(78, 18)) as pilot:
        await typed(pilot, await on_pipe(app, pilot), "11,5", "tab")
        assert app.design.stock.pipes[0].insertion == 0.0115
        assert app.labels == ["20 mm pipe, push-in depth: 11,5 mm"]


async def test_undo_repaints_and_asks_for_nothing():
    app = PageApp("stock", demo())
    async with app.run_test(size=(78, 18)) as pilot:
        field = await on_pipe(app, pilot)
        old = field.value
        await typed(pilot, field, "12", "enter")
        await typed(pilot, field, "13", "enter", "f2")
        assert field.value == "12"
        await pilot.press("f2")
        await pilot.pause()
        assert field.value == old
        await pilot.press("tab", "tab")
        assert app.design == demo()
        assert len(app.labels) == 2


async def test_what_is_being_typed_outlives_a_change_elsewhere():
    app = PageApp("stock", demo())
    async with app.run_test(size=(78, 18)) as pilot:
        field = await on_pipe(app, pilot)
        await typed(pilot, field, "12 m")
        app.present(edits.set_field(app.design, Ref("brief"), "title", "another"))
        await pilot.pause()
        assert field.value == "12 m"
        await pilot.press("m", "enter")
        assert app.design.stock.pipes[0].insertion == 0.012
        assert app.design.brief.title == "another"


async def test_an_empty_optional_rule_is_off():
    app = PageApp("brief", demo())
    async with app.run_test(size=(78, 18)) as pilot:
        await typed(pilot, app.field("brief-size_limit"), "50 x 40,5 x 30 cm", "enter")
        assert app.design.brief.size_limit == (0.5, 0.405, 0.3)
        assert app.field("brief-size_limit").value == "500 x 405 x 300"
        await typed(pilot, app.field("brief-size_limit"), "", "tab")
        await typed(pilot, app.field("brief-spending_limit"), "", "enter")
        assert app.design.brief.size_limit is None
        assert app.design.brief.spending_limit is None


async def test_the_ways_it_may_lie_are_ticked():
    app = PageApp("brief", rectangle())
    async with app.run_test(size=(78, 18)) as pilot:
        await opened(app, pilot, "Water")
        app.row("brief-attitudes").editor.focus()
        await pilot.press("space", *["right"] * 5, "space")
        await pilot.pause()
        assert app.design.brief.attitudes == ("level", "upside down")
        assert "[x] upside down" in app.text()


async def test_boxes_and_choices_by_keyboard():
    app = PageApp("brief", rectangle())
    async with app.run_test(size=(78, 18)) as pilot:
        app.row("brief-moves").editor.focus()
        await pilot.press("space", "right", "right", "space")
        await pilot.pause()
        assert app.design.brief.moves == ("ahead", "up")
        assert "[x] ahead" in app.text()
        assert "[ ] astern" in app.text()
        app.field("design-units").focus()
        await pilot.press("right")
        await pilot.pause()
        assert app.design.units == "in"
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, Pick)
        await pilot.press("m", "enter")
        await pilot.pause()
        assert app.design.units == "mm"
        choice = app.field("design-units")
        assert isinstance(choice, Choice)
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("escape")
        assert app.design.units == "mm"


async def test_a_long_text_keeps_its_lines():
    app = PageApp("brief", rectangle())
    async with app.run_test(size=(78, 18)) as pilot:
        await opened(app, pilot, "Task")
        app.field("brief-task").focus()
        await pilot.press("a", "enter", "b", "tab")
        await pilot.pause()
        assert app.design.brief.task == "a\nb"


@pytest.mark.parametrize(
    ("text", "unit", "expected"),
    [
        ("500 x 400 x 300", "mm", (0.5, 0.4, 0.3)),
        ("50x40x30cm", "mm", (0.5, 0.4, 0.3)),
        ("20 X 15 1/2 × 12", "in", (0.508, 15.5 * 0.0254, 0.3048)),
        ("20 in by 40 cm by 300 mm", "mm", (0.508, 0.4, 0.3)),
    ],
)
def test_three_lengths_at_once(text, unit, expected):
    assert read_sizes(text, unit) == pytest.approx(expected, abs=1e-9)
    assert read_sizes(show_sizes(expected, unit), unit) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("text", ["500 x 400", "500", "1 x 2 x 3 x 4", "500 x 15 1/2 x 300"])
def test_three_lengths_that_are_not_clear_are_refused(text):
    with pytest.raises(LengthError):
        read_sizes(text, "mm")


@pytest.mark.parametrize(
    ("metres", "unit", "text"),
    [
        (0.3, "mm", "300"),
        (0.3, "in", "300 mm"),
        (0.085725, "in", "3 3/8"),
        (0.085725, "mm", "3 3/8 in"),
        (0.0123, "mm", "12.3"),
        (0.01234, "mm", "12.34"),
    ],
)
def test_a_length_stands_in_the_unit_in_which_it_comes_out_even(metres, unit, text):
    assert length_text(metres, unit) == text


def test_a_count_is_whole():
    assert read_count("3") == 3
    with pytest.raises(LengthError, match="whole number"):
        read_count("2.5")


async def test_esc_brings_back_what_stood_there_and_stays_in_the_field():
    app = PageApp("stock", demo())
    async with app.run_test(size=(78, 18)) as pilot:
        field = await on_pipe(app, pilot)
        old = field.value
        for text, keys in (("9", ()), ("ab", ("enter",))):
            await typed(pilot, field, text, *keys)
            assert bool(app.row(PUSH_IN).refusal) == bool(keys)
            await pilot.press("escape")
            await pilot.pause()
            assert field.value == old
            assert app.focused is field
            assert app.row(PUSH_IN).refusal == ""
        await pilot.press("tab")
        await pilot.pause()
        assert app.design == demo()
        assert app.labels == []


async def test_no_label_of_a_change_says_a_word_twice():
    app = PageApp("layout", demo())
    async with app.run_test(size=(78, 40)) as pilot:
        section = await opened(app, pilot, "Bars")
        assert section is app.page.section
        await typed(pilot, app.field("bar-sawn"), "200", "enter")
        assert app.labels[-1].endswith(", already sawn to: 200 mm")
    station = demo().arrangement.stations[0]
    named = edits.set_field(demo(), Ref("station", station.id), "name", "station 7")
    assert remove_plane(review(named), f"station:{station.id}")[0] == "station 7 removed"


def test_newton_metres_are_one_unit_also_in_plain_ascii():
    assert plain_text("steady: 0.123 N·m") == "steady: 0.123 N m"
