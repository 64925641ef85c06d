"""``compare``: designs side by side for the person at the keyboard and for programs."""

import json
import os
import re
import sys
from pathlib import Path

import pytest

from model.design import Ballast
from model.files import load_design, save_design
from model.presets import built_in_folder
from tests.terminal import Terminal
from tui import cli

ROOT = Path(__file__).resolve().parents[2]
STARTERS = sorted(built_in_folder().glob("starters/*.toml"))


def run(capsys, *arguments):
    """Lines on standard output, lines on standard error, the exit status."""
    status = cli.main(["compare", *map(str, arguments)])
    output = capsys.readouterr()
    return output.out, output.err.splitlines(), status


@pytest.fixture
def pair(tmp_path):
    """A starter, and the same one with a useless dear weight hung on it."""
    design = load_design(STARTERS[0]).design
    arrangement = design.arrangement
    stone = Ballast(id="stone", name="stone", bar=arrangement.bars[0].id, mass=0.5, price=5.0, density=3000.0)
    ballast = arrangement.but(ballasts=(*arrangement.ballasts, stone))
    heavy = design.but(title="With a stone", arrangements=(ballast, *design.arrangements[1:]))
    paths = tmp_path / "light.toml", tmp_path / "heavy.toml"
    for path, each in zip(paths, (design, heavy), strict=True):
        save_design(each, path, None)
    return paths


def test_each_design_has_a_column_and_each_measure_a_line(capsys):
    out, errors, status = run(capsys, *STARTERS[:3])
    lines = out.splitlines()
    assert (errors, status) == ([], 0)
    for path in STARTERS[:3]:
        assert load_design(path).design.title in lines[0]
    starts = [line.split("  ")[0] for line in lines[1:8]]
    assert starts[0] == "top speed ahead, m/s"
    assert "weight in air, g" in starts
    assert "cost that counts" in starts
    assert all("*" in line for line in lines[1:10]), "each line has a best"


def test_weight_and_cost_are_those_of_the_two_files(capsys, pair):
    out, _, status = run(capsys, *pair, "--json")
    light, heavy = json.loads(out)
    value = {
        (document["title"], measure["name"]): measure["value"]
        for document in (light, heavy)
        for measure in document["measures"]
    }
    assert status == 0
    weights = [value[document["title"], "weight in air"] for document in (light, heavy)]
    costs = [value[document["title"], "cost that counts"] for document in (light, heavy)]
    assert weights[1] - weights[0] == pytest.approx(500.0)
    assert costs[1] - costs[0] == pytest.approx(5.0)
    for document in (light, heavy):
        speed = document["measures"][0]
        assert speed["spread"][0] < speed["value"] < speed["spread"][1]


def test_two_of_the_same_title_are_told_apart_by_their_files(capsys, pair, tmp_path):
    copy = tmp_path / "copy.toml"
    copy.write_bytes(pair[0].read_bytes())
    out, errors, _ = run(capsys, pair[0], copy)
    assert errors == []
    above = out.splitlines()[:2]
    assert [line[:3] for line in above] == ["A: ", "B: "]
    assert str(pair[0]) in above[0]
    assert str(copy) in above[1]
    assert "is beaten" not in out, "even designs do not beat each other"


def test_a_file_named_twice_is_said(capsys, pair):
    _, errors, status = run(capsys, pair[0], pair[1], pair[0])
    assert errors == [f"note: {pair[0]} is named twice, so a design is compared with itself"]
    assert status == 0


def test_two_designs_fit_on_80_columns_and_a_line_without_a_number_has_no_best(capsys, tmp_path):
    """Inches beside millimetres, a long title, and one without any thruster."""
    bare = load_design(STARTERS[1]).design
    title = "A title of a team that likes to write long titles on everything"
    paths = [tmp_path / "still.toml", tmp_path / "long.toml"]
    save_design(bare.arranged(thrusters=()).but(title="Still"), paths[0], None)
    save_design(bare.arranged(thrusters=()).but(title=title), paths[1], None)
    for other in (STARTERS[0], STARTERS[3], paths[1]):
        out, _, _ = run(capsys, paths[0], other)
        assert all(len(line) <= 80 for line in out.splitlines() if "is beaten" not in line)
    assert f"B: {title}" in out
    speed = next(line for line in out.splitlines() if line.startswith("top speed"))
    assert speed.split() == ["top", "speed", "ahead,", "m/s", "-", "-"]


def test_a_design_worse_in_everything_is_named_as_beaten(capsys, pair, tmp_path):
    worse = load_design(pair[0]).design
    dearer = worse.arrangement.thrusters and worse.but(
        title="The same but dearer",
        brief=worse.brief,
        stock=worse.stock.but(
            fittings=tuple(fitting.but(price=fitting.price + 1.0) for fitting in worse.stock.fittings)
        ),
    )
    save_design(dearer, tmp_path / "dearer.toml", None)
    out, _, _ = run(capsys, pair[0], tmp_path / "dearer.toml")
    assert f"The same but dearer is beaten: {worse.title} is at least as good" in out


@pytest.fixture
def dearer(pair):
    """The same starter with dearer fittings, beside it: as good in everything, and worse in one thing."""
    design = load_design(pair[0]).design
    fittings = tuple(fitting.but(price=fitting.price + 1.0) for fitting in design.stock.fittings)
    path = pair[0].with_name("dearer.toml")
    save_design(design.but(title="Dearer", stock=design.stock.but(fittings=fittings)), path, None)
    return path


@pytest.mark.parametrize(
    ("more", "dims"), [({}, True), ({"NO_COLOR": "1"}, True), ({"TERM": "dumb"}, False)], ids=str
)
def test_on_a_terminal_what_is_beaten_is_dim_and_still_named(pair, dearer, more, dims):
    """Its column and its sentence; the other column, and every letter of the text, stay as they are."""
    command = [sys.executable, str(ROOT / "tui" / "launch.py"), "compare", str(pair[0]), str(dearer)]
    terminal = Terminal(command, 160, 40, {"PYTHONPATH": str(ROOT), **more})
    terminal.wait_for("yours to choose")
    assert "Dearer is beaten: " in terminal.text
    dim = re.findall(rb"\x1b\[2m(.*?)\x1b\[0m", terminal.seen)
    assert bool(dim) is dims
    if dims:
        assert dim[0] == b"Dearer"
        assert len(dim) == 1 + 9 + 1, "its name, nine lines, and its sentence"
        assert dim[-1].startswith(b"Dearer is beaten")
    os.waitpid(terminal.pid, 0)
    os.close(terminal.master)


def test_into_a_file_goes_plain_text(capsys, pair, dearer):
    out, _, _ = run(capsys, pair[0], dearer)
    assert "Dearer is beaten" in out
    assert "\x1b" not in out


def test_one_file_alone_or_one_that_is_not_there_is_one_sentence(capsys, pair):
    out, errors, status = run(capsys, pair[0])
    assert (out, len(errors), status) == ("", 1, 2)
    assert "expected two or more" in errors[0]
    out, errors, status = run(capsys, pair[0], "/nowhere/at-all.toml")
    assert (out, len(errors), status) == ("", 1, 2)
    assert errors[0].startswith("/nowhere/at-all.toml: found no such file")


def test_different_money_is_not_compared_silently(capsys, pair):
    design = load_design(pair[1]).design
    path = pair[1].with_name("pearls.toml")
    save_design(design.but(brief=design.brief.but(currency="pearls")), path, None)
    _, errors, status = run(capsys, pair[0], path)
    assert status == 0
    assert errors == ["note: the costs are in different money (credits, pearls): do not compare them"]
