"""The house: the model knows no screen, and no floor imports a higher one."""

import ast
import subprocess
import sys
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
FLOORS = (
    {"model.errors"},
    {"model.units", "model.vectors", "model.quantity", "model.toml_text", "model.solve.highs"},
    {"model.design"},
    {"model.coach.sentences", "model.coach.remedies.changes"},
    {"model.migrate", "model.mistakes", "model.reading", "model.saving"},
    {"model.files", "model.journal"},
    {"model.preset_files", "model.presets"},
    {"model.fittings"},
    {"model.frame"},
    {"model.parts"},
    {"model.vehicle"},
    {"model.extents", "model.tolerance", "model.sizing", "model.hoop", "model.silhouette"},
    {"model.water", "model.thrust", "model.motion", "model.power", "model.money", "model.clashes"},
    {"model.survey"},
    {"model.solve", "model.runs", "model.compare", "model.building", "model.pool", "model.arrangements"},
    {"model.coach"},
    {
        "model.review",
        "model.proved",
        "model.explain",
        "model.explain_frame",
        "model.explain_air",
        "model.explain_motion",
        "model.explain_drag",
    },
    {"model.check"},
    {"model.drawing", "model.sheets"},
    {"tui"},
)
"""Lowest first; a module belongs to the longest name that begins its own."""


@cache
def modules():
    return tuple(_modules())


def _modules():
    for top in ("model", "tui"):
        for path in sorted((ROOT / top).rglob("*.py")):
            parts = path.relative_to(ROOT).with_suffix("").parts
            yield ".".join(parts[:-1] if parts[-1] == "__init__" else parts), path


def floor_of(module):
    fits = [
        (len(name), floor)
        for floor, names in enumerate(FLOORS)
        for name in names
        if module == name or module.startswith(f"{name}.")
    ]
    return max(fits)[1] if fits else None


def imports_of(path):
    """Every name of ours that a file imports, also inside functions; not those for type checking alone."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    for_types = {
        id(inner)
        for node in ast.walk(tree)
        if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.dump(node.test)
        for inner in ast.walk(node)
    }
    for node in ast.walk(tree):
        if id(node) in for_types:
            continue
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield from (f"{node.module}.{name.name}" for name in node.names)


@cache
def known():
    return {module for module, _ in modules()}


@cache
def ours(name):
    """The module of an imported name, or None where it is not ours."""
    while name:
        if name in known():
            return name
        name = name.rpartition(".")[0]
    return None


@pytest.mark.parametrize(("module", "path"), [pytest.param(*pair, id=pair[0]) for pair in modules()])
def test_no_floor_imports_a_higher_one(module, path):
    here = floor_of(module)
    if module == "model":
        return
    assert here is not None, f"{module} has no floor yet; give it one in FLOORS"
    for name in imports_of(path):
        other = ours(name)
        if other and other not in ("model", "tui"):
            assert floor_of(other) <= here, f"{module} imports {other}, which lies on a higher floor"


def test_the_model_imports_no_screen_in_a_fresh_interpreter():
    names = [module for module, _ in modules() if module.startswith("model")]
    code = f"""
import importlib, sys
for name in {names!r}:
    importlib.import_module(name)
print(sorted({{name.partition(".")[0] for name in sys.modules}} & {{"textual", "rich", "tui", "numpy"}}))
"""
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_the_first_frame_waits_for_neither_pydantic_nor_the_model():
    code = """
import sys
from functools import cache
import tui.app
print(sorted(name for name in sys.modules if name.partition(".")[0] in ("pydantic", "model", "filelock")))
"""
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_the_command_line_does_not_load_the_screens():
    code = """
import sys
from functools import cache
import tui.cli
print(sorted(name for name in sys.modules if name == "textual"))
"""
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
