"""The season's formulas again, as people write them: plain numpy, a function of one row, and a general unit library.

Nothing is looked at here: no range, no null, no unit of a column. Only the cost is compared.
"""

import math

import numpy as np

LB, ACRE, FL_OZ, GAL = 0.45359237, 4046.8564224, 2.95735295625e-5, 3.785411784e-3
CWT, HA = 100 * LB, 1e4
NAMES = ("mass", "size", "seed_unit", "bushel", "sown", "rate", "unit_dose", "bushel_dose", "usable", "content", "limit", "used")


def plain(mass, size, seed_unit, bushel, sown, rate, unit_dose, bushel_dose, usable, content, limit, used):  # type: ignore[no-untyped-def]
    """Fourteen results of numbers or of arrays of numbers; ceil of arrays is numpy's."""
    mass, size, sown, rate = mass * LB, size / LB, sown / ACRE, rate * FL_OZ / CWT
    ceil = np.ceil if isinstance(mass, np.ndarray) else math.ceil
    per_seed, covers = rate / size, usable * GAL / rate
    active = rate * (content * LB / GAL)
    on_seed, limit, used = active / size, limit * LB / ACRE, used * LB / ACRE
    season, sets = on_seed * sown + used, mass / covers
    left = np.maximum(limit - used, 0.0) if isinstance(mass, np.ndarray) else max(limit - used, 0.0)
    return (
        mass * size, unit_dose * FL_OZ / seed_unit * size * 100 / 1e-6, bushel_dose * FL_OZ / (bushel * LB) / size * sown
        * HA / 1e-6, per_seed / 1e-9, rate * mass / GAL, covers / LB, sets, ceil(sets * (1 - 1e-9)), active / 1e-6,
        on_seed / 1e-6, season * ACRE / LB, season / limit, season > limit * (1 + 1e-9), left / on_seed * ACRE,
    )  # fmt: skip


# The arguments of each result, and the numbers of hilum.h for them.
OF = dict(zip("msunwrdbvcla", zip(NAMES, (1, 3, 6, 7, 11, 14, 16, 14, 19, 23, 72, 73), strict=True), strict=True))
USES = ("sm", "uds", "nbsw", "rs", "rm", "vr", "mvr", "mvr", "rc", "rcs", "larcsw", "larcsw", "larcsw", "larcs")


def refusing(*columns: np.ndarray) -> list[tuple[np.ndarray, np.ndarray]]:
    """The plain formulas with a code for every result of every row, as hilum has them."""
    codes, good = {}, []
    for letter, (_, subject), column in zip(OF, OF.values(), columns, strict=True):
        none, kind_of_none = (column < 0, 102) if subject == 73 else (column <= 0, 101)
        range_ = np.where((column > 1e30) | (column < 1e-30) & (column != 0), 103, 0)
        kind = np.where(np.isfinite(column), np.where(none, kind_of_none, range_), 100)
        codes[letter] = np.where(kind > 0, kind + 1000 * subject, 0).astype(np.int32)
        good.append(np.where(kind == 0, column, 1.0))
    results = []
    for result, uses in zip(plain(*good), USES, strict=True):
        code = codes[uses[0]]
        for letter in uses[1:]:
            code = np.where(code == 0, codes[letter], code)
        results.append((np.where(code == 0, result, 0), code))
    return results


class Pint:
    """The same with pint's quantities, of one row or of arrays."""

    def __init__(self) -> None:
        import pint

        self.units = pint.UnitRegistry()
        self.units.define("seed = [seed]")
        names = ("lb", "seed/lb", "seed", "lb", "seed/acre", "floz/(100 lb)", "floz", "floz", "gallon", "lb/gallon", "lb/acre", "lb/acre")
        self.of = [self.units(name) for name in names]

    def __call__(self, *numbers):  # type: ignore[no-untyped-def]
        """Fourteen results."""
        mass, size, seed_unit, bushel, sown, rate, unit_dose, bushel_dose, usable, content, limit, used = (
            number * unit for number, unit in zip(numbers, self.of, strict=True)
        )
        per_seed, covers, active = rate / size, usable / rate, rate * content
        on_seed = active / size
        season, sets = on_seed * sown + used, (mass / covers).to("dimensionless").magnitude
        left = np.maximum((limit - used).to("lb/acre").magnitude, 0.0) * self.units("lb/acre")
        return (
            (mass * size).to("seed"), (unit_dose / seed_unit * size).to("mL/kg"), (bushel_dose / bushel / size * sown).to("mL/hectare"),
            per_seed.to("microliter/seed"), (rate * mass).to("gallon"), covers.to("lb"), sets, np.ceil(sets),
            active.to("mg/kg"), on_seed.to("mg/seed"), season.to("lb/acre"), (season / limit).to("dimensionless"),
            season > limit, (left / on_seed).to("seed/acre"),
        )  # fmt: skip
