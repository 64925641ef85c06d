"""Where a number comes from: told by keyboard, and any text of the team is only text."""

from textual.app import App

from model.design import Float
from model.explain import quantities
from model.survey import survey
from tests import worked
from tui.dialogs.origins import OriginsDialog, story


async def test_the_story_under_the_bar_tells_how_a_number_is_made():
    numbers = quantities(survey(worked.design(worked.box())))
    app = App()
    async with app.run_test(size=(80, 24)) as pilot:
        await app.push_screen(OriginsDialog(numbers))
        await pilot.press("down", "down", "down")
        await pilot.pause()
        told = str(app.screen.query_one("#origin").render())
        assert numbers[3].formula in told
        assert numbers[3].source in told
        await pilot.press("escape")
        assert not isinstance(app.screen, OriginsDialog)


def test_a_name_with_brackets_stays_as_it_is():
    foam = Float(id="f", name="[/x] [red]", foam="noodle", bar="b1", length=0.2, beside="+z")
    numbers = quantities(survey(worked.design(worked.box(floats=(foam,)))))
    assert any("[/x] [red]" in story(number).plain for number in numbers)
