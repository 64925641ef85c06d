"""The wiring as a tree of plain signs and as a picture: what is there, in the order that current meets it."""

import re
from xml.etree import ElementTree

import pytest

from model.design import Battery, Branch
from model.drawing.diagram_svg import diagram_svg
from model.drawing.wires import wiring_scene
from model.power.diagram import wiring_lines, wiring_tree
from model.survey import survey
from tests.model.thrust_cases import SETTLED, port, starboard, swimmer

POWER = SETTLED.but(battery=Battery(volts=12.0, capacity=7.0), core_area=0.75, length=10.0)


def wired(feed="pair each", main=7.5, **branch):
    """A box whose port motor has a branch of its own."""
    power = POWER.but(feed=feed, main_fuse=main)
    return survey(swimmer(port(branch=Branch(**branch)), starboard(), power=power))


def tree(found):
    return wiring_tree(found.arrangement, found.wiring, "mm")


def test_the_tree_begins_at_the_battery_and_ends_at_the_motors():
    found = wired(fuse=3.0, core_area=1.5, colours=("blue", "white"), switching="on-off switch")
    volts = [f"{load.volts:.1f} V, {load.amps:.1f} A" for load in found.wiring.loads]
    assert tree(found) == (
        "[battery 12 V, 7 Ah]",
        " |",
        "[fuse 7.5 A]",
        " |",
        " | lead 2 x 1.5 mm2, 1 m long",
        " |",
        "[control box]",
        " |",
        " +--[fuse 3 A]--[on-off switch]--> port motor",
        f" |    blue and white, 2 x 1.5 mm2, 10 m long: {volts[0]}",
        " |",
        " +--[fuse 3 A]--[reversing switch]--> starboard motor",
        f"      red and black, 2 x 0.75 mm2, 10 m long: {volts[1]}",
    )


@pytest.mark.parametrize(
    ("main", "fuse", "branch"),
    [
        (7.5, None, " +--[reversing switch]--> port motor"),
        (None, None, " +--[NO FUSE]--[reversing switch]--> port motor"),
        (None, 2.0, " +--[fuse 2 A]--[reversing switch]--> port motor"),
    ],
)
def test_a_fuse_that_is_not_there_is_seen(main, fuse, branch):
    lines = tree(wired(main=main, fuse=fuse))
    assert branch in lines
    assert ("[NO FUSE]" in lines) == (main is None)


def test_a_shared_pair_is_drawn_once_before_the_branches():
    found = wired(feed="one pair", fuse=3.0)
    lines = tree(found)
    assert lines.index(" | tether 2 x 0.75 mm2, 10 m long") < lines.index("[control box on the vehicle]")
    assert sum("10 m" in line for line in lines) == 1
    words = wiring_lines(found.arrangement, found.wiring, "mm")
    assert words[2].endswith("to the tether")
    assert words[3].endswith("10 m long, to the control box on the vehicle")
    texts = pictured(found)
    assert sum("10 m" in text for text in texts) == 1
    assert "control box on the vehicle" in texts


def test_a_pair_for_each_motor_is_drawn_with_each():
    texts = pictured(wired(fuse=3.0, core_area=1.5))
    assert [text for text in texts if "10 m" in text] == ["2 x 1.5 mm2, 10 m", "2 x 0.75 mm2, 10 m"]
    assert "control box" in texts


def pictured(found):
    """All words of the picture."""
    scene = wiring_scene(found.arrangement, found.wiring, "mm")
    return [element.text for element in ElementTree.fromstring(diagram_svg(scene)).iter() if element.text]


@pytest.mark.parametrize("feed", ["pair each", "one pair"])
def test_it_is_plain_ascii_and_fits_80_columns(feed):
    for line in tree(wired(feed=feed, fuse=7.5)):
        assert re.fullmatch(r"[ -~]{1,78}", line)
