"""The scale that holds, in words: what it comes from and how fine it is."""

from typing import TYPE_CHECKING

from ptmark.window.card_check import check_in_words
from ptmark.window.words import format_length, tr

if TYPE_CHECKING:
    from ptmark.scale import Reference, SurfaceMap

__all__ = ["scale_in_words"]


def scale_in_words(surface: "SurfaceMap", reference: "Reference | None", unit: str) -> str:
    """What the map comes from, a pixel's size, tilt, distance, and the card's check length."""
    beside = surface.beside
    said = [tr("Scale from: {0}.", tr(surface.reference))]
    if beside is not None:
        said[0] = tr("Scale from: {0} and {1}.", tr(surface.reference), tr(beside.reference))
        said.append(
            tr(
                "They differ by {0:+.2f} % (En {1:.1f}; up to 1 they agree).",
                100 * beside.difference,
                beside.en,
            )
        )
    said.append(
        tr(
            "One pixel is {0}.",
            format_length(surface.mm_per_px(), unit, 4 if unit == "mm" else 5),
        )
    )
    if surface.tilt_deg is not None:
        said.append(tr("Tilt {0:.1f}°.", surface.tilt_deg))
    if surface.working_distance_mm is not None:
        said.append(tr("Working distance {0:.0f} mm.", surface.working_distance_mm))
    if surface.residual_px:
        said.append(tr("The points fit to {0:.2f} px.", surface.residual_px))
    said.append(check_in_words(getattr(reference, "check_mm", None)))
    return " ".join(one for one in said if one)
