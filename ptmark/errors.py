"""One family of errors: what went wrong, where it stands, and the mend.

PtmarkError
├── PhotoError       a picture that cannot be opened or trusted
├── ScaleError       a scale reference that gives no surface
├── OutlineError     an outline that cannot be measured
├── CriteriaError    an acceptance profile that cannot be used
├── RecordError      a record that cannot be read or written
├── ReportError      a report that cannot be made
├── SeriesError      photos of one area that cannot be compared
├── ArchiveError     an archive that cannot be read, written or trusted
└── UsageError       a command line that cannot be carried out
"""

__all__ = [
    "ArchiveError",
    "CriteriaError",
    "OutlineError",
    "PhotoError",
    "PtmarkError",
    "RecordError",
    "ReportError",
    "ScaleError",
    "SeriesError",
    "UsageError",
]


class PtmarkError(Exception):
    """Root of the family.

    Parameters
    ----------
    what : str
        What went wrong, with the offending value.
    where : str
        The file, field or option it concerns; may be empty.
    mend : str
        What the user can do about it; may be empty.

    Examples
    --------
    >>> str(UsageError("'x' is no length", where="--check", mend="write 150mm or 6in"))
    "--check: 'x' is no length. write 150mm or 6in"
    """

    def __init__(self, what: str, *, where: str = "", mend: str = "") -> None:
        super().__init__(what)
        self.what = what
        self.where = where
        self.mend = mend

    def __str__(self) -> str:
        head = f"{self.where}: {self.what}" if self.where else self.what
        return f"{head}. {self.mend}" if self.mend else head


class PhotoError(PtmarkError):
    """A picture that cannot be opened or trusted."""


class ScaleError(PtmarkError):
    """A scale reference that gives no surface."""


class OutlineError(PtmarkError):
    """An outline that cannot be measured."""


class CriteriaError(PtmarkError):
    """An acceptance profile that cannot be used."""


class RecordError(PtmarkError):
    """A record that cannot be read or written."""


class ReportError(PtmarkError):
    """A report that cannot be made."""


class SeriesError(PtmarkError):
    """Photos of one area that cannot be compared."""


class ArchiveError(PtmarkError):
    """An archive that cannot be read, written or trusted."""


class UsageError(PtmarkError):
    """A command line that cannot be carried out."""
