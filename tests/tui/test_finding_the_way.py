"""From the list of all actions to a section, from a page to its number, and the help that follows a field."""

import pytest
from msgspec.structs import replace
from textual.widgets import OptionList

from model.explain import quantities
from model.review import review
from tests.tui.fakes import see, until
from tests.tui.pages_app import PageApp, demo, opened
from tui.app import Poolwright
from tui.dialogs.origins import OriginsDialog
from tui.dialogs.palette import Palette
from tui.forms.form import Form
from tui.pages.page import FieldHelp
from tui.places import NUMBERS
from tui.steps import BY_KEY, STEPS


@pytest.mark.parametrize(
    ("typed", "step", "title"), [("gauges", "wires", "Gauges"), ("stock measure", "stock", "Measure")]
)
async def test_a_part_of_the_name_of_a_section_opens_it(typed, step, title):
    app = Poolwright("demo")
    async with app.run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        await pilot.press("f12")
        await until(pilot, lambda: isinstance(app.screen, Palette), "the list of actions")
        await pilot.press(*("space" if letter == " " else letter for letter in typed))
        listed = app.screen.query_one(OptionList)
        assert f"Go to {BY_KEY[step].title} > {title}" in str(listed.get_option_at_index(0).prompt)
        await pilot.press("enter")
        await until(pilot, lambda: getattr(app.screen.page, "section", None) is not None, "the page")
        await until(pilot, lambda: app.screen.page.section.title == title, title)
        assert app.screen.state.step == step
        assert app.screen.page.section in app.screen.focused.ancestors


async def test_every_section_of_every_page_is_in_the_list():
    app = Poolwright("demo")
    async with app.run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        await pilot.press("f12")
        await until(pilot, lambda: isinstance(app.screen, Palette), "the list of actions")
        found = {action.label for action in app.screen.all}
        for step in STEPS:
            titles = [title for title, _ in step.page_class()().makers()]
            assert {f"Go to {step.title} > {title}" for title in titles} <= found
            assert set(NUMBERS[step.key]) - {""} <= set(titles), "a number for a section that is not there"


@pytest.mark.parametrize(
    ("step", "name"), [("floats", "trim at rest"), ("money", "spent"), ("brief", "overall length")]
)
async def test_the_story_begins_with_the_number_of_the_page(step, name):
    app = Poolwright("demo")
    async with app.run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        await app.screen.action_go(step)
        await pilot.press("shift+f1")
        await until(pilot, lambda: isinstance(app.screen, OriginsDialog), "the numbers")
        await pilot.pause()
        listed = app.screen.query_one(OptionList)
        assert app.screen.quantities[listed.highlighted].name == name


def test_each_page_has_a_number_of_the_demo():
    names = [each.name for each in quantities(review(demo()).survey)]
    starts = [start for numbers in NUMBERS.values() for start in numbers.values()]
    assert all(any(name.startswith(start) for name in names) for start in starts)
    assert NUMBERS.keys() == BY_KEY.keys()


async def test_the_help_at_the_foot_follows_what_the_field_is_for():
    app = PageApp("brief", demo())
    async with app.run_test(size=(78, 18)) as pilot:
        section = await opened(app, pilot, "Rules")
        app.field("brief-size_limit").focus()
        await pilot.pause()
        told = app.page.query_one(FieldHelp)
        assert "500 x 400 x 300" in told.words
        app.present(app.design.but(units="in"))
        await pilot.pause()
        assert "20 x 16 x 12" in told.words
        entries = tuple(replace(each, help=f"now {each.key}") for each in section.entries(app.report))
        section.query_one(Form).show(app.report, entries)
        await pilot.pause()
        assert told.words == "now brief-size_limit"
