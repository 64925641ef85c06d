"""The order of work: complete, in order, with cautions where the work is, for any design."""

import networkx
import pytest
from hypothesis import HealthCheck, given, settings

from model.building.fitting_steps import DRY_FIT, FOAM_FIRST
from model.building.loops import bars_in_loops
from model.building.order import build_steps
from model.design.edits.decisions import changes, logged
from model.money.shopping import laid, pipe_plan
from model.pool.card import pool_card
from model.pool.safety import inspection
from model.presets import load_preset, presets
from model.survey import survey
from tests.generators import designs

DAY = "2026-03-14"
ORDER = (
    "mark", "saw", "deburr", "label", FOAM_FIRST, DRY_FIT, "square", "drill", "mounts", "floats", "tether",
    "wiring", "join", "tug",
)  # fmt: skip


@pytest.fixture(scope="module")
def demo():
    return load_preset(presets("demo")[0])


def kind(step):
    return next(name for name in ORDER if step.id == name or step.id.startswith(f"{name}-"))


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(design=designs(most=16))
def test_the_order_of_work_of_any_design(design):
    found = survey(design)
    steps = build_steps(found)
    assert len({step.id for step in steps}) == len(steps)
    places = [ORDER.index(kind(step)) for step in steps]
    assert places == sorted(places)
    for step in steps:
        assert step.title
        assert step.check
        if kind(step) in ("saw", "drill"):
            assert any("protection" in caution for caution in step.cautions)
    assert pool_card(found)
    assert inspection(found)


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(design=designs(most=20))
def test_bars_in_loops_are_those_that_are_no_bridge(design):
    """Bridges by networkx (chain decomposition), on a graph with a node in each bar for doubled bars."""
    graph = networkx.Graph()
    for bar in design.arrangement.bars:
        graph.add_edge(("joint", bar.start), ("bar", bar.id))
        graph.add_edge(("bar", bar.id), ("joint", bar.end))
    bridges = {end[1] for edge in networkx.bridges(graph) for end in edge if end[0] == "bar"}
    assert bars_in_loops(survey(design).frame) == {bar.id for bar in design.arrangement.bars} - bridges


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(design=designs(most=16))
def test_every_piece_comes_out_of_one_stick(design):
    frame = survey(design).frame
    plan = pipe_plan(design, frame)
    sawn = [bar.id for pipe in plan.plans for stick in laid(pipe, frame) for bar in stick.bars]
    wanted = [bar.id for bar in frame.bars.values() if bar.cut and bar.cut > 0]
    assert sorted([*sawn, *(bar.id for bar in plan.unsold)]) == sorted(wanted)
    for pipe in plan.plans:
        for stick in laid(pipe, frame):
            used = sum(bar.cut for bar in stick.bars) + design.stock.kerf * (len(stick.bars) - 1)
            assert used <= stick.source.length + 2e-5
            assert [bar.cut for bar in stick.bars] == sorted((bar.cut for bar in stick.bars), reverse=True)


def test_the_demo_names_its_pieces_and_its_foam(demo):
    steps = {step.id: step for step in build_steps(survey(demo))}
    assert steps["mark"].pieces[0] == "A: 4 x 217 mm of 20 mm pipe; push-to mark 10.5 mm from each end"
    assert "before its loop is closed" in steps[FOAM_FIRST].pieces[0]
    assert any(f"{demo.arrangement.power.main_fuse:g} A" in line for line in steps["wiring"].pieces)
    first = [line.split(" x ")[1] for line in steps["saw-1"].pieces[:-1]]
    lengths = [float(line.split()[1]) for line in first]
    assert lengths == sorted(lengths)


def test_a_decision_says_from_what_to_what(demo):
    foam = demo.arrangement.floats[0]
    after = demo.arranged(floats=(foam.but(length=foam.length + 0.01), *demo.arrangement.floats[1:]))
    (change,) = changes(demo, after)
    assert (change.what, change.before, change.after) == ("bow float: length", "84 mm", "94 mm")
    entry = logged(demo, after, "Longer float", DAY, "Ida", "it sank").evidence.log[-1]
    assert (entry.what, entry.why, entry.who) == ("Longer float", "it sank", "Ida")
    assert "84 mm" in entry.before
    assert "94 mm" in entry.after
    assert logged(demo, demo, "nothing", DAY) is demo


def test_a_decision_in_inches_speaks_inches(demo):
    inches = demo.but(units="in")
    after = inches.but(brief=demo.brief.but(size_limit=(0.6096, 0.4572, 0.4064), spending_limit=99.0))
    words = {change.what: (change.before, change.after) for change in changes(inches, after)}
    assert words["brief: size limit"][1] == "24 in, 18 in, 16 in"
    assert words["brief: spending limit"] == ("120", "99")


@settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
@given(before=designs(most=10), after=designs(most=10))
def test_any_two_designs_can_be_told_apart_in_words(before, after):
    found = list(changes(before, after))
    assert bool(found) == (before.but(evidence=after.evidence) != after)
    if found:
        assert logged(before, after, "x" * 300, DAY).evidence.log[-1].what
