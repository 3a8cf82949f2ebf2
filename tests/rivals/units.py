"""Every unit, every quotient of units in which a quantity is written, and every conversion between the bases of a dose, against
pint over a grid of values. With a file as second argument it also writes what the JavaScript rival (ucum.mjs) compares.

    python units.py LIBRARY [FILE]
"""
import json
import sys

import pint

from hilum import Library

# Six digits more than any label has.
CLOSE = 1e-13
GRID = [m * 10.0**e for e in range(-6, 9, 2) for m in (1.0, 1.7, 2.5, 3.3333333333333335, 9.99)]

rival = pint.UnitRegistry()
for line in ("seeds = [seed_count]", "cfu = [cell_count]", "acre_43560 = 43560 * foot ** 2"):
    rival.define(line)

# What each unit of the table is called there.
NAMES = {
    "kg": "kilogram", "g": "gram", "mg": "milligram", "µg": "microgram", "t": "metric_ton", "lb": "pound", "oz av": "ounce",
    "cwt": "100 * pound", "s": "second", "min": "minute", "h": "hour", "d": "day", "K": "delta_degree_Celsius",
    "delta_degC": "delta_degree_Celsius", "delta_degF": "delta_degree_Fahrenheit", "seeds": "seeds", "CFU": "cfu", "m2": "meter ** 2",
    "ha": "hectare", "ft2": "foot ** 2", "ac": "acre_43560", "m3": "meter ** 3", "L": "liter", "mL": "milliliter", "µL": "microliter",
    "gal": "gallon", "qt": "quart", "pt": "pint", "fl oz": "fluid_ounce", "imp gal": "imperial_gallon", "imp qt": "imperial_quart",
    "imp pt": "imperial_pint", "imp fl oz": "imperial_fluid_ounce", "": "dimensionless", "%": "0.01 * dimensionless",
}
BASES = ["meter", "kilogram", "second", "delta_degree_Celsius", "seeds", "cfu"]
# A quantity, what stands above the line and what below, as names of dimensions.
KINDS = {
    "seed_size": ("seeds", "mass"), "sown": ("seeds", "area"), "mass_per_seed": ("mass", "seeds"), "mass_per_area": ("mass", "area"),
    "density": ("mass", "volume"), "titre_per_volume": ("cells", "volume"), "titre_per_mass": ("cells", "mass"),
    "seed_flow": ("mass", "time"), "flow": ("volume", "time"), "rate_per_mass": ("volume", "mass"), "rate_per_seed": ("volume", "seeds"),
    "rate_per_area": ("volume", "area"), "dry_per_mass": ("mass", "mass"), "dry_per_seed": ("mass", "seeds"),
    "dry_per_area": ("mass", "area"), "active_per_mass": ("mass", "mass"), "active_per_seed": ("mass", "seeds"),
    "active_per_area": ("mass", "area"), "active_content": ("mass", "volume"), "cells_per_mass": ("cells", "mass"),
    "cells_per_seed": ("cells", "seeds"), "cells_per_area": ("cells", "area"),
    "mass": ("mass", None), "volume": ("volume", None), "seeds": ("seeds", None), "cells": ("cells", None), "area": ("area", None),
    "time": ("time", None), "temperature_difference": ("temperature", None),
}
DIMENSIONS = {
    "mass": (0, 1, 0, 0, 0, 0), "volume": (3, 0, 0, 0, 0, 0), "area": (2, 0, 0, 0, 0, 0), "time": (0, 0, 1, 0, 0, 0),
    "temperature": (0, 0, 0, 1, 0, 0), "seeds": (0, 0, 0, 0, 1, 0), "cells": (0, 0, 0, 0, 0, 1),
}


class Tally:
    def __init__(self):
        self.compared, self.worst, self.wrong = 0, 0.0, []

    def compare(self, what, ours, theirs):
        self.compared += 1
        off = abs(ours - theirs) / max(abs(theirs), sys.float_info.min)
        self.worst = max(self.worst, off)
        if not off <= CLOSE:
            self.wrong.append(f"{what}: {ours!r} here, {theirs!r} there ({off:.1e})")


def base_unit(powers):
    unit = rival.Quantity(1.0)
    for base, power in zip(BASES, powers):
        unit = unit * rival.Quantity(1.0, base) ** power
    return unit.units


def in_base(expression, powers):
    return rival.Quantity(rival.parse_expression(expression)).to(base_unit(powers)).magnitude


def main():
    library = Library(sys.argv[1])
    units = list(library.units())
    tally = Tally()
    factors = {}
    for unit in units:
        symbol, powers = str(unit.symbol), unit.powers.tuple()
        factors[symbol] = in_base(NAMES[symbol], powers)
        tally.compare(f"the factor of {symbol!r}", unit.factor, factors[symbol])
    of = {name: [str(unit.symbol) for unit in units if unit.powers.tuple() == powers] for name, powers in DIMENSIONS.items()}
    assert sum(len(symbols) for symbols in of.values()) >= len(units) - 2, "every unit is in a dimension, but for shares"
    written = []
    for kind, (above, below) in KINDS.items():
        for a in of[above]:
            for b in of[below] if below else [None]:
                for value in GRID:
                    text = f"{value!r} {a}" + (f"/{b}" if b else "")
                    theirs = value * factors[a] / (factors[b] if b else 1.0)
                    if 1e-28 < abs(theirs) < 1e28:
                        tally.compare(f"{kind} {text}", library.read(kind, text), theirs)
                written.append((kind, a, b))
    print(f"{len(units)} units, {len(written)} ways to write a quantity, {tally.compared} values against pint {pint.__version__}")
    conversions(library, tally)
    survey = rival.Quantity(1.0, "acre").to("meter ** 2").magnitude / factors["ac"] - 1.0
    print(f"Known and kept: pint's acre is that of the US survey foot, {survey:.1e} larger than the international one here.")
    print(f"{tally.compared} values in all, the worst {tally.worst:.1e} apart")
    for wrong in tally.wrong[:20]:
        print(wrong)
    if len(sys.argv) > 2:
        symbols = [{"symbol": str(u.symbol), "ucum": str(u.ucum), "factor": u.factor, "powers": u.powers.tuple()} for u in units]
        with open(sys.argv[2], "w", encoding="utf-8") as file:
            json.dump({"units": symbols, "grid": GRID, "kinds": KINDS, "dimensions": DIMENSIONS}, file)
    return 1 if tally.wrong else 0


def conversions(library, tally):
    """Doses from one basis to another, with pint carrying the units: it must come to the same unit and number."""
    q = rival.Quantity
    families = {"rate": "meter ** 3", "dry": "kilogram", "active": "kilogram", "cells": "cfu"}
    before = tally.compared
    for family, amount in families.items():
        for x in GRID:
            dose = x * 1e-6
            for y in (0.5, 35.0, 6000.0, 2.85e5):
                per_mass, per_seed = q(dose, f"{amount} / kilogram"), q(dose, f"{amount} / seeds")
                size, sown = q(y, "seeds / kilogram"), q(y, "seeds / meter ** 2")
                bushel, unit, seed = q(y, "kilogram"), q(y, "seeds"), q(y, "kilogram")
                pairs = [
                    (f"hilum_{family}_per_mass_to_per_seed", (dose, y), per_mass / size, f"{amount} / seeds"),
                    (f"hilum_{family}_per_seed_to_per_mass", (dose, y), per_seed * size, f"{amount} / kilogram"),
                    (f"hilum_{family}_per_seed_to_per_area", (dose, y), per_seed * sown, f"{amount} / meter ** 2"),
                    (f"hilum_{family}_per_area_to_per_seed", (dose, y), q(dose, f"{amount} / meter ** 2") / sown, f"{amount} / seeds"),
                    (f"hilum_{family}_per_mass_to_bushel", (dose, y), per_mass * bushel, amount),
                    (f"hilum_{family}_per_mass_from_bushel", (dose, y), q(dose, amount) / bushel, f"{amount} / kilogram"),
                    (f"hilum_{family}_per_seed_to_unit", (dose, y), per_seed * unit, amount),
                    (f"hilum_{family}_per_seed_from_unit", (dose, y), q(dose, amount) / unit, f"{amount} / seeds"),
                    (f"hilum_{family}_per_mass_needed", (dose, y), per_mass * seed, amount),
                    (f"hilum_{family}_per_seed_needed", (dose, y), per_seed * unit, amount),
                    (f"hilum_{family}_per_mass_treats", (dose, y), q(y, amount) / per_mass, "kilogram"),
                    (f"hilum_{family}_per_mass_implied_size", (dose, dose * y), q(dose, f"{amount} / kilogram") / q(dose * y, f"{amount} / seeds"), "seeds / kilogram"),
                ]
                for name, arguments, theirs, in_unit in pairs:
                    tally.compare(f"{name}{arguments}", library.of_one(name, *arguments), theirs.to(in_unit).magnitude)
    print(f"{tally.compared - before} conversions between bases of a dose against pint")


if __name__ == "__main__":
    sys.exit(main())
