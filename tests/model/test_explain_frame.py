"""The frame's numbers say where they come from."""

from math import pi

from model.design import Brief, DryJoint, edits
from model.explain_frame import frame_quantities
from model.survey import survey
from tests import worked


def named(design):
    return {quantity.name: quantity for quantity in frame_quantities(survey(design))}


def box(**changes):
    return worked.design(worked.box(), **changes)


def test_errors_and_chance_stand_with_what_went_in():
    """sqrt(1.6^2 + 2 x 3^2) = 4.5 mm and 1.6 + 6 = 7.6 mm; 2.06 mm of room in the length is 1.36 sigma."""
    found = named(box(brief=Brief(size_limit=(0.43, 1, 1))))
    error = found["error of the length"]
    assert error.text == "4.5 mm either way, 7.6 mm at worst"
    assert ("cut error", "1.6 mm") in error.inputs
    assert found["chance that the size limit is broken"].text == "8.6 %"
    assert found["chance that the size limit is broken"].inputs[0] == ("room in the length", "2.1 mm")


def test_areas_and_hoop_of_a_box():
    """Head on a 300 x 200 mm rectangle of pipe and hubs; the hoop 388.5 mm, the gate 327.9 x 227.9."""
    found = named(box(brief=Brief(hoop=0.4, gate=(0.35, 0.25))))
    rails = 2 * (30 - 2 * 3.175 + 20 - 2 * 3.175) * 2.1336
    corner = (
        2 * 3.175 * 2.794 - 1.397**2 + pi / 4 * 1.397**2
    )  # two hubs less what they share, and a third end on
    assert found["area head on"].text == f"{rails + 4 * corner:.0f} cm2"
    assert found["smallest hoop"].text == "388.5 mm"
    assert found["smallest hoop"].inputs == (("hoop of the brief", "400 mm"),)
    assert found["smallest gate"].text == "327.9 mm x 227.9 mm"
    assert found["smallest gate"].inputs == (("gate of the brief", "350 mm x 250 mm"),)


def test_the_push_in_depth_names_the_ruler_and_the_published_value():
    joint = DryJoint(fitting="tee", first=0.1, second=0.12, overall=0.2635)
    found = named(edits.measure_pipe(box(), "half", dry_joint=joint))
    quantity = found["push-in depth of half"]
    assert quantity.text == "10 mm"
    assert ("in the stock as published", "12.7 mm") in quantity.inputs
    assert ("pieces", "100 mm and 120 mm") in quantity.inputs


def test_no_frame_has_no_numbers():
    assert frame_quantities(survey(worked.design(worked.arrangement((0.0,), (0.0,), (0.0,), [])))) == ()
