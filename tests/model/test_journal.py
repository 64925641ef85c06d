"""The journal: no edit is lost, and two sessions never hold one file."""

import json
import os
import subprocess
import sys

import pytest

from model import journal as journals
from model import saving
from model.errors import FileProblem
from model.journal import Entry, claim, state_folder
from model.saving import MARK


@pytest.fixture(autouse=True)
def state(tmp_path, monkeypatch):
    """A state folder that is not there yet."""
    folder = tmp_path / "state" / "poolwright"
    monkeypatch.setenv("POOLWRIGHT_STATE", str(folder))
    return folder


@pytest.fixture
def file(tmp_path):
    """The path of a design."""
    return tmp_path / "reef.toml"


def entry(number):
    return Entry(
        f"2031-05-06 10:{number:02}", f"edit {number}", f'title = "ñ {number}"\nunits = "mm"\n', "abc"
    )


def test_edits_come_back_in_order_after_a_crash(file):
    first = claim(file)
    for number in range(3):
        first.record(entry(number))
    first.release()  # what the system does for a program that was killed
    again = claim(file)
    assert not again.read_only
    assert again.entries() == tuple(entry(number) for number in range(3))
    again.cut()
    assert again.entries() == ()
    assert claim(file.with_name("other.toml")).entries() == ()


def test_each_edit_is_one_line_and_on_the_disk_before_the_call_returns(file, monkeypatch):
    synced = []
    monkeypatch.setattr(journals.os, "fsync", lambda descriptor: synced.append(os.fstat(descriptor).st_size))
    journal = claim(file)
    journal.record(entry(1))
    assert synced == [journal.path.stat().st_size]
    lines = [line for line in journal.path.read_text().splitlines() if line]
    assert len(lines) == 1
    assert json.loads(lines[0])["text"] == entry(1).text


@pytest.mark.parametrize(
    "torn", [b'{"when": "2031', b"\xff\xfe\x00", b'{"when": "x", "label": 3}', b"[1]", b"7"]
)
def test_a_torn_line_is_left_out_and_the_next_edit_is_not(torn, file):
    journal = claim(file)
    journal.record(entry(1))
    with journal.path.open("ab") as stream:
        stream.write(torn)
    assert journal.entries() == (entry(1),)
    journal.record(entry(2))
    assert journal.entries() == (entry(1), entry(2))


def test_a_journal_that_cannot_be_read_never_stops_a_start(file):
    journal = claim(file)
    journal.path.parent.mkdir(parents=True, exist_ok=True)
    journal.path.mkdir()
    assert journal.entries() == ()
    journal.cut()
    with pytest.raises(FileProblem, match="save the design now"):
        journal.record(entry(1))


def test_a_state_folder_that_cannot_be_made_is_said_and_the_session_goes_on(file, state):
    state.parent.write_text("a file where a folder should be")
    journal = claim(file)
    assert not journal.read_only
    assert "save often" in journal.why
    assert journal.entries() == ()
    with pytest.raises(FileProblem):
        journal.record(entry(1))
    journal.cut()
    journal.release()


def test_a_second_session_is_read_only_and_leaves_no_trace(file):
    first = claim(file)
    second = claim(file)
    assert not first.read_only
    assert first.why == ""
    assert second.read_only
    assert "open in another session" in second.why
    first.record(entry(1))
    second.record(entry(2))
    second.cut()
    assert first.entries() == (entry(1),)
    first.release()
    assert not claim(file).read_only


def test_two_names_of_one_file_share_a_lock(file, tmp_path, monkeypatch):
    file.write_text("")
    first = claim(file)
    link = tmp_path / "link.toml"
    link.symlink_to(file)
    monkeypatch.chdir(tmp_path)
    assert claim(link).read_only
    assert claim("reef.toml").read_only
    first.release()


def test_another_process_is_kept_off_until_it_ends(file, state):
    code = (
        f"from model.journal import claim; j = claim({str(file)!r}); print(j.read_only, flush=True); input()"
    )
    root = os.path.dirname(os.path.dirname(journals.__file__))
    with subprocess.Popen(
        [sys.executable, "-c", code], cwd=root, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as other:
        assert other.stdout.readline() == "False\n"
        assert claim(file).read_only
        other.kill()
        other.wait()
    assert not claim(file).read_only


def test_designs_without_a_file_get_a_journal_each_and_a_crashed_one_is_found_again():
    first, second = claim(None), claim(None)
    assert not first.read_only
    assert not second.read_only
    assert first.path != second.path
    first.record(entry(1))
    second.record(entry(2))
    first.release()
    again = claim(None)
    assert again.entries() == (entry(1),)


def test_leftovers_are_swept_by_whoever_holds_the_lock_and_by_nobody_else(file):
    left = file.with_name(f".{file.name}.7{MARK}")
    left.write_text("half")
    first = claim(file)
    assert not left.exists()
    left.write_text("half")  # now the first session is saving
    claim(file)
    assert left.exists()
    first.release()


def test_a_long_lesson_does_not_fill_the_disk(file, monkeypatch):
    monkeypatch.setattr(journals, "JOURNAL_BYTES", 2000)
    journal = claim(file)
    for number in range(60):
        journal.record(entry(number))
    assert journal.path.stat().st_size < 2300
    assert journal.entries()[-1] == entry(59)


def test_a_full_disk_is_said_and_earlier_edits_stay(file, monkeypatch):
    journal = claim(file)
    journal.record(entry(1))

    def full(_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(journals.os, "fsync", full)
    with pytest.raises(FileProblem, match=r"no space left on device.*save the design now"):
        journal.record(entry(2))
    assert journal.entries()[0] == entry(1)


def test_the_state_folder_is_the_systems_own_unless_it_is_named(monkeypatch, state):
    assert state_folder() == state
    monkeypatch.delenv("POOLWRIGHT_STATE")
    assert state_folder().name == "poolwright"
    assert saving.MARK not in str(state_folder())
