"""One family of exceptions, whose text can be shown to a student as it stands."""


class PoolwrightError(Exception):
    """Something the user can put right; ``str()`` is one sentence for people."""


class LengthError(PoolwrightError):
    """A length, weight or number that cannot be read or could be read in two ways."""


class EditError(PoolwrightError):
    """An edit that cannot be made to this design; the design is unharmed."""


class FileProblem(PoolwrightError):
    """A file that cannot be read, understood or written.

    Args:
        file: the name of the file, as the user wrote it.
        place: the key or line inside it, or "" where the whole file is meant.
        found: what is there.
        expected: what should be there, or what to do.
    """

    def __init__(self, file: str, place: str, found: str, expected: str) -> None:
        self.file, self.place, self.found, self.expected = file, place, found, expected
        where = f"{file}: {place}" if place else file
        super().__init__(f"{where}: found {found}; expected {expected}")
