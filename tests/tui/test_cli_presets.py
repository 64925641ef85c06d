"""``presets list``, ``show`` and ``check``, as a mentor uses them."""

import tomllib

import pytest

from model.presets import FOLDERS, built_in_folder, presets
from model.reading import decoded
from tui import cli

OWN = """format = 1
units = "mm"
[preset]
kind = "brief"
title = "The mill pond"
origin = "invented"
summary = "For a test."
[brief]
title = "The mill pond"
size_limit = [500, 400, 300]
"""


@pytest.fixture(autouse=True)
def own(tmp_path, monkeypatch):
    """The user's own folder with one brief in it."""
    folder = tmp_path / "own"
    (folder / "briefs").mkdir(parents=True)
    (folder / "briefs" / "mill-pond.toml").write_text(OWN)
    monkeypatch.setenv("POOLWRIGHT_PRESETS", str(folder))
    return folder


def run(capsys, *arguments):
    """Standard output, lines on standard error, the exit status."""
    status = cli.main(["presets", *arguments])
    output = capsys.readouterr()
    return output.out, output.err.splitlines(), status


def test_the_list_names_each_with_its_kind_owner_title_and_origin(own, capsys):
    text, errors, status = run(capsys, "list")
    lines = text.splitlines()
    assert (errors, status) == ([], 0)
    for preset in presets():
        (line,) = [line for line in lines if line.split()[:2] == [preset.kind, preset.name]]
        assert preset.title in line
        assert preset.origin[:20] in line
        assert ("own" if preset.own else "built in") in line
    assert str(built_in_folder()) in text
    assert str(own) in text


def test_the_list_of_one_kind(capsys):
    text, _, status = run(capsys, "list", "brief")
    kinds = {line.split()[0] for line in text.split("\n\n")[0].splitlines()[1:]}
    assert kinds == {"brief"}
    assert status == 0


def test_a_bad_one_is_listed_with_its_sentence_and_the_others_too(own, capsys):
    (own / "briefs" / "bad.toml").write_text(OWN.replace("500", '"big"'))
    text, errors, status = run(capsys, "list")
    assert "cannot be used" in text
    assert "mill-pond" in text
    assert len(errors) == 1
    assert "brief.size_limit[1]: 'big' cannot be read" in errors[0]
    assert status == 2


@pytest.mark.parametrize("word", ["mill-pond", "brief/mill-pond"])
def test_what_is_shown_can_be_copied_into_a_file(word, own, capsys):
    text, errors, status = run(capsys, "show", word)
    assert tomllib.loads(text) == tomllib.loads(OWN)
    assert str(own) in text.splitlines()[0]
    assert (errors, status) == ([], 0)


@pytest.mark.parametrize("preset", presets(), ids=lambda preset: f"{preset.kind}-{preset.name}")
def test_every_built_in_one_can_be_shown_without_loss(preset, capsys):
    text, _, status = run(capsys, "show", f"{preset.kind}/{preset.name}")
    assert tomllib.loads(text) == tomllib.loads(decoded(preset.path.read_bytes(), ""))
    assert status == 0


def test_a_name_that_is_not_there_or_of_two_kinds_gets_a_sentence(own, capsys):
    text, errors, status = run(capsys, "show", "none")
    assert (text, status) == ("", 2)
    assert errors == [
        "none: found no preset of that name; expected a name that 'poolwright presets list' shows"
    ]
    (own / "stocks").mkdir()
    (own / "stocks" / "mill-pond.toml").write_text("= =")
    _, errors, status = run(capsys, "show", "mill-pond")
    assert "one of " in errors[0]
    assert "brief/mill-pond" in errors[0]
    assert status == 2


def test_all_presets_are_right(capsys):
    text, errors, status = run(capsys, "check")
    assert len(text.splitlines()) == len(presets())
    assert all(line.endswith(": right") for line in text.splitlines())
    assert (errors, status) == ([], 0)


def test_a_file_of_ones_own_is_checked_by_its_path(own, tmp_path, capsys):
    path = tmp_path / "draft.toml"
    path.write_text(OWN)
    assert run(capsys, "check", str(path)) == (f"{path}: right\n", [], 0)
    path.write_text(OWN.replace("size_limit", "size_limmit"))
    text, errors, status = run(capsys, "check", str(path), "mill-pond")
    assert text.splitlines() == [f"{path}: see the notes", f"{own}/briefs/mill-pond.toml: right"]
    assert "did you mean 'size_limit'?" in errors[0]
    assert status == 1
    path.write_text(OWN.replace("[500, 400, 300]", "[500, 400]"))
    text, errors, status = run(capsys, "check", str(path), "mill-pond", str(tmp_path / "none.toml"), "none")
    assert text.splitlines() == [f"{own}/briefs/mill-pond.toml: right"]
    assert ["found a list of 2" in errors[0], "no such file" in errors[1]] == [True, True]
    assert len(errors) == 3
    assert status == 2


def test_a_preset_in_the_folder_of_another_kind_is_wrong(own, capsys):
    (own / FOLDERS["stock"]).mkdir()
    path = own / FOLDERS["stock"] / "pond.toml"
    path.write_text(OWN)
    _, errors, status = run(capsys, "check", str(path))
    assert "found 'brief'; expected 'stock', as its folder says" in errors[0]
    assert status == 2
