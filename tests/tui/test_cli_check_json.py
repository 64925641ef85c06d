"""``check --json``: a contract for programs, held by a schema, a golden file and numbers worked by hand."""

import json
from math import pi
from pathlib import Path

import gsw
import jsonschema
import pytest

from model.check import check_document, proved
from model.design import Arrangement, Bar, Design, Joint, Plane
from model.files import save_design
from model.presets import built_in_folder
from model.review import proven_remedy, review
from tests.model.files_designs import STOCK, sample
from tui import cli

FIXTURES = Path(__file__).parent.parent / "fixtures"
RECTANGLE = FIXTURES / "rectangle.toml"
GOLDEN = FIXTURES / "rectangle.check.json"
SCHEMA = json.loads((FIXTURES / "check.schema.json").read_text())
WHOLE_DESIGNS = sorted([*built_in_folder().glob("starters/*.toml"), *built_in_folder().glob("demo/*.toml")])


def run(capsys, *files):
    """The documents, the lines on standard error, and the exit status."""
    status = cli.main(["check", "--json", *map(str, files)])
    output = capsys.readouterr()
    return json.loads(output.out), output.err.splitlines(), status


def test_the_schema_itself_is_right():
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("path", [RECTANGLE, *WHOLE_DESIGNS], ids=lambda path: path.stem)
def test_documents_keep_to_the_schema(path, capsys):
    documents, errors, status = run(capsys, path)
    jsonschema.validate(documents, SCHEMA)
    assert len(documents) == 1
    assert documents[0]["file"] == str(path)
    assert errors == []
    assert status == (1 if documents[0]["verdict"] == "fix" else 0)
    assert (documents[0]["verdict"] == "fix") == any(
        f["severity"] == "must" for f in documents[0]["findings"]
    )


def test_the_rectangle_has_the_numbers_that_a_hand_finds(capsys):
    """300 x 200 mm between centres; 10 + 15 mm from an elbow's centre to its face, 10 mm pushed in."""
    (document,), _, _ = run(capsys, RECTANGLE)
    long, short = 300 - 2 * (10 + 15) + 2 * 10, 200 - 2 * (10 + 15) + 2 * 10
    assert [(cut["length_mm"], cut["quantity"]) for cut in document["cuts"]] == [(long, 2), (short, 2)]
    assert document["cuts"][0]["bars"] == ["port rail", "starboard rail"]
    assert document["overall"]["size_mm"] == [300 + 26, 200 + 26, 26]
    assert document["overall"]["over_mm"] == [300 + 26 - 320, 0, 0]
    assert [(each["kind"], each["quantity"]) for each in document["fittings"]] == [("elbow", 4)]

    plastic = 1400e-9  # kg per mm3
    pipe = pi / 4 * (20**2 - 16**2) * 2 * (long + short) * plastic
    mass = pipe + 4 * 0.020
    water = gsw.rho(0.5, gsw.CT_from_t(0.5, 27, 0), 0)  # the brief's water: 27 deg C, 0.5 g/kg
    net = (mass / (plastic * 1e9) * water - mass) * 9.80665
    assert document["balance"]["mass_kg"] == pytest.approx(mass, abs=1e-5)
    assert document["balance"]["displaced_l"] == pytest.approx(mass / 1.4, abs=1e-5)
    assert document["balance"]["net_n"] == pytest.approx(net, abs=1e-3)
    assert document["balance"]["cg_mm"] == document["balance"]["cb_mm"] == [0, 0, 0]

    # head on: 150 mm of pipe shows, and two elbows, each a hub of 25 x 26 mm and half a disc of its other arm
    front = 150 * 20 + 2 * (25 * 26 + pi * 13**2 / 2)
    assert document["motion"]["front_area_cm2"] == pytest.approx(front / 100, abs=0.06)

    # without a hole all the room stays dry: what it holds is held by the outside check of hidden room
    assert document["flood_s"] is None
    dry = pi / 4 * 16**2 * 2 * (long + short) / 1000
    for state in document["air"]:
        assert state["trapped_ml"] == pytest.approx(sum(each["ml"] for each in state["pockets"]), abs=0.05)
        assert all(each["closed"] for each in state["pockets"])
        assert dry < state["trapped_ml"] < 1.2 * dry

    # one metre of pipe at 3 and four elbows at 0.50; the four cuts and saw kerfs take 888 mm
    assert document["money"] == {"currency": "shells", "spent": 3 + 4 * 0.5, "limit": 20, "left": 15}


def test_the_rectangle_is_as_it_was(capsys, monkeypatch):
    """The golden file; sentences are for people and may change, so they are left out of it."""
    monkeypatch.chdir(FIXTURES)
    documents, _, status = run(capsys, RECTANGLE.name)
    for finding in documents[0]["findings"]:
        del finding["message"]
    assert documents == json.loads(GOLDEN.read_text())
    assert status == 1


def test_nothing_that_cannot_be_worked_out_is_made_up(tmp_path, capsys):
    lonely = Joint(id="k", name="lonely", station="s", side="p", level="l")
    planes = {"stations": "s", "sides": "p", "levels": "l"}
    empty = Arrangement(
        id="a",
        name="a",
        joints=(lonely,),
        **{kind: (Plane(id=identity, name=identity, at=0),) for kind, identity in planes.items()},
    )
    save_design(Design(title="empty", stock=STOCK, arrangements=(empty,)), tmp_path / "empty.toml", None)
    documents, _, status = run(capsys, tmp_path / "empty.toml")
    jsonschema.validate(documents, SCHEMA)
    (document,) = documents
    assert document["overall"] == {"size_mm": None, "limit_mm": None, "over_mm": [0, 0, 0]}
    assert document["cuts"] == document["fittings"] == []
    balance = document["balance"]
    unknown = ("cg_mm", "cb_mm", "bg_mm", "pitch_deg", "roll_deg")
    assert [balance[key] for key in unknown] == [None] * len(unknown)
    assert document["money"]["limit"] is document["money"]["left"] is None
    assert status == 1


def test_good_files_are_told_beside_bad_ones_and_always_in_a_list(tmp_path, capsys):
    documents, errors, status = run(capsys, RECTANGLE, tmp_path / "none.toml", WHOLE_DESIGNS[0])
    assert documents[0]["title"] == "Flat rectangle"
    assert len(documents) == 2
    assert len(errors) == 1
    assert status == 2
    documents, errors, status = run(capsys, tmp_path / "none.toml")
    assert (documents, len(errors), status) == ([], 1, 2)


def test_a_remedy_is_true_only_where_one_was_proved():
    report = review(sample())
    document = check_document(report, "reef.toml")
    found = [finding["remedy"] for finding in document["findings"]]
    assert found == [proven_remedy(report, finding) is not None for finding in report.findings]
    assert True in found


def ladder(rungs: int) -> Design:
    """Loose rungs side by side: something is wrong at every joint."""
    stations = tuple(Plane(id=f"s{n}", name=f"station {n}", at=n / 10) for n in range(rungs))
    sides = (Plane(id="p", name="p", at=-0.1), Plane(id="q", name="q", at=0.1))
    joints = tuple(
        Joint(id=f"k{n}{side}", name=f"k{n}{side}", station=f"s{n}", side=side, level="l")
        for n in range(rungs)
        for side in "pq"
    )
    bars = tuple(Bar(id=f"b{n}", name=f"b{n}", start=f"k{n}p", end=f"k{n}q") for n in range(rungs))
    arrangement = Arrangement(
        id="a",
        name="a",
        stations=stations,
        sides=sides,
        levels=(Plane(id="l", name="l", at=0),),
        joints=joints,
        bars=bars,
    )
    return Design(title="ladder", stock=STOCK, arrangements=(arrangement,))


def test_a_large_frame_with_much_wrong_does_not_take_hours(monkeypatch):
    monkeypatch.setattr("model.check.PROOFS_BARS", 15 * 12)
    report = review(ladder(15))
    remedies = [remedy for _, remedy in proved(report)]
    assert len(remedies) == len(report.findings) > 12
    assert "not tried" not in remedies[:12]
    assert set(remedies[12:]) == {"not tried"}
    document = check_document(report, "ladder.toml")
    assert document["findings"][-1]["remedy"] is None
    jsonschema.validate([document], SCHEMA)
