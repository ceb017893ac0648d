"""Texts of the core in the window's language: matched to their templates, holes filled again.

The core writes English, and so do records; a text comes here as it is shown, live or out of a
file. A template is such a text with its holes numbered, ``{0} is {1} long, not {2}.``; a hole
marked ``{1!s}`` holds what a person wrote, a file or a clause, and stays as it is. Any other
hole may itself be a text of the core, or an amount, which gets the decimal comma.
"""

import re
from collections.abc import Callable, Iterable

__all__ = ["HOLE", "CoreTexts"]

HOLE = re.compile(r"\{(\d+)(!s)?\}")
_WORDS = re.compile(r"(?<![\w\0])[^\W\d_]{2,}(?![\w\0])")  # \0 stands for a hole
_AMOUNT = re.compile(
    r"(?:[-±<>=~≥≤×()%° ]|\d+(?:\.\d+)?|\b(?:mm2?|in2?|px|min|En|U|k|kB|MB|GiB)\b)+"
)
_NAME = re.compile(r"[A-Z]{1,2}\d*|\S*\w[-._/\\]\w\S*")  # of an indication, a rule, a file
# What parts a text into others, the strongest first; a sentence keeps its full stop.
_BETWEEN = ("\n", r"(?<=\.) ", "; ", ": ", ", ", " and ", " or ")
_MOST_PIECES = 24
# A template with fewer letters than this says too little to be taken where a hole is unknown.
_TELLING = 12

_Told = tuple[str, int]  # a text in the language, and how many of its letters stayed English


class CoreTexts:
    """The templates of one language.

    Parameters
    ----------
    templates : iterable of str
        In English.
    translate : callable
        A template, or a joint between texts, in the language; "" where it has none.

    Examples
    --------
    >>> german = {"{0} is {1} long, not {2}.": "{0}: {1} lang, nicht {2}.",
    ...           "longer than {0}": "länger als {0}"}
    >>> shown = CoreTexts(german, lambda text: german.get(text, ""))
    >>> shown("A is 5.04 mm long, not longer than 6 mm.")
    'A: 5,04 mm lang, nicht länger als 6 mm.'
    >>> shown("What nobody knows.")
    'What nobody knows.'
    """

    def __init__(self, templates: Iterable[str], translate: Callable[[str], str]) -> None:
        self._translate = translate
        self._by_word: dict[str, list[_Template]] = {}
        self._known: dict[str, _Told] = {}
        for one in templates:
            bare = HOLE.sub("\0", one)
            made = _Template(one, bare.split("\0"), HOLE.findall(one))
            self._by_word.setdefault(_key(bare), []).append(made)

    def __call__(self, text: str) -> str:
        """The text in the language, as far as it is known."""
        return self._told(text)[0]

    def _told(self, text: str) -> _Told:
        """As `__call__`; of several ways to read it, the one that leaves least in English."""
        if text not in self._known:
            bare = text.strip()
            best = bare, _letters(bare)
            if _AMOUNT.fullmatch(bare):
                best = re.sub(r"(?<=\d)\.(?=\d)", ",", bare), 0
            for read in (self._by_template, _as_name, self._by_pieces):
                if best[1]:
                    best = min(best, read(bare), key=lambda one: one[1])
            lead = text[: len(text) - len(text.lstrip())]
            trail = text[len(text.rstrip()) :] if bare else ""
            self._known[text] = f"{lead}{best[0]}{trail}", best[1]
        return self._known[text]

    def _by_template(self, text: str) -> _Told:
        best = text, _letters(text)
        words = {"", _key(text), *_WORDS.findall(text.lower())}
        found = [one for word in words for one in self._by_word.get(word, ())]
        found.sort(key=lambda one: (-one.letters, not text.startswith(one.literal[0])))
        for one in found:
            values = one.holes_of(text)
            if values is None:
                continue
            made, left = self._filled(one, values, best[1])
            if left < best[1] and (not left or one.letters >= _TELLING):
                best = made[:1].upper() + made[1:] if text[0].isupper() else made, left
            if not left:
                break
        return best

    def _filled(self, template: "_Template", values: list[str], most: int) -> _Told:
        """The template with its holes; given up where ``most`` letters would stay English."""
        holes, left = {}, 0
        for (number, as_written), value in zip(template.holes, values, strict=True):
            shown, more = (value, 0) if as_written else self._told(value)
            holes[number], left = shown, left + more
            if left >= most:
                return template.text, left
        made = self._translate(template.text) or template.text
        return HOLE.sub(lambda found: holes[found[1]], made), left

    def _by_pieces(self, text: str) -> _Told:
        """Sentence by sentence, else clause by clause; each the longest text that is known."""
        best = text, _letters(text)
        for between in _BETWEEN:
            pieces = re.split(between, text)
            if 1 < len(pieces) <= _MOST_PIECES:
                found = self._joined(pieces, between.removeprefix(r"(?<=\.)"))
                if found[1] < best[1]:
                    best = found
                    break
        if best[1] and text[-1:] in {".", ",", ":"}:
            made, left = self._told(text[:-1])
            best = min(best, (made + text[-1], left), key=lambda one: one[1])
        elif best[1]:  # a last sentence whose full stop is another text's
            made, left = self._by_template(text + ".")
            best = min(best, (made.removesuffix("."), left), key=lambda one: one[1])
        return best

    def _joined(self, pieces: list[str], between: str) -> _Told:
        made, left, at = [], 0, 0
        while at < len(pieces):
            ends = range(len(pieces) - (at == 0), at + 1, -1)
            known = [(end, self._by_template(between.join(pieces[at:end]))) for end in ends]
            sure = [one for one in known if not one[1][1]]
            end, best = sure[0] if sure else (at + 1, self._told(pieces[at]))
            if not sure and best[1] == _letters(pieces[at]):  # nothing of it alone is known
                part = [one for one in known if one[1][0] != between.join(pieces[at : one[0]])]
                end, best = part[0] if part else (end, best)
            made.append(best[0])
            left, at = left + best[1], end
        word = between.strip() if not left and between.strip().isalpha() else ""
        word = self._translate(word) if word else ""
        return (f" {word} " if word else between).join(made), left


class _Template:
    """A text with holes, ``literal`` what stands before, between and after them."""

    def __init__(self, text: str, literal: list[str], holes: list[tuple[str, str]]) -> None:
        self.text, self.literal, self.holes = text, literal, holes
        self.begins = tuple(
            {f(literal[0][:1]) + literal[0][1:] for f in (str.lower, str.upper)}
        )
        self.letters = sum(map(_letters, literal))
        self.of_sentences = "." in text[:-1]  # else no hole holds the end of one

    def holes_of(self, text: str) -> list[str] | None:
        """What stands in its holes in ``text``, each as short as can be; None if it is another.

        Its first letter may be small or a capital, as the text begins a sentence or does not.
        """
        if not text.startswith(self.begins):
            return None
        first, *others = self.literal
        if not others:
            return [] if len(text) == len(first) else None
        if not text.endswith(others[-1]):
            return None
        values, at, end = [], len(first), len(text) - len(others[-1])
        for one in others[:-1]:
            place = text.find(one, at, end)
            if place < 0:
                return None
            values.append(text[at:place])
            at = place + len(one)
        values.append(text[at:end])
        if at > end:
            return None
        return None if not self.of_sentences and any(". " in one for one in values) else values


def _as_name(text: str) -> _Told:
    """The text as it is, where it is a name and so leaves nothing to translate."""
    return text, 0 if _NAME.fullmatch(text) else _letters(text)


def _key(text: str) -> str:
    """Where a template is filed: under its first word if it begins with one, as ``^word``.

    Else under its longest, which stands in every text that it matches.
    """
    words = _WORDS.findall(text.lower())
    if words and text.lower().startswith(words[0]):
        return f"^{words[0]}"
    return max(words, key=len, default="")


def _letters(text: str) -> int:
    return sum(map(str.isalpha, text))
