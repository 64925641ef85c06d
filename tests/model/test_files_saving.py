"""Saving: at every moment the old file or the new one is whole, and nothing of others is written over."""

import errno
import os
import stat

import pytest

from model import saving
from model.design import FORMAT
from model.errors import FileProblem
from model.files import FileChanged, design_text, digest_on_disk, load_design, save_beside, save_design
from model.reading import BYTES_MOST
from model.saving import MARK, sweep_leftovers
from tests.model.files_designs import sample

posix = pytest.mark.skipif(os.name == "nt", reason="POSIX only")
OLD = sample()
NEW = OLD.but(title="Marsh newt")


@pytest.fixture
def path(tmp_path):
    """A saved design."""
    save_design(OLD, tmp_path / "reef.toml", None)
    return tmp_path / "reef.toml"


def names(path):
    return sorted(entry.name for entry in path.parent.iterdir())


def test_a_saved_design_loads_and_its_digest_is_that_of_the_file(path):
    loaded = load_design(path)
    assert loaded.design == OLD
    assert loaded.digest == digest_on_disk(path)
    digest = save_design(NEW, path, loaded.digest)
    assert load_design(path).design == NEW
    assert digest == digest_on_disk(path) != loaded.digest
    assert names(path) == ["reef.toml"]


@pytest.mark.parametrize("step", ["write", "fsync", "replace", "chmod", "open"])
@pytest.mark.parametrize("code", [errno.ENOSPC, errno.EIO, errno.EROFS])
def test_a_disk_that_fails_at_any_step_leaves_the_old_file_and_nothing_else(path, monkeypatch, step, code):
    before = path.read_bytes()

    def fail(*_, **__):
        raise OSError(code, os.strerror(code))

    if step == "write":
        fdopen = os.fdopen

        def tired(*arguments):
            stream = fdopen(*arguments)
            stream.flush = fail
            return stream

        monkeypatch.setattr(os, "fdopen", tired)
    elif step == "chmod":
        monkeypatch.setattr("pathlib.Path.chmod", fail)
    else:
        monkeypatch.setattr(saving.os, step, fail)
    with pytest.raises(FileProblem, match="found an obstacle to writing") as caught:
        save_design(NEW, path, digest_on_disk(path))
    monkeypatch.undo()
    assert "\n" not in str(caught.value)
    assert path.read_bytes() == before
    assert names(path) == ["reef.toml"]


@posix
@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="no device that is always full")
def test_a_disk_that_is_really_full_gets_a_sentence(path):
    before = path.read_bytes()
    part = path.with_name(f".reef.toml.{os.getpid()}{MARK}")
    part.symlink_to("/dev/full")
    with pytest.raises(FileProblem, match="no space left"):
        save_design(NEW, path, digest_on_disk(path))
    assert path.read_bytes() == before
    assert names(path) == ["reef.toml"]


def test_a_file_that_others_changed_is_not_written_over_and_both_are_kept(path):
    digest = load_design(path).digest
    theirs = design_text(OLD.but(title="from another computer"))
    path.write_text(theirs)
    with pytest.raises(FileChanged, match="changed since it was opened"):
        save_design(NEW, path, digest)
    assert path.read_text() == theirs
    beside, digest = save_beside(NEW, path)
    assert beside.name == "reef-2.toml"
    assert digest == digest_on_disk(beside)
    assert load_design(beside).design == NEW
    assert save_beside(NEW, path)[0].name == "reef-3.toml"
    assert path.read_text() == theirs


def test_a_file_that_turned_up_under_a_new_name_is_not_written_over(path):
    with pytest.raises(FileChanged, match="there already"):
        save_design(NEW, path, None)
    assert load_design(path).design == OLD
    save_design(NEW, path, digest_on_disk(path))
    assert load_design(path).design == NEW


def test_a_file_that_is_the_same_already_or_gone_is_no_quarrel(path):
    digest = digest_on_disk(path)
    assert save_design(OLD, path, "an old digest") == digest
    path.unlink()
    assert digest_on_disk(path) is None
    assert save_design(OLD, path, digest) == digest


@posix
def test_the_mode_is_kept_and_a_new_file_follows_the_users_mask(path):
    path.chmod(0o640)
    save_design(NEW, path, digest_on_disk(path))
    assert stat.S_IMODE(path.stat().st_mode) == 0o640
    mask = os.umask(0o027)
    try:
        save_design(NEW, path.with_name("new.toml"), None)
    finally:
        os.umask(mask)
    assert stat.S_IMODE(path.with_name("new.toml").stat().st_mode) == 0o640


@posix
def test_a_link_is_written_through(path, tmp_path):
    folder = tmp_path / "stick"
    folder.mkdir()
    link = folder / "link.toml"
    link.symlink_to(path)
    save_design(NEW, link, digest_on_disk(link))
    assert link.is_symlink()
    assert load_design(path).design == NEW
    assert [entry.name for entry in folder.iterdir()] == ["link.toml"]


def test_a_write_protected_file_stays(path, monkeypatch):
    monkeypatch.setattr(saving.os, "access", lambda *_: False)
    with pytest.raises(FileProblem, match="found a file that is write-protected"):
        save_design(NEW, path, digest_on_disk(path))
    assert load_design(path).design == OLD


def test_places_where_nothing_can_be_saved_get_a_sentence(tmp_path, path):
    with pytest.raises(FileProblem, match="found no such folder"):
        save_design(NEW, tmp_path / "none" / "reef.toml", None)
    with pytest.raises(FileProblem, match="found no such folder"):
        save_design(NEW, path / "reef.toml", None)
    with pytest.raises(FileProblem, match="found a folder"):
        save_design(NEW, tmp_path, None)
    with pytest.raises(FileProblem, match="expected"):
        save_design(NEW, tmp_path / ("x" * 400), None)
    with pytest.raises(FileProblem, match="an impossible name"):
        save_design(NEW, "reef\0.toml", None)


def test_a_long_file_name_can_be_saved(tmp_path):
    path = tmp_path / ("x" * 250 + ".toml")
    save_design(NEW, path, None)
    assert load_design(path).design == NEW


def test_a_busy_file_is_tried_again_for_a_while(path, monkeypatch):
    replace, calls, pauses = os.replace, [], []

    def busy(*arguments):
        calls.append(arguments)
        if len(calls) < 4:
            raise PermissionError(13, "in use")
        replace(*arguments)

    monkeypatch.setattr(saving, "BUSY_TRIES", 20)
    monkeypatch.setattr(saving.os, "replace", busy)
    monkeypatch.setattr(saving.time, "sleep", pauses.append)
    save_design(NEW, path, digest_on_disk(path))
    assert load_design(path).design == NEW
    assert len(calls) == 4
    assert 0 < sum(pauses) < 2


def test_a_file_that_stays_busy_is_given_up_after_two_seconds(path, monkeypatch):
    pauses = []

    def busy(*_):
        raise PermissionError(13, "in use")

    monkeypatch.setattr(saving, "BUSY_TRIES", 20)
    monkeypatch.setattr(saving.os, "replace", busy)
    monkeypatch.setattr(saving.time, "sleep", pauses.append)
    with pytest.raises(FileProblem, match="may not write"):
        save_design(NEW, path, digest_on_disk(path))
    assert sum(pauses) == pytest.approx(2)
    assert load_design(path).design == OLD


def test_what_a_power_cut_left_is_swept_and_nothing_else(path):
    for name in (f".reef.toml.123{MARK}", f".reef.toml.99{MARK}", f".other.toml.1{MARK}", ".reef.toml.keep"):
        path.with_name(name).write_text("half")
    sweep_leftovers(path)
    assert names(path) == [f".other.toml.1{MARK}", ".reef.toml.keep", "reef.toml"]
    sweep_leftovers(path.parent / "none" / "reef.toml")


def test_a_design_of_a_newer_format_is_never_written(path):
    with pytest.raises(FileProblem, match="which a newer poolwright wrote"):
        save_design(NEW.but(format=FORMAT + 1), path, digest_on_disk(path))
    assert load_design(path).design == OLD


def test_a_design_that_could_not_be_read_back_is_never_written(path):
    notes = ("é" * 19_999,) * (BYTES_MOST // 40_000 + 1)
    opening = OLD.arrangement.openings[0]
    openings = tuple(opening.but(id=f"o{n}", notes=text) for n, text in enumerate(notes))
    huge = OLD.but(arrangements=(OLD.arrangement.but(openings=openings),))
    with pytest.raises(FileProblem, match=r"found a design of 4\.. MB; expected at most 4 MB"):
        save_design(huge, path, digest_on_disk(path))
    assert load_design(path).design == OLD
