"""A remark on a photo: a caution with its mend, never a block."""

from dataclasses import dataclass

__all__ = ["Remark"]


@dataclass(frozen=True, slots=True)
class Remark:
    """What may be wrong and how to mend it, each a whole sentence."""

    what: str
    mend: str

    @property
    def says(self) -> str:
        """Both in one line.

        Examples
        --------
        >>> Remark("The photo is dark.", "Give it more light.").says
        'The photo is dark. Give it more light.'
        """
        return f"{self.what} {self.mend}"
