"""The legend of a view: what each letter and each sign in it means."""

from collections.abc import Iterator

from model.drawing.scene import Entry, Role, Scene
from model.survey import Survey
from model.units import format_length

MEANINGS: dict[Role, str] = {
    "thruster": "thruster and its push",
    "gravity": "weight acts here",
    "buoyancy": "lift acts here",
    "float": "float",
    "ballast": "ballast",
    "opening": "opening",
    "plug": "plug",
    "air": "air caught when level",
    "hook": "hook",
    "camera": "camera",
    "attachment": "attachment",
    "tether": "tether tie-off",
    "unfitted": "no fitting fits",
    "end": "pipe end-on",
    "limit": "limit box",
    "hoop": "hoop to pass through",
    "gate": "gate to pass through",
}
"""In the order in which they matter where there is little room."""


def legend(survey: Survey, scene: Scene) -> Iterator[Entry]:
    """The letters that stand in the scene, with their cuts, then the roles that stand in it."""
    yield from _letters(survey, scene)
    present = {shape.role for shape in scene.shapes} | {mark.role for mark in scene.marks}
    present |= {circle.role for circle in scene.circles} | {stroke.role for stroke in scene.strokes}
    for role, meaning in MEANINGS.items():
        if role in present:
            yield Entry(role, meaning)
    if survey.extents.limit is not None and scene.name != "oblique" and "limit" not in present:
        yield Entry("title", "limit box is far larger and not drawn")


def _letters(survey: Survey, scene: Scene) -> Iterator[Entry]:
    shown = {label.text for label in scene.labels if label.role == "bar"}
    cuts = {bar.letter: bar.cut for bar in survey.frame.bars.values() if bar.letter in shown}
    for letter in sorted(cuts, key=lambda text: (len(text), text)):
        cut = cuts[letter]
        length = "no cut yet" if cut is None else format_length(cut, survey.design.units)
        yield Entry("bar", length, letter)
