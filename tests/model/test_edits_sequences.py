"""Any sequence of edits, made at random on a generated frame, leaves a design that loads."""

from math import dist

from hypothesis import given, settings
from hypothesis import strategies as st

from model import sizing
from model.design import Design, edits
from model.design.edits import Ref
from model.errors import EditError
from tests.model.edits_designs import EMPTY, planes

spacings = st.lists(st.integers(40, 400), min_size=2, max_size=4)
numbers = st.integers(0, 10_000)


def crossing(design: Design, number: int) -> tuple[str, str, str]:
    groups = (design.arrangement.stations, design.arrangement.sides, design.arrangement.levels)
    chosen = []
    for group in groups:
        if not group:
            raise EditError("no planes")
        number, rest = divmod(number, len(group))
        chosen.append(group[rest].id)
    return chosen[0], chosen[1], chosen[2]


def pick(design: Design, kind: str, number: int) -> str:
    found = edits.pieces(design, kind)
    return found[number % len(found)].id if found else "none"


KINDS = ("station", "side", "level")
FIXED = ("thruster", "float", "ballast", "attachment", "opening")
ACTIONS = (
    lambda d, a, b: edits.add_bar(d, crossing(d, a), crossing(d, b)),
    lambda d, a, b: edits.remove_bar(d, pick(d, "bar", a)),
    lambda d, a, b: edits.split_bar(d, pick(d, "bar", a), pick(d, KINDS[b % 3], b // 3)),
    lambda d, a, b: edits.add_plane(d, KINDS[a % 3], at=b / 1000),
    lambda d, a, b: edits.add_plane(d, KINDS[a % 3]),
    lambda d, a, b: edits.move_plane(d, KINDS[a % 3], pick(d, KINDS[a % 3], a // 3), b / 1000),
    lambda d, a, b: edits.set_spacing(d, KINDS[a % 3], pick(d, KINDS[a % 3], a // 3), b / 1000),
    lambda d, a, b: edits.remove_plane(d, KINDS[a % 3], pick(d, KINDS[a % 3], b)),
    lambda d, a, b: sizing.set_cut(d, pick(d, "bar", a), b / 10_000),
    lambda d, a, b: sizing.set_outside(d, a % 3, b / 10_000),
    lambda d, a, b: edits.add_thruster(d, bar=pick(d, "bar", a)),
    lambda d, a, b: edits.add_float(d),
    lambda d, a, b: edits.add_ballast(d),
    lambda d, a, b: edits.add_attachment(d, "hook", pick(d, "bar", a)),
    lambda d, a, b: edits.add_opening(d, pick(d, "bar", a)),
    lambda d, a, b: edits.add_tether(d),
    lambda d, a, b: edits.nudge(d, Ref(FIXED[a % 5], pick(d, FIXED[a % 5], b)), b / 1000 - 5),
    lambda d, a, b: edits.copy_item(d, Ref(FIXED[a % 5], pick(d, FIXED[a % 5], b))),
    lambda d, a, b: edits.remove_item(d, Ref(FIXED[a % 5], pick(d, FIXED[a % 5], b))),
    lambda d, a, b: edits.set_field(d, Ref("joint", pick(d, "joint", a)), "fitting", pick(d, "fitting", b)),
    lambda d, a, b: edits.remove_supply(d, Ref("fitting", pick(d, "fitting", a))),
)
steps = st.lists(st.tuples(st.integers(0, len(ACTIONS) - 1), numbers, numbers), max_size=25)


def start(x: list[int], y: list[int], z: list[int]) -> Design:
    def group(prefix: str, gaps: list[int]):
        return planes(prefix, *(sum(gaps[:n]) / 1000 for n in range(len(gaps))))

    arrangement = EMPTY.arrangement.but(stations=group("x", x), sides=group("y", y), levels=group("z", z))
    return EMPTY.but(arrangements=(arrangement,))


@settings(max_examples=150, deadline=None)
@given(spacings, spacings, spacings, st.lists(st.tuples(numbers, numbers), min_size=2, max_size=14), steps)
def test_any_sequence_of_edits_leaves_a_valid_design(x, y, z, bars, actions):
    design = start(x, y, z)
    for first, second in bars:
        design = tried(design, lambda d, a=first, b=second: edits.add_bar(d, crossing(d, a), crossing(d, b)))
    for number, first, second in actions:
        before = design.model_dump()
        after = tried(design, lambda d, n=number, a=first, b=second: ACTIONS[n](d, a, b))
        assert design.model_dump() == before, "the old design was changed in place"
        design = after
        assert Design.model_validate(design.model_dump()) == design
        no_joint_lies_inside_a_bar(design)
    assert all(words and "\n" not in words and len(words) < 200 for words in sentences)


sentences: list[str] = []


def tried(design: Design, edit) -> Design:
    try:
        return edit(design)
    except EditError as problem:
        sentences.append(str(problem))
        return design


def no_joint_lies_inside_a_bar(design: Design) -> None:
    """Straight from the definition, by distances: inside means |AP| + |PB| = |AB| with P at neither end."""
    arrangement = design.arrangement
    at = {p.id: p.at for p in (*arrangement.stations, *arrangement.sides, *arrangement.levels)}
    points = {j.id: [at[plane] for plane in j.planes] for j in arrangement.joints}
    for bar in arrangement.bars:
        a, b = points[bar.start], points[bar.end]
        assert 1 <= sum(p != q for p, q in zip(a, b, strict=True)) <= 2
        for joint, here in points.items():
            if joint not in (bar.start, bar.end):
                assert dist(a, here) + dist(here, b) > dist(a, b) + 1e-9
