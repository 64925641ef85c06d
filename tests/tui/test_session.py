"""The session without a screen: edits, undo, and the promise that nothing is lost."""

import os
import stat

import pytest

from model.design import Evidence
from model.design.edits.evidence import note_expense, note_trial
from model.errors import EditError, FileProblem
from model.files import load_design, save_design
from model.journal import claim
from tests.tui.fakes import box_design
from tui import stamp
from tui.history import MOST, History, Moment
from tui.opening import demo_design, hold, new_design
from tui.opening import open_file as read_file
from tui.session import Session
from tui.shelf import Recent, designs_folder, free_path, recents, remember


def renamed(title):
    return lambda design: design.but(title=title)


def decisions(session):
    """The design on screen without what was noted beside it."""
    return session.design.but(evidence=Evidence())


def open_file(path):
    """A file as the session opens it: read, then held."""
    return hold(read_file(path))


def test_an_edit_makes_a_new_design_and_a_new_report():
    session = Session(box_design())
    before = session.report
    assert session.edit("title", renamed("Other"))
    assert (session.design.title, session.report.design.title) == ("Other", "Other")
    assert before.design.title == "Bare box", "the old report is as it was"


def test_an_edit_that_changes_nothing_leaves_no_trace():
    session = Session(box_design())
    assert not session.edit("title", renamed("Bare box"))
    assert session.undo() is None


def test_undo_and_redo_walk_through_all_edits():
    session = Session(box_design())
    for title in ("one", "two", "three"):
        session.edit(title, renamed(title))
    assert [session.undo() for _ in range(4)] == ["three", "two", "one", None]
    assert decisions(session) == box_design()
    assert [session.redo() for _ in range(4)] == ["one", "two", "three", None]
    assert session.design.title == "three"
    assert [entry.stands for entry in session.design.evidence.log] == [True] * 3


def test_each_decision_is_logged_with_its_time_and_author(monkeypatch):
    monkeypatch.setattr("tui.stamp.now", lambda: "2026-03-14 15:30")
    stamp.set_who("  Ada  of the\nsaw ")
    session = Session(box_design())
    session.edit("a better name", renamed("Newt"))
    (entry,) = session.design.evidence.log
    assert (entry.what, entry.when, entry.who) == ("a better name", "2026-03-14 15:30", "Ada of the saw")
    assert (entry.before, entry.after) == ("title Bare box", "title Newt")
    stamp.set_who("")


def test_undo_takes_nothing_away_that_was_noted(monkeypatch):
    clock = iter(f"2026-03-14 15:{minute}" for minute in range(30, 60))
    monkeypatch.setattr("tui.stamp.now", lambda: next(clock))
    session = Session(box_design())
    session.edit("pipe bought", lambda d: note_expense(d, "2026-03-14", "pipe", 8.6))
    session.edit("weighed", lambda d: note_trial(d, "weight", 1.4, "2026-03-14"))
    assert session.design.evidence.log == (), "what is noted is no decision"
    session.undo()
    session.undo()
    noted = session.design.evidence
    assert [(item.what, item.stands) for item in noted.ledger] == [("pipe", False)]
    assert [item.taken_back for item in noted.trials] == ["2026-03-14 15:32"]
    session.edit("title", renamed("after all"))
    assert len(session.design.evidence.ledger) == len(session.design.evidence.trials) == 1
    session.undo()
    assert [item.stands for item in session.design.evidence.log] == [False]


def test_the_notebook_compares_with_the_design_as_it_was():
    session = Session(box_design())
    session.edit("weighed", lambda d: note_trial(d, "weight", 1.4, "2026-03-14"))
    assert session.before == (), "what is noted makes no other design"
    session.edit("no floats", lambda d: d.arranged(bores="sealed"))
    (before,) = session.before
    assert (before.title, before.arrangement.bores) == ("Bare box, before", "flooded")


def test_an_edit_after_undo_forgets_what_was_undone():
    session = Session(box_design())
    session.edit("one", renamed("one"))
    session.undo()
    session.edit("two", renamed("two"))
    assert session.redo() is None


def test_the_history_keeps_the_last_edits_only():
    history = History(Moment("first", 0))
    for number in range(MOST + 5):
        history = history.edited(str(number), number)
    assert len(history.past) == MOST
    assert history.past[0].label == "4", "the oldest are let go"


@pytest.mark.parametrize(
    ("edit", "sentence"),
    [
        (lambda d: d.but(title=""), "Title must not be empty"),
        (lambda d: d.but(brief=d.brief.but(size_limit=(-1, 1, 1))), "must be more than 0"),
        (lambda d: d.but(units="furlong"), "Units must be one of 'mm' or 'in'"),
        (lambda d: d.but(arrangements=(d.arrangement, d.arrangement)), "each must be different"),
    ],
)
def test_a_refusal_is_one_sentence_and_nothing_changes(edit, sentence):
    session = Session(box_design())
    with pytest.raises(EditError, match=sentence) as refusal:
        session.edit("wrong", edit)
    assert "\n" not in str(refusal.value)
    assert "pydantic" not in str(refusal.value)
    assert session.design == box_design()


async def test_a_file_is_saved_and_the_journal_cut(box_file):
    opened = open_file(box_file)
    opened.keeper.note("title", changed := opened.design.but(title="Other"))
    assert opened.keeper.journal.entries()[-1].label == "title"
    assert await opened.keeper.save(changed)
    assert load_design(box_file).design == changed
    assert opened.keeper.journal.entries() == ()


async def test_an_edit_made_while_saving_stays_in_the_journal(box_file):
    opened = open_file(box_file)
    first, second = (opened.design.but(title=title) for title in ("first", "second"))
    opened.keeper.note("first", first)
    opened.keeper.note("second", second)
    assert not await opened.keeper.save(first), "the second is not safe yet"
    assert [entry.label for entry in opened.keeper.journal.entries()] == ["first", "second"]
    assert await opened.keeper.save(second)
    assert opened.keeper.journal.entries() == ()


async def test_what_somebody_else_saved_is_kept_beside_ours(box_file):
    opened = open_file(box_file)
    theirs = opened.design.but(title="Theirs")
    save_design(theirs, box_file, opened.keeper.digest)
    opened.keeper.note("title", ours := opened.design.but(title="Ours"))
    assert await opened.keeper.save(ours)
    assert load_design(box_file).design == theirs
    assert opened.keeper.path == box_file.with_name("box-2.toml")
    assert load_design(opened.keeper.path).design == ours
    assert "both are kept" in opened.keeper.take_news()
    assert opened.keeper.take_news() == "", "news are told once"


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write everywhere")
async def test_a_folder_that_cannot_be_written_is_said(box_file):
    opened = open_file(box_file)
    opened.keeper.note("title", changed := opened.design.but(title="Other"))
    box_file.parent.chmod(stat.S_IRUSR | stat.S_IXUSR)
    try:
        assert not await opened.keeper.save(changed)
    finally:
        box_file.parent.chmod(stat.S_IRWXU)


async def test_a_disk_that_is_full_is_said_and_the_work_stays_in_the_journal(box_file, monkeypatch):
    opened = open_file(box_file)
    before = box_file.read_bytes()
    opened.keeper.note("title", changed := opened.design.but(title="Other"))

    def full(descriptor):
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr("model.saving.os.fsync", full)
        assert not await opened.keeper.save(changed)
    assert opened.keeper.state == "NOT SAVED"
    assert "no space left" in opened.keeper.take_news()
    assert box_file.read_bytes() == before
    assert opened.keeper.journal.entries()[-1].label == "title"
    assert await opened.keeper.save(changed), "it works again when there is room"


def test_work_that_was_not_saved_is_found_again(box_file):
    opened = open_file(box_file)
    opened.keeper.note("title", changed := opened.design.but(title="Other"))
    opened.keeper.journal.release()  # as the system does after a kill
    again = open_file(box_file)
    assert (again.design.title, again.left, again.left_label) == ("Bare box", changed, "title")


def test_a_new_design_that_was_never_saved_is_found_again():
    opened = new_design("flat-and-quick", "Our first")
    assert not opened.keeper.path.exists(), "it is saved when it is shown"
    opened.keeper.note("title", changed := opened.design.but(team="Us"))
    opened.keeper.journal.release()
    again = open_file(opened.keeper.path)
    assert again.design == changed
    assert again.left is None, "there is nothing to choose between"
    assert again.keeper.unsaved, "it is still to be saved"


async def test_a_new_design_makes_its_folder_with_the_first_save():
    opened = new_design("flat-and-quick", "Our first")
    opened.keeper.note("team", changed := opened.design.but(team="Us"))
    assert await opened.keeper.save(changed)
    assert load_design(designs_folder() / "our-first.toml").design == changed


def test_a_second_session_on_a_file_is_read_only_and_says_why(box_file):
    first = open_file(box_file)
    second = open_file(box_file)
    assert first.keeper.why_not == ""
    assert second.keeper.state == "READ ONLY"
    assert "open in another session" in second.notes[0]
    first.keeper.close()
    assert open_file(box_file).keeper.why_not == ""


async def test_a_read_only_design_is_never_written(box_file):
    first, before = open_file(box_file), box_file.read_bytes()
    second = open_file(box_file)
    second.keeper.note("title", changed := second.design.but(title="Other"))
    assert not await second.keeper.save(changed)
    assert box_file.read_bytes() == before
    assert first.keeper.journal.entries() == (), "nor its journal"


def test_a_file_of_a_newer_format_opens_read_only(box_file):
    box_file.write_text(box_file.read_text().replace("format = 1", "format = 2"))
    opened = open_file(box_file)
    assert opened.keeper.state == "READ ONLY"
    assert "newer poolwright" in opened.notes[0]


async def test_saving_under_a_new_name_goes_on_there(box_file):
    opened = open_file(box_file)
    opened.keeper.note("title", changed := opened.design.but(title="Other"))
    other = box_file.with_name("copy.toml")
    await opened.keeper.save_under(other, changed)
    assert (opened.keeper.path, opened.keeper.unsaved) == (other, False)
    assert load_design(box_file).design.title == "Bare box"
    assert load_design(other).design == changed


async def test_saving_under_a_taken_name_is_refused(box_file):
    opened = open_file(box_file)
    other = box_file.with_name("copy.toml")
    other.write_text("somebody's notes")
    with pytest.raises(FileProblem, match="there already"):
        await opened.keeper.save_under(other, opened.design)
    assert other.read_text() == "somebody's notes"
    assert opened.keeper.path == box_file


async def test_the_demo_is_a_copy_that_keeps_what_was_tried(folders):
    opened = demo_design()
    assert opened.keeper.path.is_relative_to(folders / "state")
    opened.keeper.note("title", changed := opened.design.but(team="Us"))
    assert await opened.keeper.save(changed)
    opened.keeper.close()
    assert demo_design().design == changed


def test_what_was_open_last_is_remembered_the_latest_first():
    for name in ("a", "b", "a"):
        remember(Recent(f"/designs/{name}.toml", name.upper(), "floats", ("brief", "floats")))
    assert [recent.title for recent in recents()] == ["A", "B"]
    assert recents()[0].seen == ("brief", "floats")


@pytest.mark.parametrize("text", ["", "{", "[1]", '[{"path": 1}]', "null"])
def test_a_list_that_cannot_be_read_never_stops_the_start(folders, text):
    (folders / "state").mkdir()
    (folders / "state" / "recent.json").write_text(text)
    assert recents() == ()


def test_a_free_name_is_never_one_that_is_taken(tmp_path):
    wanted = tmp_path / "reef.toml"
    assert free_path(wanted) == wanted
    wanted.touch()
    assert free_path(wanted, [tmp_path / "reef-2.toml"]) == tmp_path / "reef-3.toml"


def test_a_journal_that_is_rubbish_never_stops_the_start(box_file):
    journal = claim(box_file)
    journal.path.parent.mkdir(parents=True, exist_ok=True)
    journal.path.write_bytes(b"\xff\x00 rubbish\n{}")
    journal.release()
    assert open_file(box_file).left is None
