"""Words for several photos in one record, and the names of what is written for each."""

from pathlib import Path

from ptmark.record import Record

__all__ = ["numbered", "photo_title", "set_sentence"]


def photo_title(record: Record, number: int) -> str:
    """Which photo of the set this is; ``number`` runs from 0."""
    views = record.views()
    return f"Photo {number + 1} of {len(views)}: {views[number].photo['file']}"


def set_sentence(record: Record) -> str:
    """The verdict of a set in one sentence: what was seen, and what each photo says."""
    views = record.views()
    letters = {one["id"] for view in views for one in view.indications}
    count = len(letters)
    what = "no indications" if not count else f"{count} indication{'s' * (count > 1)}"
    told: dict[str, list[str]] = {}
    for number, view in enumerate(views, 1):
        told.setdefault(view.verdict or "not judged", []).append(str(number))
    each = "; ".join(
        f"photo{'s' * (len(numbers) > 1)} {', '.join(numbers)} {verdict}"
        for verdict, numbers in told.items()
    )
    return f"{what} in {len(views)} photos; {each}."


def numbered(path: Path, number: int) -> Path:
    """The file of a photo of the set: FILE for the first, FILE-2 for the second …

    Examples
    --------
    >>> numbered(Path("weld.png"), 0).name, numbered(Path("weld.geojson"), 2).name
    ('weld.png', 'weld-3.geojson')
    """
    return path if number == 0 else path.with_name(f"{path.stem}-{number + 1}{path.suffix}")
