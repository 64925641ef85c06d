"""Cutting plans against instances with a published optimum, and against trying everything."""

from random import Random

import pytest

from model.design import Pipe, Stick
from model.money.cutting_plan import cutting_plan
from model.money.cutting_task import Source

INCH = 0.0254


def pipe(*sticks):
    return Pipe(
        id="p", name="pipe", material="PVC", outside_diameter=0.0213, bore=0.0153, insertion=0.015,
        sticks=tuple(Stick(length=length, price=price) for length, price in sticks),
    )  # fmt: skip


def many(lengths, demands):
    return [length for length, demand in zip(lengths, demands, strict=True) for _ in range(demand)]


def check_plan(plan, cuts, kerf):
    """Every piece once, every stick long enough with its kerfs: sum (l + k) <= S + k."""
    assert sorted(cut for stick in plan.sticks for cut in stick.cuts) == pytest.approx(sorted(cuts), abs=1e-5)
    for stick in plan.sticks:
        used = sum(stick.cuts) + kerf * (len(stick.cuts) - 1)
        assert used <= stick.source.length + 1e-5
        assert list(stick.cuts) == sorted(stick.cuts, reverse=True)
        assert stick.rest == pytest.approx(max(0.0, stick.source.length - used - kerf), abs=3e-5)


def test_paper_rolls_of_5600_take_73():
    """The published example: rolls of 5600 mm for 13 widths; 73 are least (bound 72.7, total 407160).

    Encyclopedia article "Cutting stock problem", copy at graphsearch.epfl.ch/en/concept/826868.
    """
    lengths = [1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200]
    demands = [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20]
    cuts = [length / 1000 for length in many(lengths, demands)]
    plan = cutting_plan(pipe((5.6, 1.0)), cuts, 0.0)
    assert plan.cost == 73
    assert plan.proven
    check_plan(plan, cuts, 0.0)


def test_the_classic_of_100_takes_453():
    """After Chvatal, Linear Programming (1983), chapter 13 (raw width from memory): bound 452.25, so 453."""
    cuts = [length / 100 for length in many([45, 36, 31, 14], [97, 610, 395, 211])]
    plan = cutting_plan(pipe((1.0, 1.0)), cuts, 0.0)
    assert plan.cost == 453
    assert plan.proven


@pytest.mark.parametrize(("kerf", "sticks"), [(0, 1), (1 / 16, 2), (1 / 8, 2)])
def test_eight_pieces_of_15_in_from_120_in(kerf, sticks):
    """8 x 15 = 120 leaves nothing for the saw (arithmetic)."""
    plan = cutting_plan(pipe((120 * INCH, 1.0)), [15 * INCH] * 8, kerf * INCH)
    assert (len(plan.sticks), plan.cost, plan.proven) == (sticks, sticks, True)


def least_cost(sale, cuts, kerf, held):
    """By trying every way to part the pieces over sticks: dynamic programming over all subsets."""
    everything = range(1 << len(cuts))
    need = [
        sum(c for n, c in enumerate(cuts) if mask >> n & 1) + kerf * (bin(mask).count("1") - 1)
        for mask in everything
    ]
    price = [
        min((p for length, p in sale if need[mask] <= length + 1e-9), default=float("inf"))
        for mask in everything
    ]
    cost = [0.0] + [float("inf")] * (len(everything) - 1)
    for mask in everything[1:]:
        first = mask & -mask
        part = mask
        while part:
            if part & first:
                cost[mask] = min(cost[mask], price[part] + cost[mask & ~part])
            part = (part - 1) & mask
    reached = {0}
    for length in held:
        fits = [m for m in everything if m == 0 or need[m] <= length + 1e-9]
        reached = {done | m for done in reached for m in fits if not done & m}
    return min(cost[(len(everything) - 1) & ~done] for done in reached)


@pytest.mark.parametrize("seed", range(40))
def test_small_lists_against_trying_everything(seed):
    dice = Random(seed)
    kerf = dice.choice([0.0, 0.001, 0.003])
    cuts = [dice.randrange(60, 700) / 1000 for _ in range(dice.randrange(3, 8))]
    sale = [
        (dice.randrange(500, 1800) / 1000, dice.randrange(50, 600) / 100)
        for _ in range(dice.choice([1, 2, 3]))
    ]
    sale.append((2.0, 7.0))
    held = [dice.randrange(100, 800) / 1000 for _ in range(dice.choice([0, 0, 1, 2]))]
    plan = cutting_plan(pipe(*sale), cuts, kerf, [Source(length, count=1) for length in held])
    assert plan.cost == pytest.approx(least_cost(sale, cuts, kerf, held), abs=1e-6)
    assert plan.proven
    check_plan(plan, cuts, kerf)
    used = [stick.source.length for stick in plan.sticks if stick.source.on_hand]
    assert all(used.count(length) <= held.count(length) for length in used)


def programmed_cost(sale, cuts, kerf):
    """By a textbook assignment program, in scipy: which piece lies on which stick."""
    np = pytest.importorskip("numpy")
    optimize = pytest.importorskip("scipy.optimize")
    sticks = [(length, price) for length, price in sale for _ in range(len(cuts))]
    count = len(cuts) * len(sticks) + len(sticks)
    spot = lambda piece, stick: piece * len(sticks) + stick  # noqa: E731
    rows, low, high = [], [], []
    for piece in range(len(cuts)):
        row = np.zeros(count)
        row[[spot(piece, s) for s in range(len(sticks))]] = 1
        rows, low, high = [*rows, row], [*low, 1], [*high, 1]
    for s, (length, _) in enumerate(sticks):
        row = np.zeros(count)
        for piece, cut in enumerate(cuts):
            row[spot(piece, s)] = cut + kerf
        row[len(cuts) * len(sticks) + s] = -(length + kerf)
        rows, low, high = [*rows, row], [*low, -np.inf], [*high, 1e-9]
    price = np.concatenate([np.zeros(len(cuts) * len(sticks)), [price for _, price in sticks]])
    found = optimize.milp(
        price, integrality=np.ones(count), bounds=optimize.Bounds(0, 1),
        constraints=optimize.LinearConstraint(np.array(rows), low, high), options={"time_limit": 20},
    )  # fmt: skip
    return found.fun if found.status == 0 else None


@pytest.mark.parametrize("seed", range(3))
def test_a_dozen_pieces_against_an_assignment_program(seed):
    dice = Random(100 + seed)
    cuts = [dice.choice([0.31, 0.42, 0.27, 0.55]) for _ in range(10)]
    sale = [(1.524, 2.5), (0.61, 1.2)]
    expected = programmed_cost(sale, cuts, 0.001)
    plan = cutting_plan(pipe(*sale), cuts, 0.001)
    assert plan.proven
    if expected is not None:
        assert plan.cost == pytest.approx(expected, abs=1e-6)


@pytest.mark.parametrize("seed", range(12))
def test_a_class_size_list_is_proven(seed):
    dice = Random(seed)
    lengths = [dice.uniform(0.08, 0.45) for _ in range(12)]
    cuts = [dice.choice(lengths) for _ in range(40)]
    held = [Source(0.5, count=2), Source(0.31, count=1)]
    plan = cutting_plan(pipe((3.048, 4.0), (1.524, 2.5), (0.61, 1.2)), cuts, 0.001, held)
    assert plan.proven
    check_plan(plan, cuts, 0.001)


def test_what_is_on_hand_comes_first():
    plan = cutting_plan(pipe((3.0, 5.0)), [0.4, 0.3], 0.001, [Source(0.75, count=1)])
    assert plan.cost == 0
    assert [stick.source.on_hand for stick in plan.sticks] == [True]


def test_a_piece_longer_than_every_stick_gives_no_plan():
    assert cutting_plan(pipe((1.0, 5.0)), [1.2, 0.3], 0.001) is None
    assert cutting_plan(pipe(), [0.3], 0.001) is None
    assert cutting_plan(pipe((1.0, 5.0)), [], 0.001).cost == 0


def test_without_prices_the_least_pipe_is_bought():
    plan = cutting_plan(pipe((3.0, 0.0), (1.0, 0.0)), [0.45, 0.45], 0.001)
    assert [stick.source.length for stick in plan.sticks] == [1.0]
    assert plan.proven


@pytest.mark.parametrize("seed", range(12))
def test_sticks_sawn_up_without_waste_can_be_put_together_again(seed):
    """Sticks are cut at random into pieces; by their total length no fewer sticks can give them."""
    dice = Random(seed)
    cuts = []
    for length in [1500] * 4 + [600] * 3:
        marks = sorted(dice.sample(range(50, length - 50), dice.choice([2, 3])))
        cuts += [b - a for a, b in zip([0, *marks], [*marks, length], strict=True)]
    dice.shuffle(cuts)
    plan = cutting_plan(pipe((1.5, 2.5), (0.6, 1.0)), [cut / 1000 for cut in cuts if cut], 0.0)
    assert plan.proven
    assert plan.cost == 4 * 2.5 + 3 * 1.0
