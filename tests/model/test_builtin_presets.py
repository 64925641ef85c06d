"""The presets that come with the program: readable, sourced, different in kind, clear of the coach."""

import re
import tomllib
from itertools import combinations
from math import pi

import networkx
import pytest
from gsw import rho_t_exact

from model.design import Design, Opening, Stock, Supplies, equipment
from model.preset_files import read_preset
from model.presets import OWN_FOLDER_VARIABLE, built_in_folder, presets
from model.review import review

FILES = sorted(built_in_folder().glob("*/*.toml"))
STARTERS = [path for path in FILES if path.parent.name == "starters"]
DESIGNS = [path for path in FILES if path.parent.name in ("starters", "demo")]
STOCKS = [path for path in FILES if path.parent.name == "stocks"]
MARKS = re.compile(r"invented|common practice|from memory|estimate|ASTM|DIN|ISO|page|table", re.IGNORECASE)
WEIGHING_WATER = 998.2  # [kg/m3] water at 20 deg C, in which bought parts are weighed


def names(paths):
    return [path.stem for path in paths]


def load(path):
    return read_preset(path).payload


@pytest.fixture(autouse=True)
def _no_presets_of_the_users_own(monkeypatch, tmp_path):
    monkeypatch.setenv(OWN_FOLDER_VARIABLE, str(tmp_path))


# --- every file ---


@pytest.mark.parametrize("path", FILES, ids=names(FILES))
def test_it_loads_without_a_word_of_warning(path):
    content = read_preset(path)
    assert content.warnings == ()
    assert content.header.summary


def test_all_of_them_are_listed():
    listed = presets()
    assert [preset.path for preset in listed if preset.problem] == []
    assert sorted(preset.path for preset in listed) == FILES


def test_there_is_what_a_class_needs():
    kinds = {path.parent.name: [] for path in FILES}
    for path in FILES:
        kinds[path.parent.name].append(path.stem)
    assert {kind: len(found) for kind, found in kinds.items()} == {
        "stocks": 8,
        "briefs": 4,
        "motors": 1,
        "starters": 6,
        "demo": 1,
    }


@pytest.mark.parametrize("path", FILES, ids=names(FILES))
def test_it_says_where_its_values_come_from(path):
    content = read_preset(path)
    origin = content.header.origin
    assert MARKS.search(origin) or origin.startswith("empty:")
    for item in sourced(content.payload):
        assert MARKS.search(item.source), item.id
        assert "invented" in item.source, f"{item.id}: its price is invented"


def sourced(payload):
    if isinstance(payload, Stock):
        return [*payload.pipes, *payload.fittings]
    if isinstance(payload, Supplies):
        return [*payload.motors, *payload.mounts, *payload.foams]
    if isinstance(payload, Design):
        return [*sourced(payload.stock), *sourced(payload.supplies)]
    return []


# --- stocks, briefs, motors ---


@pytest.mark.parametrize("path", STOCKS, ids=names(STOCKS))
def test_a_plumbing_range_has_no_corner_fitting_and_a_furniture_range_has_them(path):
    shapes = {fitting.shape for fitting in load(path).fittings}
    corners = {"corner", "side-outlet tee", "five-way", "six-way"}
    assert {"elbow", "tee", "coupling", "cap", "cross"} <= shapes
    if path.stem.endswith("furniture"):
        assert corners <= shapes
    else:
        assert not corners & shapes
        assert "elbow 45" in shapes


def test_the_range_of_two_sizes_is_the_two_ranges_and_a_reducing_tee():
    stocks = {path.stem: load(path) for path in STOCKS}
    both = {fitting.id: fitting for fitting in stocks["two-sizes-plumbing"].fittings}
    reducing = both.pop("reducing-tee")
    ways = {socket.to: (socket.pipe, socket.depth) for socket in reducing.sockets}
    assert ways["+x"] == ways["-x"] == ("three-quarter", pytest.approx(0.719 * 0.0254))  # ASTM D2466
    assert ways["+z"] == ("half", pytest.approx(0.688 * 0.0254))
    assert "invented, no source" in reducing.source
    wide = {fitting.id: fitting for fitting in stocks["three-quarter-plumbing"].fittings}
    half = {f"half-{fitting.id}": fitting for fitting in stocks["half-inch-plumbing"].fittings}
    for name, fitting in both.items():
        single = {**wide, **half}[name]
        assert fitting.but(id=single.id, name=single.name) == single


@pytest.mark.parametrize("path", STOCKS, ids=names(STOCKS))
def test_a_guessed_mass_says_so(path):
    for fitting in load(path).fittings:
        assert "Mass: estimate" in fitting.source
        assert "+-25 %" in fitting.source


@pytest.mark.parametrize("path", STOCKS, ids=names(STOCKS))
def test_inch_pipe_is_written_in_inches_and_metric_pipe_in_mm(path):
    assert tomllib.loads(path.read_text())["units"] == ("mm" if path.stem.startswith("metric") else "in")


def test_the_briefs_differ_and_the_empty_one_has_every_rule_off():
    found = {path.stem: load(path) for path in FILES if path.parent.name == "briefs"}
    empty = found.pop("organisers-rules")
    rules = (empty.size_limit, empty.spending_limit, empty.materials, empty.moves, empty.task)
    assert rules == (None, None, (), (), "")
    assert len(found) == 3
    for value in ("size_limit", "spending_limit", "moves", "materials", "task"):
        assert len({getattr(brief, value) for brief in found.values()}) == 3, value
    assert {brief.water.name for brief in found.values()} == {"fresh pool", "salt pool", "harbour"}
    assert all(brief.origin == "invented" for brief in found.values())


def test_there_are_two_small_invented_12_volt_motors():
    supplies = load(built_in_folder() / "motors" / "small-12-volt.toml")
    assert [motor.volts for motor in supplies.motors] == [12, 12]
    assert all(motor.source.startswith("invented") for motor in supplies.motors)
    assert {mount.method for mount in supplies.mounts} == {"ties", "clamp", "stub"}
    assert len(supplies.foams) == 3


# --- starters and the demo ---


@pytest.mark.parametrize("path", DESIGNS, ids=names(DESIGNS))
def test_the_coach_has_nothing_to_say(path):
    assert [finding.message for finding in review(load(path)).findings] == []


@pytest.mark.parametrize("path", DESIGNS, ids=names(DESIGNS))
def test_it_is_a_whole_vehicle(path):
    arrangement = load(path).arrangement
    kinds = {item.kind for item in arrangement.attachments}
    assert "hook" in kinds
    assert arrangement.tether
    assert arrangement.floats
    assert arrangement.openings
    assert len(arrangement.thrusters) >= 3
    assert all(thruster.mount for thruster in arrangement.thrusters)


@pytest.mark.parametrize("path", DESIGNS, ids=names(DESIGNS))
def test_every_name_stands_once(path):
    arrangement = load(path).arrangement
    for things in (arrangement.bars, arrangement.joints, equipment(arrangement)):
        called = [thing.name for thing in things]
        assert len(set(called)) == len(called)


def drilled_in_fitting(item, bar):
    """A bar that is too short is drilled in its fitting, short of the pipe's end (common practice)."""
    middle = item.at * bar.spacing
    free = [face - pushed for face, pushed in zip(bar.faces, bar.insertions, strict=True)]
    return isinstance(item, Opening) and (middle < free[0] or bar.spacing - middle < free[1])


@pytest.mark.parametrize("path", DESIGNS, ids=names(DESIGNS))
def test_everything_sits_on_pipe_that_shows(path):
    """Ties, clamps, foam and holes need pipe; a fitting is in the way."""
    design = load(path)
    report = review(design)
    for item in equipment(design.arrangement):
        bar = report.survey.frame.bars[item.bar]
        if drilled_in_fitting(item, bar):
            continue
        middle = item.at * bar.spacing
        half = getattr(item, "length", getattr(item, "diameter", 0.010)) / 2
        assert middle - half >= bar.faces[0] - 1e-9, item.name
        assert middle + half <= bar.spacing - bar.faces[1] + 1e-9, item.name


@pytest.mark.parametrize("path", DESIGNS, ids=names(DESIGNS))
def test_holes_keep_off_foam_and_sockets(path):
    """A hole stays one pipe diameter from a socket (common practice, no source) and out of the foam."""
    design = load(path)
    frame = review(design).survey.frame
    floats = [(piece.bar, piece.at, piece.length, piece.beside) for piece in design.arrangement.floats]
    for hole in design.arrangement.openings:
        bar = frame.bars[hole.bar]
        if drilled_in_fitting(hole, bar):
            continue
        middle, least = hole.at * bar.spacing, bar.pipe.outside_diameter
        assert middle >= bar.faces[0] + least, hole.name
        assert middle <= bar.spacing - bar.faces[1] - least, hole.name
        for on, at, length, _ in floats:
            assert on != hole.bar or abs(at - hole.at) * bar.spacing > (length + hole.diameter) / 2


def frame_graph(design):
    graph = networkx.Graph()
    arrangement = design.arrangement
    graph.add_edges_from((bar.start, bar.end) for bar in arrangement.bars)
    assert set(graph) == {joint.id for joint in arrangement.joints}
    return graph


@pytest.mark.parametrize("path", DESIGNS, ids=names(DESIGNS))
def test_its_frame_hangs_together(path):
    assert networkx.is_connected(frame_graph(load(path)))


@pytest.mark.parametrize(("one", "other"), list(combinations(STARTERS, 2)), ids=lambda path: path.stem)
def test_starters_differ_in_kind(one, other):
    """No two frames are joined up alike: as graphs they are not isomorphic."""
    assert not networkx.is_isomorphic(frame_graph(load(one)), frame_graph(load(other)))


def test_starters_are_what_their_names_say():
    size = {path.stem: review(load(path)).survey.extents.size for path in STARTERS}
    aspect = {name: max(length, width) / height for name, (length, width, height) in size.items()}
    assert max(aspect, key=aspect.get) == "long-and-narrow"
    assert size["flat-and-quick"][2] == min(height for _, _, height in size.values())
    assert size["tall-and-steady"][2] == max(height for _, _, height in size.values())
    assert size["wide-and-low"][1] == max(width for _, width, _ in size.values())
    assert size["long-and-narrow"][1] == min(width for _, width, _ in size.values())
    bars = {path.stem: len(load(path).arrangement.bars) for path in STARTERS}
    assert bars["first-afternoon"] <= 15


def test_starters_use_both_ranges_and_both_units():
    shapes = {path.stem: {fitting.shape for fitting in load(path).stock.fittings} for path in STARTERS}
    plumbing = [name for name, has in shapes.items() if "corner" not in has]
    assert len(plumbing) >= 2
    assert len(shapes) - len(plumbing) >= 2
    assert {load(path).units for path in STARTERS} == {"mm", "in"}
    assert len({load(path).brief.title for path in STARTERS}) == 3


# --- weight and lift of each design, from the file by plain arithmetic ---


@pytest.mark.parametrize("path", DESIGNS, ids=names(DESIGNS))
def test_it_floats_by_10_to_40_grams(path):
    """Weight and displaced water added up from the file's raw numbers, water by TEOS-10 (gsw).

    A file leaves the usual water out: 27 deg C, 0.5 g/kg.  Half a gram is left for the water: our
    salts are the older practical salinity, 0.1 kg/m3 apart in the sea.
    """
    raw = tomllib.loads(path.read_text())
    mass, volume = (sum(column) for column in zip(*pieces(raw), strict=True))
    water = raw["brief"].get("water", {})
    density = rho_t_exact(water.get("salinity", 0.5), water.get("temperature", 27), 0)
    spare = volume * density - mass
    assert 0.010 <= spare <= 0.040
    assert 0.3 <= 100 * spare / (volume * density) <= 3
    assert review(load(path)).survey.balance.spare == pytest.approx(spare, abs=5e-4)


def pieces(raw):
    """(mass [kg], displaced water [m3]) of each piece of a design file."""
    arrangement = raw["arrangements"][0]
    metre = {"mm": 1e-3, "in": 0.0254}[raw["units"]]
    yield from pipe_and_fittings(raw, arrangement, metre)
    motors = {motor["id"]: motor for motor in raw["supplies"]["motors"]}
    mounts = {mount["id"]: mount for mount in raw["supplies"]["mounts"]}
    foams = {foam["id"]: foam for foam in raw["supplies"]["foams"]}
    bought = [motors[thruster["motor"]] for thruster in arrangement["thrusters"]]
    bought += [mounts[thruster["mount"]] for thruster in arrangement["thrusters"]]
    for item in bought + arrangement.get("attachments", []):
        yield item["mass"] / 1e3, (item["mass"] - item["mass_in_water"]) / 1e3 / WEIGHING_WATER
    for piece in arrangement["floats"]:
        foam = foams[piece["foam"]]
        area = pi / 4 * (foam["outside_diameter"] ** 2 - foam["hole"] ** 2) * metre**2
        yield area * piece["length"] * metre * foam["density"], area * piece["length"] * metre
    for weight in arrangement.get("ballasts", []):
        yield weight["mass"] / 1e3, weight["mass"] / 1e3 / 7850
    tether = arrangement["tether"]
    hanging = tether["hanging"] * metre
    lost = (tether["mass_per_m"] - tether["mass_in_water_per_m"]) * hanging
    lost += tether["floats"] * tether["float_lift"]
    yield tether["mass_per_m"] * hanging / 1e3, lost / 1e3 / WEIGHING_WATER


def pipe_and_fittings(raw, arrangement, metre):
    """Each bar and fitting; the fitting of a joint is the cheapest with the sockets that it needs."""
    pipe, ways = raw["stock"]["pipes"][0], directions(arrangement)
    ring = pi / 4 * (pipe["outside_diameter"] ** 2 - pipe["bore"] ** 2)
    faces = {}
    for joint in arrangement["joints"]:
        fitting = pick(raw["stock"]["fittings"], ways[joint["id"]])
        straight = fitting["sockets"][0]
        faces[joint["id"]] = straight["laying_length"] + straight["depth"]
        plastic = fitting["mass"] / 1e3
        yield plastic, plastic / fitting["density"]
    for bar in arrangement["bars"]:
        start, end = (place(arrangement, bar[which]) for which in ("start", "end"))
        spacing = sum(abs(a - b) for a, b in zip(start, end, strict=True))
        cut = spacing - faces[bar["start"]] - faces[bar["end"]] + 2 * pipe["insertion"]
        volume = ring * cut * metre**3
        yield volume * pipe["density"], volume


def place(arrangement, id):
    joint = next(joint for joint in arrangement["joints"] if joint["id"] == id)
    planes = (("stations", "station"), ("sides", "side"), ("levels", "level"))
    return [
        next(plane["at"] for plane in arrangement[group] if plane["id"] == joint[one])
        for group, one in planes
    ]


def directions(arrangement):
    """The signed axes along which bars leave each joint."""
    ways = {joint["id"]: set() for joint in arrangement["joints"]}
    for bar in arrangement["bars"]:
        ends = [(bar["start"], bar["end"]), (bar["end"], bar["start"])]
        for here, there in ends:
            steps = zip(place(arrangement, there), place(arrangement, here), strict=True)
            ways[here] |= {(axis, a > b) for axis, (a, b) in enumerate(steps) if a != b}
    return ways


def pick(fittings, ways):
    """The fitting with as many sockets as bars, and as many of them opposite another."""
    opposite = sum((axis, not up) in ways for axis, up in ways)
    shape = {
        (1, 0): "cap",
        (2, 0): "elbow",
        (2, 2): "coupling",
        (3, 0): "corner",
        (3, 2): "tee",
        (4, 4): "cross",
        (4, 2): "side-outlet tee",
        (5, 4): "five-way",
    }[len(ways), opposite]
    return next(fitting for fitting in fittings if fitting["shape"] == shape)
