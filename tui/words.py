"""Refusals of the document as one plain sentence for the session."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from pydantic import ValidationError

WANTED = {
    "greater_than": "must be more than {gt}",
    "greater_than_equal": "must be {ge} or more",
    "less_than": "must be less than {lt}",
    "less_than_equal": "must be {le} or less",
    "string_too_short": "must not be empty",
    "string_too_long": "may have at most {max_length} letters",
    "finite_number": "must be an ordinary number",
    "float_type": "must be a number",
    "float_parsing": "must be a number",
    "int_type": "must be a whole number",
    "int_parsing": "must be a whole number",
    "literal_error": "must be one of {expected}",
    "missing": "is missing",
}


def plain_refusal(problem: ValidationError) -> str:
    """The first thing that is wrong, in words.

    The document's own checks say a whole sentence; of the others we say what is wanted.
    """
    first: Any = problem.errors(include_url=False)[0]
    if first["type"] == "value_error":
        return f"{str(first['ctx']['error']).rstrip('.')}. Nothing was changed.".capitalize()
    names = [str(part).replace("_", " ") for part in first["loc"] if isinstance(part, str)]
    wanted = WANTED.get(first["type"], "cannot be used").format_map(first.get("ctx", {}))
    who = " ".join(names[-1:]) or "this value"
    return f"{who.capitalize()} {wanted}; found {first['input']!r}. Nothing was changed."
