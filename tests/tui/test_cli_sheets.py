"""``poolwright sheets``: files in the folder, one line for what is wrong, nothing half-written."""

import os
from pathlib import Path

import pytest

from model.errors import FileProblem
from model.saving import write_bytes
from model.sheets import write as writing
from tui import cli

DEMO = Path(__file__).resolve().parents[2] / "presets" / "demo" / "newt.toml"


def test_all_files_are_named_and_there(tmp_path, capsys):
    assert cli.main(["sheets", str(DEMO), "--to", str(tmp_path / "new" / "folder")]) == 0
    out = capsys.readouterr()
    names = [Path(line) for line in out.out.splitlines()]
    assert out.err == ""
    assert all(path.is_file() and path.stat().st_size for path in names)
    endings = {path.suffix for path in names}
    assert endings == {".pdf", ".html", ".svg", ".csv"}
    assert sorted(os.listdir(tmp_path / "new" / "folder")) == sorted(path.name for path in names)


@pytest.mark.parametrize(
    "words", [["sheets"], ["sheets", str(DEMO)], ["sheets", str(DEMO), "--to", "x", "--paper", "A5"]]
)
def test_a_wrong_call_is_one_line(words, capsys):
    assert cli.main(words) == 2
    assert len(capsys.readouterr().err.splitlines()) == 1


def test_a_file_in_the_place_of_the_folder(tmp_path, capsys):
    taken = tmp_path / "taken"
    taken.write_text("mine")
    assert cli.main(["sheets", str(DEMO), "--to", str(taken)]) == 2
    assert capsys.readouterr().err == f"{taken}: found a file; expected the name of a folder\n"
    assert taken.read_text() == "mine"


def test_a_disk_that_fails_half_way_leaves_nothing_behind(tmp_path, monkeypatch):
    (tmp_path / "b").write_bytes(b"old")

    def failing(path, data):
        if Path(path).name == "d":
            raise FileProblem(str(path), "", "a full disk", "room")
        write_bytes(path, data)

    monkeypatch.setattr(writing, "write_bytes", failing)
    files = {name: name.encode() for name in "abcde"}
    with pytest.raises(FileProblem, match="full disk"):
        writing.write_together(tmp_path, files)
    assert os.listdir(tmp_path) == ["b"]
    with pytest.raises(FileProblem):
        writing.write_together(tmp_path / "new", files)
    assert not (tmp_path / "new").exists()
