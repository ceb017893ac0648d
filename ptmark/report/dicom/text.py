"""Free text as DICOM's value representations allow it (PS3.5, 6.2)."""

__all__ = ["code", "line", "note", "person"]


def line(said: str, most: int = 64) -> str:
    r"""One line (LO, SH): no backslash, which would part it in two, and no control characters.

    Examples
    --------
    >>> line("a\\b\nc"), line("x" * 70)[-1], len(line("x" * 70))
    ('a/b c', '…', 64)
    """
    plain = " ".join("".join(c if c.isprintable() else " " for c in said).split())
    plain = plain.replace("\\", "/")
    return plain if len(plain) <= most else f"{plain[: most - 1]}…"


def person(said: str) -> str:
    """A name (PN) of one component: none of the characters that part it.

    Examples
    --------
    >>> person("Works ^ crew=1")
    'Works crew 1'
    """
    return line(said.replace("^", " ").replace("=", " "))


def note(said: str, most: int = 10240) -> str:
    """A text of several lines (ST, LT), ends of lines as CR LF."""
    lines = (
        "".join(c if c.isprintable() else " " for c in one).rstrip()
        for one in said.strip().splitlines()
    )
    plain = "\r\n".join(lines)
    return plain if len(plain) <= most else f"{plain[: most - 1]}…"


def code(said: str) -> str:
    """A word in capitals (CS), at most 16 characters of A to Z, 0 to 9, blank and underscore.

    Examples
    --------
    >>> code("non-relevant")
    'NON_RELEVANT'
    """
    kept = "".join(c if c.isascii() and c.isalnum() else "_" for c in said.upper())
    return kept[:16].strip("_")
