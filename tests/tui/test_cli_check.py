"""``check`` in words and as a table, for the person at the keyboard."""

import re
from pathlib import Path

import pytest

from model.files import design_text, load_design, save_design
from model.presets import built_in_folder
from model.review import proven_remedy, review
from tests.model.files_designs import RUN, sample
from tui import cli
from tui.cli_text import columns, plain

RECTANGLE = Path(__file__).parent.parent / "fixtures" / "rectangle.toml"
DEMO = sorted(built_in_folder().glob("demo/*.toml"))


def run(capsys, *arguments):
    """Lines on standard output, lines on standard error, the exit status."""
    status = cli.main(["check", *map(str, arguments)])
    output = capsys.readouterr()
    return output.out.splitlines(), output.err.splitlines(), status


@pytest.fixture
def reef(tmp_path):
    """A saved design with something wrong."""
    save_design(sample(), tmp_path / "reef.toml", None)
    return tmp_path / "reef.toml"


def test_one_file_is_told_in_words(capsys):
    lines, errors, status = run(capsys, RECTANGLE)
    assert errors == []
    assert status == 1
    assert lines[0] == f"Flat rectangle ({RECTANGLE})"
    told = dict(re.split(r"  +", line, maxsplit=1) for line in lines[1 : lines.index("")])
    assert told["Size"] == "326 x 226 x 26 mm"
    assert told["Limit"] == "6 mm too long: the limit is 320 x 400 x 300 mm"
    assert told["Weight"] == "219 g"
    assert told["In water"] == "sinks: 63 g (0.62 N) short"
    assert told["Money"] == "5.00 of 20.00 shells, 15.00 left"
    assert told["Verdict"].startswith("not ready")
    assert "  A  2 x 270 mm  20 mm pipe  port rail, starboard rail" in lines
    assert "  4 x elbow  stern port, stern starboard, bow port, bow starboard" in lines


def test_each_finding_has_its_severity_and_a_proved_remedy(reef, capsys):
    lines, _, status = run(capsys, reef)
    report = review(sample())
    below = lines[lines.index("Findings") + 1 :]
    expected = []
    for finding in report.findings:
        expected.append(f"  {finding.severity:<6}  {finding.step}: {finding.message}")
        remedy = proven_remedy(report, finding)
        expected += [f"          remedy: {remedy.label}"] if remedy else []
    assert below == expected
    assert status == 1


@pytest.mark.parametrize("path", DEMO, ids=lambda path: path.stem)
def test_the_demo_is_ready(path, capsys):
    lines, errors, status = run(capsys, path)
    assert (errors, status) == ([], 0)
    assert any(line.startswith("Verdict") and "ready" in line for line in lines)


def test_a_file_in_inches_is_told_in_inches(tmp_path, capsys):
    save_design(sample("in"), tmp_path / "reef.toml", None)
    lines, _, _ = run(capsys, tmp_path / "reef.toml")
    assert any(re.search(r"2 x 7 15/16 in", line) for line in lines)
    assert not any(" mm" in line for line in lines if "half-inch" not in line and "remedy" not in line)


def test_a_bar_whose_cut_is_not_known_is_not_left_out(tmp_path, capsys):
    stock = sample().stock
    bare = sample().but(stock=stock.but(fittings=()), arrangements=(RUN,))
    save_design(bare, tmp_path / "bare.toml", None)
    lines, _, status = run(capsys, tmp_path / "bare.toml")
    (unknown,) = [line for line in lines if line.startswith("  ?")]
    assert unknown == "  ?  4 x length not known yet    port rail, starboard rail, stern cross, bow cross"
    assert status == 1


def test_several_files_make_a_table_with_a_line_each(reef, capsys):
    lines, errors, status = run(capsys, reef, RECTANGLE, *DEMO)
    assert len(lines) == 3 + len(DEMO)
    assert lines[0].split()[:3] == ["file", "title", "verdict"]
    assert errors == []
    assert status == 1
    starts = [lines[0].index(word) for word in ("title", "verdict", "size", "weight", "trim", "cost", "must")]
    for line in lines[1:]:
        assert all(line[start - 2 : start] == "  " and line[start] != " " for start in starts)


def test_a_table_does_not_wrap_in_a_narrow_window(reef, capsys, monkeypatch):
    monkeypatch.setenv("COLUMNS", "20")
    wide, _, _ = run(capsys, reef, RECTANGLE)
    assert len(wide) == 3


def test_an_unreadable_file_beats_the_rest_and_the_rest_is_still_told(reef, tmp_path, capsys):
    broken = tmp_path / "broken.toml"
    broken.write_text(design_text(sample()).replace('start = "j12"', 'start = "j99"'))
    lines, errors, status = run(capsys, broken, reef, tmp_path)
    assert len(lines) == 2
    assert lines[1].startswith(str(reef))
    assert len(errors) == 2
    assert "'j99', which is not there" in errors[0]
    assert "found a folder" in errors[1]
    assert status == 2


def test_unknown_keys_and_newer_formats_are_noted_and_checked_all_the_same(tmp_path, capsys):
    path = tmp_path / "reef.toml"
    path.write_text(design_text(sample()).replace("format = 1", "format = 2"))
    _, errors, status = run(capsys, path)
    assert len(errors) == 1
    assert errors[0].startswith("note: ")
    assert "newer poolwright" in errors[0]
    assert status == 1
    path.write_text(design_text(sample()).replace("[brief]", "[brief]\ncurency = 'shells'"))
    _, errors, _ = run(capsys, path)
    assert "did you mean 'currency'?" in errors[0]


def test_names_from_a_file_cannot_steer_the_terminal(tmp_path, capsys):
    nasty = "\x1b[2J\x07[/b][red]\u202etel\nnew"
    design = sample().but(title=nasty)
    bars = (RUN.bars[0].but(name=nasty), *RUN.bars[1:])
    save_design(design.but(arrangements=(RUN.but(bars=bars),)), tmp_path / "reef.toml", None)
    cli.main(["check", str(tmp_path / "reef.toml")])
    text = capsys.readouterr().out
    assert not set(text) & {"\x1b", "\x07", "\u202e"}
    assert "?[2J?[/b][red]?tel new" in text


def test_columns_stand_below_one_another_whatever_is_in_them():
    assert columns([["é", "x"], ["日本", "y"], ["abc", "z"]]) == ["é     x", "日本  y", "abc   z"]
    assert columns([]) == []
    assert plain("a\tb\u00a0c") == "a b c"


def test_what_should_be_put_right_is_named_in_the_verdict(tmp_path, capsys):
    """The demo with its floats slid to one side: nothing must be put right, and it lies crooked."""
    design = load_design(DEMO[0]).design
    slid = design.arranged(floats=tuple(piece.but(at=0.6) for piece in design.arrangement.floats))
    save_design(slid, tmp_path / "slid.toml", None)
    lines, _, status = run(capsys, tmp_path / "slid.toml")
    told = dict(re.split(r"  +", line, maxsplit=1) for line in lines[1 : lines.index("")])
    shoulds = [line.split(":")[0].split()[1] for line in lines if line.startswith("  should ")]
    assert status == 0
    assert shoulds
    assert told["Verdict"].startswith(f"ready to build; {len(shoulds)} thing")
    assert "trim (floats)" in told["Verdict"]
    assert told["Trim"].endswith("° port side up")
    mirrored = design.arranged(floats=tuple(piece.but(at=0.4) for piece in design.arrangement.floats))
    save_design(mirrored, tmp_path / "mirrored.toml", None)
    lines, _, _ = run(capsys, tmp_path / "mirrored.toml")
    assert any(re.match(r"Trim .*° starboard side up$", line) for line in lines)
