"""The base of everything in a design: frozen, and careful with keys it does not know."""

import ast
import inspect
import sys
from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from typing import Any, Self

from pydantic import BaseModel, ConfigDict, Field


@cache
def field_texts(kind: type) -> dict[str, str]:
    """The text under each field of a class, its parents' included.

    Read from the source when it is first asked for: pydantic would read every class at the start,
    which takes 60 ms.
    """
    found: dict[str, str] = {}
    for each in reversed(kind.__mro__):
        if issubclass(each, BaseModel) and each.__module__ != BaseModel.__module__:
            found |= _module_texts(each.__module__).get(each.__name__, {})
    return found


@cache
def _module_texts(module: str) -> dict[str, dict[str, str]]:
    """For each class of a module, the text under each field."""
    source = inspect.getsource(sys.modules[module])
    classes = [node for node in ast.parse(source).body if isinstance(node, ast.ClassDef)]
    return {node.name: dict(_texts(node.body)) for node in classes}


def _texts(body: list[ast.stmt]) -> Iterator[tuple[str, str]]:
    for field, text in pairwise(body):
        if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name):
            said = ast.get_docstring(ast.Module([text], []))
            if said:
                yield field.target.id, said


def untouched(kind: type[BaseModel]) -> Any:
    """The default of a field that holds a whole record: one in which nothing has been decided.

    It is made without a check, since a validator of its own for each such record costs time at the start.
    """
    return Field(default_factory=kind.model_construct)


class Record(BaseModel):
    """A frozen piece of a design.

    Unknown keys are kept, so that what a newer version wrote survives a save.  The text under
    each field says what it is for; the session shows it as help.
    """

    model_config = ConfigDict(
        frozen=True,
        extra="allow",
        allow_inf_nan=False,
        defer_build=True,  # a record that is read as a piece of the design needs no validator of its own yet
    )

    def but(self, **changes: Any) -> Self:
        """This piece with some fields changed and checked.

        Raises:
            pydantic.ValidationError: a new value is not allowed.
        """
        return type(self).model_validate({**dict(self), **changes})

    def unknown_keys(self, path: str = "") -> Iterator[tuple[str, str, tuple[str, ...]]]:
        """Each key that this version does not know: where it stands, the key, the known names there."""
        for key in self.model_extra or {}:
            yield path, key, tuple(type(self).model_fields)
        for name in type(self).model_fields:
            value = getattr(self, name)
            if isinstance(value, Record):
                yield from value.unknown_keys(f"{path}{name}.")
            elif isinstance(value, tuple):
                for number, item in enumerate(value, 1):
                    if isinstance(item, Record):
                        yield from item.unknown_keys(f"{path}{name}[{number}].")
