"""Reads formulas that paper prints under a sum, such as `Vines × time for a vine = work`."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping
from fractions import Fraction

from sums_on_paper import SIGNS, printed_numbers

# What the words mean, by the name of a field, of a figure or of a number between: English, Spanish.
_WORDS: Mapping[str, tuple[str, str]] = {
    "prunings_g": (
        "prunings|prunings of one vine|prunings of the same vine",
        "madera de poda|madera de poda de una cepa|madera de poda de la misma cepa",
    ),
    "pounds": ("pounds", "libras"),
    "first": ("first number", "primer número"),
    "further": ("further number", "segundo número"),
    "buds": ("buds", "yemas"),
    "living-buds": ("living buds", "yemas vivas"),
    "buds_per_g": ("buds for each weight", "yemas por cada peso"),
    "area": ("area", "superficie"),
    "row_mm": ("distance between rows", "distancia entre hileras"),
    "vine_mm": ("distance in the row", "distancia entre cepas"),
    "missing_share": ("missing", "cepas que faltan"),
    "planted": ("vines planted", "cepas plantadas"),
    "living": ("living vines", "cepas vivas"),
    "wanted crop": ("crop on the area", "cosecha de la superficie"),
    "vine-crop": ("crop of a vine", "cosecha de una cepa"),
    "bud crop": ("crop of a bud", "cosecha de una yema"),
    "shoots_per_bud": ("shoots for each bud", "brotes por yema"),
    "clusters_per_shoot": ("bunches|bunches on a shoot", "racimos|racimos por brote"),
    "cluster_g": ("weight of a bunch", "peso de un racimo"),
    "crop": ("crop", "cosecha"),
    "crop-load": ("crop load", "carga de cosecha"),
    "wanted_buds": ("wanted buds|the buds that you want", "yemas que quiere|las yemas que quiere"),
    "dead_share": ("dead", "muertas"),
    "arm_mm": ("length of one arm", "largo de un brazo"),
    "spur_spacing_mm": ("distance between spurs", "distancia entre pulgares"),
    "arms": ("arms", "brazos"),
    "spurs": ("spurs", "pulgares"),
    "buds_per_spur": ("buds on a spur", "yemas por pulgar"),
    "room": ("room|the room", "espacio|el espacio"),
    "shoots_per_mm": ("shoots along the canopy", "brotes a lo largo del dosel"),
    "cane_g": ("mean weight of a cane", "peso medio de un sarmiento"),
    "prunings-on-length": ("prunings along the canopy", "madera de poda a lo largo del dosel"),
    "shoot_mm": ("length of a shoot", "largo de un brote"),
    "nodes": ("its nodes", "sus nudos"),
    "internode": ("length between nodes", "largo entre nudos"),
    "trimming_mm": ("trimming height", "altura del despunte"),
    "arm_height_mm": ("height of the arm", "altura del brazo"),
    "climb_mm": ("height of the bud", "altura de la yema"),
    "leaves": ("leaves", "hojas"),
    "leaves_per_shoot": ("leaves on a shoot", "hojas por brote"),
    "leaf_mm2": ("size of a leaf", "superficie de una hoja"),
    "leaf-area": ("leaf area", "superficie de hojas"),
    "leaf_mm2_per_g": ("leaf area that fruit needs", "superficie que necesita la uva"),
    "ripens": ("fruit that ripens", "uva que madura"),
    "leaf-on-length": ("leaf area along the canopy", "hojas a lo largo del dosel"),
    "fruit_g": ("fruit on a shoot now", "uva que lleva un brote"),
    "leaf-to-fruit": ("leaf to fruit", "hojas por uva"),
    "vines": ("vines", "cepas"),
    "full crop": ("full crop", "cosecha completa"),
    "not cut": ("vines not yet cut", "cepas sin cortar"),
    "cut": ("cut vines|vines cut", "cepas cortadas"),
    "recovery": ("their share of a full crop", "su parte de una cosecha completa"),
    "renewal_seconds": ("extra time", "tiempo extra"),
    "extra work": ("extra work", "trabajo extra"),
    "seconds_per_vine": ("time for a vine", "tiempo por cepa"),
    "work": ("work", "trabajo"),
    "people": ("people", "personas"),
    "day_s": ("hours a day", "horas al día"),
    "days": ("days", "días"),
    "pay_per_s": ("cost of an hour", "costo de una hora"),
    "pay": ("cost", "costo"),
    "hand_seconds_after": ("time after it", "tiempo después de ella"),
    "machine_s": ("machine hours", "horas de máquina"),
    "machine_pay_per_s": ("their cost", "su costo"),
    "large_wounds": ("large wounds", "heridas grandes"),
    "shoots_per_wound": ("shoots for each wound", "brotes por herida"),
    "expected-shoots": ("shoots to expect", "brotes que se esperan"),
    "target_shoots_per_mm": (
        "shoots wanted along the canopy",
        "brotes que se quieren a lo largo del dosel",
    ),
    "canopy_mm": ("canopy of a vine", "dosel de una cepa"),
    "target-shoots": ("shoots wanted", "brotes que se quieren"),
    "take-off": ("shoots to take off", "brotes que se quitan"),
}
NAMES: Mapping[str, Mapping[str, str]] = {
    language: {words: name for name, row in _WORDS.items() for words in row[at].split("|")}
    for at, language in enumerate(("en", "es"))
}
_SENTENCES = re.compile(r"\.(?:\s+|$)")
_WHOLE = re.compile(r",\s*(rounded up|hacia arriba|rounded down|sin decimales),?")
_UP = ("rounded up", "hacia arriba")
_LIST = re.compile(r",\s*(?:(?:and|or|y|o)\s+)?")


def results(
    text: str, language: str, values: Mapping[str, Fraction]
) -> Iterator[tuple[str, Fraction]]:
    """Each result of a formula by its name; what has none goes by the sum itself.

    A result that nobody has given is known to the sentences behind it.
    """
    known = dict(values)
    for sentence in _SENTENCES.split(text):
        sums, equals, name = sentence.rpartition(": ")[2].partition(" = ")
        for one in [sums] if equals else _LIST.split(sums):
            if equals or "×" in one:
                value = _worked(one, language, known)
                key = NAMES[language][name.lower()] if equals else one
                known.setdefault(key, value)
                yield key, value


def _worked(formula: str, language: str, known: Mapping[str, Fraction]) -> Fraction:
    """A sum of words, numbers and signs."""
    whole = _WHOLE.search(formula)
    if whole:
        inner = _worked(formula[: whole.start()], language, known)
        rounded = math.ceil(inner) if whole[1] in _UP else math.floor(inner)
        return _worked(f"{rounded}{formula[whole.end() :]}", language, known)
    operands: list[Fraction] = []
    signs = []
    # `0.4536 kg (1 lb)` is one number, told in both units.
    for part in re.split(r"(\s[×÷−+]\s|(?<!kg )\(|(?<!lb)\))", formula):
        sign = part.strip()
        if sign in SIGNS:
            signs.append(SIGNS[sign])
        elif sign:
            numbers = printed_numbers(part, language)
            operands.append(numbers[0].value if numbers else known[NAMES[language][sign.lower()]])
            signs.append(f"n[{len(operands) - 1}]")
    # Nothing but operands by their places and signs is left in it.
    return Fraction(eval("".join(signs), {"n": operands}))  # noqa: S307
