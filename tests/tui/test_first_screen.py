"""The first screen: F1 helps, each file stands once, Esc in a field brings back what stood there."""

import pytest
from textual.widgets import Input

from model.files import save_design
from tests.tui.fakes import box_design, see, until
from tui.app import Poolwright
from tui.dialogs.help import HelpDialog
from tui.dialogs.naming import NamingDialog
from tui.dialogs.palette import Palette
from tui.dialogs.start import StartDialog
from tui.shelf import Recent, recents, remember, remembered


def test_a_file_with_several_paths_is_remembered_once(tmp_path):
    (tmp_path / "deep").mkdir()
    real = tmp_path / "deep" / "newt.toml"
    real.write_text("x")
    link = tmp_path / "link.toml"
    link.symlink_to(real)
    (tmp_path / "short").symlink_to(tmp_path / "deep", target_is_directory=True)
    other = tmp_path / "other.toml"
    for path in (real, other, tmp_path / "deep" / ".." / "deep" / "newt.toml", link):
        remember(Recent(str(path), "Newt", "holes"))
    remember(Recent(str(tmp_path / "short" / "newt.toml"), "Newt now"))
    assert [each.title for each in recents()] == ["Newt now", "Newt"]
    assert recents()[1].path == str(other)
    assert remembered(real).title == "Newt now"
    assert remembered(tmp_path / "none.toml") is None


async def test_f1_says_what_the_first_screen_is_for_and_its_keys(tmp_path):
    save_design(box_design(), tmp_path / "box.toml", None)
    app = Poolwright()
    async with app.run_test(size=(80, 24)) as pilot:
        await until(pilot, lambda: isinstance(app.screen, StartDialog), "the first question")
        await see(pilot, "F1 tells more")
        await pilot.press("f1")
        assert isinstance(app.screen, HelpDialog)
        await see(pilot, "which design do you want to work on?")
        shown = [str(each.render()) for each in app.screen.query(".key")]
        assert "F10" in shown
        assert "F5" not in shown, "the keys of the session do nothing here"
        await pilot.press("f1")
        assert isinstance(app.screen, StartDialog)


@pytest.mark.parametrize(
    "make", [lambda: NamingDialog("Our vehicle", "in a folder"), lambda: Palette(frozenset())]
)
async def test_esc_in_the_field_of_a_dialog_brings_back_what_stood_there_then_goes_back(make):
    app = Poolwright("demo")
    async with app.run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        dialog = make()
        await app.push_screen(dialog)
        field = dialog.query_one(Input)
        before = field.value
        await pilot.press("x", "y")
        assert field.value != before
        await pilot.press("escape")
        assert (app.screen, field.value) == (dialog, before)
        await pilot.press("escape")
        assert app.screen is not dialog
