"""Syllables of a Spanish word, by the rules of the spelling.

Every vowel group is one syllable unless two strong vowels meet (le-er, ca-er) or an accent
parts a weak vowel from its neighbour (ha-bí-a, ba-úl). `u` is silent in que, qui, gue, gui; `h`
between vowels parts nothing (ahu-mar), which the Academy's rules say too.
"""

from __future__ import annotations

import re

_STRONG = "aeoáéó"
_PARTED = "íú"
_WEAK = "iuü"
_SILENT_U = re.compile(r"(?<=q)u(?=[eiéí])|(?<=g)u(?=[eiéí])")
_VOWELS = re.compile(rf"[{_STRONG}{_PARTED}{_WEAK}]+")
# A y is a vowel at the end of a word and alone: rey, y.
_FINAL_Y = re.compile(r"y$")
_SILENT_H = re.compile(rf"(?<=[{_STRONG}{_PARTED}{_WEAK}])h(?=[{_STRONG}{_PARTED}{_WEAK}])")


def spanish_syllables(word: str) -> int:
    """How many syllables a word has; at least one."""
    text = _FINAL_Y.sub("i", word.lower())
    text = _SILENT_H.sub("", _SILENT_U.sub("", text))
    return max(1, sum(_in_group(group[0]) for group in _VOWELS.finditer(text)))


def _in_group(vowels: str) -> int:
    """Syllables of vowels that stand together."""
    count = 0
    in_syllable = ""
    for vowel in vowels:
        if not in_syllable or _parts(in_syllable[-1], vowel):
            count += 1
            in_syllable = ""
        in_syllable += vowel
    return count


def _parts(before: str, vowel: str) -> bool:
    """Whether two neighbouring vowels belong to two syllables."""
    if before in _PARTED or vowel in _PARTED:
        return True
    return before in _STRONG and vowel in _STRONG
