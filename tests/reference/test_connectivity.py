"""What hangs together, and what closes, against graphs of the networkx package."""

import networkx
import numpy as np
from hypothesis import HealthCheck, given, settings

from model.design import Design
from model.frame.layout import lay_out
from tests.generators import designs, tidy_designs
from tests.reference.raw_frame import Raw

QUIET = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))


def graph(raw: Raw) -> networkx.Graph:
    """Joints as nodes, bars as edges."""
    found = networkx.Graph()
    found.add_nodes_from(raw.at)
    found.add_edges_from((bar["start"], bar["end"], {"bar": name}) for name, bar in raw.bars.items())
    return found


@QUIET
@given(designs(odd=0))
def test_the_pieces_of_a_frame_are_the_components_of_its_graph(design: Design):
    groups = lay_out(design, design.arrangement).groups
    assert {frozenset(group) for group in networkx.connected_components(graph(Raw(design)))} == set(groups)
    sizes = [len(group) for group in groups]
    assert sizes == sorted(sizes, reverse=True)


@QUIET
@given(tidy_designs())
def test_around_any_loop_cuts_and_take_offs_come_back_to_where_they_began(design: Design):
    """Each bar is walked as take-off, pipe and take-off; its direction is that of the raw planes."""
    raw, frame = Raw(design), lay_out(design, design.arrangement)
    net = graph(raw)
    for loop in networkx.cycle_basis(net):
        walked, known = np.zeros(3), True
        for here, there in zip(loop, [*loop[1:], loop[0]], strict=True):
            bar = frame.bars[net.edges[here, there]["bar"]]
            known = known and bar.cut is not None
            step = raw.at[there] - raw.at[here]
            take_offs = sum(bar.faces) - sum(bar.insertions)
            walked += ((bar.cut or 0.0) + take_offs) * step / np.linalg.norm(step)
        if known:
            np.testing.assert_allclose(walked, 0.0, atol=1e-9)


@QUIET
@given(tidy_designs())
def test_each_cut_is_what_the_sockets_at_its_ends_leave(design: Design):
    """Spacing less centre to face at both ends, plus push-in depth at both, from one of the ways that fit."""
    raw, frame = Raw(design), lay_out(design, design.arrangement)
    for name, bar in frame.bars.items():
        ends = raw.bars[name]["start"], raw.bars[name]["end"]
        spacing = float(np.linalg.norm(raw.at[ends[1]] - raw.at[ends[0]]))
        if bar.cut is not None:
            takes = [take_offs(raw, name, end) for end in ends]
            assert min(abs(bar.cut * 1000 - (spacing - a - b)) for a in takes[0] for b in takes[1]) < 1e-5


def take_offs(raw: Raw, bar: str, joint: str) -> set[float]:
    """What the fitting at a joint takes off a bar [mm], in each of the ways that it can lie."""
    arms = [name for name, _ in raw.arms(joint)]
    fitting, ways = raw.candidates(joint)[0]
    sockets = [fitting["sockets"][way[arms.index(bar)]] for way in ways]
    return {raw.centre_to_face(socket) - raw.push_in(bar, socket) for socket in sockets}
