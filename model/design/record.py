"""The base of everything in a design: frozen, and careful with keys it does not know."""

from collections.abc import Iterator
from typing import Any, Self

from pydantic import BaseModel, ConfigDict


class Record(BaseModel):
    """A frozen piece of a design.

    Unknown keys are kept, so that what a newer version wrote survives a save.  The text under
    each field says what it is for; the session shows it as help.
    """

    model_config = ConfigDict(frozen=True, extra="allow", allow_inf_nan=False, use_attribute_docstrings=True)

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
