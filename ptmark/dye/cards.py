"""Which blobs lie on a scale card: those are never called."""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.coarse import Blob, CoarseLook
from ptmark.scale import SurfaceMap

__all__ = ["card_hulls", "on_card"]

_RIM_POINTS = 24  # of a blob, asked whether they lie on a card
Hull = tuple[npt.NDArray[np.float32], float]


def card_hulls(surface: SurfaceMap | None) -> list[Hull]:
    """Each scale card's markers, px, and how far its plate reaches beyond them."""
    if surface is None:
        return []
    references = [(surface.reference, surface.reference_px)]
    if surface.beside is not None:
        references.append((surface.beside.reference, surface.beside.reference_px))
    references += [("card", corners) for corners in surface.other_cards_px]
    hulls: list[Hull] = []
    for name, at in references:
        if name.startswith("card"):  # on a plate, or on a pipe
            scale = surface.mm_per_px(at.mean(axis=0))
            hull = np.asarray(cv2.convexHull(at.astype(np.float32)), np.float32)
            hulls.append((hull, 4.0 / scale))
    return hulls


def on_card(blob: Blob, look: CoarseLook, cards: list[Hull]) -> bool:
    """Whether half of the blob's rim lies on a scale card.

    Its middle would not tell: a red bench round the part has it on the card as well, and may
    reach a crack.
    """
    near = [one for one in cards if _comes_near(blob, look, one)]
    if not near:
        return False
    rim = blob.rim.reshape(-1, 2)[:: max(1, len(blob.rim) // _RIM_POINTS)]
    at = ((rim + look.origin) * look.factor).astype(float).tolist()
    return any(
        2 * sum(cv2.pointPolygonTest(hull, (x, y), measureDist=True) > -beyond for x, y in at)
        > len(at)
        for hull, beyond in near
    )


def _comes_near(blob: Blob, look: CoarseLook, card: Hull) -> bool:
    """Whether the boxes of both meet: most blobs lie far from any card."""
    hull, beyond = card
    *low, wide, high = cv2.boundingRect(hull)
    return all(
        (blob.box[way] + look.origin[way]) * look.factor < low[way] + size + beyond
        and (blob.box[way + 2] + look.origin[way]) * look.factor > low[way] - beyond
        for way, size in enumerate((wide, high))
    )
