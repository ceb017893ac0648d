"""Names and numbers of imperfections after ISO 6520-1 (numbers from memory; 2007 edition).

A number stands for itself and for all that it is subdivided into: 401 covers 4011 to 4013,
and a round hundred covers its whole series. There are the series 100 to 600.
"""

import re
from functools import cache

__all__ = ["NAMES", "covers", "name_of", "number_of"]

NAMES = {
    "crack": "100",
    "microcrack": "1001",
    "longitudinal crack": "101",
    "transverse crack": "102",
    "radiating crack": "103",
    "star crack": "103",
    "crater crack": "104",
    "group of disconnected cracks": "105",
    "branching crack": "106",
    "cavity": "200",
    "gas cavity": "201",
    "pore": "2011",
    "gas pore": "2011",
    "porosity": "201",
    "uniformly distributed porosity": "2012",
    "clustered porosity": "2013",
    "localized porosity": "2013",
    "linear porosity": "2014",
    "elongated cavity": "2015",
    "wormhole": "2016",
    "piping porosity": "2016",
    "surface pore": "2017",
    "shrinkage cavity": "202",
    "crater pipe": "2024",
    "solid inclusion": "300",
    "inclusion": "300",
    "slag inclusion": "301",
    "flux inclusion": "302",
    "oxide inclusion": "303",
    "metallic inclusion": "304",
    "lack of fusion": "401",
    "incomplete fusion": "401",
    "lack of side wall fusion": "4011",
    "lack of inter-run fusion": "4012",
    "lack of root fusion": "4013",
    "lack of penetration": "402",
    "incomplete penetration": "402",
    "undercut": "501",
    "overlap": "506",
    "burn through": "510",
    "underfill": "511",
    "root porosity": "516",
    "poor restart": "517",
    "stray arc": "601",
    "arc strike": "601",
    "spatter": "602",
}
_NUMBER = re.compile(r"(?:ISO\s*6520-1\s*:?\s*)?([1-6]\d{2,3})(?!\d)", re.IGNORECASE)


@cache  # a scene has few kinds and many indications
def number_of(kind: str) -> str:
    """The ISO 6520-1 number of a kind given by number or name; "" where it is not known.

    Any name with the word crack in it that is not in the table is taken as a crack (100).

    Examples
    --------
    >>> number_of("104"), number_of("Crater crack"), number_of("fine cracks"), number_of("999")
    ('104', '104', '100', '')
    """
    text = " ".join(kind.lower().replace("_", " ").split())
    if digits := _NUMBER.match(text):
        return digits[1]
    singular = text.removesuffix("s")
    for name in (text, singular):
        if name in NAMES:
            return NAMES[name]
    return "100" if re.search(r"\b(micro)?cracks?\b", text) else ""


def name_of(number: str) -> str:
    """The first name of an ISO 6520-1 number; the number itself where it has none here.

    Examples
    --------
    >>> name_of("401"), name_of("500")
    ('lack of fusion', '500')
    """
    return next((name for name, known in NAMES.items() if known == number), number)


def covers(listed: str, number: str) -> bool:
    """Whether the listed number covers ``number``: itself, its series or its subdivisions.

    Examples
    --------
    >>> covers("100", "104"), covers("401", "4012"), covers("401", "402"), covers("104", "100")
    (True, True, False, False)
    """
    if not number:
        return False
    return number.startswith(listed[0] if listed.endswith("00") else listed)
