"""From the command line to the session: what is handed to whom, dialogs at the start, errors of our own."""

import subprocess
import sys
from pathlib import Path

import pytest

from model.design.document import equipment, plane_groups
from model.files import load_design
from tests.terminal import Terminal
from tests.tui.fakes import FakePage, screen_text, see, until
from tui import launch
from tui.app import Poolwright
from tui.steps import Step

ROOT = Path(__file__).resolve().parent.parent.parent


@pytest.fixture
def fake_pages(monkeypatch):
    monkeypatch.setattr(Step, "page_class", lambda step: FakePage)


@pytest.mark.parametrize(
    "words", [["check", "x.toml"], ["presets"], ["--help"], ["--version"], ["a", "b"], ["-x"]]
)
def test_the_command_line_is_not_for_the_session(words, monkeypatch):
    import types

    taken = []
    fake = types.SimpleNamespace(main=lambda arguments: taken.append(arguments) or 7)
    monkeypatch.setitem(sys.modules, "tui.cli", fake)
    monkeypatch.setattr("tui.cli", fake, raising=False)
    assert launch.main(words) == 7
    assert taken == [words]


@pytest.mark.parametrize(("words", "word"), [([], None), (["demo"], "demo"), (["reef.toml"], "reef.toml")])
def test_the_session_gets_its_file(words, word, monkeypatch):
    started = []
    monkeypatch.setattr("tui.app.run", lambda given: started.append(given) or 0)
    assert launch.main(words) == 0
    assert started == [word]


async def begin_reef(pilot):
    """A new design from the first starter, called Reef."""
    await see(pilot, "what do you want to do?")
    await pilot.press("enter")
    await see(pilot, "What is your vehicle called?")
    await pilot.press("ctrl+u", *"Reef", "enter")
    await see(pilot, "Poolwright: Reef")


async def test_from_nothing_to_a_new_design(fake_pages):
    async with Poolwright().run_test(size=(80, 24)) as pilot:
        await begin_reef(pilot)


async def test_a_new_design_that_is_left_at_once_is_there_the_next_time(fake_pages):
    async with Poolwright().run_test(size=(80, 24)) as pilot:
        await begin_reef(pilot)
        await pilot.press("f10")
        await until(pilot, lambda: not pilot.app.is_running, "the end")
    async with Poolwright().run_test(size=(80, 24)) as pilot:
        await see(pilot, "Reef reef.toml in")
        await pilot.press("enter")
        await see(pilot, "Poolwright: Reef")


async def test_the_demo_opens_at_once(fake_pages):
    async with Poolwright("demo").run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")


async def test_what_was_open_last_stands_first_with_the_step_it_was_left_at(fake_pages, box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        await pilot.press("f9", "f9", "f10")
        await until(pilot, lambda: not pilot.app.is_running, "the end")
        assert pilot.app.return_value == f"Bare box is saved in {box_file}"
    async with Poolwright().run_test(size=(80, 24)) as pilot:
        await see(pilot, "Bare box box.toml in")
        await pilot.press("enter")
        await see(pilot, "[Layout")


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("hello", "a mistake in the TOML"),
        ('format = 1\nunits = "mm"\ntitle = 3\n', "title"),
    ],
)
async def test_a_bad_file_on_the_command_line_is_one_sentence_and_a_choice(
    fake_pages, tmp_path, text, sentence
):
    path = tmp_path / "bad.toml"
    path.write_text(text)
    async with Poolwright(str(path)).run_test(size=(120, 40)) as pilot:
        await see(pilot, "what do you want to do?")
        await see(pilot, sentence)
        assert "Traceback" not in screen_text(pilot.app)


@pytest.mark.parametrize("name", ["nowhere/new.toml", "new.txt"])
async def test_a_file_that_cannot_be_begun_is_said_to_be_missing(fake_pages, tmp_path, name):
    async with Poolwright(str(tmp_path / name)).run_test(size=(120, 40)) as pilot:
        await see(pilot, "no such file")


async def test_a_new_name_on_the_command_line_is_the_file_of_what_is_begun(fake_pages, tmp_path):
    path = tmp_path / "eel.toml"
    async with Poolwright(str(path)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "There is no eel.toml yet.")
        await pilot.press("enter")
        await see(pilot, "What is your vehicle called?")
        await pilot.press("ctrl+u", *"Eel", "enter")
        await see(pilot, "Next:")
        await until(pilot, path.exists, "the file")
    assert load_design(path).design.title == "Eel"


async def test_an_empty_frame_has_planes_to_draw_on_and_nothing_else(fake_pages, folders):
    async with Poolwright().run_test(size=(80, 24)) as pilot:
        await see(pilot, "An empty frame")
        await pilot.press("end", "up", "up", "enter")
        await see(pilot, "What is your vehicle called?")
        await pilot.press("enter")
        await see(pilot, "Next:")
        arrangement = pilot.app.screen.session.design.arrangement
    assert [len(planes) for planes in plane_groups(arrangement)] == [2, 2, 2]
    assert not any((arrangement.bars, arrangement.joints, *equipment(arrangement)))


async def test_a_bad_file_in_the_dialog_is_one_sentence_and_another_try(fake_pages, box_file, tmp_path):
    (tmp_path / "bad.toml").write_text("hello")
    async with Poolwright().run_test(size=(120, 40)) as pilot:
        await see(pilot, "what do you want to do?")
        await pilot.press("end", "enter")
        await see(pilot, "Which file do you want to open?")
        await pilot.press("tab", *str(tmp_path / "bad.toml"), "enter")
        await see(pilot, "a mistake in the TOML")
        await pilot.press("ctrl+u", *str(box_file), "enter")
        await see(pilot, "Poolwright: Bare box")


async def test_a_file_is_found_by_walking_through_folders(fake_pages, box_file, folders):
    (folders / "designs" / "ours").mkdir(parents=True)
    box_file.rename(folders / "designs" / "ours" / "box.toml")
    async with Poolwright().run_test(size=(80, 24)) as pilot:
        await see(pilot, "what do you want to do?")
        await pilot.press("end", "enter")
        await see(pilot, "ours/")
        await pilot.press("enter")
        await see(pilot, "box.toml")
        await pilot.press("enter")
        await see(pilot, "Poolwright: Bare box")


async def test_a_copy_is_saved_under_another_name(fake_pages, box_file, tmp_path):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        (tmp_path / "notes.toml").write_text("somebody's notes")
        pilot.app.action_save_as()
        await see(pilot, "Save it as")
        await pilot.press("ctrl+u", *"notes", "enter")
        await see(pilot, "there already")
        assert (tmp_path / "notes.toml").read_text() == "somebody's notes"
        await pilot.press("ctrl+u", *"copy", "enter")
        await see(pilot, "Saved as")
        assert (tmp_path / "copy.toml").read_text() == box_file.read_text()


async def test_quitting_with_changes_that_cannot_be_saved_asks_first(fake_pages, box_file, tmp_path):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next:")
        screen = pilot.app.screen
        screen.keeper.why_not = "it is open elsewhere"
        screen.change("title", lambda design: design.but(title="Mine"))
        await pilot.press("f10")
        await see(pilot, "Your changes are not in a file yet")
        await pilot.press("enter")
        await see(pilot, "Save it as")
        await pilot.press("ctrl+u", *"mine", "enter")
        await until(pilot, lambda: not pilot.app.is_running, "the end")
    assert 'title = "Mine"' in (tmp_path / "mine.toml").read_text()


async def test_the_work_of_last_time_is_offered_and_taken(fake_pages, box_file):
    from tui.opening import open_file

    opened = open_file(box_file)
    opened.keeper.note("title Other", opened.design.but(title="Other"))
    opened.keeper.journal.release()
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "There is work from last time")
        await pilot.press("enter")
        await see(pilot, "Poolwright: Other")
        await until(pilot, lambda: 'title = "Other"' in box_file.read_text(), "the saved file")
        await pilot.press("f2")
        await see(pilot, "Poolwright: Bare box")


async def test_the_work_of_last_time_is_offered_and_left(fake_pages, box_file):
    from tui.opening import open_file

    opened = open_file(box_file)
    opened.keeper.note("title Other", opened.design.but(title="Other"))
    opened.keeper.journal.release()
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "There is work from last time")
        await pilot.press("right", "enter")
        await see(pilot, "Poolwright: Bare box")
        assert pilot.app.screen.keeper.journal.entries() == ()


def test_a_kill_in_the_middle_loses_nothing(box_file, folders):
    """The real program in a real terminal, ended by the system while an edit is not yet in the file."""
    command = [sys.executable, str(ROOT / "tui" / "launch.py"), str(box_file)]
    environment = {"PYTHONPATH": str(ROOT)}
    terminal = Terminal(command, 120, 40, environment)
    terminal.wait_for("F10 Quit")
    terminal.send("\x1b[24~")  # F12
    terminal.wait_for("Type a part")
    terminal.send("switch between mm\r")
    terminal.wait_for("Done:")
    terminal.kill()
    again = Terminal(command, 120, 40, environment)
    again.wait_for("work from last time")
    again.kill()


def test_an_error_of_our_own_is_told_in_words_and_the_details_go_to_a_file(folders):
    code = """
import sys
from tui.app import Poolwright
from tui.guard import guarded

def broken(self):
    raise ZeroDivisionError("planted")

Poolwright.on_mount = broken
sys.exit(guarded(Poolwright))
"""
    terminal = Terminal([sys.executable, "-c", code], 100, 30, {"PYTHONPATH": str(ROOT)})
    terminal.wait_for("Your work is not lost")
    terminal.settle()
    assert "Traceback" not in terminal.text
    assert "ZeroDivisionError" in (folders / "state" / "last-error.txt").read_text()


def test_the_launcher_finds_the_program_beside_itself(tmp_path):
    """As in the wheel, where tui, model and presets lie beside ``poolwright/__main__.py``."""
    package = tmp_path / "poolwright"
    package.mkdir()
    for name in ("tui", "model", "presets"):
        (package / name).symlink_to(ROOT / name)
    (package / "__main__.py").write_text((ROOT / "tui" / "launch.py").read_text())
    code = "import poolwright.__main__, tui; print(tui.__file__)"
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=tmp_path, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip().startswith(str(package))
