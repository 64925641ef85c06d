"""Thrusters, tether and battery that cannot be right: said on the command line and in the session's page."""

import re

import pytest

from model.design import Battery, Branch, Brief
from model.files import design_text
from tests.model.thrust_cases import SETTLED, cable, motor, port, starboard, swimmer, upright, wired
from tests.tui.fakes import screen_text, see, until
from tests.tui.pages_app import SIZES, PageApp, opened, typed
from tui import cli
from tui.app import Poolwright

RULES = Brief(moves=("ahead", "astern", "up", "turn"), supply_limit=12.0)
MIDDLE = motor("middle", bar="b1", offset=(0, 0.15, 0.06))
BAD = {
    "no thrusters": (swimmer(brief=RULES, power=None), "thrusters", "must", "but no thruster does that"),
    "all the same way": (
        swimmer(port(), starboard(), MIDDLE, brief=RULES), "thrusters", "must",
        "The task needs the vehicle to climb, but no thruster does that.",
    ),
    "inside a pipe": (
        swimmer(upright(bar="b5", offset=(0, 0, 0))), "thrusters", "must",
        "The motor of lift motor would sit inside bar 5: it belongs beside the pipe.",
    ),
    "a motor that stalls": (
        wired(SETTLED, Branch(fuse=7.5)), "wires", "tip",
        "With its propeller held fast, port motor draws 4.6 A, and the main fuse of 7.5 A does not blow",
    ),
    "a tether of 0 m": (
        wired(SETTLED.but(length=0.0)), "wires", "should",
        "The wiring has a tether of 0 m: nothing reaches from the poolside to the vehicle.",
    ),
    "a tether of 500 m": (
        wired(SETTLED.but(length=500.0)), "wires", "should",
        "Only 4.0 V of 12 V reach port motor (67 % lost)",
    ),
    "500 m of it in the water": (
        wired(SETTLED, tether=cable(hanging=500.0)), "floats", "must", "more than the 0 g that push it up",
    ),
    "0 m of it in the water": (
        wired(SETTLED, tether=cable(hanging=0.0)), "gear", "tip", "Nothing of tether hangs in the water",
    ),
    "24 V under a limit of 12 V": (
        wired(SETTLED.but(battery=Battery(volts=24.0)), brief=RULES), "wires", "must",
        "The battery is 24 V, but the brief allows only 12 V.",
    ),
}  # fmt: skip
NEGATIVE = {
    "thrust_ahead = 3.0": ("thrust_ahead = -3.0", "thrust_ahead"),
    "ahead = 2.5": ("ahead = -2.5", "pull.ahead"),
    "astern = 1.5": ("astern = -1.5", "pull.astern"),
    "length = 12500": ("length = -12500", "power.length"),
    "stalled_amps = 6.0": ("stalled_amps = -6.0", "stalled_amps"),
}


@pytest.fixture
def saved(tmp_path):
    """A design written to a file."""

    def save(text):
        (tmp_path / "bad.toml").write_text(text, encoding="utf-8")
        return tmp_path / "bad.toml"

    return save


def right_half(app):
    """What stands in the panels beside the page, as one line."""
    lines = screen_text(app).splitlines()
    return " ".join(" ".join(line[60:].strip("│║ ") for line in lines).split())


@pytest.mark.parametrize("name", BAD)
def test_the_command_line_says_it(name, saved, capsys):
    design, step, severity, words = BAD[name]
    status = cli.main(["check", str(saved(design_text(design)))])
    output = capsys.readouterr()
    assert output.err == ""
    assert status == (1 if "  must " in output.out else 0)
    assert any(line.startswith(f"  {severity:<6}  {step}: ") and words in line
               for line in output.out.splitlines())  # fmt: skip


@pytest.mark.parametrize("name", BAD)
async def test_the_page_concerned_says_it(name, saved):
    design, step, _, words = BAD[name]
    async with Poolwright(str(saved(design_text(design)))).run_test(size=(120, 40)) as pilot:
        await see(pilot, "Next:")
        await pilot.app.screen.action_go(step)
        pilot.app.screen.action_findings()
        await pilot.pause()
        screen = pilot.app.screen
        places = [number for number, found in enumerate(screen.findings.findings) if words in found.message]
        screen.findings.highlighted = places[0]
        await until(pilot, lambda: words in right_half(pilot.app), words)


@pytest.mark.parametrize("old", NEGATIVE)
def test_a_file_with_a_number_below_zero_is_refused_with_its_place(old, saved, capsys):
    design = swimmer(port(pull={"ahead": 2.5, "astern": 1.5}), starboard(), power=SETTLED.but(length=12.5))
    text = design_text(design)
    new, place = NEGATIVE[old]
    assert text.count(f"\n{old}") + text.count(f"{{ {old}") + text.count(f", {old}") >= 1
    status = cli.main(["check", str(saved(text.replace(old, new)))])
    output = capsys.readouterr()
    assert (status, output.out) == (2, "")
    lines = output.err.splitlines()
    assert any("bad.toml" in line and place in line and "found -" in line and "expected" in line
               for line in lines)  # fmt: skip
    assert "Traceback" not in output.err


async def test_a_pull_below_zero_is_refused_in_its_field():
    app = PageApp("thrusters", swimmer(port(), starboard()))
    async with app.run_test(size=SIZES[1]) as pilot:
        await opened(app, pilot, "Mounts")
        before = app.design
        await typed(pilot, app.field("pull-ahead"), "-2", "enter")
        assert "0 or more" in app.text()
        assert app.design == before


async def test_a_page_without_thrusters_says_what_to_do():
    app = PageApp("thrusters", swimmer(power=SETTLED))
    async with app.run_test(size=SIZES[1]) as pilot:
        await opened(app, pilot, "Speed")
        assert "Add a thruster first" in app.text()
    wires = PageApp("wires", swimmer(power=SETTLED))
    async with wires.run_test(size=SIZES[1]) as pilot:
        await pilot.pause()
        assert "No thruster yet, so no current flows" in wires.text()


def test_the_command_line_says_what_no_thruster_does_and_what_a_stalled_one_draws(saved, capsys):
    """12 V over 2 ohm of winding and 0.03 + 0.024 + 0.013 + 0.033 + 0.02 + 0.474 ohm on the way: 4.63 A."""

    def told(design):
        cli.main(["check", str(saved(design_text(design)))])
        lines = capsys.readouterr().out.splitlines()
        return dict(re.split(r"  +", line, maxsplit=1) for line in lines[1 : lines.index("")])

    assert told(swimmer(power=SETTLED))["Speed"] == "no thruster yet: it goes nowhere by itself"
    assert told(swimmer(power=SETTLED))["Power"] == "no motor to feed"
    assert told(swimmer(port(), starboard()))["Speed"].endswith("; it cannot go up or down")
    one_way = Branch(fuse=3.0, switching="on-off switch")
    single = told(swimmer(starboard(branch=one_way)))
    assert single["Speed"].endswith("it turns to port only; it cannot go astern, up or down")
    assert single["Held fast"] == "starboard motor draws 4.6 A, its fuse of 3 A blows and spares the motor"
